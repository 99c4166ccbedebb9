import { modulo } from '../base/index.ts'
import { stitch } from '../stitches/index.ts'
import { type Shown, type ShownRow, takesOf, type Word } from './shown.ts'

/** Where a line crosses a row: in which repeat from the right (0 the first after the row's right end), and before (or in) which of its stitches. */
export interface Place {
  readonly turn: number
  readonly at: number
}

/**
 * A line from the first row to the last through a lace that goes on without end to both sides. It ends above its
 * beginning, so that the rows can be worked again.
 */
export interface Line {
  readonly setUp: readonly Place[]
  readonly rows: readonly Place[]
}

interface Sums {
  /** Loops taken and made before each stitch of a word, and by all of it at the end. */
  readonly takes: readonly number[]
  readonly makes: readonly number[]
  /** The stitches before which so many loops are taken, counted round the word as a repeat. */
  readonly before: ReadonlyMap<number, readonly number[]>
}

// A search asks for the same words again and again.
const known = new WeakMap<Word, Sums>()

function sumsOf(word: Word): Sums {
  const found = known.get(word)
  if (found !== undefined) return found
  const [takes, makes] = [[0], [0]]
  for (const [i, id] of word.entries()) {
    takes.push((takes[i] ?? 0) + stitch(id).takes)
    makes.push((makes[i] ?? 0) + stitch(id).makes)
  }
  const width = Math.max(1, takes.at(-1) ?? 0)
  const before = Map.groupBy(word.keys(), (at) => (takes[at] ?? 0) % width)
  const sums = { takes, makes, before }
  known.set(word, sums)
  return sums
}

function loopsRight({ right, repeat }: ShownRow, { turn, at }: Place, which: 'takes' | 'makes'): number {
  const [end, inside] = [sumsOf(right)[which], sumsOf(repeat)[which]]
  return (end.at(-1) ?? 0) + turn * (inside.at(-1) ?? 0) + (inside[at] ?? 0)
}

/** Loops of the row below that lie right of a place, counted from the right edge; negative beyond it. */
export const below = (row: ShownRow, place: Place): number => loopsRight(row, place, 'takes')

/** Loops of the row itself that lie right of a place. */
export const above = (row: ShownRow, place: Place): number => loopsRight(row, place, 'makes')

/** The places between two stitches with `loops` loops of the row below to the right. Several where a yarn over stands there. */
function placesBetween(row: ShownRow, loops: number): Place[] {
  const start = below(row, { turn: 0, at: 0 })
  const width = below(row, { turn: 1, at: 0 }) - start
  const ats = sumsOf(row.repeat).before.get(modulo(loops - start, width)) ?? []
  return ats.map((at) => ({ turn: (loops - below(row, { turn: 0, at })) / width, at }))
}

export interface Wish {
  /** How ill a place suits; the line with the least sum is taken. Not finite: not there. */
  readonly cost: (row: ShownRow, place: Place, index: number) => number
  /** Whether the line may end a whole repeat beside its beginning. */
  readonly mayDrift: boolean
}

interface Trail {
  readonly cost: number
  readonly places: readonly Place[]
}

/** All ways through rows that start at `loops`, the best to each end. */
function trailsFrom(rows: readonly ShownRow[], loops: number, wish: Wish): Map<number, Trail> {
  let trails = new Map<number, Trail>([[loops, { cost: 0, places: [] }]])
  for (const [index, row] of rows.entries()) {
    const next = new Map<number, Trail>()
    for (const [x, trail] of trails) {
      for (const place of placesBetween(row, x)) {
        const end = above(row, place)
        const cost = trail.cost + wish.cost(row, place, index)
        if (cost < (next.get(end)?.cost ?? Number.POSITIVE_INFINITY))
          next.set(end, { cost, places: [...trail.places, place] })
      }
    }
    trails = next
  }
  return trails
}

export interface Ranked {
  readonly line: Line
  readonly cost: number
}

