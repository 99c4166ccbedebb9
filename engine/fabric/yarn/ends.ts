import type { Fabric, FabricLoopId } from '../fabric.ts'
import { type Draft, draft, type ShapeOf } from './draft.ts'
import { type Exit, exitOf, half, stubCurve } from './link-pieces.ts'
import { sidesOf } from './links.ts'
import { loopPieces } from './loop-pieces.ts'
import { type Curve, curveThrough, endOf, mix, type Point, plus, reversed, startOf, times } from './points.ts'
import { type LoopShape, otherOf, type Side, signOf } from './shape.ts'

/**
 * The tail and the cast-on edge: the tail's yarn lies once round the foot of every cast-on loop, as a long-tail cast-on
 * leaves it, and then goes up into the first loop.
 */
export function castOnPieces(fabric: Fabric, shapeOf: ShapeOf): Draft[] {
  const course = fabric.courses[0] ?? []
  const [first, last] = [course[0], course.at(-1)]
  if (first === undefined || last === undefined) return []
  const { first: start, last: end } = sidesOf(fabric.rightToLeft[0] ?? false)
  // The tail runs along the edge against the yarn of the loops: from the last of them to the first.
  const pieces = course.toReversed().flatMap((id) => ringOf(shapeOf(id), end, id === first))
  const into = exitOf(shapeOf(first), start)
  return [
    tailPiece(shapeOf(last), end, pieces),
    ...joined(pieces),
    intoFirst(shapeOf(first), start, pieces, into),
  ]
}

/** Once round a loop's foot, from the side that the tail comes from: under, up on the far side, over, and across again. */
function ringOf(shape: LoopShape, from: Side, isLast: boolean): Draft[] {
  const { base, loop } = shape
  const at = (x: number, y: number): Point => plus(plus(base.at, base.right, signOf(from) * x), base.up, y)
  const along = (x: number, y: number): Point => plus(times(base.right, signOf(from) * x), base.up, y)
  const leg = (curve: Curve, side: Side): Draft =>
    draft({ loop: loop.id, part: 'edge', curve, side, beside: loop.id })
  const end = isLast
    ? { at: at(-0.3, -0.27), out: along(-0.14, -0.03) }
    : { at: at(-0.5, -0.3), out: along(-0.26, 0) }
  return [
    leg(
      curveThrough(
        { at: at(0.5, -0.3), out: along(-0.26, 0) },
        { at: at(-0.24, 0.02), out: along(-0.02, 0.18) },
      ),
      from,
    ),
    draft({
      loop: loop.id,
      part: 'edge',
      beside: loop.id,
      curve: curveThrough(
        { at: at(-0.24, 0.02), out: along(-0.02, 0.14) },
        { at: at(0, 0.22), out: along(0.16, 0) },
        { at: at(0.24, 0.02), out: along(-0.02, -0.14) },
      ),
    }),
    leg(curveThrough({ at: at(0.24, 0.02), out: along(0.02, -0.18) }, end), otherOf(from)),
  ]
}

/** The rings share the points between them, half way from one to the next; the last one ends close by its loop. */
function joined(pieces: readonly Draft[]): Draft[] {
  return pieces.map((piece, i) => {
    const [before, after] = [pieces[i - 1], pieces[i + 1]]
    const { curve } = piece
    const start =
      i % 3 === 0 && before !== undefined ? mix(endOf(before.curve), startOf(curve), 0.5) : startOf(curve)
    const end =
      i % 3 === 2 && after !== undefined ? mix(endOf(curve), startOf(after.curve), 0.5) : endOf(curve)
    return { ...piece, curve: [...start, ...curve.slice(2, -2), ...end] }
  })
}

