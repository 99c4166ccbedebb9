/**
 * What the hands do: the catalogue of stitches as motions, what follows from performing them, words, chart signs.
 * Nothing about rows or patterns. A stitch's takes, makes, lean and twins are derived here and nowhere else.
 */
export type { Twin, Twins } from './derive.ts'
export { type HandSteps, handSteps, handStepsInTurn } from './hands.ts'
export { type HandLoopName, type HandsNow, performInTurn } from './in-turn.ts'
export type { Likeness } from './look.ts'
export { catalogue, effectOf, findStitch, rightSideLook, stitch, twinsOf } from './lookup.ts'
export { perform } from './perform.ts'
export type * from './stitch.ts'
export * from './symbols.ts'
export { type Hold, type Neighbours, neighbourYarnOver } from './yarn-over-words.ts'
