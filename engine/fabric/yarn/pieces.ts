import type { FabricLoopId } from '../fabric.ts'
import type { Link } from './links.ts'
import { outwards } from './links.ts'
import { apart, type Curve, curveThrough, cut, minus, mix, type Point, plus, times, unit } from './points.ts'
import { type LoopShape, otherOf, type Side, signOf } from './shape.ts'
import type { YarnPart, YarnPiece } from './yarn.ts'

/** A piece whose depth is not known yet. */
export interface Draft {
  readonly loop: FabricLoopId
  readonly part: YarnPart
  readonly curve: Curve
  readonly strand: number
  readonly ends: YarnPiece['ends']
  /** For a leg: the side of its foot. */
  readonly side: Side | null
  /** For what lies between loops: the loop whose parents it must pass. For a float: the slipped loop. */
  readonly at: FabricLoopId | null
}

type Shapes = readonly LoopShape[]

const known = (shapes: Shapes, id: FabricLoopId): LoopShape => {
  const shape = shapes[id]
  if (shape === undefined) throw new Error(`yarn: there is no loop ${id}`)
  return shape
}

/** The pieces of one loop, as the yarn runs that goes up its `first` leg. */
export function loopPieces(shape: LoopShape, first: Side, strand: number): Draft[] {
  const { loop } = shape
  const last = otherOf(first)
  const piece = (part: YarnPart, curve: Curve, side: Side | null): Draft => ({
    loop: loop.id, part, curve, strand, ends: 'none', side, at: null,
  })
  const [up, down] = shape.crossed === null ? [first, last] : [last, first]
  const head = piece('head', headCurve(shape, up, down), null)
  if (isFootless(shape)) return [head]
  return [
    piece('leg', legCurve(shape, first, up), first),
    head,
    piece('leg', curveDown(legCurve(shape, last, down)), last),
  ]
}

/** A loop that hangs from nothing has no feet: its yarn runs on from its neighbours. */
export const isFootless = ({ loop }: LoopShape): boolean => loop.kind === 'over'

function legCurve(shape: LoopShape, foot: Side, mid: Side): Curve {
  const from = shape.foot[foot]
  const to = shape.mid[mid]
  const reach = apart(from, to) * 0.42
  return curveThrough(
    { at: from, out: times(unit(plus(shape.base.up, shape.axis), shape.axis), reach) },
    { at: to, out: times(shape.rise[mid], reach) },
  )
}

function curveDown(curve: Curve): Curve {
  const result: number[] = []
  for (let i = curve.length - 2; i >= 0; i -= 2) result.push(curve[i] ?? Number.NaN, curve[i + 1] ?? Number.NaN)
  return result
}

function headCurve(shape: LoopShape, up: Side, down: Side): Curve {
  const stop = (side: Side, isUp: boolean) => {
    const [at, top] = [shape.mid[side], shape.top[side]]
    const rise = apart(at, top) * 0.5
    return { at, out: times(shape.rise[side], isUp ? rise : -rise) }
  }
  const over = (side: Side) => ({ at: shape.top[side], out: times(shape.head.right, -signOf(up) * shape.headWidth) })
  const wide = apart(shape.top.left, shape.top.right) > 0.02
  if (!wide) return curveThrough(stop(up, true), over(up), stop(down, false))
  const flat = apart(shape.top.left, shape.top.right) / 3
  const along = (side: Side, arriving: number, leaving: number) => ({
    at: shape.top[side],
    in: times(shape.head.right, -signOf(up) * arriving),
    out: times(shape.head.right, -signOf(up) * leaving),
  })
  return curveThrough(stop(up, true), along(up, shape.headWidth, flat), along(down, flat, shape.headWidth), stop(down, false))
}

/** Where the yarn leaves a loop: at its foot, or half way up where it has none. `away` points along the yarn, out of it. */
function exit(shape: LoopShape, side: Side): { at: Point; away: Point; reach: number } {
  if (isFootless(shape)) {
    const leg = shape.crossed === null ? side : otherOf(side)
    return { at: shape.mid[leg], away: times(shape.rise[leg], -1), reach: 0.4 }
  }
  return { at: shape.foot[side], away: times(unit(plus(shape.base.up, shape.axis), shape.axis), -1), reach: 0 }
}

