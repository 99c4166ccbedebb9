import type { Fabric, FabricLine, FabricLoopId } from '../fabric.ts'
import type { Side } from './shape.ts'

/** The way of the yarn from one loop to the next. */
export interface Link {
  readonly from: FabricLoopId
  readonly to: FabricLoopId
  /** The legs that it joins. */
  readonly leaves: Side
  readonly enters: Side
  /** 'turn': round the edge into the next row. 'open': cut where a round was laid flat. */
  readonly kind: 'row' | 'turn' | 'open'
  /** Slipped loops that it passes, in its order. */
  readonly passes: readonly Pass[]
}

/** A slipped loop that the yarn passes. */
export interface Pass {
  readonly loop: FabricLoopId
  /** Seen from the right side. */
  readonly inFront: boolean
}

/** Which leg the yarn goes up in a row, and which it comes down. */
export const sidesOf = (rightToLeft: boolean): { readonly first: Side; readonly last: Side } =>
  rightToLeft ? { first: 'right', last: 'left' } : { first: 'left', last: 'right' }

/** From loop to loop, from the cast-on to the newest. */
export function linksOf(fabric: Fabric): readonly Link[] {
  const links: Link[] = []
  let [from, fromCourse]: [FabricLoopId | null, number] = [null, 0]
  for (const [index, course] of fabric.courses.entries()) {
    for (const to of course) {
      if (from !== null)
        links.push(linkBetween(fabric, { id: from, course: fromCourse }, { id: to, course: index }))
      from = to
      fromCourse = index
    }
  }
  return links
}

interface Stop {
  readonly id: FabricLoopId
  readonly course: number
}

function linkBetween(fabric: Fabric, from: Stop, to: Stop): Link {
  const [before, after] = [runs(fabric, from.course), runs(fabric, to.course)]
  const [leaves, enters] = [sidesOf(before).last, sidesOf(after).first]
  const kind = from.course === to.course ? 'row' : leaves === enters ? 'turn' : 'open'
  return { from: from.id, to: to.id, leaves, enters, kind, passes: passesOf(fabric, from, to) }
}

const runs = ({ rightToLeft }: Fabric, course: number): boolean => rightToLeft[course] ?? false

/** Slipped loops between two stops, row by row. */
function passesOf(fabric: Fabric, from: Stop, to: Stop): Pass[] {
  const passes: Pass[] = []
  for (let course = from.course; course <= to.course; course++) {
    const line = fabric.lines[course]
    if (line === undefined || line.slipped.length === 0) continue
    const order = inOrder(line, runs(fabric, course))
    const start = course === from.course ? order.indexOf(from.id) + 1 : 0
    const end = course === to.course ? order.indexOf(to.id) : order.length
    for (const loop of order.slice(start, end)) {
      if (line.slipped.includes(loop)) passes.push({ loop, inFront: line.yarnInFront.includes(loop) })
    }
  }
  return passes
}

const inOrder = ({ loops }: FabricLine, rightToLeft: boolean): readonly FabricLoopId[] =>
  rightToLeft ? loops.toReversed() : loops
