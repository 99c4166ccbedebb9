/**
 * Rows worked loop by loop: every loop with the loops it was drawn through, every step with what is on both needles.
 * Takes a pattern that fits; what a stitch does to its loops comes from the catalogue.
 */
export { type NeedleState, needlesAfter } from './state.ts'
export { type Working, work } from './work.ts'
export type * from './worked.ts'
