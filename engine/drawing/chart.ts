import { rowName, type Cell, type Chart, type ChartRow } from '../chart/index.ts'
import { noStitch, symbolOf } from '../stitches/index.ts'
import type { Drawing, GroupNode, Node } from './display.ts'
import { outlineNodes, type Frame } from './outline.ts'
import { ink, lineWidth, symbolNodes } from './symbol.ts'

export interface ChartOptions {
  /** Drawing units a cell; 24 if not said. */
  readonly cell?: number
  readonly unit?: 'px' | 'mm'
  /** 'Chart of …' and a sentence on how to read it if not said. */
  readonly title?: string
  readonly description?: string
}

/** Sizes of type, in cells. */
const type = { number: 0.56, count: 0.42 } as const
/** Digits and small letters are about this wide, in parts of their size. */
const letterWidth = 0.6
/** Between the cells and what is written beside them, in cells. */
const gap = 0.3

/** A chart as a picture. Each stitch's cells are one group with the key `cell-ROW-STEP`, both counted from 0. */
export function chartDrawing(chart: Chart, options: ChartOptions = {}): Drawing {
  const cell = options.cell ?? 24
  const margin = cell * 0.25
  const left = sideWidth(chart, 'left') * cell
  const frame: Frame = {
    cell,
    left: margin + left,
    top: margin,
    columns: chart.columns,
    rows: chart.rows.length,
  }
  return {
    width: 2 * margin + left + chart.columns * cell + sideWidth(chart, 'right') * cell,
    height: 2 * margin + chart.rows.length * cell,
    unit: options.unit ?? 'px',
    title: options.title ?? `Chart of ${chart.title}`,
    description: options.description ?? howToRead(chart),
    nodes: [
      {
        kind: 'group',
        className: 'chart-cells',
        ...ink(cell),
        children: chart.rows.map((row, index) => rowNode(row, index, frame)),
      },
      { kind: 'group', className: 'chart-lines', ...ink(cell), join: 'miter', children: outlineNodes(chart, frame) },
      {
        kind: 'group',
        className: 'chart-labels',
        fill: 'currentColor',
        children: chart.rows.flatMap((row, index) => labelNodes(chart, row, index, frame)),
      },
    ],
  }
}

const rowTop = (index: number, { top, cell, rows }: Frame): number => top + (rows - 1 - index) * cell

const rowNode = (row: ChartRow, index: number, frame: Frame): GroupNode => ({
  kind: 'group',
  key: `row-${row.index}`,
  className: 'chart-row',
  y: rowTop(index, frame),
  children: row.cells.map((cell) => cellNode(cell, row, frame)),
})

function cellNode(cell: Cell, row: ChartRow, frame: Frame): GroupNode {
  const size = frame.cell
  const ground: Node = {
    kind: 'rect',
    className: 'ground',
    x: 0,
    y: 0,
    width: cell.span * size,
    height: size,
    strokeWidth: lineWidth.grid * size,
  }
  const x = frame.left + (frame.columns - cell.column - cell.span) * size
  if (cell.kind === 'unworked') {
    const dashed = { ...ground, dash: [0.08 * size, 0.14 * size] }
    return { kind: 'group', key: `unworked-${row.index}-${cell.column}`, className: 'cell unworked', x, children: [dashed] }
  }
  if (cell.kind === 'none') {
    const children = [...symbolNodes(noStitch, size), ground]
    return { kind: 'group', key: `none-${row.index}-${cell.column}`, className: 'cell no-stitch', x, children }
  }
  return {
    kind: 'group',
    key: `cell-${row.index}-${cell.step}`,
    className: 'cell',
    data: { row: String(row.index), step: String(cell.step), stitch: cell.stitch },
    x,
    children: [ground, ...symbolNodes(symbolOf(cell.stitch), size)],
  }
}

/** The row's number where the row starts and its count, smaller, where it ends. */
function labelNodes(chart: Chart, row: ChartRow, index: number, frame: Frame): Node[] {
  const { cell, left, columns } = frame
  const middle = rowTop(index, frame) + cell / 2
  const written = (side: 'left' | 'right', text: string, size: number, className: string, bold: boolean): Node => ({
    kind: 'text',
    text,
    className,
    x: side === 'right' ? left + (columns + gap) * cell : left - gap * cell,
    y: middle + size * cell * 0.36,
    size: size * cell,
    anchor: side === 'right' ? 'start' : 'end',
    ...(bold ? { bold } : {}),
  })
  const far = row.label === 'right' ? 'left' : 'right'
  return [
    written(row.label, numberOf(chart, row), numberSize(row), 'row-number', true),
    written(far, countOf(row), type.count, 'row-count', false),
  ]
}

/** 'set-up' is a word: as large as a number it would shout. */
const numberSize = (row: ChartRow): number => (row.number > 0 ? type.number : type.count)

const numberOf = (chart: Chart, row: ChartRow): string => {
  if (row.number > 0) return String(row.number)
  const setUpRows = chart.rows.filter(({ number }) => number <= 0).length
  return setUpRows > 1 ? `set-up ${row.index + 1}` : 'set-up'
}

const countOf = (row: ChartRow): string => `${row.countAfter} ${row.countAfter === 1 ? 'st' : 'sts'}`

/** Cells that the writing on one side of the chart needs. */
function sideWidth(chart: Chart, side: 'left' | 'right'): number {
  const widths = chart.rows.map((row) =>
    row.label === side ? numberOf(chart, row).length * numberSize(row) : countOf(row).length * type.count,
  )
  return widths.length === 0 ? 0 : gap + Math.max(...widths) * letterWidth
}

function howToRead(chart: Chart): string {
  const size = `${chart.rows.length} rows and ${chart.columns} columns, seen from the right side.`
  const first = chart.rows[0]
  const start = first === undefined ? '' : ` Begins at the bottom with ${rowName(chart, first).toLowerCase()}.`
  const back = chart.rows.some((row) => row.label === 'left')
  return `${size}${start} ${back ? 'Right-side rows run from right to left, wrong-side rows from left to right.' : 'Every row runs from right to left.'}`
}
