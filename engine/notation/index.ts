/**
 * Rows as knitters write them: text to items and back. Reading goes on after a problem; what is printed reads back the same.
 * Knows the words of the trade and the catalogue; counts nothing.
 */

export { edited, type RowSuggestion, rowSuggestions, type TextEdit } from './edit.ts'
export { type PrintOptions, printRow, type Terms } from './print-row.ts'
export { type ReadOptions, type RowReading, readRow } from './read-row.ts'
export { type RowLabel, rowLabel } from './row-label.ts'
export { closestWord, didYouMean } from './suggest.ts'
