import type { Scene, Tip } from './scene.ts'

/** What lies nearer to the knitter has the greater number. The fabric's own depths lie between `fabric` and the next whole number. */
export const layers = {
  yarnBehind: 0.5,
  cableBehind: 1,
  /** The halves of loops that lie behind their needle. */
  backRight: 2,
  /** A right needle behind the left one, and yarn round its tip. */
  farNeedle: 3,
  onFar: 3.5,
  backLeft: 4,
  left: 5,
  fabric: 6,
  yarnBefore: 7.05,
  frontLeft: 7.2,
  /** New loops that have just come out of old ones. */
  drawnBack: 7.6,
  right: 8,
  drawnFront: 8.9,
  frontRight: 9,
  /** Front legs that the right tip is under. */
  overRight: 9.1,
  cableBefore: 9.2,
  onCable: 9.4,
  /** A left tip in front of the right needle, and what it lifts. */
  nearLeft: 9.5,
  lifted: 9.6,
  yarnFront: 9.8,
} as const

export interface NeedleLayers {
  /** From the far end to where the needle crosses the other one, and from there to its tip. */
  readonly shaft: number
  readonly tip: number
}

export function rightLayers({ tip, behind }: Scene): NeedleLayers {
  const whole = (layer: number): NeedleLayers => ({ shaft: layer, tip: layer })
  if (tip.at === 'below') return { shaft: layers.right, tip: layers.farNeedle }
  if (tip.at === 'rest') return whole(behind ? layers.farNeedle : layers.right)
  // Not in the loops yet, it comes from its own side of the work.
  if (tip.way === 'knit') return { shaft: layers.right, tip: layers.farNeedle }
  return whole(tip.way === 'knit back' ? layers.farNeedle : layers.right)
}

export const leftLayers: NeedleLayers = { shaft: layers.left, tip: layers.nearLeft }

export interface LoopLayers {
  /** Of the half that leads in front of the needle, and of the other one. */
  readonly front: number
  readonly back: number
  /** Of the legs below them; null: as they lie in the fabric. */
  readonly frontLeg: number | null
  readonly backLeg: number | null
}

const onLeft: LoopLayers = { front: layers.frontLeft, back: layers.backLeft, frontLeg: null, backLeg: null }
const onRight: LoopLayers = {
  front: layers.frontRight,
  back: layers.backRight,
  frontLeg: null,
  backLeg: null,
}

export const needleLoop = (on: 'left' | 'right'): LoopLayers => (on === 'left' ? onLeft : onRight)

/** A loop that the right tip is in: what it passes in front of and what it passes behind. */
export function enteredLoop({ way, deep }: Tip & { at: 'loops' }): LoopLayers {
  if (!deep || way === 'knit') return onLeft
  if (way === 'purl') return { ...onLeft, front: layers.overRight, frontLeg: layers.overRight }
  if (way === 'purl back') return { ...onLeft, backLeg: layers.overRight }
  return { ...onLeft, back: layers.backRight, backLeg: layers.backRight }
}

/** A new loop that still hangs through old ones: drawn toward the knitter, or pushed away from her. */
export const drawnLoop = (behind: boolean): LoopLayers =>
  behind
    ? { front: layers.onFar, back: layers.backRight, frontLeg: layers.onFar, backLeg: layers.backRight }
    : {
        front: layers.frontRight,
        back: layers.drawnBack,
        frontLeg: layers.drawnFront,
        backLeg: layers.drawnBack,
      }

export const liftedLoop: LoopLayers = {
  front: layers.lifted,
  back: layers.backRight,
  frontLeg: layers.lifted,
  backLeg: layers.backRight,
}

export const cableLoop = (where: 'front' | 'back'): LoopLayers =>
  where === 'front'
    ? { front: layers.onCable, back: layers.cableBefore - 0.05, frontLeg: null, backLeg: null }
    : { front: layers.cableBehind + 0.1, back: layers.cableBehind - 0.1, frontLeg: null, backLeg: null }

export const holderLoop: LoopLayers = {
  front: layers.frontLeft,
  back: layers.yarnBehind,
  frontLeg: layers.fabric,
  backLeg: layers.fabric,
}
