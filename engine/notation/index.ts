/**
 * Rows as knitters write them: text to items and back. Reading goes on after a problem; what is printed reads back the same.
 * Knows the words of the trade and the catalogue; counts nothing.
 */
export { readRow, type ReadOptions, type RowReading } from './read-row.ts'
export { printRow, type PrintOptions, type Terms } from './print-row.ts'
export { closestWord, didYouMean } from './suggest.ts'
export { rowLabel, type RowLabel } from './row-label.ts'
