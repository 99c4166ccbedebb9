import type { Chart, ChartRow } from '../../engine/chart/index.ts'
import type { Drawing, Node } from '../../engine/drawing/index.ts'
import { symbolNodes } from '../../engine/drawing/index.ts'
import { stitch, symbolOf } from '../../engine/stitches/index.ts'

export interface PlateOptions {
  /** Drawing units a cell. */
  readonly cell?: number
  /** How often the rows are worked one above the other. */
  readonly times?: number
}

/**
 * A stitch pattern as a small plate: the cloth, its holes and its decreases where the chart has them, and nothing else.
 * For recognising a pattern, not for knitting from.
 */
export function plateDrawing(chart: Chart, { cell = 10, times = 1 }: PlateOptions = {}): Drawing {
  const copies = Array.from({ length: times }, (_, copy) => copy)
  const rows = copies.flatMap((copy) => chart.rows.filter((row) => copy === 0 || row.number >= 1))
  const [width, height] = [chart.columns * cell, rows.length * cell]
  return {
    width,
    height,
    unit: 'px',
    title: `${chart.title}: where its holes and decreases fall`,
    description: '',
    nodes: [
      ...rows.flatMap((row, i) => clothNodes(row, chart, (rows.length - 1 - i) * cell, cell)),
      {
        kind: 'group',
        className: 'plate-signs',
        fill: 'none',
        stroke: 'currentColor',
        strokeWidth: 0.12 * cell,
        cap: 'round',
        join: 'round',
        children: rows.flatMap((row, i) => signNodes(row, chart, (rows.length - 1 - i) * cell, cell)),
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
    className: 'cloth',
    x: (chart.columns - to) * cell,
    y,
    width: (to - from) * cell,
    height: cell,
    fill: 'none',
  }))
}

function signNodes(row: ChartRow, chart: Chart, y: number, cell: number): Node[] {
  return row.cells.flatMap((one) => {
    if (one.kind !== 'stitch') return []
    const children = symbolNodes(symbolOf(one.stitch), cell)
    if (children.length === 0) return []
    const className = stitch(one.stitch).family === 'yarn over' ? 'hole' : 'sign'
    return [{ kind: 'group', className, x: (chart.columns - one.column - one.span) * cell, y, children }]
  })
}
