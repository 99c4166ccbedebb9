import { eased, heightAt, type Line } from './geometry.ts'
import type { Sheet, SheetPiece } from './sheet.ts'
import { sizes } from './sizes.ts'

/** How the fabric hangs at one moment of a stitch. Unit: stitch widths. */
export interface Hanging {
  /** How far right of its own places it hangs: as the row began, and as it ends. */
  readonly waiting: number
  readonly made: number
  /** How far farther right it hangs at the tips than in the row's end: below the row, and what the row has made. */
  readonly straight: { readonly low: number; readonly made: number }
  /** Between the loops that wait and those that are made. */
  readonly middle: number
  readonly left: Line
  readonly right: Line
}

/** Pieces whose places are kept one after the other, x and y by turns. */
export interface Cloth {
  readonly pieces: readonly SheetPiece[]
  /** So many of them, the first ones, are touched by no hand. */
  readonly still: number
  /** Where each piece's numbers begin, and the end of the last. */
  readonly from: readonly number[]
  readonly indexOf: ReadonlyMap<string, number>
}

/** The part of a sheet that can be seen while it hangs in any of the given ways. */
export function clothOf(
  sheet: Sheet,
  ways: readonly Hanging[],
  isStill: (piece: SheetPiece) => boolean,
): Cloth {
  const still: SheetPiece[] = []
  const others: SheetPiece[] = []
  for (const piece of sheet.pieces) {
    if (ways.some((way) => isSeen(piece, way))) (isStill(piece) ? still : others).push(piece)
  }
  const pieces = [...still, ...others]
  const from = [0]
  let to = 0
  for (const { made } of pieces) {
    to += made.length
    from.push(to)
  }
  const indexOf = new Map<string, number>()
  for (const [i, { key }] of pieces.entries()) indexOf.set(key, i)
  return { pieces, still: still.length, from, indexOf }
}

/** Beyond the picture's edge some more is kept, so that nothing is cut while it moves. */
const beyond = { side: sizes.picture.side + 0.9, below: -sizes.picture.below - 1.5 } as const

function isSeen({ waiting, made }: SheetPiece, way: Hanging): boolean {
  const from = (waiting[0] as number) + way.waiting
  const to = (made[0] as number) + way.made
  const isHigh = (waiting[1] as number) > beyond.below || (made[1] as number) > beyond.below
  return isHigh && (from < beyond.side || to < beyond.side) && (from > -beyond.side || to > -beyond.side)
}

/** How far the change from waiting to made fabric reaches to either side of the middle: farther the lower it lies. */
const reachAt = (depth: number): number => 1 + 0.5 * Math.max(0, depth - 0.6)

/** How far from the middle the fabric hangs straight, and where it hangs as in the row's end again. */
const straightFrom = 0.4
const straightTo = 5

/** How far the change from one needle's height to the other's reaches. */
const step = 0.9

/** How high the needles hold the fabric. */
export function liftAt(
  { middle, left, right }: Pick<Hanging, 'middle' | 'left' | 'right'>,
  x: number,
): number {
  const side = eased(x - middle, -step, step)
  return (1 - side) * heightAt(left, x) + side * heightAt(right, x)
}

/**
 * Where the pieces lie while the fabric hangs so. Left of the middle it hangs as it did before the row, right of it as it
 * will after it, and one goes over into the other.
 */
export function hang({ pieces, from }: Cloth, hanging: Hanging): Float64Array {
  const { waiting, made, straight, middle } = hanging
  const places = new Float64Array(from.at(-1) ?? 0)
  let at = 0
  for (const piece of pieces) {
    const [before, after, [low, high]] = [piece.waiting, piece.made, piece.height]
    const start = straight.low + (straight.made - straight.low) * low
    const end = straight.low + (straight.made - straight.low) * high
    const last = after.length - 2
    for (let i = 0; i < after.length; i += 2) {
      const [ax, ay] = [(before[i] as number) + waiting, before[i + 1] as number]
      const [own, by] = [(after[i] as number) + made, after[i + 1] as number]
      const near = 1 - eased(own - middle, straightFrom, straightTo)
      const bx = own + (start + ((end - start) * i) / last) * near
      const off = (ax + bx) / 2 - middle
      const reach = reachAt(-(ay + by) / 2)
      const part = eased(off, -reach, reach)
      const x = ax + (bx - ax) * part
      places[at++] = x
      places[at++] = ay + (by - ay) * part + liftAt(hanging, x)
    }
  }
  return places
}
