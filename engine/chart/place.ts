/** A stretch of cells that wants to stand over its loops. Positions count in `fine` parts of a column, from the right. */
export interface Wanting {
  readonly width: number
  /** Where its middle should be; null where nothing pulls it. */
  readonly middle: number | null
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
  /** For each empty cell that stands beside no decrease. */
  stray: 2_000,
  /** For each part of a column away from where it rather stands. */
  rather: 1,
} as const

/** Beyond this many cases the row is filled from the right, each stretch as near as it comes: charts nobody can print. */
const mostCases = 4_000_000

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
  const away = stretch.middle === null ? 0 : Math.abs(middle - stretch.middle)
  const rather = stretch.rather === null ? 0 : Math.abs(middle - stretch.rather)
  return away * weights.away + rather * weights.rather
}

const strayCost = (right: Wanting | undefined, left: Wanting | undefined): number =>
  right?.decrease || left?.decrease ? 0 : weights.stray

/** The cheapest shifts, by dynamic programming over the stretches from the right. */
function cheapest(row: readonly Wanting[], starts: readonly number[], spare: number): number[] {
  const from = row.map(() => new Int32Array(spare + 1))
  let best = Float64Array.from({ length: spare + 1 }, (_, shift) => (shift === 0 ? 0 : Number.POSITIVE_INFINITY))
  for (const [index, stretch] of row.entries()) {
    const stray = strayCost(row[index - 1], stretch)
    const next = new Float64Array(spare + 1)
    let before = Number.POSITIVE_INFINITY
    let chosen = 0
    for (let shift = 0; shift <= spare; shift++) {
      before += stray
      const here = best[shift] ?? Number.POSITIVE_INFINITY
      if (here < before) [before, chosen] = [here, shift]
      next[shift] = before + cost(stretch, (starts[index] ?? 0) + shift)
      const sources = from[index]
      if (sources) sources[shift] = chosen
    }
    best = next
  }
  const after = strayCost(row.at(-1), undefined)
  const whole = (shift: number) => (best[shift] ?? Number.POSITIVE_INFINITY) + (spare - shift) * after
  let last = 0
  for (let shift = 1; shift <= spare; shift++) if (whole(shift) < whole(last)) last = shift
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
    const wanted = stretch.middle === null ? last : Math.round(stretch.middle / fine - stretch.width / 2)
    last = Math.min(spare, Math.max(last, stretch.middle === null ? last : wanted - (starts[index] ?? 0)))
    return last
  })
}
