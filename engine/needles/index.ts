/**
 * Rows worked loop by loop: every loop with the loops it was drawn through, every step with what is on both needles.
 * Takes a pattern that fits; what a stitch does to its loops comes from the catalogue. A row can also be worked from
 * deeds of one's own, which is how a mistake is made.
 */
export { type Bench, benchBefore, benchCastOn, type Deed, type DeedsDone, workDeeds } from './deeds.ts'
export type { LaidStitch } from './hands.ts'
export { type Laid, layOut } from './lay-out.ts'
export { type NeedleState, needlesAfter } from './state.ts'
export { type Working, work } from './work.ts'
export type * from './worked.ts'
