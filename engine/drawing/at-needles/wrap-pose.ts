import {
  alongLine,
  type Curve,
  cubic,
  heightAt,
  joined,
  type Point,
  plus,
  straight,
  times,
} from './geometry.ts'
import { type LoopCurves, strand } from './loop-pose.ts'
import { sizes } from './sizes.ts'
import type { Stage } from './stage.ts'
import { type Exit, type Hold, handAt, type Lead } from './yarn-pose.ts'

/** Yarn laid round the right tip. */
export interface Wrap {
  /** From the loop before to where the new loop begins. */
  readonly arrival: Curve
  readonly loop: LoopCurves
  readonly lead: Lead
}

/**
 * Round the tip anticlockwise as seen from it: for a knit up from behind, across in front and over; for a purl up in
 * front, over, and down behind.
 */
export function wrapRound(
  exit: Exit,
  { right, hanging: { middle } }: Stage,
  face: 'knit' | 'purl',
  hold: Hold,
): Wrap {
  const { right: along, up } = alongLine(right.line)
  const tip: Point = [right.tip, heightAt(right.line, right.tip)]
  const on = (back: number, high: number): Point => plus(plus(tip, along, back), up, high)
  const round = sizes.needle * 0.8 + sizes.yarn / 2
  const hand = handAt(middle, hold)
  return face === 'knit'
    ? knitWrap(exit, on, along, up, round, hand)
    : purlWrap(exit, on, along, up, round, hand)
}

type On = (back: number, high: number) => Point

function knitWrap({ at, away }: Exit, on: On, along: Point, up: Point, round: number, hand: Point): Wrap {
  const foot = on(0.78, -round - 0.3)
  const under = on(0.5, -round)
  const over = on(0.62, round)
  const out = plus(over, [hand[0] - over[0], hand[1] - over[1]], 0.1)
  const farther = plus(over, [hand[0] - over[0], hand[1] - over[1]], 0.18)
  const outward = times([hand[0] - over[0], hand[1] - over[1]], 0.04)
  const reach = Math.hypot(foot[0] - at[0], foot[1] - at[1])
  return {
    arrival: cubic(at, times(away, 0.15 + reach * 0.25), times(along, 0.2 + reach * 0.25), foot),
    loop: strand({
      legs: {
        right: cubic(foot, times(along, -0.22), plus(times(up, -0.12), along, 0.02), under),
        left: straight(farther, out),
      },
      right: cubic(under, times(up, 0.14), times(up, -0.16), over),
      left: cubic(out, times(outward, -1), times(up, 0.1), over),
      cubics: 1,
    }),
    lead: leadOn(farther, hand),
  }
}

function purlWrap({ at, away }: Exit, on: On, along: Point, up: Point, round: number, hand: Point): Wrap {
  const foot = on(0.95, -round - 0.1)
  const side = on(0.75, 0)
  const over = on(0.52, round)
  const under = on(0.6, -round)
  const out = on(0.85, -round - 0.16)
  const reach = Math.hypot(foot[0] - at[0], foot[1] - at[1])
  return {
    arrival: cubic(
      at,
      times(away, 0.12 + reach * 0.2),
      plus(times(along, 0.14 + reach * 0.2), up, -0.1),
      foot,
    ),
    loop: strand({
      legs: {
        right: cubic(foot, plus(times(along, -0.1), up, 0.06), plus(times(up, -0.1), along, 0.06), side),
        left: cubic(out, times(along, -0.12), times(up, -0.08), under),
      },
      right: cubic(side, plus(times(up, 0.1), along, -0.08), plus(times(up, -0.02), along, 0.12), over),
      left: cubic(under, times(up, 0.12), plus(times(up, -0.06), along, -0.16), over),
      cubics: 1,
    }),
    lead: leadOn(out, hand, plus(times(along, 0.3), up, -0.12)),
  }
}

function leadOn(from: Point, hand: Point, leaving?: Point): Lead {
  const way: Point = [hand[0] - from[0], hand[1] - from[1]]
  const [near, half] = [plus(from, way, 0.12), plus(from, way, 0.5)]
  if (leaving === undefined)
    return { root: straight(from, near), hand: joined([straight(near, half), straight(half, hand)]) }
  const turn: Point = plus(plus(from, leaving, 1.6), [0.25, 0.3])
  return {
    root: cubic(from, leaving, [-0.2, -0.18], turn),
    hand: joined([
      cubic(turn, [0.25, 0.22], times(way, -0.12), half),
      cubic(half, times(way, 0.12), times(way, -0.15), hand),
    ]),
  }
}
