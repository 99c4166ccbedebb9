import { at } from '../base/index.ts'
import { prove } from '../counts/index.ts'
import type { Pattern } from '../pattern/index.ts'
import { bases } from './bases.ts'
import { type Estimate, estimate, scaled } from './figure.ts'

/** More times through than that, no piece is long. */
export const mostTimesThrough = 2000

/** Rows in all after so many times through, set-up rows with them. */
export const rowsFor = ({ setUp, rows }: Pattern, through: number): number =>
  setUp.length + rows.length * through

/** The times through whose length comes nearest to `wanted`, a row being `row` high (millimetres). At least 1. */
export function timesForLength(pattern: Pattern, row: number, wanted: number): number {
  const room = wanted / row - pattern.setUp.length
  return within(Math.round(room / pattern.rows.length))
}

/**
 * The times through after which a growing pattern is nearest to `wanted` wide, a stitch being `stitch` wide (both in
 * millimetres). Null where it does not gain stitches.
 */
export function timesForWidth(
  pattern: Pattern,
  repeats: number,
  stitch: number,
  wanted: number,
): number | null {
  const { rows } = prove(pattern)
  const [first, last] = [rows[0], rows.at(-1)]
  if (!first || !last) return null
  const start = at(first.before, repeats)
  const gained = at(last.after, repeats) - start
  return gained > 0 ? within(Math.round((wanted / stitch - start) / gained)) : null
}

const within = (n: number): number => Math.min(mostTimesThrough, Math.max(1, n))

/** So many rows one above the other, in millimetres. */
export const lengthOf = (rows: number, row: Estimate): Estimate =>
  estimate(scaled(row, rows), [bases.proof, ...row.rests], row.swatch)
