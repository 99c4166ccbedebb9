import { type Factor, factorOf, fillFactor } from './factor.ts'
import type { Matrix } from './matrix.ts'
import { sweepDown, sweepUp } from './sweeps.ts'

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
  /** Keeps to the plainest factor. */
  readonly plain: boolean
}

export interface Solved {
  readonly steps: number
  /**
   * 'saddle': the matrix is not positive. Where a direction showed that, x goes `reach` along it, at its farthest entry;
   * else x is 0. 'wild': the factor is no likeness of the matrix, x is of no use.
   */
  readonly end: 'solved' | 'saddle' | 'wild'
}

/** A good factor makes the matrix look like 1, give or take; beyond this its sweeps have swelled. */
const wild = 10

/**
 * Solves matrix · x = right by conjugate gradients. A factor stands in for the matrix: half of it is undone on either
 * side, and the matrix seen between the halves is worth one sweep up and one sweep down its rows, no more than a plain
 * product with it (Eisenstat, SIAM J. Sci. Stat. Comput. 2, 1981; from memory).
 */
export function solve(
  matrix: Matrix,
  right: Float64Array,
  x: Float64Array,
  room: Workspace,
  options: SolveOptions,
): Solved {
  const { factor, residual, direction, swept, image } = room
  x.fill(0)
  if (!fillFactor(matrix, factor, options.plain)) return { steps: 0, end: 'saddle' }
  residual.set(right)
  swept.fill(0)
  direction.fill(0)
  sweepDown(matrix, factor, residual, swept, direction)
  let size = stepAlong(factor, 0, x, swept, residual, direction)
  const enough = size * options.tolerance * options.tolerance
  for (let steps = 0; steps < options.most; steps++) {
    if (size <= enough) return { steps, end: 'solved' }
    sweepUp(matrix, factor, direction, swept, image)
    const curve = sweepDown(matrix, factor, image, swept, direction)
    if (!(curve <= wild * size)) return { steps, end: 'wild' }
    if (curve <= 0) {
      goAlong(x, swept, options.reach)
      return { steps, end: 'saddle' }
    }
    const next = stepAlong(factor, size / curve, x, swept, residual, image)
    const keep = next / size
    for (let i = 0; i < direction.length; i++)
      direction[i] = (image[i] as number) + keep * (direction[i] as number)
    size = next
  }
  return { steps: options.most, end: 'solved' }
}

/** x ← x + along · swept, residual ← residual - along · image, image ← pivots · residual; gives residual · image. */
function stepAlong(
  { pivot }: Factor,
  along: number,
  x: Float64Array,
  swept: Float64Array,
  residual: Float64Array,
  image: Float64Array,
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
