import {
  alongLine,
  backwards,
  type Curve,
  cubic,
  heightAt,
  inCubics,
  type Line,
  mix,
  type Point,
  plus,
  times,
  toward,
} from './geometry.ts'
import type { StrandPart } from './sheet.ts'
import { sizes } from './sizes.ts'

/** Where a loop's yarn comes out of the fabric, and which way it goes up from there. */
export interface Foot {
  readonly at: Point
  readonly up: Point
}

export interface Feet {
  readonly left: Foot
  readonly right: Foot
  /** A yarn over has no legs of its own. */
  readonly legs: boolean
}

export type LoopCurves = ReadonlyMap<StrandPart, Curve>

/** How a loop hangs. */
export interface Hang {
  readonly line: Line
  readonly x: number
  /** Quarter turns of its legs: 1 sits as usual; beyond 2 its legs cross. */
  readonly turn: number
  /** How much longer it is than it need be. */
  readonly slack: number
  /** Cubics in each of its halves. */
  readonly cubics: number
}

const top = sizes.needle + sizes.yarn / 2 + 0.005

/** A loop over a needle: from its left foot, over, and down to its right foot. */
export function overNeedle(feet: Feet, { line, x, turn, slack, cubics }: Hang): LoopCurves {
  const { right, up } = alongLine(line)
  const middle: Point = [x, heightAt(line, x)]
  const lean = leadsRight(turn) ? -0.04 : 0.04
  const crest = plus(plus(middle, up, top + slack), right, lean)
  const isCrossed = Math.abs(turn) > 1
  const side = (of: 'left' | 'right'): 1 | -1 => ((of === 'left') !== isCrossed ? -1 : 1)
  const below = (of: 'left' | 'right'): Point => plus(plus(middle, right, side(of) * sizes.half), up, -0.31)
  const round = sizes.half * 0.86
  const half = (of: 'left' | 'right'): Curve => {
    const handle = times(right, side(of) * (round + slack * 0.3))
    if (feet.legs) return cubic(below(of), times(up, 0.3 + slack * 0.5), handle, crest)
    const { at, up: rise } = feet[of]
    const reach = Math.hypot(crest[0] - at[0], crest[1] - at[1])
    const bulge = plus(times(rise, reach * 0.42), right, side(of) * 0.05)
    return cubic(at, bulge, plus(times(right, side(of) * (round + 0.08)), up, -0.06), crest)
  }
  const leg = (of: 'left' | 'right'): Curve => {
    const { at, up: rise } = feet[of]
    const to = below(of)
    const reach = Math.hypot(to[0] - at[0], to[1] - at[1])
    return cubic(at, times(rise, reach * 0.4), times(mix(up, toward(at, to, up), 0.35), -reach * 0.42), to)
  }
  return strand({
    legs: feet.legs ? { left: leg('left'), right: leg('right') } : null,
    left: half('left'),
    right: half('right'),
    cubics,
  })
}

/** Whether the leg that lies in front of the needle is the right one. */
export const leadsRight = (turn: number): boolean => (((turn - 1) % 4) + 4) % 4 === 0

interface Halves {
  readonly legs: { readonly left: Curve; readonly right: Curve } | null
  /** From the left leg up to the top, and from the right leg up to the top. */
  readonly left: Curve
  readonly right: Curve
  readonly cubics: number
}

/** The parts in the order of the yarn from left to right: those on the right run down. */
export function strand({ legs, left, right, cubics }: Halves): LoopCurves {
  const parts = new Map<StrandPart, Curve>([
    ['half-left', inCubics(left, cubics)],
    ['half-right', backwards(inCubics(right, cubics))],
  ])
  if (legs !== null) {
    parts.set('leg-left', legs.left)
    parts.set('leg-right', backwards(legs.right))
  }
  return parts
}

/** A loop that a tip lifts over others, drawn out long: its top is held at `held`. */
export function lifted(feet: Feet, held: Point, cubics: number): LoopCurves {
  const side = (of: 'left' | 'right'): 1 | -1 => (of === 'left' ? -1 : 1)
  const shoulder = (of: 'left' | 'right'): Point => plus(mix(feet[of].at, held, 0.62), [side(of) * 0.3, 0])
  const crest = plus(held, [0, 0.16])
  const half = (of: 'left' | 'right'): Curve => {
    const from = feet.legs ? shoulder(of) : feet[of].at
    return cubic(from, times(toward(from, crest, [0, 1]), 0.32), [side(of) * 0.26, 0], crest)
  }
  const leg = (of: 'left' | 'right'): Curve => {
    const { at, up } = feet[of]
    const to = shoulder(of)
    const reach = Math.hypot(to[0] - at[0], to[1] - at[1])
    return cubic(at, times(up, reach * 0.4), times(toward(to, crest, [0, 1]), -reach * 0.4), to)
  }
  return strand({
    legs: feet.legs ? { left: leg('left'), right: leg('right') } : null,
    left: half('left'),
    right: half('right'),
    cubics,
  })
}
