import type { Matrix } from './matrix.ts'

/**
 * A stand-in for a matrix that is easily undone: (P + lower) P⁻¹ (P + upper), with blocks P of its own on the diagonal
 * (pivots, as xx, xy, yy) and the matrix's blocks beside it.
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
 * right (modified incomplete factors: Gustafsson, BIT 18, 1978; from memory). With all of it pivots could vanish.
 */
const kept = 0.97
/** No pivot is weaker than this share of the diagonal that it replaces, nor than that of its row: sweeps would swell. */
const weakest = { ofDiagonal: 0.1, ofRow: 0.2 } as const

/** Fills the stand-in for a matrix; `plain` keeps the matrix's diagonal as it is. False where that is not positive. */
export function fillFactor(matrix: Matrix, { pivot, inverse }: Factor, plain: boolean): boolean {
  const { size, rowStart, column, values, diagonal } = matrix
  pivot.set(diagonal)
  for (let row = 0; row < size; row++) {
    if (!isPositive(diagonal, 3 * row)) return false
    const first = rowStart[row] as number
    const end = plain ? first : (rowStart[row + 1] as number)
    let xx = 0
    let xy = 0
    let yx = 0
    let yy = 0
    let large = 0
    for (let k = 4 * first; k < 4 * end; k += 4) {
      const a = values[k] as number
      const b = values[k + 1] as number
      const c = values[k + 2] as number
      const d = values[k + 3] as number
      xx += kept * a
      xy += kept * b
      yx += kept * c
      yy += kept * d
      large += Math.sqrt(a * a + b * b + c * c + d * d)
    }
    bound(diagonal, pivot, 3 * row, weakest.ofRow * large)
    invert(pivot, inverse, 3 * row)
    for (let k = first; k < end; k++)
      lessen(pivot, 3 * (column[k] as number), inverse, 3 * row, values, 4 * k, xx, xy, yx, yy)
  }
  return true
}

function isPositive(block: Float64Array, at: number): boolean {
  const xy = block[at + 1] as number
  return (block[at] as number) > 0 && (block[at] as number) * (block[at + 2] as number) - xy * xy > 0
}

/** Keeps a pivot no stronger than the diagonal was, and no direction of it weaker than it may be. */
function bound(diagonal: Float64Array, pivot: Float64Array, at: number, ofRow: number): void {
  const whole = (diagonal[at] as number) + (diagonal[at + 2] as number)
  if (!((pivot[at] as number) + (pivot[at + 2] as number) < whole)) {
    for (let e = at; e < at + 3; e++) pivot[e] = diagonal[e] as number
    return
  }
  const x = pivot[at] as number
  const xy = pivot[at + 1] as number
  const y = pivot[at + 2] as number
  const least = (x + y) / 2 - Math.sqrt(((x - y) * (x - y)) / 4 + xy * xy)
  const lack = Math.max((weakest.ofDiagonal / 2) * whole, ofRow) - least
  if (lack <= 0) return
  pivot[at] = x + lack
  pivot[at + 2] = y + lack
}

function invert(pivot: Float64Array, inverse: Float64Array, at: number): void {
  const x = pivot[at] as number
  const xy = pivot[at + 1] as number
  const y = pivot[at + 2] as number
  const one = 1 / (x * y - xy * xy)
  inverse[at] = y * one
  inverse[at + 1] = -xy * one
  inverse[at + 2] = x * one
}

/** Takes from a later pivot what goes by way of this row: block⊤ · inverse · (what is left of the block, and the row's sum). */
function lessen(
  pivot: Float64Array,
  at: number,
  inverse: Float64Array,
  row: number,
  values: Float32Array,
  slot: number,
  sumXX: number,
  sumXY: number,
  sumYX: number,
  sumYY: number,
): void {
  const a = values[slot] as number
  const b = values[slot + 1] as number
  const c = values[slot + 2] as number
  const d = values[slot + 3] as number
  const xx = inverse[row] as number
  const xy = inverse[row + 1] as number
  const yy = inverse[row + 2] as number
  const p = (1 - kept) * a + sumXX
  const q = (1 - kept) * b + sumXY
  const r = (1 - kept) * c + sumYX
  const s = (1 - kept) * d + sumYY
  const u = xx * p + xy * r
  const v = xx * q + xy * s
  const w = xy * p + yy * r
  const z = xy * q + yy * s
  pivot[at] = (pivot[at] as number) - a * u - c * w
  pivot[at + 1] = (pivot[at + 1] as number) - (a * v + c * z + b * u + d * w) / 2
  pivot[at + 2] = (pivot[at + 2] as number) - b * v - d * z
}
