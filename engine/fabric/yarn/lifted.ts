import type { Fabric, FabricLoop, FabricLoopId } from '../fabric.ts'
import { type Draft, draft, type ShapeOf } from './draft.ts'
import { type Exit, exitOf } from './link-pieces.ts'
import type { Link } from './links.ts'
import {
  curveThrough,
  cut,
  minus,
  mix,
  type Point,
  plus,
  reversed,
  times,
  turnedRight,
  unit,
} from './points.ts'
import { otherOf, type Side, signOf } from './shape.ts'

/** For each loop drawn through a lifted strand, the two loops that the strand runs between, as the needles met them. */
export function liftedStrands(
  fabric: Fabric,
): ReadonlyMap<FabricLoopId, readonly [FabricLoopId, FabricLoopId]> {
  const found = new Map<FabricLoopId, readonly [FabricLoopId, FabricLoopId]>()
  for (const [course, { met, loops }] of fabric.lines.entries()) {
    const runs = fabric.rightToLeft[course] ?? false
    const [needle, made] = runs ? [met.toReversed(), loops.toReversed()] : [met, loops]
    const place = new Map(needle.map((id, i) => [id, i]))
    let last = -1
    for (const id of made) {
      const loop = fabric.loops[id]
      if (loop === undefined) continue
      const isOld = loop.row !== course - 1
      for (const used of isOld ? [id] : loop.parents) last = Math.max(last, place.get(used) ?? -1)
      const [before, after] = [needle[last], needle[last + 1]]
      if (loop.kind === 'strand' && !isOld && before !== undefined && after !== undefined)
        found.set(id, [before, after])
    }
  }
  return found
}

/** The loop that lifts the strand of a link, if one does. */
export function lifterOf(link: Link, lifted: ReturnType<typeof liftedStrands>): FabricLoopId | null {
  for (const [id, [a, b]] of lifted) {
    if ((a === link.from && b === link.to) || (b === link.from && a === link.to)) return id
  }
  return null
}

/** A lifted strand: out of one foot, up, twisted, over the feet of what is drawn through it, and down into the other foot. */
export function liftedPieces(shapeOf: ShapeOf, link: Link, lifter: FabricLoop): Draft[] {
  const [from, to, by] = [shapeOf(link.from), shapeOf(link.to), shapeOf(lifter.id)]
  const [a, b] = [exitOf(from, link.leaves), exitOf(to, link.enters)]
  const foot = mix(a.at, b.at, 0.5)
  const axis = unit(minus(by.base.at, foot), by.base.up)
  const across = turnedRight(axis)
  const middle = mix(foot, by.base.at, 0.6)
  const mid = (side: Side): Point => plus(middle, across, signOf(side) * 0.2)
  const top = plus(by.base.at, by.base.up, 0.3)
  // The yarn leaves the one loop on the side of the other; twisted, it goes up on the far side.
  const up = link.leaves
  const down = otherOf(up)
  const leg = (from: Exit, foot: Side, at: FabricLoopId): readonly [Draft, Draft] => {
    const way = curveThrough(
      { at: from.at, out: times(from.away, 0.2) },
      { at: mid(otherOf(foot)), out: times(axis, 0.3) },
    )
    const [low, high] = cut(way, 0.35)
    const piece = { loop: lifter.id, part: 'strand' } as const
    return [draft({ ...piece, curve: low, beside: at }), draft({ ...piece, curve: high, side: foot })]
  }
  const [lowUp, highUp] = leg(a, down, link.from)
  const [lowDown, highDown] = leg(b, up, link.to)
  const head = curveThrough(
    { at: mid(up), out: times(axis, 0.26) },
    { at: top, out: times(by.base.right, -signOf(up) * 0.36) },
    { at: mid(down), out: times(axis, -0.26) },
  )
  return [
    lowUp,
    highUp,
    draft({ loop: lifter.id, part: 'strand', curve: head }),
    backwards(highDown),
    backwards(lowDown),
  ]
}

const backwards = (piece: Draft): Draft => ({ ...piece, curve: reversed(piece.curve) })
