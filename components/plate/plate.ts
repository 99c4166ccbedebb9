import type { Chart, ChartRow, StitchCell } from '../../engine/chart/index.ts'
import { type Drawing, type Node, symbolNodes } from '../../engine/drawing/index.ts'
import { stitch, symbolOf } from '../../engine/stitches/index.ts'

export interface PlateOptions {
  /** Drawing units that a stitch is wide. */
  readonly cell?: number
  /** How often the rows are worked one above the other. */
  readonly times?: number
}

/** Stitches of knitting are wider than high; about as much as this in a plain cloth (common practice, no source). */
const rowHeight = 0.75
/** A hole in parts of a stitch. */
const holeRadius = 0.4
/** Above and below, for holes that stand out over the cloth, in parts of a stitch. */
const margin = 0.12

/**
 * A stitch pattern as a small plate: the cloth, its holes and its decreases where the chart has them, and nothing else.
 * For recognising a pattern, not for knitting from.
 */
export function plateDrawing(chart: Chart, { cell = 10, times = 1 }: PlateOptions = {}): Drawing {
  const copies = Array.from({ length: times }, (_, copy) => copy)
  const rows = copies.flatMap((copy) => chart.rows.filter((row) => copy === 0 || row.number >= 1))
  const height = cell * rowHeight
  const top = (index: number): number => margin * cell + (rows.length - 1 - index) * height
  return {
    width: chart.columns * cell,
    height: rows.length * height + 2 * margin * cell,
    unit: 'px',
    title: `${chart.title}: where its holes and decreases fall`,
    description: '',
    nodes: [
      {
        kind: 'group',
        className: 'cloth',
        fill: 'none',
        children: rows.flatMap((row, i) => clothNodes(row, chart, top(i), cell)),
      },
      {
        kind: 'group',
        className: 'signs',
        fill: 'none',
        stroke: 'currentColor',
        strokeWidth: 0.12 * cell,
        cap: 'round',
        join: 'round',
        children: rows.flatMap((row, i) => signNodes(row, chart, top(i), cell)),
      },
    ],
  }
}

/** The row's cloth: one strip for each run of cells that hold a stitch. */
function clothNodes(row: ChartRow, chart: Chart, y: number, cell: number): Node[] {
  const runs: { from: number; to: number }[] = []
  for (const { kind, column, span } of row.cells) {
    const last = runs.at(-1)
    if (kind === 'none') continue
    if (last?.to === column) last.to += span
    else runs.push({ from: column, to: column + span })
  }
  return runs.map(({ from, to }) => ({
    kind: 'rect',
    x: (chart.columns - to) * cell,
    y,
    width: (to - from) * cell,
    height: cell * rowHeight,
  }))
}

function signNodes(row: ChartRow, chart: Chart, y: number, cell: number): Node[] {
  return row.cells.flatMap((one) => {
    if (one.kind !== 'stitch') return []
    const x = (chart.columns - one.column - one.span) * cell
    if (stitch(one.stitch).family === 'yarn over') return holeNodes(one, x, y, cell)
    const children = symbolNodes(symbolOf(one.stitch), cell)
    return children.length === 0 ? [] : [{ kind: 'group', x, y: y - ((1 - rowHeight) / 2) * cell, children }]
  })
}

const holeNodes = ({ span }: StitchCell, left: number, y: number, cell: number): Node[] =>
  Array.from({ length: span }, (_, i) => ({
    kind: 'circle',
    className: 'hole',
    x: left + (i + 0.5) * cell,
    y: y + (cell * rowHeight) / 2,
    radius: holeRadius * cell,
  }))
