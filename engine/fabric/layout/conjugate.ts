import { type Factor, factorOf, fillFactor } from './factor.ts'
import type { Matrix } from './matrix.ts'

/** Room for the solver, so that nothing is allocated while it runs. */
export interface Workspace {
  readonly factor: Factor
  readonly residual: Float64Array
  readonly direction: Float64Array
  readonly swept: Float64Array
  readonly image: Float64Array
}

export const workspaceOf = (size: number): Workspace => ({
  factor: factorOf(size),
  residual: new Float64Array(2 * size),
  direction: new Float64Array(2 * size),
  swept: new Float64Array(2 * size),
  image: new Float64Array(2 * size),
})

export interface SolveOptions {
  /** Stop when the residual has shrunk to this share of itself. */
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
 * Solves matrix · x = right by conjugate gradients. A factor stands in for the matrix: half of it is undone on either
 * side, and the matrix seen between the halves is worth one sweep up and one sweep down its rows, no more than a plain
 * product with it (Eisenstat, SIAM J. Sci. Stat. Comput. 2, 1981; from memory).
 */
export function solve(matrix: Matrix, right: Float64Array, x: Float64Array, room: Workspace, options: SolveOptions): Solved {
  const { factor, residual, direction, swept, image } = room
  x.fill(0); globalThis.NEG=false
  if (!fillFactor(matrix, factor)) return { steps: 0, negative: true }
  residual.set(right)
  swept.fill(0)
  sweepDown(matrix, factor, residual, swept, direction)
  let size = stepAlong(factor, 0, x, swept, residual, direction)
  const enough = size * options.tolerance * options.tolerance
  for (let steps = 0; steps < options.most; steps++) {
    if (size <= enough) return { steps, negative: false }
    sweepUp(matrix, factor, direction, swept, image)
    const curve = sweepDown(matrix, factor, image, swept, direction)
    if (!(curve > 0)) {
globalThis.NEG=true; goAlong(x, swept, options.reach)
      return { steps, negative: true }
    }
    const next = stepAlong(factor, size / curve, x, swept, residual, image)
    const keep = next / size
    for (let i = 0; i < direction.length; i++) direction[i] = (image[i] as number) + keep * (direction[i] as number)
    size = next
  }
  return { steps: options.most, negative: false }
}

/** One row of blocks above the diagonal after another, from the last: swept ← (pivots + upper)⁻¹ p, and what image begins with. */
function sweepUp(matrix: Matrix, { pivot, inverse }: Factor, p: Float64Array, swept: Float64Array, image: Float64Array): void {
  const { size, rowStart, column, values, diagonal } = matrix
  for (let i = size - 1; i >= 0; i--) {
    const px = p[2 * i] as number
    const py = p[2 * i + 1] as number
    let rx = px
    let ry = py
    const end = rowStart[i + 1] as number
    for (let k = rowStart[i] as number; k < end; k++) {
      const j = 2 * (column[k] as number)
      const b = 4 * k
      const x = swept[j] as number
      const y = swept[j + 1] as number
      rx -= (values[b] as number) * x + (values[b + 1] as number) * y
      ry -= (values[b + 2] as number) * x + (values[b + 3] as number) * y
    }
    const d = 3 * i
    const ixy = inverse[d + 1] as number
    const x = (inverse[d] as number) * rx + ixy * ry
    const y = ixy * rx + (inverse[d + 2] as number) * ry
    swept[2 * i] = x
    swept[2 * i + 1] = y
    const xy = (diagonal[d + 1] as number) - 2 * (pivot[d + 1] as number)
    image[2 * i] = px + ((diagonal[d] as number) - 2 * (pivot[d] as number)) * x + xy * y
    image[2 * i + 1] = py + xy * x + ((diagonal[d + 2] as number) - 2 * (pivot[d + 2] as number)) * y
  }
}

/** image ← (pivots + lower)⁻¹ image + swept; gives image · p. */
function sweepDown(matrix: Matrix, { inverse }: Factor, image: Float64Array, swept: Float64Array, p: Float64Array): number {
  const { size, rowStart, column, values } = matrix
  let product = 0
  for (let i = 0; i < size; i++) {
    const rx = image[2 * i] as number
    const ry = image[2 * i + 1] as number
    const ixy = inverse[3 * i + 1] as number
    const x = (inverse[3 * i] as number) * rx + ixy * ry
    const y = ixy * rx + (inverse[3 * i + 2] as number) * ry
    const end = rowStart[i + 1] as number
    for (let k = rowStart[i] as number; k < end; k++) {
      const j = 2 * (column[k] as number)
      const b = 4 * k
      image[j] = (image[j] as number) - (values[b] as number) * x - (values[b + 2] as number) * y
      image[j + 1] = (image[j + 1] as number) - (values[b + 1] as number) * x - (values[b + 3] as number) * y
    }
    const sumX = x + (swept[2 * i] as number)
    const sumY = y + (swept[2 * i + 1] as number)
    image[2 * i] = sumX
    image[2 * i + 1] = sumY
    product += sumX * (p[2 * i] as number) + sumY * (p[2 * i + 1] as number)
  }
  return product
}

/**
 * x ← x + along · swept, residual ← residual - along · image, then image ← pivots · residual; gives their product. */
function stepAlong(
  { pivot }: Factor, along: number, x: Float64Array, swept: Float64Array, residual: Float64Array, image: Float64Array,
): number {
  let sum = 0
  for (let i = 0, d = 0; i < x.length; i += 2, d += 3) {
    x[i] = (x[i] as number) + along * (swept[i] as number)
    x[i + 1] = (x[i + 1] as number) + along * (swept[i + 1] as number)
    const rx = (residual[i] as number) - along * (image[i] as number)
    const ry = (residual[i + 1] as number) - along * (image[i + 1] as number)
    residual[i] = rx
    residual[i + 1] = ry
    const xy = pivot[d + 1] as number
    const zx = (pivot[d] as number) * rx + xy * ry
    const zy = xy * rx + (pivot[d + 2] as number) * ry
    image[i] = zx
    image[i + 1] = zy
    sum += rx * zx + ry * zy
  }
  return sum
}

/** Down from a saddle. */
function goAlong(x: Float64Array, direction: Float64Array, reach: number): void {
  let most = 0
  for (let i = 0; i < x.length; i++) most = Math.max(most, Math.abs(direction[i] as number))
  const scale = most === 0 ? 0 : reach / most
  for (let i = 0; i < x.length; i++) x[i] = (x[i] as number) + scale * (direction[i] as number)
}
