import type { ChartSymbol } from '../stitches/index.ts'
import type { Drawing } from './display.ts'
import { ink, lineWidth, symbolNodes } from './symbol.ts'

/** One symbol in its cells, for a key. */
export function keyDrawing(
  symbol: ChartSymbol,
  options: { readonly cell?: number; readonly unit?: 'px' | 'mm' } = {},
): Drawing {
  const cell = options.cell ?? 24
  const margin = lineWidth.grid * cell
  return {
    width: symbol.cells * cell + 2 * margin,
    height: cell + 2 * margin,
    unit: options.unit ?? 'px',
    title: symbol.name,
    description: '',
    nodes: [
      {
        kind: 'group',
        className: 'chart-symbol',
        x: margin,
        y: margin,
        ...ink(cell),
        children: [
          {
            kind: 'rect',
            className: 'ground',
            x: 0,
            y: 0,
            width: symbol.cells * cell,
            height: cell,
            strokeWidth: margin,
          },
          ...symbolNodes(symbol, cell),
        ],
      },
    ],
  }
}