/** The yarn between two loops, cut where it changes its depth. */
export function linkPieces(shapes: Shapes, link: Link, strand: number): Draft[] {
  const [from, to] = [known(shapes, link.from), known(shapes, link.to)]
  const [a, b] = [exit(from, link.leaves), exit(to, link.enters)]
  const piece = (part: YarnPart, owner: LoopShape, other: LoopShape, curve: Curve, on = strand): Draft => ({
    loop: owner.loop.id, part, curve, strand: on, ends: 'none', side: null,
    at: isFootless(owner) ? (isFootless(other) ? null : other.loop.id) : owner.loop.id,
  })
  if (link.kind === 'open') {
    return [
      piece('sinker', from, from, stub(from, link.leaves, a.at)),
      piece('sinker', to, to, curveDown(stub(to, link.enters, b.at)), strand + 1),
    ]
  }
  const [first, second] = link.kind === 'turn' ? turnCurves(from, link.leaves, a, b) : cut(sinkerCurve(a, b), 0.5)
  if (link.passes.length === 0) return [piece('sinker', from, to, first), piece('sinker', to, from, second)]
  return floatPieces(piece, from, to, link, [first, second])
}

function floatPieces(
  piece: (part: YarnPart, owner: LoopShape, other: LoopShape, curve: Curve) => Draft,
  from: LoopShape,
  to: LoopShape,
  { kind, passes }: Link,
  [first, second]: readonly [Curve, Curve],
): Draft[] {
  const [start, before] = kind === 'turn' ? [first, null] : cut(first, 0.45)
  const [after, end] = kind === 'turn' ? cut(second, 0.66) : cut(second, 0.55)
  const slipped = passes[0] ?? -1
  const middle = [...(before === null ? [] : [before]), after]
  return [
    piece('sinker', from, to, start),
    ...middle.map((curve) => ({ ...piece('float', from, to, curve), at: slipped })),
    piece('sinker', to, from, end),
  ]
}

type Exit = ReturnType<typeof exit>

/** The arc between two feet: of about the same length of yarn, so flatter where they are far apart. */
function sinkerCurve(a: Exit, b: Exit): Curve {
  const gap = apart(a.at, b.at)
  const dip = Math.min(0.46, Math.max(0.12, 0.4 + (0.7 - gap) * 0.4))
  const reach = (exit: Exit, other: Exit): number => (exit.reach > 0 ? exit.reach : other.reach > 0 ? 0.2 : dip)
  return curveThrough(
    { at: a.at, out: times(a.away, reach(a, b)) },
    { at: b.at, out: times(b.away, -reach(b, a)) },
  )
}

/** Round the edge: out of the last loop of one row, up, and into the first of the next. */
function turnCurves(from: LoopShape, side: Side, a: Exit, b: Exit): readonly [Curve, Curve] {
  const out = outwards(side, from.base.right)
  const up = unit(minus(b.at, a.at), from.base.up)
  const middle = plus(mix(a.at, b.at, 0.45), out, 0.3)
  const reach = apart(a.at, b.at) * 0.36
  return [
    curveThrough({ at: a.at, out: plus(times(a.away, reach), out, 0.06) }, { at: middle, out: times(up, reach * 0.8) }),
    curveThrough({ at: middle, out: times(up, reach * 0.8) }, { at: b.at, out: times(b.away, -reach * 0.7) }),
  ]
}

/** Yarn that is cut where a round was laid flat. */
function stub(shape: LoopShape, side: Side, at: Point): Curve {
  const out = outwards(side, shape.base.right)
  const end = plus(plus(at, out, 0.36), shape.base.up, -0.28)
  return curveThrough({ at, out: times(shape.base.up, -0.2) }, { at: end, out: times(out, 0.18) })
}
