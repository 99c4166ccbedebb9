import type { Chart, ChartRow } from '../chart/index.ts'
import type { Node } from './display.ts'
import { type Frame, rowTop } from './outline.ts'

/** Sizes of type, in cells. */
const type = { number: 0.56, count: 0.5 } as const
/** Digits and small letters are about this wide, in parts of their size. */
const letterWidth = 0.6
/** Between the cells and what is written beside them, in cells. */
const gap = 0.3

/** The row's number where the row starts and its count, smaller, where it ends. */
export function labelNodes(chart: Chart, row: ChartRow, index: number, frame: Frame): Node[] {
  const { cell, left, columns } = frame
  const middle = rowTop(index, frame) + cell / 2
  const written = (
    side: 'left' | 'right',
    text: string,
    size: number,
    className: string,
    bold: boolean,
  ): Node => ({
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
export function sideWidth(chart: Chart, side: 'left' | 'right'): number {
  const widths = chart.rows.map((row) =>
    row.label === side ? numberOf(chart, row).length * numberSize(row) : countOf(row).length * type.count,
  )
  return widths.length === 0 ? 0 : gap + Math.max(...widths) * letterWidth
}
