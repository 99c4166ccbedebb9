import { type Draft, draft, type ShapeOf } from './draft.ts'
import type { LoopFacts } from './facts.ts'
import { exitOf, half } from './link-pieces.ts'
import type { Link } from './links.ts'
import { curveThrough, mix, type Point, plus, times } from './points.ts'
import { signOf } from './shape.ts'

/** Whether the link leads into loops that a yarn over of their own stitch was passed over. */
export const isBelt = (link: Link, facts: readonly LoopFacts[]): boolean => {
  const fact = facts[link.to]
  return fact?.made?.banded === true && fact.step[0] === link.to
}

/** A yarn over passed over the loops beside it: in front of them all, round the last one, and back behind them. */
export function beltPieces(shapeOf: ShapeOf, link: Link, facts: readonly LoopFacts[]): Draft[] {
  const step = facts[link.to]?.step ?? [link.to]
  const [from, near, far] = [shapeOf(link.from), shapeOf(link.to), shapeOf(step.at(-1) ?? link.to)]
  const [a, b] = [exitOf(from, link.leaves), exitOf(near, link.enters)]
  const onward = times(near.base.right, signOf(link.leaves))
  const neck = (shape: typeof near): Point => mix(shape.base.at, shape.head.at, 0.6)
  const start = plus(neck(near), onward, -0.42)
  const turn = plus(plus(neck(far), onward, 0.44), far.axis, -0.07)
  const back = plus(plus(neck(near), onward, -0.34), near.axis, -0.14)
  const piece = (curve: readonly number[], inFront: boolean): Draft =>
    draft({ loop: near.loop.id, part: 'belt', curve, beside: link.to, inFront })
  const [long, round] = [0.3 * step.length, times(far.axis, -0.09)]
  return [
    half(
      from,
      near,
      curveThrough(
        { at: a.at, out: times(a.away, 0.16) },
        { at: start, out: plus(times(near.axis, 0.24), onward, 0.1) },
      ),
    ),
    piece(
      curveThrough({ at: start, out: plus(times(near.axis, 0.1), onward, 0.1) }, { at: turn, out: round }),
      true,
    ),
    piece(curveThrough({ at: turn, out: round }, { at: back, out: times(onward, -long) }), false),
    half(
      near,
      from,
      curveThrough({ at: back, out: times(onward, -0.16) }, { at: b.at, out: times(b.away, -0.16) }),
    ),
  ]
}
