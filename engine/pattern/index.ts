/**
 * A pattern as data: rows, the items they are written in, the cast-on, and what items take and make in all.
 * No words, no loops.
 */
export { workedAgain } from './again.ts'
export { type Edges, edgesOf, withEdges } from './edges.ts'
export type * from './pattern.ts'
export { leftByBindOff, stitchesUsed, type Totals, takesAndMakes } from './totals.ts'
