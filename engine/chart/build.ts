import type { MarkerUse, WorkedPattern, WorkedRow } from '../needles/index.ts'
import { rightSideLook } from '../stitches/index.ts'
import { boundsOf, type RowBounds } from './bounds.ts'
import type { Cell, Chart, ChartRow } from './chart.ts'
import { keyOf } from './key.ts'
import { laidOut } from './layout.ts'
import { type Piece, piecesOf, startsRight } from './pieces.ts'
import { zoneName, zonesOf } from './zones.ts'

/** The chart of a worked pattern: every step in the columns of the loops that it was drawn through. */
export function chartOf(worked: WorkedPattern): Chart {
  const pieces = worked.rows.map((row) => piecesOf(worked, row))
  const zones = zonesOf(worked, pieces)
  const layout = laidOut(pieces, zones)
  const bounds = boundsOf(pieces, zones, layout)
  const rows = worked.rows.map((row, index) =>
    chartRow(worked, row, {
      index,
      pieces: pieces[index] ?? [],
      starts: layout.starts[index] ?? [],
      zones: zones.rows[index] ?? [],
      repeats: zones.repeats,
      bounds: bounds[index] ?? [],
      columns: layout.columns,
    }),
  )
  return {
    title: worked.pattern.title,
    worked: worked.pattern.worked,
    columns: layout.columns,
    rows,
    repeats: zones.repeats,
    key: keyOf(rows),
    hasNone: rows.some((row) => row.cells.some((cell) => cell.kind === 'none')),
  }
}

interface LaidRow {
  readonly index: number
  readonly pieces: readonly Piece[]
  readonly starts: readonly number[]
  readonly zones: readonly number[]
  readonly repeats: number
  readonly bounds: RowBounds
  readonly columns: number
}

function chartRow(worked: WorkedPattern, row: WorkedRow, laid: LaidRow): ChartRow {
  const rightToLeft = startsRight(worked, row)
  return {
    index: laid.index,
    number: row.number,
    side: row.side,
    label: rightToLeft ? 'right' : 'left',
    cells: cellsOf(row, laid),
    markers: row.markers.flatMap((marker) => markerColumn(marker, laid, rightToLeft) ?? []),
    countBefore: row.before.length + row.waiting.length,
    countAfter: row.after.length + row.unworked.length,
    hasRepeat: row.steps.some((step) => step.repeat !== null),
    bounds: laid.repeats === 0 ? [] : laid.bounds.slice(2, laid.repeats + 3),
    edges: { right: laid.bounds[1] ?? 0, left: laid.bounds[laid.repeats + 3] ?? laid.columns },
  }
}

/** The row's cells from the right, with an empty cell in each column that no piece fills. */
function cellsOf(row: WorkedRow, laid: LaidRow): Cell[] {
  const cells: Cell[] = []
  let column = 0
  const fillTo = (end: number) => {
    for (; column < end; column++) cells.push({ kind: 'none', column, span: 1 })
  }
  for (const [index, piece] of laid.pieces.entries()) {
    const start = laid.starts[index] ?? column
    fillTo(start)
    cells.push(cellOf(row, piece, start, zoneName(laid.zones[index] ?? -1, laid.repeats)))
    column = start + piece.width
  }
  fillTo(laid.columns)
  return cells
}

function cellOf(row: WorkedRow, piece: Piece, column: number, zone: ReturnType<typeof zoneName>): Cell {
  const step = piece.step === null ? undefined : row.steps[piece.step]
  if (piece.step === null || step === undefined) return { kind: 'unworked', column, span: piece.width }
  return {
    kind: 'stitch',
    column,
    span: piece.width,
    stitch: rightSideLook(step.stitch, row.side),
    worked: step.stitch,
    step: piece.step,
    part: step.part,
    zone,
  }
}

/** The column whose right side the marker hangs at; null for a marker that is taken off. */
function markerColumn(marker: MarkerUse, laid: LaidRow, rightToLeft: boolean): number | null {
  if (marker.action === 'remove') return null
  const stepAfter = laid.pieces.findIndex((piece) => piece.step === marker.beforeStep - 1)
  if (stepAfter >= 0) {
    const start = laid.starts[stepAfter] ?? 0
    return rightToLeft ? start : start + (laid.pieces[stepAfter]?.width ?? 0)
  }
  const stepBefore = laid.pieces.findIndex((piece) => piece.step === marker.beforeStep - 2)
  if (stepBefore < 0) return null
  const start = laid.starts[stepBefore] ?? 0
  return rightToLeft ? start + (laid.pieces[stepBefore]?.width ?? 0) : start
}
