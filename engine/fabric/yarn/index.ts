export { otherSide } from './other-side.ts'
export type { Curve, Point } from './points.ts'
export type { Yarn, YarnBead, YarnPart, YarnPiece } from './yarn.ts'
export { yarnOf } from './yarn-of.ts'
