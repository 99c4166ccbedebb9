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
  /** All their numbers one after the other: while they wait, and once they are made. */
  readonly waiting: Float64Array
  readonly made: Float64Array
  /** For each point, how far it belongs to what the row makes, 1, rather than to what hangs below, 0. */
  readonly height: Float64Array
}

type Numbers = Pick<Cloth, 'waiting' | 'made' | 'height'>

/** The part of a sheet that can be seen while it hangs in any of the given ways. */
export function clothOf(
  sheet: Sheet,
  ways: readonly Hanging[],
  isStill: (piece: SheetPiece) => boolean,
): Cloth {
  const all = numbersOf(sheet)
  const [still, others]: [number[], number[]] = [[], []]
  for (const place of seenPlaces(all, ways)) {
    const piece = sheet.pieces[place]
    if (piece !== undefined) (isStill(piece) ? still : others).push(place)
  }
  const from = [0]
  const pieces: SheetPiece[] = []
  const indexOf = new Map<string, number>()
  for (const place of [...still, ...others]) {
    const piece = sheet.pieces[place]
    if (piece === undefined) continue
    indexOf.set(piece.key, pieces.length)
    from.push((from[pieces.length] ?? 0) + piece.made.length)
    pieces.push(piece)
  }
  return { pieces, still: still.length, from, indexOf, ...copied(all, [...still, ...others], from) }
}

interface SheetNumbers extends Numbers {
  readonly from: Int32Array
}

const remembered = new WeakMap<Sheet, SheetNumbers>()

/** The numbers of all pieces of a sheet, one after the other. */
function numbersOf(sheet: Sheet): SheetNumbers {
  const known = remembered.get(sheet)
  if (known !== undefined) return known
  const from = new Int32Array(sheet.pieces.length + 1)
  for (const [i, { made }] of sheet.pieces.entries()) from[i + 1] = (from[i] ?? 0) + made.length
  const length = from.at(-1) ?? 0
  const numbers = {
    waiting: new Float64Array(length),
    made: new Float64Array(length),
    height: new Float64Array(length / 2),
    from,
  }
  for (const [place, piece] of sheet.pieces.entries()) {
    const at = from[place] ?? 0
    const [low, high] = piece.height
    const last = piece.made.length - 2
    numbers.waiting.set(piece.waiting, at)
    numbers.made.set(piece.made, at)
    for (let i = 0; i <= last; i += 2) numbers.height[(at + i) / 2] = low + ((high - low) * i) / last
  }
  remembered.set(sheet, numbers)
  return numbers
}

function copied(all: SheetNumbers, places: readonly number[], to: readonly number[]): Numbers {
  const length = to.at(-1) ?? 0
  const numbers = {
    waiting: new Float64Array(length),
    made: new Float64Array(length),
    height: new Float64Array(length / 2),
  }
  let at = 0
  for (const place of places) {
    const end = all.from[place + 1] as number
    for (let i = all.from[place] as number; i < end; i += 2, at += 2) {
      numbers.waiting[at] = all.waiting[i] as number
      numbers.waiting[at + 1] = all.waiting[i + 1] as number
      numbers.made[at] = all.made[i] as number
      numbers.made[at + 1] = all.made[i + 1] as number
      numbers.height[at / 2] = all.height[i / 2] as number
    }
  }
  return numbers
}

/** Beyond the picture's edge some more is kept, so that nothing is cut while it moves. */
const beyond = { side: sizes.picture.side + 0.9, below: -sizes.picture.below - 1.5 } as const

function seenPlaces({ from, waiting, made }: SheetNumbers, ways: readonly Hanging[]): number[] {
  const seen: number[] = []
  for (let place = 0; place < from.length - 1; place++) {
    const at = from[place] as number
    if ((waiting[at + 1] as number) < beyond.below && (made[at + 1] as number) < beyond.below) continue
    for (const way of ways) {
      const a = (waiting[at] as number) + way.waiting
      const b = (made[at] as number) + way.made
      if ((a > beyond.side && b > beyond.side) || (a < -beyond.side && b < -beyond.side)) continue
      seen.push(place)
      break
    }
  }
  return seen
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
  const off = x - middle
  if (off <= -step) return heightAt(left, x)
  if (off >= step) return heightAt(right, x)
  const side = eased(off, -step, step)
  return (1 - side) * heightAt(left, x) + side * heightAt(right, x)
}

/**
 * Where the pieces lie while the fabric hangs so. Left of the middle it hangs as it did before the row, right of it as it
 * will after it, and one goes over into the other.
 */
export function hang(cloth: Cloth, hanging: Hanging): Float64Array {
  const { straight, middle } = hanging
  const places = new Float64Array(cloth.made.length)
  for (let i = 0; i < places.length; i += 2) {
    const ax = (cloth.waiting[i] as number) + hanging.waiting
    const ay = cloth.waiting[i + 1] as number
    const by = cloth.made[i + 1] as number
    let bx = (cloth.made[i] as number) + hanging.made
    const away = bx - middle
    if (away < straightTo) {
      const way = straight.low + (straight.made - straight.low) * (cloth.height[i / 2] as number)
      bx += way * (1 - eased(away, straightFrom, straightTo))
    }
    const off = (ax + bx) / 2 - middle
    const reach = reachAt(-(ay + by) / 2)
    // Most of it hangs wholly the one way or the other.
    const there = off <= -reach ? 0 : off >= reach ? 1 : eased(off, -reach, reach)
    // What the row has made hangs from its own loops, however many of them stand close to the tips.
    const part = there + (1 - there) * (cloth.height[i / 2] as number) ** 2
    const x = ax + (bx - ax) * part
    places[i] = x
    places[i + 1] = ay + (by - ay) * part + liftAt(hanging, x)
  }
  return places
}
