/**
 * A stitch at the needles, as frames of yarn: both needles, the loops on them, the fabric that hangs below, and what the
 * hands do, all from the loops and the stitch's motions. An illustration, not mechanics: no measure should be read off it.
 */
export { between } from './between.ts'
export { atNeedles, type Frame, type Frames, type Piece, restAt, type StepView } from './frames.ts'
export type { LoopLabel, Mark } from './mark.ts'
export { type NeedleView, needlesDrawing } from './needles.ts'
export { frameDrawing, markPlace, marksDrawing, movingDrawing, movingPaths } from './picture.ts'
export { neighboursOf } from './yarn-side.ts'
