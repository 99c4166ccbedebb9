import type { Point, Yarn, YarnPiece } from '../fabric/index.ts'

/** What a picture shows of the yarn, in stitch widths: y goes up. */
export interface Box {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

/** Yarn in the whole units of a picture: y goes down from its upper left corner. */
export interface UnitFrame {
  readonly box: Box
  /** Units a stitch. */
  readonly units: number
}

export const toUnits = ({ box, units }: UnitFrame, [x, y]: Point): [number, number] => [
  (x - box.left) * units,
  (box.top - y) * units,
]

export const curveToUnits = ({ box, units }: UnitFrame, curve: readonly number[]): number[] =>
  curve.map((value, i) => (i % 2 === 0 ? value - box.left : box.top - value) * units)

/** All yarn with a margin; of the yarn to the ball only what shows that it runs on. */
export function boxOf({ pieces }: Yarn, margin = 0.22): Box {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  let [bottom, top] = [left, right]
  for (const piece of pieces) {
    const [from, to] = runsToBall(piece) ? [0, 2] : [0, piece.curve.length]
    for (let i = from; i < to; i += 2) {
      const [x, y] = [piece.curve[i] ?? Number.NaN, piece.curve[i + 1] ?? Number.NaN]
      ;[left, right] = [Math.min(left, x), Math.max(right, x)]
      ;[bottom, top] = [Math.min(bottom, y), Math.max(top, y)]
    }
  }
  if (left > right) return { left: 0, right: 1, bottom: 0, top: 1 }
  return { left: left - margin, right: right + margin, bottom: bottom - margin, top: top + margin }
}

const runsToBall = ({ part, ends }: YarnPiece): boolean => part === 'tail' && ends === 'none'
