import type { Fabric, FabricLayout, FabricLoop, FabricLoopId } from '../fabric.ts'
import { minus, mix, type Point, plus, times, turnedLeft, turnedRight, unit } from './points.ts'

/** A place with the directions of the row there. */
export interface Frame {
  readonly at: Point
  /** Along the row, to the right. */
  readonly right: Point
  readonly up: Point
}

export const frame = (at: Point, right: Point): Frame => ({ at, right, up: turnedLeft(right) })

export const baseOf = ({ baseX, baseY }: FabricLayout, id: FabricLoopId): Point => [
  baseX[id] ?? Number.NaN,
  baseY[id] ?? Number.NaN,
]
export const headOf = ({ headX, headY }: FabricLayout, id: FabricLoopId): Point => [
  headX[id] ?? Number.NaN,
  headY[id] ?? Number.NaN,
]

/** The direction from a loop's base to its head. */
export const axisOf = (layout: FabricLayout, id: FabricLoopId): Point =>
  unit(minus(headOf(layout, id), baseOf(layout, id)), [0, 1])

/** The frame at the base of every loop: the row runs from neighbour to neighbour. */
export function baseFrames(fabric: Fabric, layout: FabricLayout): readonly Frame[] {
  const frames = fabric.loops.map(({ id }) => frame(baseOf(layout, id), turnedRight(axisOf(layout, id))))
  for (const [index, course] of fabric.courses.entries()) {
    const fromLeft = fabric.rightToLeft[index] ? course.toReversed() : course
    for (const [i, id] of fromLeft.entries()) {
      const [before, after] = [fromLeft[i - 1], fromLeft[i + 1]]
      if (before === undefined && after === undefined) continue
      const at = baseOf(layout, id)
      const own = frames[id]?.right ?? [1, 0]
      const from = before === undefined ? at : baseOf(layout, before)
      const to = after === undefined ? at : baseOf(layout, after)
      // Each neighbour counts alike, however far off it is.
      const sum = plus(unit(minus(to, at), [0, 0]), unit(minus(at, from), [0, 0]))
      frames[id] = frame(at, unit(sum, own))
    }
  }
  return frames
}

/** How far a head turns from the row towards the loop's own direction. */
const turning = { plain: 0.3, gathered: 0.65, alone: 1 } as const

/** The frame at the head of every loop. */
export function headFrames(fabric: Fabric, layout: FabricLayout, bases: readonly Frame[]): readonly Frame[] {
  return fabric.loops.map((loop) => {
    const own = turnedRight(axisOf(layout, loop.id))
    const children = loop.children.flatMap((id) => bases[id] ?? [])
    const row = children.reduce((sum, child) => plus(sum, child.right), [0, 0] as Point)
    const along = unit(times(row, 1), own)
    return frame(headOf(layout, loop.id), unit(mix(along, own, turnOf(fabric, loop)), own))
  })
}

function turnOf(fabric: Fabric, loop: FabricLoop): number {
  if (loop.kind === 'chain' || loop.children.length === 0) return turning.alone
  // Passed over several, it lies along the row.
  if (loop.children.length > 1) return 0
  const gathered = loop.children.some((id) => (fabric.loops[id]?.parents.length ?? 0) > 1)
  return gathered ? turning.gathered : turning.plain
}
