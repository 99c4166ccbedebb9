/**
 * A pattern made over: flat or in the round, mirrored, wider, with other decreases, edges or neighbours.
 * Each adaptation takes a proved pattern and gives a proved one with what changed in words, or says why it cannot.
 */
export { adapt, adaptOnce, begun, further } from './adapt.ts'
export type { Adaptation, Adapted, Change, Kept, Offer, SwatchCount } from './adaptation.ts'
export { borders } from './borders.ts'
export { plainStitchIn, plainStitchOut } from './columns.ts'
export { type Lean, leanDoubles } from './doubles.ts'
export { narrower, wider } from './family.ts'
export { type FlatOptions, flat } from './flat.ts'
export { halfRepeats } from './half-repeats.ts'
export { mirror } from './mirror.ts'
export { offersIn } from './offers.ts'
export { plainer } from './plainer.ts'
export type { Refusal, RefusalCode, Refused } from './refusal.ts'
export { adaptationNames, type Request, readRequests, swapName, type UnknownRequest } from './requests.ts'
export { round } from './round.ts'
export { type EdgeKind, edge } from './sides.ts'
export { above, beside } from './together.ts'
