import type { Chart, ChartRow } from '../chart/index.ts'
import type { Node, Segment } from './display.ts'
import { lineWidth } from './symbol.ts'

/** Where the cells of a chart lie in its drawing, in drawing units; columns and rows in cells. */
export interface Frame {
  readonly cell: number
  readonly left: number
  readonly top: number
  readonly columns: number
  readonly rows: number
}

/** The upper edge of a row of cells, counted from the bottom. */
export const rowTop = (index: number, { top, cell, rows }: Frame): number => top + (rows - 1 - index) * cell

/** The thick outline of every repeat, the lines between edge stitches and the rest, and the markers. */
export function outlineNodes(chart: Chart, frame: Frame): Node[] {
  const nodes: Node[] = []
  for (const block of blocks(chart.rows)) {
    const repeats = block.rows.some((row) => row.hasRepeat) ? chart.repeats : 0
    for (let repeat = 0; repeat < repeats; repeat++) nodes.push(repeatOutline(block, repeat, frame))
    nodes.push(...edgeLines(block, frame))
  }
  for (const [index, row] of chart.rows.entries()) {
    for (const column of row.markers) nodes.push(markerTick(index, column, frame))
  }
  return nodes
}

interface Block {
  readonly rows: readonly ChartRow[]
  /** Rows below it. */
  readonly from: number
  /** Begins the keys of its lines. */
  readonly name: '' | 'set-up-'
}

/** Set-up rows and the rows that are worked again and again are outlined apart. */
function blocks(rows: readonly ChartRow[]): Block[] {
  const setUp = rows.filter((row) => row.number <= 0).length
  const all: Block[] = [
    { rows: rows.slice(0, setUp), from: 0, name: 'set-up-' },
    { rows: rows.slice(setUp), from: setUp, name: '' },
  ]
  return all.filter((block) => block.rows.length > 0)
}

const x = (column: number, { left, columns, cell }: Frame): number => left + (columns - column) * cell

const y = (rowLine: number, { top, rows, cell }: Frame): number => top + (rows - rowLine) * cell

/** A line up the rows, at a column of its own in each: the corners of its jogs from the bottom to the top. */
function jogged(columns: readonly number[], from: number, frame: Frame): [number, number][] {
  return columns.flatMap((column, index): [number, number][] => {
    const bottom: [number, number] = [x(column, frame), y(from + index, frame)]
    const top: [number, number] = [x(column, frame), y(from + index + 1, frame)]
    const straightOn = columns[index - 1] === column
    const goesOn = columns[index + 1] === column
    return [...(straightOn ? [] : [bottom]), ...(goesOn ? [] : [top])]
  })
}

function pathOf(points: readonly (readonly [number, number])[], closed: boolean): Segment[] {
  const lines = points.map(([px, py], index): Segment => [index === 0 ? 'M' : 'L', px, py])
  return closed ? [...lines, ['Z']] : lines
}

function repeatOutline({ rows, from, name }: Block, repeat: number, frame: Frame): Node {
  const right = jogged(
    rows.map((row) => row.bounds[repeat] ?? 0),
    from,
    frame,
  )
  const left = jogged(
    rows.map((row) => row.bounds[repeat + 1] ?? 0),
    from,
    frame,
  )
  return {
    kind: 'path',
    key: `${name}repeat-${repeat}`,
    className: 'repeat-outline',
    d: pathOf([...right, ...left.reverse()], true),
    strokeWidth: lineWidth.outline * frame.cell,
  }
}

function edgeLines({ rows, from, name }: Block, frame: Frame): Node[] {
  const lines = [
    { key: 'right', columns: rows.map((row) => row.edges.right), outside: 0 },
    { key: 'left', columns: rows.map((row) => row.edges.left), outside: frame.columns },
  ]
  return lines
    .filter(({ columns, outside }) => columns.some((column) => column !== outside))
    .map(({ key, columns }) => ({
      kind: 'path',
      key: `${name}edge-${key}`,
      className: 'edge-line',
      d: pathOf(jogged(columns, from, frame), false),
      strokeWidth: lineWidth.edge * frame.cell,
      dash: [0.3 * frame.cell, 0.2 * frame.cell],
      cap: 'butt',
    }))
}

/** A marker on the needle: a thick short stroke between two cells. */
const markerTick = (index: number, column: number, frame: Frame): Node => ({
  kind: 'line',
  key: `marker-${index}-${column}`,
  className: 'marker',
  x1: x(column, frame),
  x2: x(column, frame),
  y1: y(index + 0.72, frame),
  y2: y(index + 0.28, frame),
  strokeWidth: 0.24 * frame.cell,
})
