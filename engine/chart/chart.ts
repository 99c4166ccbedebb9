import type { Side } from '../pattern/index.ts'
import type { ChartSymbol, StitchId } from '../stitches/index.ts'

/**
 * Where a cell belongs, as the chart is seen: edge stitches, stitches beside the repeats, or one of the repeats, which
 * are numbered from 1 at the right. 'body' where no row has a repeat of its own.
 */
export type Zone = 'right edge' | 'right' | `repeat ${number}` | 'body' | 'left' | 'left edge'

interface Place {
  /** The cell's rightmost column, from 0 at the right edge of the chart. */
  readonly column: number
  /** Columns that it fills. */
  readonly span: number
}

export interface StitchCell extends Place {
  readonly kind: 'stitch'
  /** The stitch by its look from the right side: what the symbol shows. */
  readonly stitch: StitchId
  /** The stitch that the hands work in this row. */
  readonly worked: StitchId
  /** Its step: the index into the worked row's steps, from 0. */
  readonly step: number
  readonly part: 'before' | 'row' | 'after'
  readonly zone: Zone
}

/** No stitch is there: the cell only keeps the others over their loops. */
export interface NoneCell extends Place {
  readonly kind: 'none'
}

/** A loop that waits on a needle because the row was turned before it. */
export interface UnworkedCell extends Place {
  readonly kind: 'unworked'
}

export type Cell = StitchCell | NoneCell | UnworkedCell

export interface ChartRow {
  /** Index into the worked pattern's rows, from 0 at the bottom. */
  readonly index: number
  /** As the pattern numbers it; set-up rows have 0 and less. */
  readonly number: number
  readonly side: Side
  /** The side of the chart where the row starts and where its number stands. */
  readonly label: 'right' | 'left'
  /** From the right; together they fill every column. */
  readonly cells: readonly Cell[]
  /** Columns before which a marker hangs on the needle. */
  readonly markers: readonly number[]
  readonly countBefore: number
  readonly countAfter: number
  /** Whether the row is written with a repeat of its own. */
  readonly hasRepeat: boolean
  /** Columns where repeats begin and end, from the right: one more than there are repeats; empty without repeats. */
  readonly bounds: readonly number[]
  /** Columns between the edge stitches and the rest; 0 and the chart's width where there are none. */
  readonly edges: { readonly right: number; readonly left: number }
}

/** One symbol of the chart with what to do where it stands. */
export interface KeyEntry {
  readonly stitch: StitchId
  readonly symbol: ChartSymbol
  /** What to work for it in a right-side row. */
  readonly rightSide: string
  /** What to work for it in a wrong-side row; null where the chart has no such rows or nothing gives that look there. */
  readonly wrongSide: string | null
}

/** A chart as data: every row in the order from the bottom, seen from the right side. */
export interface Chart {
  readonly title: string
  readonly worked: 'flat' | 'round'
  readonly columns: number
  /** Row 1 or the first set-up row first. */
  readonly rows: readonly ChartRow[]
  /** Repeats that every row's `bounds` tell apart. */
  readonly repeats: number
  readonly key: readonly KeyEntry[]
  /** Whether any cell stands for no stitch, so that the key must say so. */
  readonly hasNone: boolean
}
