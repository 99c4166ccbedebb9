/**
 * Counts for every number of repeats: a·n + b before and after each row, the proof, the cast-on rule that the rows give.
 * Exact integers only; no loops are worked here.
 */

export { type Derived, deriveCastOn } from './derive.ts'
export { castOnCount, edgeTotals, type Proof, type ProveOptions, prove, type RowCount } from './prove.ts'
