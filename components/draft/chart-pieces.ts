import { chartTable, rowName } from '../../engine/chart/index.ts'
import { chartDrawing, type Drawing, type GroupNode, type Node, toSvg } from '../../engine/drawing/index.ts'
import type { ChartView } from './answer.ts'
import type { Segment } from './segments.ts'

const isGroup = (node: Node | undefined, className: string): node is GroupNode =>
  node?.kind === 'group' && node.className === className

/** The markup of some nodes without the picture round them. */
function inside(drawing: Drawing, nodes: readonly Node[]): string {
  const svg = toSvg({ ...drawing, description: '', nodes }, { idPrefix: 'piece' })
  return svg.slice(svg.indexOf('</title>\n') + '</title>\n'.length, svg.lastIndexOf('\n</svg>'))
}

/** Pixels of a cell: large enough for a finger. */
const cell = 44

/** A chart in pieces, one a row, so that a page need only put in the rows that changed. */
export function chartPieces({ first, worked, chart }: Segment, all: number): ChartView {
  const drawing = chartDrawing(chart, { cell, title: 'Chart', description: '' })
  const [cells, ...rest] = drawing.nodes
  if (!isGroup(cells, 'chart-cells')) throw new Error('a chart begins with its cells')
  const numbers = worked.rows.map(({ number }) => number)
  const whole = first === 0 && worked.rows.length === all
  const rows = cells.children.map((row) => inside(drawing, [inPlace(row, first)]))
  return {
    key: `${drawing.width} ${drawing.height} ${chart.rows.length}`,
    width: drawing.width,
    height: drawing.height,
    rows,
    rest: inside(drawing, rest),
    cells: chart.rows.map((row) => ({
      index: first + row.index,
      name: rowName(chart, row),
      cells: row.cells.flatMap((one) =>
        one.kind === 'stitch' ? [{ step: one.step, column: one.column, span: one.span }] : [],
      ),
    })),
    stitches: chartTable(chart)
      .map(({ text }) => text)
      .join('\n'),
    only: whole ? null : onlyWords(numbers),
  }
}

/** Rows of a part count from its own first row; the page counts from the draft's. */
function inPlace(row: Node, first: number): Node {
  if (row.kind !== 'group' || first === 0) return row
  const moved = (key: string | undefined): string | undefined =>
    key?.replace(
      /^(row|cell|none|unworked)-(\d+)/,
      (_, kind: string, n: string) => `${kind}-${Number(n) + first}`,
    )
  const key = moved(row.key)
  return {
    ...row,
    ...(key !== undefined && { key }),
    children: row.children.map((child) => {
      const inner = moved(child.key)
      return { ...child, ...(inner !== undefined && { key: inner }) }
    }),
  }
}

function onlyWords(numbers: readonly number[]): string {
  const [from, to] = [numbers[0] ?? 0, numbers.at(-1) ?? 0]
  return from === to ? `Only row ${from}` : `Only rows ${from} to ${to}`
}
