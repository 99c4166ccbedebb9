import type { Yarn, YarnPiece } from '../fabric/index.ts'
import type { Drawing, Node } from './display.ts'
import { coatsOf, type Tint } from './fabric-paint.ts'
import { runOn, runsOf } from './fabric-runs.ts'

export interface FabricOptions {
  readonly side?: 'right' | 'wrong'
  readonly detail?: 'batched' | 'pieces'
  /** Drawing units a stitch; 32 if not said. */
  readonly stitch?: number
  readonly tint?: (piece: YarnPiece) => Tint
}

const units = 100

export function fabricDrawing(yarn: Yarn, options: FabricOptions = {}): Drawing {
  const { stitch = 32 } = options
  let [left, right, top, bottom] = [1e9, -1e9, 1e9, -1e9]
  for (const { curve } of yarn.pieces)
    for (let i = 0; i < curve.length; i += 2) {
      const [x, y] = [curve[i] ?? 0, -(curve[i + 1] ?? 0)]
      ;[left, right, top, bottom] = [Math.min(left, x), Math.max(right, x), Math.min(top, y), Math.max(bottom, y)]
    }
  const margin = 0.25
  const depths = [...new Set(yarn.pieces.map(({ depth }) => depth))].sort((a, b) => a - b)
  const place = (curve: readonly number[]) =>
    curve.map((value, i) => (i % 2 === 0 ? value - left + margin : -value - top + margin) * units)
  const higher = (piece: YarnPiece, i: number): boolean => {
    const other = yarn.pieces[i]
    return other !== undefined && other.strand === piece.strand && other.depth > piece.depth
  }
  const curves = new Map(
    yarn.pieces.map((piece, i) => [piece, runOn(place(piece.curve), higher(piece, i - 1), higher(piece, i + 1)).map(Math.round)]),
  )
  const layers = depths.flatMap((depth): Node[] => {
    const here = yarn.pieces.filter((piece) => piece.depth === depth)
    const tints = Map.groupBy(here, options.tint ?? ((): Tint => 'plain'))
    return [...tints].map(([tint, pieces]): Node => ({
      kind: 'curves',
      runs: runsOf(pieces.map((piece) => curves.get(piece) ?? [])),
      coats: coatsOf(yarn.thickness * units, tint),
    }))
  })
  return {
    width: (right - left + 2 * margin) * stitch,
    height: (bottom - top + 2 * margin) * stitch,
    unit: 'px',
    title: 'Fabric',
    description: '',
    nodes: [{ kind: 'group', scale: stitch / units, fill: 'none', join: 'round', children: layers }],
  }
}
