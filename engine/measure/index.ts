/**
 * Measures of a planned piece: repeats and rows for a wanted size, yarn, balls, needles, hours, lifelines. Every figure
 * carries how far it may lie off, what it rests on and what a swatch would settle. Lengths in millimetres.
 */
export { castOnFor, mostRepeatsAcross, repeatsForWidth, stitchesAfter, widestRow, widthOf } from './across.ts'
export { type Basis, bases } from './bases.ts'
export { growth, kc, ks, kw, laceFromStocking, rowShape, shares } from './constants.ts'
export { type Estimate, type Figure, marginOf, type Roughness, roughnessOf } from './figure.ts'
export { type Gauge, rowHeight, type State, type Swatch, stitchWidth } from './gauge.ts'
export { type Hours, hoursFor } from './hours.ts'
export { type LifelinePlan, lifelinePlan, lifelineRows, lifelinesIn } from './lifelines.ts'
export { type Measures, measuresOf } from './measures.ts'
export { type NeedleSize, needleNumbered, needleSizes, needlesNear } from './needle-sizes.ts'
export type { YarnNeed } from './needs.ts'
export { type Notice, notices } from './notices.ts'
export { type FlatLoop, planarLoop } from './planar-loop.ts'
export type { Across, Choice, Size, Up } from './sizes.ts'
export { type Piece, type Tally, tallyOf } from './tally.ts'
export { lengthOf, mostTimesThrough, rowsFor, timesForLength, timesForWidth } from './up.ts'
export type { Wishes } from './wishes.ts'
export {
  type Ball,
  type Balls,
  ballsFor,
  firmThickness,
  gramsByWeight,
  loopLength,
  plainLoops,
  tooThick,
  type Weighed,
  yarnByGauge,
  yarnByLength,
} from './yarn.ts'
export { categoriesOfGauge, type YarnCategory, yarnCategories } from './yarn-weights.ts'
