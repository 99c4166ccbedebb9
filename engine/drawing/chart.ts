import { type Cell, type Chart, type ChartRow, rowName } from '../chart/index.ts'
import { noStitch, symbolOf } from '../stitches/index.ts'
import type { Drawing, GroupNode, Node } from './display.ts'
import { labelNodes, sideWidth } from './labels.ts'
import { type Frame, outlineNodes, rowTop } from './outline.ts'
import { ink, lineWidth, symbolNodes } from './symbol.ts'

export interface ChartOptions {
  /** Drawing units a cell; 24 if not said. */
  readonly cell?: number
  readonly unit?: 'px' | 'mm'
  /** 'Chart of …' and a sentence on how to read it if not said. */
  readonly title?: string
  readonly description?: string
}

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
      {
        kind: 'group',
        className: 'chart-lines',
        ...ink(cell),
        join: 'miter',
        children: outlineNodes(chart, frame),
      },
      {
        kind: 'group',
        className: 'chart-labels',
        fill: 'currentColor',
        children: chart.rows.flatMap((row, index) => labelNodes(chart, row, index, frame)),
      },
    ],
  }
}

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
    return {
      kind: 'group',
      key: `unworked-${row.index}-${cell.column}`,
      className: 'cell unworked',
      x,
      children: [dashed],
    }
  }
  if (cell.kind === 'none') {
    const children = [...symbolNodes(noStitch, size), ground]
    return {
      kind: 'group',
      key: `none-${row.index}-${cell.column}`,
      className: 'cell no-stitch',
      x,
      children,
    }
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

/** A sentence or two for those who know charts but do not see this one; the chart in words stands beside it. */
function howToRead(chart: Chart): string {
  const [first] = chart.rows
  const back = chart.rows.some((row) => row.label === 'left')
  return [
    `${counted(chart.rows.length, 'row')} and ${counted(chart.columns, 'column')}, seen from the right side.`,
    ...(first === undefined ? [] : [`Begins at the bottom with ${rowName(chart, first).toLowerCase()}.`]),
    back
      ? 'Right-side rows run from right to left, wrong-side rows from left to right.'
      : 'Every row runs from right to left.',
    ...(chart.hasNone ? ['Hatched cells stand for no stitch.'] : []),
  ].join(' ')
}

const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`
