/**
 * The fabric as it hangs together: which loop is drawn through which, where the loops lie at rest, and their yarn.
 * Made from the worked loops alone. An illustration, not mechanics: no measurement should be read off it.
 */
export type * from './fabric.ts'
export { fabricOf, type Moment } from './graph.ts'
export { blendLayouts } from './layout/blend.ts'
export { layOutFabric } from './layout/lay-out.ts'
export type { LayoutOptions, Pin } from './layout/settle.ts'
export {
  type Curve,
  otherSide,
  type Point,
  type Yarn,
  type YarnBead,
  type YarnPart,
  type YarnPiece,
  yarnOf,
} from './yarn/index.ts'
