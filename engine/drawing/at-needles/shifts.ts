import type { FabricLoopId } from '../../fabric/index.ts'
import { backwards, endOf, mix, type Point, plus, startOf, times } from './geometry.ts'
import type { HungPiece, RowEnd } from './row-end.ts'

/** How far yarn that only one of two row ends has would lie away in the other one. Unit: stitch widths. */
export interface Shift {
  /** Whether the row makes the loop. */
  readonly isMade: (id: FabricLoopId) => boolean
  /** Whether the loop was off the needles before the row. */
  readonly isLow: (id: FabricLoopId) => boolean
  /** Back from the later end to the earlier one: for the yarn that arrives with a loop, by its part of the way there. */
  readonly between: (arrives: FabricLoopId, part: number) => Point
  /** The same for a loop's left foot, its head and its right foot. */
  readonly ofLoop: (
    id: FabricLoopId,
    pieces: readonly HungPiece[],
    forward: boolean,
  ) => readonly [Point, Point, Point]
  /** On from the earlier end to the later one, for yarn that the later one has no more. */
  readonly gone: (id: FabricLoopId) => Point
}

const nowhere: Point = [0, 0]

export function shiftsOf(before: RowEnd, after: RowEnd, row: number): Shift {
  const { loops, courses } = after.fabric
  const course = courses[row + 1] ?? []
  const met = new Set(before.order)
  const old = new Map(before.pieces.map((piece) => [piece.key, piece]))
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
    ofLoop: (id, pieces, forward) => {
      const foot = (side: 0 | 1): Point => {
        const piece = side === 0 ? pieces[0] : pieces.at(-1)
        const twin = piece && old.get(piece.key)
        if (made.has(id) || piece === undefined || twin === undefined) return shiftOf(id)
        const way = (one: HungPiece) => (forward ? one.curve : backwards(one.curve))
        const end = side === 0 ? startOf : endOf
        return apartIn(end(way(twin)), end(way(piece))) ?? nowhere
      }
      const children = loops[id]?.children.filter((child) => made.has(child)) ?? []
      const head =
        children.length === 0
          ? shiftOf(id)
          : times(
              children.reduce((sum, child) => plus(sum, shiftOf(child)), nowhere),
              1 / children.length,
            )
      return [foot(0), head, foot(1)]
    },
    gone: (id) => times(shiftOf(id), -1),
  }
}

const apartIn = (a: Point | undefined, b: Point | undefined): Point | null =>
  a === undefined || b === undefined ? null : [a[0] - b[0], a[1] - b[1]]
