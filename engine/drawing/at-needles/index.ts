/**
 * A stitch at the needles, as frames of yarn: both needles, the loops on them, the fabric that hangs below, and what the
 * hands do, all from the loops and the stitch's motions.
 */
export { between } from './between.ts'
export { atNeedles, type Frame, type Frames, type Piece, type StepView } from './frames.ts'
export type { LoopLabel, Mark } from './mark.ts'
export { frameDrawing, movingDrawing, movingPaths, needlesTitle } from './picture.ts'
