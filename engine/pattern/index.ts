/**
 * A pattern as data: rows, the items they are written in, the cast-on, and what items take and make in all.
 * No words, no loops.
 */
export type * from './pattern.ts'
export { leftByBindOff, stitchesUsed, takesAndMakes, type Totals } from './totals.ts'
