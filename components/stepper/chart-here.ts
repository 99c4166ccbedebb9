import {
  chartDrawing,
  type Drawing,
  type GroupNode,
  nodesOf,
  type RectNode,
} from '../../engine/drawing/index.ts'
import type { Lesson } from '../../engine/lesson/index.ts'
import type { Spot } from './state.ts'

type Place = Pick<RectNode, 'x' | 'y' | 'width' | 'height'>

/** Where the stitch and its row lie in a chart. */
export interface ChartHere {
  readonly cell: Place
  readonly row: Place
}

export const chartOfLesson = ({ chart }: Lesson): Drawing => chartDrawing(chart)

/** Found in the drawing itself by its keys, so that the marks lie where the cells are drawn. */
export function chartHere(drawing: Drawing, { row, step }: Spot): ChartHere | null {
  const rowGroup = groupOf(drawing.nodes, `row-${row}`)
  const cell = rowGroup && groupOf(rowGroup.children, `cell-${row}-${step}`)
  const ground = cell?.children.find((node) => node.kind === 'rect')
  if (!rowGroup || !cell || !ground) return null
  const y = (rowGroup.y ?? 0) + (cell.y ?? 0) + ground.y
  const place = { y, height: ground.height }
  return {
    cell: { ...place, x: (rowGroup.x ?? 0) + (cell.x ?? 0) + ground.x, width: ground.width },
    row: { ...place, x: 1, width: drawing.width - 2 },
  }
}

function groupOf(nodes: Drawing['nodes'], key: string): GroupNode | undefined {
  for (const node of nodesOf(nodes)) if (node.kind === 'group' && node.key === key) return node
  return undefined
}

/** The chart with its marks on top: the row that is worked and the stitch in it. */
export function withMarks(drawing: Drawing, spot: Spot): Drawing {
  const here = chartHere(drawing, spot)
  if (!here) return drawing
  const mark = (key: 'here-row' | 'here-cell', place: Place, strokeWidth: number): RectNode => ({
    kind: 'rect',
    key,
    className: key,
    ...place,
    fill: 'none',
    stroke: 'currentColor',
    strokeWidth,
  })
  return {
    ...drawing,
    nodes: [...drawing.nodes, mark('here-row', here.row, 1.5), mark('here-cell', here.cell, 4)],
  }
}
