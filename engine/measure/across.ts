import { at, limits, same, subtract } from '../base/index.ts'
import { castOnCount, edgeTotals, prove } from '../counts/index.ts'
import { type Pattern, workedAgain } from '../pattern/index.ts'
import { bases } from './bases.ts'
import { type Estimate, estimate, scaled, sure } from './figure.ts'

/** Stitches to cast on: repeats, what the rule adds, the pattern's own edges, and edge stitches added by the knitter. */
export const castOnFor = (pattern: Pattern, repeats: number, added = 0): number =>
  at(castOnCount(pattern.castOn), repeats) + edgeTotals(pattern).takes + added

/** No piece is wider than the engine works. At least 1; just 1 for a fixed cast-on. */
export function mostRepeatsAcross(pattern: Pattern, added = 0): number {
  if ('fixed' in pattern.castOn) return 1
  return Math.max(
    1,
    Math.floor((limits.stitchesInRow - castOnFor(pattern, 0, added)) / pattern.castOn.multiple),
  )
}

/**
 * The repeats whose width comes nearest to `wanted`, a stitch being `stitch` wide (both in millimetres); the wider of
 * two that are as near. Always at least 1.
 */
export function repeatsForWidth(pattern: Pattern, stitch: number, wanted: number, added = 0): number {
  if ('fixed' in pattern.castOn) return 1
  const room = wanted / stitch - castOnFor(pattern, 0, added)
  return within(Math.round(room / pattern.castOn.multiple), mostRepeatsAcross(pattern, added))
}

const within = (n: number, most: number): number => Math.min(most, Math.max(1, n))

/** So many stitches side by side, in millimetres. */
export const widthOf = (stitches: number, stitch: Estimate): Estimate =>
  estimate(scaled(stitch, stitches), [bases.proof, ...stitch.rests], stitch.swatch)

/** A number of stitches that the rows prove. */
export const counted = (stitches: number): Estimate => estimate(sure(stitches), [bases.proof], null)

/** The row that lies on the most stitches, its number and theirs; counted before and after every row. */
export function widestRow(pattern: Pattern, repeats: number, added = 0): { row: number; stitches: number } {
  const { setUp, rows } = prove(pattern)
  let widest = { row: 0, stitches: castOnFor(pattern, repeats, added) }
  for (const { row, after } of [...setUp, ...rows]) {
    const stitches = at(after, repeats) + added
    if (stitches > widest.stitches) widest = { row, stitches }
  }
  return widest
}

/**
 * What a growing pattern is left with after so many times through its rows; null where they cannot be worked so often.
 * Where three times come out and each gains as much as the one before, all do: what each row meets is linear in them.
 */
export function stitchesAfter(pattern: Pattern, repeats: number, through: number): number | null {
  const shown = Math.min(through, 3)
  const { rows, sound } = prove(workedAgain(pattern, shown))
  const [one, two, three] = [1, 2, 3].map((time) => rows[time * pattern.rows.length - 1])
  const last = rows.at(-1)
  if (!sound || !last) return null
  if (through <= 3 || !one || !two || !three) return at(last.after, repeats)
  const gain = subtract(three.after, two.after)
  if (!same(gain, subtract(two.after, one.after))) return null
  return at(three.after, repeats) + at(gain, repeats) * (through - 3)
}