/**
 * The best line between the stitches from each place in the first row: no stitch is worked across it. Places from
 * which every line meets a stitch, or ends elsewhere than it began, have none.
 */
export function linesBetween(shown: Shown, wish: Wish): Ranked[] {
  const [first] = shown.rows
  if (first === undefined) return []
  const width = wish.mayDrift ? takesOf(first.repeat) : 0
  const starts = new Set([...first.repeat.keys()].map((at) => below(first, { turn: 0, at })))
  return [...starts].flatMap((start): Ranked[] => {
    const meets = (a: number, b: number): boolean => (width === 0 ? a === b : modulo(a - b, width) === 0)
    const ends = [...trailsFrom(shown.rows, start, wish)].filter(([end]) => meets(end, start))
    const [best] = ends.map(([, trail]) => trail).toSorted((a, b) => a.cost - b.cost)
    const setUp = best && setUpLine(shown, (loops) => meets(loops, start))
    return best && setUp ? [{ line: { setUp, rows: best.places }, cost: best.cost }] : []
  })
}

/** The best of all lines between the stitches; null where there is none. */
export function lineBetween(shown: Shown, wish: Wish): Line | null {
  const [best] = linesBetween(shown, wish).toSorted((a, b) => a.cost - b.cost)
  return best?.line ?? null
}

/** A way through the set-up rows that arrives where it is wanted. */
function setUpLine({ setUp }: Shown, arrives: (loops: number) => boolean): readonly Place[] | null {
  const [first] = setUp
  if (first === undefined) return []
  const anywhere: Wish = { cost: () => 1, mayDrift: false }
  for (const turn of [0, -1, 1]) {
    for (const at of first.repeat.keys()) {
      const start = below(first, { turn, at })
      const found = [...trailsFrom(setUp, start, anywhere)].find(([end]) => arrives(end))
      if (found !== undefined) return found[1].places
    }
  }
  return null
}

/** The stitch that is worked through the loop with `loops` others to its right, and which of its loops that is. */
function stitchOver(row: ShownRow, loops: number): { readonly place: Place; readonly loop: number } | null {
  const from = loops - takesOf(row.right)
  const takes = takesOf(row.repeat)
  let rest = modulo(from, takes)
  for (const [at, id] of row.repeat.entries()) {
    const own = stitch(id).takes
    if (rest < own) return { place: { turn: Math.floor(from / takes), at }, loop: rest }
    rest -= own
  }
  return null
}

/**
 * The line up one column of stitches from stitch `at` of row 1's repeat. `fits` says which stitches it may go
 * through, in which of their loops (0 the rightmost). Null where it does not come back above its beginning.
 */
export function lineThrough(
  shown: Shown,
  at: number,
  fits: (row: ShownRow, place: Place, loop: number) => boolean,
): Line | null {
  const [first] = shown.rows
  if (first === undefined) return null
  for (let loop = 0; loop < stitch(first.repeat[at] ?? 'yo').takes; loop++) {
    const start = below(first, { turn: 0, at }) + loop
    const rows = climb(shown.rows, start, fits)
    if (rows?.end !== start) continue
    const setUp = setUpThrough(shown, start, fits)
    if (setUp !== null) return { setUp, rows: rows.places }
  }
  return null
}

type Fits = Parameters<typeof lineThrough>[2]

function climb(
  rows: readonly ShownRow[],
  start: number,
  fits: Fits,
): { places: Place[]; end: number } | null {
  const places: Place[] = []
  let loops = start
  for (const row of rows) {
    const found = stitchOver(row, loops)
    if (found === null || !fits(row, found.place, found.loop)) return null
    places.push(found.place)
    loops = above(row, found.place)
  }
  return { places, end: loops }
}

function setUpThrough({ setUp }: Shown, end: number, fits: Fits): readonly Place[] | null {
  const [first] = setUp
  if (first === undefined) return []
  const width = takesOf(first.repeat)
  for (let start = end - 2 * width; start <= end + 2 * width; start++) {
    const found = climb(setUp, start, fits)
    if (found?.end === end) return found.places
  }
  return null
}
