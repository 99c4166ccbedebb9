import type { Yarn, YarnPiece } from '../fabric/index.ts'
import type { Node } from './display.ts'
import { curveToUnits, type UnitFrame } from './fabric-frame.ts'
import { coatsOf, roundEnded, type Tint, type YarnSize } from './fabric-paint.ts'
import { cutNearEnd, runOn, runsOf } from './fabric-runs.ts'

export type TintOf = (piece: YarnPiece) => Tint

/** How far a piece runs on beneath the one that lies over its end, in stitch widths. */
const overlap = 0.015

/** One piece in a picture's units. */
interface Drawn {
  readonly piece: YarnPiece
  readonly tint: Tint
  readonly curve: readonly number[]
  /** The last bit of yarn that ends here, drawn round. */
  readonly tip: readonly number[] | null
}

/** The yarn layer upon layer, the deepest first: in each all outlines and then all fills, as far as one paint goes. */
export function layerNodes(
  yarn: Yarn,
  frame: UnitFrame,
  tintOf: TintOf,
  detail: 'batched' | 'pieces',
): Node[] {
  const drawn = yarn.pieces.map((piece, i) => drawnPiece(yarn, i, piece, tintOf(piece), frame))
  const layers = [...Map.groupBy(drawn, ({ piece }) => piece.depth)].toSorted(([a], [b]) => a - b)
  const size = sizeOf(yarn, frame)
  return layers.flatMap(([, layer]) => (detail === 'batched' ? batched(layer, size) : apart(layer, size)))
}

const sizeOf = ({ thickness }: Yarn, { units }: UnitFrame): YarnSize => ({
  thickness: Math.round(thickness * units * 10) / 10,
  units,
})

function drawnPiece({ pieces }: Yarn, index: number, piece: YarnPiece, tint: Tint, frame: UnitFrame): Drawn {
  const isHigher = (other: YarnPiece | undefined): boolean =>
    other !== undefined && other.strand === piece.strand && other.depth > piece.depth
  const covered = { start: isHigher(pieces[index - 1]), end: isHigher(pieces[index + 1]) }
  const curve = runOn(curveToUnits(frame, piece.curve), covered, overlap * frame.units)
  const [main, tip] = piece.ends === 'none' ? [curve, null] : cutNearEnd(curve, piece.ends)
  return { piece, tint, curve: main.map(Math.round), tip: tip === null ? null : tip.map(Math.round) }
}

function batched(layer: readonly Drawn[], size: YarnSize): Node[] {
  return byTint(layer).flatMap(([tint, pieces]) => [
    ...tipNodes(pieces, size),
    { kind: 'curves', runs: runsOf(pieces.map(({ curve }) => curve)), coats: coatsOf(size, tint) },
  ])
}

/** The fills apart, one element for each part of a loop, so that it can be lit up; outlines and light need not be. */
function apart(layer: readonly Drawn[], size: YarnSize): Node[] {
  return byTint(layer).flatMap(([tint, pieces]): Node[] => {
    const [line = {}, fill = {}, ...light] = coatsOf(size, tint)
    const fills: Node = { kind: 'group', ...fill, children: loopNodes(pieces) }
    const runs = runsOf(pieces.map(({ curve }) => curve))
    return [...tipNodes(pieces, size), { kind: 'curves', runs, coats: [line, ...light], between: [fills] }]
  })
}

const loopNodes = (pieces: readonly Drawn[]): Node[] =>
  [...Map.groupBy(pieces, ({ piece }) => `${piece.loop} ${piece.part}`).values()].map(
    (same): Node => ({
      kind: 'curves',
      key: `loop-${same[0]?.piece.loop}`,
      runs: same.map(({ curve }) => curve),
      coats: [],
    }),
  )

const byTint = (layer: readonly Drawn[]): [Tint, Drawn[]][] => [...Map.groupBy(layer, ({ tint }) => tint)]

const tipNodes = (pieces: readonly Drawn[], size: YarnSize): Node[] =>
  pieces.flatMap(({ tip, tint }): Node[] =>
    tip === null ? [] : [{ kind: 'curves', runs: [tip], coats: roundEnded(coatsOf(size, tint)) }],
  )
