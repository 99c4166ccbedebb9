/** A stretch of cells that wants to stand over its loops. Positions count in `fine` parts of a column, from the right. */
export interface Wanting {
  readonly width: number
  /** Where its middle should be, as told from below and from above; empty where nothing pulls it. */
  readonly middles: readonly number[]
  /** Where it rather stands when two columns are equally near. */
  readonly rather: number | null
  /** A decrease: an empty cell looks right beside it. */
  readonly decrease: boolean
}

/** Parts of a column: means of two to six loops come out whole, so that ties are true ties. */
export const fine = 120

const weights = {
  /** For each part of a column away from its middle: outweighs everything below. */
  away: 10_000,
  /** For each run of empty cells that parts two stretches; at either end of the zone empty cells part nothing. */
  run: 4_000,
  /** For each of its empty cells, where no decrease stands beside the run. */
  stray: 2_000,
  /** For each part of a column away from where it rather stands. */
  rather: 1,
} as const

/** Beyond this many cases each stretch goes as near as it comes, from the right on: charts too wide for any paper. */
const mostCases = 250_000

/**
 * Columns for stretches that keep their order within `columns` columns, so that they stand as near to where they want
 * as they can: each stretch shifts left by some empty cells, never by fewer than the one before it.
 */
export function placed(row: readonly Wanting[], columns: number): number[] {
  const total = row.reduce((sum, stretch) => sum + stretch.width, 0)
  const spare = columns - total
  const starts: number[] = []
  row.reduce((start, stretch) => {
    starts.push(start)
    return start + stretch.width
  }, 0)
  if (spare <= 0 || row.length === 0) return starts
  const shifts = row.length * spare > mostCases ? nearest(row, starts, spare) : cheapest(row, starts, spare)
  return starts.map((start, index) => start + (shifts[index] ?? 0))
}

function cost(stretch: Wanting, start: number): number {
  const middle = (start + stretch.width / 2) * fine
  const away = stretch.middles.reduce((sum, wanted) => sum + Math.abs(middle - wanted), 0)
  const rather = stretch.rather === null ? 0 : Math.abs(middle - stretch.rather)
  return away * weights.away + rather * weights.rather
}

/** What empty cells before a stretch cost: once for the run, and for each cell. */
function gapCost(right: Wanting | undefined, left: Wanting): { run: number; each: number } {
  if (right === undefined) return { run: 0, each: 0 }
  return { run: weights.run, each: right.decrease || left.decrease ? 0 : weights.stray }
}

/** The cheapest shifts, by dynamic programming over the stretches from the right. */
function cheapest(row: readonly Wanting[], starts: readonly number[], spare: number): number[] {
  const from: Int32Array[] = []
  let best = Float64Array.from({ length: spare + 1 }, (_, shift) =>
    shift === 0 ? 0 : Number.POSITIVE_INFINITY,
  )
  for (const [index, stretch] of row.entries()) {
    const gap = gapCost(row[index - 1], stretch)
    const next = new Float64Array(spare + 1)
    const sources = new Int32Array(spare + 1)
    let parted = Number.POSITIVE_INFINITY
    let partedFrom = 0
    for (let shift = 0; shift <= spare; shift++) {
      const close = best[shift] ?? Number.POSITIVE_INFINITY
      const open = parted + gap.run
      next[shift] = Math.min(close, open) + cost(stretch, (starts[index] ?? 0) + shift)
      sources[shift] = open < close ? partedFrom : shift
      if (close < parted) [parted, partedFrom] = [close, shift]
      parted += gap.each
    }
    best = next
    from.push(sources)
  }
  let last = 0
  for (const [shift, sum] of best.entries()) if (sum < (best[last] ?? 0)) last = shift
  return traced(from, last)
}

function traced(from: readonly Int32Array[], last: number): number[] {
  const shifts: number[] = []
  let shift = last
  for (let index = from.length - 1; index >= 0; index--) {
    shifts[index] = shift
    shift = from[index]?.[shift] ?? 0
  }
  return shifts
}

function nearest(row: readonly Wanting[], starts: readonly number[], spare: number): number[] {
  let last = 0
  return row.map((stretch, index) => {
    const [middle] = stretch.middles
    const wanted =
      middle === undefined ? last : Math.round(middle / fine - stretch.width / 2) - (starts[index] ?? 0)
    last = Math.min(spare, Math.max(last, wanted))
    return last
  })
}
