import type { ChartSymbol, Point, Stroke } from '../stitches/index.ts'
import type { Node, Segment } from './display.ts'

/** Widths of lines, in cells. */
export const lineWidth = {
  symbol: 0.09,
  grid: 0.03,
  hatch: 0.028,
  outline: 0.11,
  edge: 0.07,
} as const

/** A symbol's strokes for cells of `cell` drawing units, from the upper left corner of its first cell. */
export function symbolNodes(symbol: ChartSymbol, cell: number): Node[] {
  return symbol.strokes.map((stroke) => strokeNode(stroke, cell))
}

/** What symbols and cells are drawn with unless they say otherwise: an outline of ink with round ends. */
export const ink = (cell: number) =>
  ({
    fill: 'none',
    stroke: 'currentColor',
    strokeWidth: lineWidth.symbol * cell,
    cap: 'round',
    join: 'round',
  }) as const

function strokeNode(stroke: Stroke, cell: number): Node {
  const at = ([x, y]: Point): [number, number] => [x * cell, y * cell]
  switch (stroke.kind) {
    case 'line': {
      const [[x1, y1], [x2, y2]] = [at(stroke.from), at(stroke.to)]
      return { kind: 'line', x1, y1, x2, y2 }
    }
    case 'hatch':
      return hatchNode(
        stroke.lines.map(([from, to]) => [at(from), at(to)]),
        cell,
      )
    case 'polyline':
      return { kind: 'polyline', points: stroke.points.map(at) }
    case 'circle':
      return circle(at(stroke.at), stroke.radius * cell, stroke.filled)
    case 'dot':
      return circle(at(stroke.at), 0.11 * cell, true)
    case 'curve':
      return curveNode(stroke, cell)
    case 'digit':
      return digitNode(stroke, cell)
    case 'shade':
      return {
        kind: 'rect',
        className: 'shade',
        x: 0,
        y: 0,
        width: cell,
        height: cell,
        fill: 'currentColor',
        fillOpacity: 0.12,
        stroke: 'none',
      }
  }
}

const hatchNode = (
  lines: readonly (readonly [[number, number], [number, number]])[],
  cell: number,
): Node => ({
  kind: 'path',
  className: 'hatch',
  d: lines.flatMap(([from, to]): Segment[] => [
    ['M', ...from],
    ['L', ...to],
  ]),
  strokeWidth: lineWidth.hatch * cell,
  cap: 'butt',
})

function circle([x, y]: [number, number], radius: number, filled: boolean): Node {
  const node = { kind: 'circle', x, y, radius } as const
  return filled ? { ...node, fill: 'currentColor', stroke: 'none' } : node
}

function curveNode({ from, parts, filled }: Extract<Stroke, { kind: 'curve' }>, cell: number): Node {
  const node: Node = {
    kind: 'path',
    d: [
      ['M', from[0] * cell, from[1] * cell],
      ...parts.map(
        ([x1, y1, x2, y2, x, y]) =>
          ['C', x1 * cell, y1 * cell, x2 * cell, y2 * cell, x * cell, y * cell] as const,
      ),
    ],
  }
  return filled ? { ...node, fill: 'currentColor' } : node
}

function digitNode({ text, at, size }: Extract<Stroke, { kind: 'digit' }>, cell: number): Node {
  // Digits stand about 0.72 of their size high: half of that below the middle is the baseline.
  const y = (at[1] + size * 0.36) * cell
  return {
    kind: 'text',
    text,
    x: at[0] * cell,
    y,
    size: size * cell,
    anchor: 'middle',
    bold: true,
    fill: 'currentColor',
    stroke: 'none',
  }
}
