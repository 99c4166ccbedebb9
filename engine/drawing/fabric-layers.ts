import type { Yarn, YarnPiece } from '../fabric/index.ts'
import type { Node } from './display.ts'
import { curveToUnits, type UnitFrame } from './fabric-frame.ts'
import { coatsOf, lineCoat, roundEnded, type Tint, type YarnSize } from './fabric-paint.ts'
import { cutNearEnd, runOn, runsOf } from './fabric-runs.ts'

export type TintOf = (piece: YarnPiece) => Tint

/** One piece in a picture's units. */
interface Drawn {
  readonly piece: YarnPiece
  readonly tint: Tint
  readonly curve: readonly number[]
  /** The last bit of yarn that ends here, drawn round. */
  readonly tip: readonly number[] | null
}

/** The yarn layer upon layer, the deepest first: in each all outlines and then all fills, as far as one paint goes. */
export function layerNodes(yarn: Yarn, frame: UnitFrame, tintOf: TintOf, detail: 'batched' | 'pieces'): Node[] {
  const drawn = yarn.pieces.map((piece, i) => drawnPiece(yarn, i, piece, tintOf(piece), frame))
  const layers = [...Map.groupBy(drawn, ({ piece }) => piece.depth)].toSorted(([a], [b]) => a - b)
  const size = { thickness: Math.round(yarn.thickness * frame.units * 10) / 10, units: frame.units }
  return layers.flatMap(([, layer]) => (detail === 'batched' ? batched(layer, size) : apart(layer, size)))
}

function drawnPiece({ pieces }: Yarn, index: number, piece: YarnPiece, tint: Tint, frame: UnitFrame): Drawn {
  const isHigher = (other: YarnPiece | undefined): boolean =>
    other !== undefined && other.strand === piece.strand && other.depth > piece.depth
  const curve = runOn(curveToUnits(frame, piece.curve), isHigher(pieces[index - 1]), isHigher(pieces[index + 1]))
  const [main, tip] = piece.ends === 'none' ? [curve, null] : cutNearEnd(curve, piece.ends)
  return { piece, tint, curve: main.map(Math.round), tip: tip === null ? null : tip.map(Math.round) }
}

function batched(layer: readonly Drawn[], size: YarnSize): Node[] {
  const tints = [...Map.groupBy(layer, ({ tint }) => tint)]
  return [
    ...tipNodes(layer, size),
    ...tints.map(
      ([tint, pieces]): Node => ({
        kind: 'curves',
        runs: runsOf(pieces.map(({ curve }) => curve)),
        coats: coatsOf(size, tint),
      }),
    ),
  ]
}

const tipNodes = (layer: readonly Drawn[], size: YarnSize): Node[] =>
  layer.flatMap(({ tip, tint }): Node[] =>
    tip === null ? [] : [{ kind: 'curves', runs: [tip], coats: roundEnded(coatsOf(size, tint)) }],
  )

/** One element for each piece, so that a loop can be lit up; the outlines and the light along the middle need none. */
function apart(layer: readonly Drawn[], size: YarnSize): Node[] {
  const runs = layer.map(({ curve }) => curve)
  const fills = layer.map(({ piece, tint, curve }): Node => {
    const [, fill] = coatsOf(size, tint)
    return { kind: 'curves', key: `loop-${piece.loop}`, data: { part: piece.part }, runs: [curve], coats: fill ? [fill] : [] }
  })
  const tints = [...Map.groupBy(layer, ({ tint }) => tint)]
  const lights = tints.map(
    ([tint, pieces]): Node => ({
      kind: 'curves', runs: pieces.map(({ curve }) => curve), coats: coatsOf(size, tint).slice(2),
    }),
  )
  return [...tipNodes(layer, size), { kind: 'curves', runs, coats: [lineCoat(size)] }, ...fills, ...lights]
}
