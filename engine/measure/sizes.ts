import type { Pattern } from '../pattern/index.ts'
import { castOnFor, repeatsForWidth, stitchesAfter, widthOf } from './across.ts'
import type { Estimate } from './figure.ts'
import { rowHeight, type State, stitchWidth } from './gauge.ts'
import { lengthOf, rowsFor, timesForLength, timesForWidth } from './up.ts'
import type { Wishes } from './wishes.ts'

/** The same length before and after blocking, millimetres; null where no gauge is known. */
export interface Size {
  readonly before: Estimate | null
  readonly after: Estimate | null
}

/** A number of repeats, and what follows from it. */
export interface Across {
  readonly repeats: number
  readonly castOn: number
  /** Of the cast-on; for a growing piece of its last row. */
  readonly width: Size
}

/** A number of times through the rows, and what follows from it. */
export interface Up {
  readonly through: number
  readonly rows: number
  readonly length: Size
}

/** The one that is nearest to the wish, and its neighbours with it, smallest first. */
export interface Choice<T> {
  readonly chosen: T
  readonly choices: readonly T[]
}

const inBoth = (size: (state: State) => Estimate | null): Size => ({
  before: size('before'),
  after: size('after'),
})

const finished = ({ blocked }: Wishes): State => (blocked ? 'after' : 'before')

/** Repeats across: as decided, else as the wanted width has it. Null where neither is told. `through` counts for a growing piece. */
export function acrossOf(pattern: Pattern, wishes: Wishes, through: number | null): Choice<Across> | null {
  const repeats = repeatsOf(pattern, wishes)
  if (repeats === null) return null
  const one = (n: number): Across => {
    const castOn = castOnFor(pattern, n, wishes.added)
    const stitches = pattern.growing ? lastRow(pattern, wishes, n, through) : castOn
    const width = inBoth((state) => {
      const stitch = stitchWidth(wishes.swatch, state)
      return stitch && stitches !== null ? widthOf(stitches, stitch) : null
    })
    return { repeats: n, castOn, width }
  }
  const around =
    'fixed' in pattern.castOn ? [repeats] : [repeats - 1, repeats, repeats + 1].filter((n) => n >= 1)
  return { chosen: one(repeats), choices: around.map(one) }
}

/** The stitches that a growing piece ends on, added edges included; null where that is not known. */
export function lastRow(
  pattern: Pattern,
  wishes: Wishes,
  repeats: number,
  through: number | null,
): number | null {
  const stitches = through === null ? null : stitchesAfter(pattern, repeats, through)
  return stitches === null ? null : stitches + wishes.added
}

function repeatsOf(pattern: Pattern, { swatch, width, repeats, added, ...wishes }: Wishes): number | null {
  if ('fixed' in pattern.castOn) return 1
  if (repeats !== null) return repeats
  const stitch = stitchWidth(swatch, wishes.blocked ? 'after' : 'before')
  if (width === null || stitch === null || pattern.growing) return null
  return repeatsForWidth(pattern, stitch.value, width, added)
}

/** Times through the rows: as decided, else as the wanted length has it, else as the wanted width of a growing piece has it. */
export function upOf(pattern: Pattern, wishes: Wishes): Choice<Up> | null {
  const through = throughOf(pattern, wishes)
  if (through === null) return null
  const one = (n: number): Up => {
    const rows = rowsFor(pattern, n)
    const length = inBoth((state) => {
      const row = rowHeight(wishes.swatch, state)
      return row && lengthOf(rows, row)
    })
    return { through: n, rows, length }
  }
  return { chosen: one(through), choices: [through - 1, through, through + 1].filter((n) => n >= 1).map(one) }
}

function throughOf(pattern: Pattern, wishes: Wishes): number | null {
  const { swatch, length, width, through, added } = wishes
  if (through !== null) return through
  const row = rowHeight(swatch, finished(wishes))
  if (length !== null && row !== null) return timesForLength(pattern, row.value, length)
  const stitch = stitchWidth(swatch, finished(wishes))
  const repeats = repeatsOf(pattern, wishes)
  if (!pattern.growing || width === null || !stitch || repeats === null) return null
  return timesForWidth(pattern, repeats, stitch.value, width - added * stitch.value)
}
