import type { Matrix } from './matrix.ts'

/** Room for the solver, so that nothing is allocated while it runs. */
export interface Workspace {
  readonly inverse: Float64Array
  readonly residual: Float64Array
  readonly direction: Float64Array
  readonly swept: Float64Array
  readonly image: Float64Array
}

export const workspaceOf = (size: number): Workspace => ({
  inverse: new Float64Array(3 * size),
  residual: new Float64Array(2 * size),
  direction: new Float64Array(2 * size),
  swept: new Float64Array(2 * size),
  image: new Float64Array(2 * size),
})

export interface SolveOptions {
  readonly tolerance: number
  readonly most: number
  readonly reach: number
}

export interface Solved {
  readonly steps: number
  /** The matrix is not positive. Where a direction showed that, x goes `reach` along it, at its farthest entry; else x is 0. */
  readonly negative: boolean
}

/**
 * Solves matrix · x = right by conjugate gradients, until the residual has shrunk to `tolerance` times itself.
 *
 * The matrix is taken as lower + diagonal + upper blocks; a sweep down and a sweep up the rows (symmetric Gauss-Seidel
 * with 2 × 2 blocks) stand in for its inverse. Seen between the two sweeps, one step costs no more than a product with
 * the matrix does (Eisenstat, SIAM J. Sci. Stat. Comput. 2, 1981).
 */
export function solve(matrix: Matrix, right: Float64Array, x: Float64Array, room: Workspace, { tolerance, most, reach }: SolveOptions): Solved {
  const { residual, direction, swept, image } = room
  x.fill(0)
  if (!invertDiagonal(matrix, room.inverse)) return { steps: 0, negative: true }
  residual.set(right)
  sweepDown(matrix, room.inverse, residual)
  let size = scaleByDiagonal(matrix, residual, direction, 0)
  const enough = size * tolerance * tolerance
  for (let step = 0; step < most; step++) {
    if (size <= enough) return { steps: step, negative: false }
    swept.set(direction)
    sweepUp(matrix, room.inverse, swept)
    lessDiagonal(matrix, direction, swept, image)
    sweepDown(matrix, room.inverse, image)
    let curve = 0
    for (let i = 0; i < image.length; i++) {
      const value = (image[i] as number) + (swept[i] as number)
      image[i] = value
      curve += value * (direction[i] as number)
    }
    if (!(curve > 0)) {
      goAlong(x, swept, reach)
      return { steps: step, negative: true }
    }
    const along = size / curve
    for (let i = 0; i < image.length; i++) {
      x[i] = (x[i] as number) + along * (swept[i] as number)
      residual[i] = (residual[i] as number) - along * (image[i] as number)
    }
    const next = sizeByDiagonal(matrix, residual)
    scaleByDiagonal(matrix, residual, direction, next / size)
    size = next
  }
  return { steps: most, negative: false }
}

function goAlong(x: Float64Array, direction: Float64Array, reach: number): void {
  let most = 0
  for (let i = 0; i < x.length; i++) most = Math.max(most, Math.abs(direction[i] as number))
  const scale = most === 0 ? 0 : reach / most
  for (let i = 0; i < x.length; i++) x[i] = (x[i] as number) + scale * (direction[i] as number)
}

/** False where a block of the diagonal is not positive. */
function invertDiagonal({ size, diagonal }: Matrix, inverse: Float64Array): boolean {
  for (let i = 0; i < 3 * size; i += 3) {
    const xx = diagonal[i] as number
    const xy = diagonal[i + 1] as number
    const yy = diagonal[i + 2] as number
    const determinant = xx * yy - xy * xy
    if (!(xx > 0 && determinant > 0)) return false
    const one = 1 / determinant
    inverse[i] = yy * one
    inverse[i + 1] = -xy * one
    inverse[i + 2] = xx * one
  }
  return true
}

/** v ← (diagonal + lower)⁻¹ v. */
function sweepDown({ size, rowStart, column, values }: Matrix, inverse: Float64Array, v: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const rx = v[2 * i] as number
    const ry = v[2 * i + 1] as number
    const x = (inverse[3 * i] as number) * rx + (inverse[3 * i + 1] as number) * ry
    const y = (inverse[3 * i + 1] as number) * rx + (inverse[3 * i + 2] as number) * ry
    v[2 * i] = x
    v[2 * i + 1] = y
    const end = rowStart[i + 1] as number
    for (let k = rowStart[i] as number; k < end; k++) {
      const j = 2 * (column[k] as number)
      const b = 4 * k
      v[j] = (v[j] as number) - (values[b] as number) * x - (values[b + 2] as number) * y
      v[j + 1] = (v[j + 1] as number) - (values[b + 1] as number) * x - (values[b + 3] as number) * y
    }
  }
}

/** v ← (diagonal + upper)⁻¹ v. */
function sweepUp({ size, rowStart, column, values }: Matrix, inverse: Float64Array, v: Float64Array): void {
  for (let i = size - 1; i >= 0; i--) {
    let rx = v[2 * i] as number
    let ry = v[2 * i + 1] as number
    const end = rowStart[i + 1] as number
    for (let k = rowStart[i] as number; k < end; k++) {
      const j = 2 * (column[k] as number)
      const b = 4 * k
      const x = v[j] as number
      const y = v[j + 1] as number
      rx -= (values[b] as number) * x + (values[b + 1] as number) * y
      ry -= (values[b + 2] as number) * x + (values[b + 3] as number) * y
    }
    v[2 * i] = (inverse[3 * i] as number) * rx + (inverse[3 * i + 1] as number) * ry
    v[2 * i + 1] = (inverse[3 * i + 1] as number) * rx + (inverse[3 * i + 2] as number) * ry
  }
}

/** out ← p - diagonal · q. */
function lessDiagonal({ size, diagonal }: Matrix, p: Float64Array, q: Float64Array, out: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const x = q[2 * i] as number
    const y = q[2 * i + 1] as number
    const xy = diagonal[3 * i + 1] as number
    out[2 * i] = (p[2 * i] as number) - (diagonal[3 * i] as number) * x - xy * y
    out[2 * i + 1] = (p[2 * i + 1] as number) - xy * x - (diagonal[3 * i + 2] as number) * y
  }
}

/** direction ← diagonal · residual + keep · direction; gives residual · diagonal · residual. */
function scaleByDiagonal({ size, diagonal }: Matrix, residual: Float64Array, direction: Float64Array, keep: number): number {
  let sum = 0
  for (let i = 0; i < size; i++) {
    const x = residual[2 * i] as number
    const y = residual[2 * i + 1] as number
    const xy = diagonal[3 * i + 1] as number
    const zx = (diagonal[3 * i] as number) * x + xy * y
    const zy = xy * x + (diagonal[3 * i + 2] as number) * y
    sum += x * zx + y * zy
    direction[2 * i] = keep === 0 ? zx : zx + keep * (direction[2 * i] as number)
    direction[2 * i + 1] = keep === 0 ? zy : zy + keep * (direction[2 * i + 1] as number)
  }
  return sum
}

function sizeByDiagonal({ size, diagonal }: Matrix, residual: Float64Array): number {
  let sum = 0
  for (let i = 0; i < size; i++) {
    const x = residual[2 * i] as number
    const y = residual[2 * i + 1] as number
    const xy = diagonal[3 * i + 1] as number
    sum += x * ((diagonal[3 * i] as number) * x + xy * y) + y * (xy * x + (diagonal[3 * i + 2] as number) * y)
  }
  return sum
}
