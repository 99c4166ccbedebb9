import { type Draft, draft, isFootless, legAbove, type ShapeOf } from './draft.ts'
import type { Link, Pass } from './links.ts'
import {
  apart,
  type Curve,
  curveThrough,
  cut,
  minus,
  mix,
  type Point,
  plus,
  reversed,
  times,
  unit,
} from './points.ts'
import { type LoopShape, type Side, signOf } from './shape.ts'

/** Where the yarn leaves a loop: at its foot, or half way up where it has none. `away` points along the yarn, out of it. */
export interface Exit {
  readonly at: Point
  readonly away: Point
  readonly footless: boolean
}

export function exitOf(shape: LoopShape, side: Side): Exit {
  const leg = legAbove(shape, side)
  return isFootless(shape)
    ? { at: shape.mid[leg], away: times(shape.rise[leg], -1), footless: true }
    : {
        at: shape.foot[side],
        away: times(unit(plus(shape.base.up, shape.axis), shape.axis), -1),
        footless: false,
      }
}

/** The yarn between two loops, cut where it changes its depth: half of it belongs to each of them. */
export function linkPieces(shapeOf: ShapeOf, link: Link): Draft[] {
  const [from, to] = [shapeOf(link.from), shapeOf(link.to)]
  const [a, b] = [exitOf(from, link.leaves), exitOf(to, link.enters)]
  if (link.kind === 'open') {
    return [
      half(from, from, stubCurve(from, link.leaves, a)),
      { ...half(to, to, reversed(stubCurve(to, link.enters, b))), cut: true },
    ]
  }
  const halves =
    link.kind === 'turn' ? turnCurves(from, link.leaves, a, b) : cut(sinkerCurve(a, b, from), 0.5)
  const [first, second] = halves
  if (link.passes.length > 0) return floats(link.passes, from, to, link.kind === 'turn', halves)
  return [
    { ...half(from, to, first), side: sideOf(from, link.leaves) },
    { ...half(to, from, second), side: sideOf(to, link.enters) },
  ]
}

/** Told where the yarn of a loop without feet crosses itself down there. */
const sideOf = (shape: LoopShape, side: Side): Side | null =>
  isFootless(shape) && shape.crossed !== null ? side : null

/** A loop without parents of its own hangs beside its neighbour's. */
export const half = (owner: LoopShape, other: LoopShape, curve: Curve): Draft =>
  draft({
    loop: owner.loop.id,
    part: 'sinker',
    curve,
    beside: !isFootless(owner) ? owner.loop.id : isFootless(other) ? null : other.loop.id,
  })

/** The arc between two feet: of about the same length of yarn, so flatter where they are far apart. */
export function sinkerCurve(a: Exit, b: Exit, from: LoopShape): Curve {
  const gap = apart(a.at, b.at)
  const dip = Math.min(gap + 0.05, Math.max(0.12, 0.4 + (0.7 - gap) * 0.4)) * (from.loop.row < 0 ? 0.4 : 1)
  const reach = (exit: Exit, other: Exit): number =>
    exit.footless ? (other.footless ? 0.3 : 0.4) : other.footless ? 0.2 : dip
  return curveThrough(
    { at: a.at, out: times(a.away, reach(a, b)) },
    { at: b.at, out: times(b.away, -reach(b, a)) },
  )
}

const outwards = ({ base }: LoopShape, side: Side): Point => times(base.right, signOf(side))

/** Round the edge: out of the last loop of one row, up, and into the first of the next. */
function turnCurves(from: LoopShape, side: Side, a: Exit, b: Exit): readonly [Curve, Curve] {
  const out = outwards(from, side)
  const up = unit(minus(b.at, a.at), from.base.up)
  const middle = plus(mix(a.at, b.at, 0.45), out, 0.3)
  const reach = apart(a.at, b.at) * 0.36
  return [
    curveThrough({ at: a.at, out: times(a.away, reach) }, { at: middle, out: times(up, reach * 0.8) }),
    curveThrough({ at: middle, out: times(up, reach * 0.8) }, { at: b.at, out: times(b.away, -reach * 0.7) }),
  ]
}

/** Yarn that is cut where a round was laid flat, or where a loop of another piece begins. */
export function stubCurve(shape: LoopShape, side: Side, { at, away }: Exit): Curve {
  const out = outwards(shape, side)
  const end = plus(plus(at, out, 0.36), shape.base.up, -0.28)
  return curveThrough({ at, out: times(away, 0.2) }, { at: end, out: times(out, 0.18) })
}

/** Past slipped loops: the halves end in the gaps, and what lies between passes in front of them or behind. */
function floats(
  passes: readonly Pass[],
  from: LoopShape,
  to: LoopShape,
  turns: boolean,
  [first, second]: readonly [Curve, Curve],
): Draft[] {
  const [start, before] = turns ? [first, null] : cut(first, 0.45)
  const [after, end] = cut(second, turns ? 0.66 : 0.55)
  // One curve passes them all: it lies in front where it does so for the first.
  const [pass] = passes
  const float = (curve: Curve, owner: LoopShape): Draft =>
    draft({
      loop: owner.loop.id,
      part: 'float',
      curve,
      beside: pass?.loop ?? null,
      inFront: pass?.inFront ?? false,
    })
  return [
    half(from, to, start),
    ...(before === null ? [] : [float(before, from)]),
    float(after, to),
    half(to, from, end),
  ]
}
