import { type PrintOptions, printRow } from '../notation/index.ts'
import { edgesOf, type Item, type Pattern, type Row, takesAndMakes } from '../pattern/index.ts'

/** A row in three boxes: what comes first, what is repeated, what comes last. Null where the box is empty. */
export interface RowBoxes {
  readonly edge: string | null
  readonly repeat: string | null
  readonly end: string | null
  /** How far the repeat goes, where it is not to the end of the row. */
  readonly extent: string | null
  /** Loops that one repeat takes and leaves; null where the row has no repeat of its own. */
  readonly repeatTakes: number | null
  readonly repeatMakes: number | null
}

/** Splits a row (edge stitches included) round its own repeat. A row without one stands in the middle box. */
export function rowBoxes(row: Row, pattern: Pattern, options: PrintOptions = {}): RowBoxes {
  const { first, last } = edgesOf(row, pattern)
  const at = row.items.findIndex((item) => item.kind === 'repeat')
  const words = (items: readonly Item[]): string | null =>
    items.length === 0 ? null : printRow(items, options)
  const middle = row.items[at]
  if (middle?.kind !== 'repeat') {
    return {
      edge: words(first),
      repeat: words(row.items),
      end: words(last),
      extent: null,
      repeatTakes: null,
      repeatMakes: null,
    }
  }
  const totals = takesAndMakes(middle.items)
  const { until } = middle
  const extent =
    until.kind === 'times'
      ? `${until.times} times`
      : until.kind === 'last'
        ? `to last ${until.stitches}`
        : null
  return {
    edge: words([...first, ...row.items.slice(0, at)]),
    repeat: words(middle.items),
    end: words([...row.items.slice(at + 1), ...last]),
    extent,
    repeatTakes: totals?.takes ?? null,
    repeatMakes: totals?.makes ?? null,
  }
}
