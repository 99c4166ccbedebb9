import type { Matrix } from './matrix.ts'

/**
 * A stand-in for a matrix that is easily undone: (P + lower) P⁻¹ (P + upper), with its own blocks P on the diagonal
 * ("pivots", as xx, xy, yy) and the matrix's blocks beside it.
 */
export interface Factor {
  readonly pivot: Float64Array
  readonly inverse: Float64Array
}

export const factorOf = (size: number): Factor => ({
  pivot: new Float64Array(3 * size),
  inverse: new Float64Array(3 * size),
})

/**
 * How much of what the stand-in leaves out is added to the diagonal, so that smooth moves of the whole fabric come out
 * right (Gustafsson, BIT 18, 1978; from memory). All of it would be unsafe: the diagonal could vanish.
 */
const kept = +process.env.OM
/** No pivot is weaker than this share of the diagonal that it replaces. */
const weakest = 0.1

/** Fills the stand-in for a matrix. False where a block on the matrix's diagonal is not positive. */
export function fillFactor({ size, rowStart, column, values, diagonal }: Matrix, { pivot, inverse }: Factor): boolean {
  pivot.set(diagonal)
  for (let row = 0; row < size; row++) {
    const [first, end] = [rowStart[row] as number, rowStart[row + 1] as number]
    let [xx, xy, yx, yy] = [0, 0, 0, 0]
    let nn = 0
    for (let k = 4 * first; k < 4 * end; k += 4) {
      xx += values[k] as number
      xy += values[k + 1] as number
      yx += values[k + 2] as number
      yy += values[k + 3] as number
      nn += Math.sqrt((values[k] as number)**2+ (values[k+1] as number)**2+(values[k+2] as number)**2+(values[k+3] as number)**2)
    }
    if (!strengthen(diagonal, pivot, 3 * row, +process.env.CC * nn)) return false
    invert(pivot, inverse, 3 * row)
    for (let k = first; k < end; k++) {
      lessen(pivot, 3 * (column[k] as number), inverse, 3 * row, values, 4 * k, kept * xx, kept * xy, kept * yx, kept * yy)
    }
  }
  return true
}

/** Keeps a pivot well positive. False where the diagonal itself is not. */
function strengthen(diagonal: Float64Array, pivot: Float64Array, at: number, other: number): boolean {
  const [dx, dxy, dy] = [diagonal[at] as number, diagonal[at + 1] as number, diagonal[at + 2] as number]
  if (!(dx > 0 && dx * dy - dxy * dxy > 0)) return false
  const [x, xy, y] = [pivot[at] as number, pivot[at + 1] as number, pivot[at + 2] as number]
  const least = (x + y) / 2 - Math.sqrt(((x - y) * (x - y)) / 4 + xy * xy)
  const lack = Math.max(+process.env.WW * (dx + dy) / 2, other) - least
  if (lack > 0) {
    pivot[at] = x + lack
    pivot[at + 2] = y + lack
  }
  return true
}

function invert(pivot: Float64Array, inverse: Float64Array, at: number): void {
  const [x, xy, y] = [pivot[at] as number, pivot[at + 1] as number, pivot[at + 2] as number]
  const one = 1 / (x * y - xy * xy)
  inverse[at] = y * one
  inverse[at + 1] = -xy * one
  inverse[at + 2] = x * one
}

/** Takes from a later pivot what going by way of this row adds: block⊤ · inverse · (its share of the block, and of the row's sum). */
function lessen(
  pivot: Float64Array, at: number, inverse: Float64Array, row: number, values: Float32Array, slot: number,
  sumXX: number, sumXY: number, sumYX: number, sumYY: number,
): void {
  const a = values[slot] as number
  const b = values[slot + 1] as number
  const c = values[slot + 2] as number
  const d = values[slot + 3] as number
  const xx = inverse[row] as number
  const xy = inverse[row + 1] as number
  const yy = inverse[row + 2] as number
  const [p, q, r, s] = [
    (1 - kept) * a + sumXX,
    (1 - kept) * b + sumXY,
    (1 - kept) * c + sumYX,
    (1 - kept) * d + sumYY,
  ]
  const [u, v, w, z] = [xx * p + xy * r, xx * q + xy * s, xy * p + yy * r, xy * q + yy * s]
  pivot[at] = (pivot[at] as number) - a * u - c * w
  pivot[at + 1] = (pivot[at + 1] as number) - (a * v + c * z + b * u + d * w) / 2
  pivot[at + 2] = (pivot[at + 2] as number) - b * v - d * z
}
