import type { FabricLoopId } from '../../fabric/index.ts'
import { mix, type Point, plus, times } from './geometry.ts'
import type { RowEnd } from './row-end.ts'

/** How far yarn that only one of two row ends has would lie away in the other one. Unit: stitch widths. */
export interface Shift {
  /** Whether the row makes the loop. */
  readonly isMade: (id: FabricLoopId) => boolean
  /** Whether the loop was off the needles before the row. */
  readonly isLow: (id: FabricLoopId) => boolean
  /** Back from the later end to the earlier one: for the yarn that arrives with a loop, by its part of the way there. */
  readonly between: (arrives: FabricLoopId, part: number) => Point
  /** The same for a loop's left foot, its top and its right foot. */
  readonly ofLoop: (
    id: FabricLoopId,
    feet: FeetThen,
  ) => { readonly left: Point; readonly top: Point; readonly right: Point }
  /** On from the earlier end to the later one, for yarn that the later one has no more. */
  readonly gone: (id: FabricLoopId) => Point
  /** How far a loop's feet and its head belong to what the row makes, 1, rather than to what hangs below, 0. */
  readonly heightOf: (id: FabricLoopId) => readonly [number, number]
  /** The same for yarn that arrives with a loop, from one part of the way there to another. */
  readonly heights: (arrives: FabricLoopId, from: number, to: number) => readonly [number, number]
}

/** A loop's feet in the later row end, and in the earlier one as far as that has them. */
export interface FeetThen {
  readonly left: Point
  readonly right: Point
  readonly oldLeft: Point | undefined
  readonly oldRight: Point | undefined
}

const nowhere: Point = [0, 0]

export function shiftsOf(before: RowEnd, after: RowEnd, row: number): Shift {
  const { loops, courses } = after.fabric
  const course = courses[row + 1] ?? []
  const met = new Set(before.order)
  const ofBase = (id: FabricLoopId): Point | null => apartIn(before.base.get(id), after.base.get(id))
  const made = new Map<FabricLoopId, Point>()
  let last: Point | null = null
  const open: FabricLoopId[] = []
  for (const id of course) {
    const parents = (loops[id]?.parents ?? []).flatMap((parent) => {
      const shift = ofBase(parent)
      return shift === null ? [] : [shift]
    })
    if (parents.length === 0) {
      open.push(id)
      continue
    }
    const own = times(
      parents.reduce((sum, one) => plus(sum, one), nowhere),
      1 / parents.length,
    )
    // What hangs from nothing goes with its neighbours.
    for (const [i, between] of open.entries()) {
      made.set(between, last === null ? own : mix(last, own, (i + 1) / (open.length + 1)))
    }
    open.length = 0
    made.set(id, own)
    last = own
  }
  for (const id of open) made.set(id, last ?? nowhere)
  const shiftOf = (id: FabricLoopId): Point => made.get(id) ?? ofBase(id) ?? nowhere
  const previous = new Map(course.map((id, i) => [id, course[i - 1] ?? courses[row]?.at(-1)]))
  return {
    isMade: (id) => made.has(id),
    isLow: (id) => !made.has(id) && !met.has(id) && before.base.has(id),
    between: (arrives, part) => {
      const from = previous.get(arrives)
      return mix(from === undefined ? shiftOf(arrives) : shiftOf(from), shiftOf(arrives), part)
    },
    ofLoop: (id, feet) => {
      const children = loops[id]?.children.filter((child) => made.has(child)) ?? []
      const sum = children.reduce((all, child) => plus(all, shiftOf(child)), nowhere)
      const isOld = !made.has(id)
      return {
        left: (isOld ? apartIn(feet.oldLeft, feet.left) : null) ?? shiftOf(id),
        top: children.length === 0 ? shiftOf(id) : times(sum, 1 / children.length),
        right: (isOld ? apartIn(feet.oldRight, feet.right) : null) ?? shiftOf(id),
      }
    },
    gone: (id) => times(shiftOf(id), -1),
    heightOf: (id) => {
      if (made.has(id)) return [1, 1]
      return [0, loops[id]?.children.some((child) => made.has(child)) ? 1 : 0]
    },
    heights: (arrives, from, to) => {
      if (!made.has(arrives)) return [0, 0]
      return made.has(previous.get(arrives) ?? -1) ? [1, 1] : [from, to]
    },
  }
}

const apartIn = (a: Point | undefined, b: Point | undefined): Point | null =>
  a === undefined || b === undefined ? null : [a[0] - b[0], a[1] - b[1]]
