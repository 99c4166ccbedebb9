/**
 * Pictures as plain display lists, keyed by loop, needle or cell, and the one place that writes SVG and escapes text.
 * Nothing here computes a count, a symbol or a lean: it only gives shape to what the folders below found.
 */
export * from './at-needles/index.ts'
export * from './chart.ts'
export { type CloseUpOptions, closeUpDrawing } from './close-up.ts'
export * from './display.ts'
export { escapeText, numberText } from './escape.ts'
export { type FabricOptions, fabricDrawing } from './fabric.ts'
export { type FabricMarks, marksOf } from './fabric-marks.ts'
export { keyDrawing } from './key.ts'
export * from './svg.ts'
export { symbolNodes } from './symbol.ts'