function tailPiece(shape: LoopShape, side: Side, pieces: readonly Draft[]): Draft {
  const [first] = pieces
  const to = first === undefined ? shape.base.at : startOf(first.curve)
  const { right, up } = shape.base
  const along = (x: number, y: number): Point => plus(times(right, signOf(side) * x), up, y)
  const from = plus(to, along(0.75, -1.25))
  return draft({
    loop: shape.loop.id,
    part: 'tail',
    ends: 'start',
    curve: curveThrough(
      { at: from, out: along(0.05, 0.4) },
      { at: plus(to, along(0.42, -0.42)), out: along(-0.02, 0.3) },
      { at: to, out: along(-0.26, 0) },
    ),
  })
}

/** From the last ring up into the first loop. */
function intoFirst(shape: LoopShape, side: Side, pieces: readonly Draft[], into: Exit): Draft {
  const from = endOf(pieces.at(-1)?.curve ?? [])
  const out = times(shape.base.right, signOf(side))
  return half(
    shape,
    shape,
    curveThrough(
      { at: from, out: plus(times(out, 0.36), shape.base.up, -0.06) },
      { at: into.at, out: plus(times(into.away, -0.12), out, -0.34) },
    ),
  )
}

/** The yarn from the newest loop to the ball, or its cut end drawn through the last loop of a bind-off. */
export function lastPieces(fabric: Fabric, shapeOf: ShapeOf): Draft[] {
  const index = fabric.courses.findLastIndex((course) => course.length > 0)
  const id = fabric.courses[index]?.at(-1)
  if (id === undefined) return []
  const shape = shapeOf(id)
  const side = sidesOf(fabric.rightToLeft[index] ?? false).last
  const exit = exitOf(shape, side)
  return shape.loop.kind === 'chain' && shape.loop.children.length === 0
    ? fastenedOff(shape, exit)
    : toBall(shape, side, exit)
}

function toBall(shape: LoopShape, side: Side, { at, away }: Exit): Draft[] {
  const along = (x: number, y: number): Point =>
    plus(times(shape.base.right, signOf(side) * x), shape.base.up, y)
  const middle = plus(at, along(0.5, -0.1))
  return [
    half(shape, shape, curveThrough({ at, out: times(away, 0.22) }, { at: middle, out: along(0.16, 0.1) })),
    draft({
      loop: shape.loop.id,
      part: 'tail',
      curve: curveThrough(
        { at: middle, out: along(0.3, 0.19) },
        { at: plus(middle, along(1.1, 0.75)), out: along(0.3, 0.35) },
      ),
    }),
  ]
}

function fastenedOff(shape: LoopShape, { at, away }: Exit): Draft[] {
  const { head, axis, loop } = shape
  const through = plus(head.at, axis, -0.02)
  return [
    draft({
      loop: loop.id,
      part: 'tail',
      beside: loop.id,
      curve: curveThrough({ at, out: times(away, 0.2) }, { at: through, out: times(axis, 0.2) }),
    }),
    draft({
      loop: loop.id,
      part: 'tail',
      beside: loop.id,
      inFront: true,
      ends: 'end',
      curve: curveThrough(
        { at: through, out: times(axis, 0.3) },
        {
          at: plus(plus(head.at, axis, 1.1), head.right, 0.35),
          out: plus(times(axis, 0.3), head.right, 0.15),
        },
      ),
    }),
  ]
}

/** Loops of another piece: each with a little of its own yarn. */
export function strangers(fabric: Fabric, shapeOf: ShapeOf): Draft[] {
  const known = new Set(fabric.courses.flat())
  return fabric.loops.filter(({ id }) => !known.has(id)).flatMap(({ id }) => strangerPieces(id, shapeOf))
}

function strangerPieces(id: FabricLoopId, shapeOf: ShapeOf): Draft[] {
  const shape = shapeOf(id)
  const stub = (side: Side): Curve => stubCurve(shape, side, exitOf(shape, side))
  return [
    { ...half(shape, shape, reversed(stub('left'))), cut: true },
    ...loopPieces(shape, 'left'),
    half(shape, shape, stub('right')),
  ]
}
