/**
 * A worked pattern as a chart: which symbol stands in which column, where no stitch is, where repeats and edges lie.
 * Data only; how it looks is the business of drawing. The same chart as words stands beside it.
 */
export { chartOf } from './build.ts'
export type * from './chart.ts'
export * from './table.ts'
