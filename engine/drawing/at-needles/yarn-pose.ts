import { type Curve, cubic, joined, type Point, times } from './geometry.ts'
import { sizes } from './sizes.ts'
import type { Stage } from './stage.ts'
import type { YarnSide } from './yarn-side.ts'

/** Where yarn runs out of a loop, and which way. */
export interface Exit {
  readonly at: Point
  readonly away: Point
  /** Off a needle, as out of a yarn over, and not up out of the fabric. */
  readonly over: boolean
}

/** The working yarn: from its loop to between the tips, and from there to the hand. */
export interface Lead {
  readonly root: Curve
  readonly hand: Curve
}

/** Above the picture's edge: the yarn runs on to the ball. */
const off = sizes.picture.above + 0.5

export type Hold = 'English' | 'Continental'

/** The place of the hand that carries the yarn. */
export const handAt = (middle: number, hold: Hold): Point =>
  hold === 'English' ? [middle * 0.5 + 1.7, off] : [middle * 0.5 - 2.1, off]

/** The working yarn while it hangs free: in front it lies over the fabric and the needle, behind it is hidden by both. */
export function leadFrom(exit: Exit, { hanging, aside }: Stage, hold: Hold, side: YarnSide): Lead {
  const { at, away, over } = exit
  const middle = hanging.middle + aside
  const hand = handAt(middle, hold)
  const near = side === 'front' ? 0.09 : 0
  // Out of a foot it comes from low down; over the needle it need not go there, but keeps clear of its own loop.
  const x = over ? Math.min(middle + 0.12, at[0] - 0.42) : middle + 0.28 + near
  const low: Point = [x - near, over ? at[1] - 0.06 : -0.6 - 3 * near]
  const high: Point = [x + 0.08, 0.42]
  const reach = Math.hypot(low[0] - at[0], low[1] - at[1])
  const to = times([hand[0] - high[0], hand[1] - high[1]], 0.3)
  return {
    root: cubic(at, times(away, 0.12 + reach * 0.3), [0.05, -0.2 - reach * 0.12], low),
    hand: joined([
      cubic(low, [near - 0.05, 0.3], [-0.03, -0.3], high),
      cubic(high, [0.04, 0.42], times(to, -1), hand),
    ]),
  }
}

/** Yarn from one loop to the next, hanging a little. */
export function arrivalTo({ at, away }: Exit, to: Exit): Curve {
  const reach = Math.hypot(to.at[0] - at[0], to.at[1] - at[1])
  const dip = 0.1 + reach * 0.3
  return cubic(at, times(away, dip), times(to.away, dip), to.at)
}
