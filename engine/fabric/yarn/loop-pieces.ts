import { type Draft, draft, isFootless, legAbove } from './draft.ts'
import { apart, type Curve, curveThrough, plus, reversed, times, unit } from './points.ts'
import { type LoopShape, otherOf, type Side, signOf } from './shape.ts'

/** The pieces of one loop, as the yarn runs that goes up from its `first` foot. */
export function loopPieces(shape: LoopShape, first: Side): Draft[] {
  const { id } = shape.loop
  const last = otherOf(first)
  const head = draft({ loop: id, part: 'head', curve: headCurve(shape, legAbove(shape, first)) })
  if (isFootless(shape)) return [head]
  const leg = (side: Side, curve: Curve): Draft => draft({ loop: id, part: 'leg', curve, side, beside: id })
  return [leg(first, legCurve(shape, first)), head, leg(last, reversed(legCurve(shape, last)))]
}

function legCurve(shape: LoopShape, foot: Side): Curve {
  const from = shape.foot[foot]
  const leg = legAbove(shape, foot)
  const to = shape.mid[leg]
  const reach = apart(from, to) * 0.42
  return curveThrough(
    { at: from, out: times(unit(plus(shape.base.up, shape.axis), shape.axis), reach) },
    { at: to, out: times(shape.rise[leg], reach) },
  )
}

/** Up one leg, over, and down the other; flat over the middle where the head holds several loops. */
function headCurve(shape: LoopShape, up: Side): Curve {
  const down = otherOf(up)
  const onward = times(shape.head.right, -signOf(up))
  const reach = (side: Side): number => apart(shape.mid[side], shape.top[side]) * 0.5
  const rise = { at: shape.mid[up], out: times(shape.rise[up], reach(up)) }
  const fall = { at: shape.mid[down], out: times(shape.rise[down], -reach(down)) }
  const width = apart(shape.top.left, shape.top.right)
  if (width < 0.02)
    return curveThrough(rise, { at: shape.top[up], out: times(onward, shape.headWidth) }, fall)
  const [round, flat] = [times(onward, shape.headWidth), times(onward, width / 3)]
  return curveThrough(
    rise,
    { at: shape.top[up], in: round, out: flat },
    { at: shape.top[down], in: flat, out: round },
    fall,
  )
}
