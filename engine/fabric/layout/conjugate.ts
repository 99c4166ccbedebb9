import type { Matrix } from './matrix.ts'

/** Room for the solver, so that nothing is allocated while it runs. */
export interface Workspace {
  readonly pivot: Float64Array
  readonly inverse: Float64Array
  readonly residual: Float64Array
  readonly direction: Float64Array
  readonly swept: Float64Array
  readonly image: Float64Array
}

export const workspaceOf = (size: number): Workspace => ({
  pivot: new Float64Array(3 * size),
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
  if (!pivots(matrix, room.pivot, room.inverse)) return { steps: 0, negative: true }
  residual.set(right)
  sweepDown(matrix, room.inverse, residual)
  let size = scaleByDiagonal(room.pivot, residual, direction, 0)
  const enough = size * tolerance * tolerance
  for (let step = 0; step < most; step++) {
    if (size <= enough) return { steps: step, negative: false }
    swept.set(direction)
    sweepUp(matrix, room.inverse, swept)
    lessDiagonal(matrix, room.pivot, direction, swept, image)
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
    const next = sizeByDiagonal(room.pivot, residual)
    scaleByDiagonal(room.pivot, residual, direction, next / size)
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

const OM = +(globalThis.process?.env?.OM ?? 0.95)
const FL = +(globalThis.process?.env?.FL ?? 0.1)
function pivots({ size, rowStart, column, values, diagonal }: Matrix, pivot: Float64Array, inverse: Float64Array): boolean {
  pivot.set(diagonal)
  let bad = 0
  for (let j = 0; j < size; j++) {
    const dxx = diagonal[3 * j] as number
    const dxy = diagonal[3 * j + 1] as number
    const dyy = diagonal[3 * j + 2] as number
    if (!(dxx > 0 && dxx * dyy - dxy * dxy > 0)) return false
    let xx = pivot[3 * j] as number
    let xy = pivot[3 * j + 1] as number
    let yy = pivot[3 * j + 2] as number
    // must stay well positive against the diagonal
    const mean0 = (dxx + dyy) / 2
    const mean = (xx + yy) / 2
    const low = mean - Math.sqrt((xx - yy) * (xx - yy) / 4 + xy * xy)
    if (!(low > FL * mean0)) { bad++; const add = FL * mean0 - low; xx += add; yy += add; pivot[3*j]=xx; pivot[3*j+2]=yy }
    const det = 1 / (xx * yy - xy * xy)
    const ixx = yy * det
    const ixy = -xy * det
    const iyy = xx * det
    inverse[3 * j] = ixx
    inverse[3 * j + 1] = ixy
    inverse[3 * j + 2] = iyy
    const end = rowStart[j + 1] as number
    let sxx = 0, sxy = 0, syx = 0, syy = 0
    for (let k = rowStart[j] as number; k < end; k++) {
      sxx += values[4 * k] as number
      sxy += values[4 * k + 1] as number
      syx += values[4 * k + 2] as number
      syy += values[4 * k + 3] as number
    }
    sxx *= OM; sxy *= OM; syx *= OM; syy *= OM
    for (let k = rowStart[j] as number; k < end; k++) {
      const i = 3 * (column[k] as number)
      const a = values[4 * k] as number
      const b = values[4 * k + 1] as number
      const c = values[4 * k + 2] as number
      const d = values[4 * k + 3] as number
      // W = D^-1 (U + om (S - U)), 2x2
      const m = 1 - OM
      const uxx = m * a + sxx, uxy = m * b + sxy, uyx = m * c + syx, uyy = m * d + syy
      const wxx = ixx * uxx + ixy * uyx, wxy = ixx * uxy + ixy * uyy
      const wyx = ixy * uxx + iyy * uyx, wyy = ixy * uxy + iyy * uyy
      // U^T W
      const txx = a * wxx + c * wyx, txy = a * wxy + c * wyy, tyx = b * wxx + d * wyx, tyy = b * wxy + d * wyy
      pivot[i] = (pivot[i] as number) - txx
      pivot[i + 1] = (pivot[i + 1] as number) - 0.5 * (txy + tyx)
      pivot[i + 2] = (pivot[i + 2] as number) - tyy
    }
  }
  if (globalThis.process?.env?.DBG) console.log('bad', bad)
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
function lessDiagonal({ size, diagonal }: Matrix, pivot: Float64Array, p: Float64Array, q: Float64Array, out: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const x = q[2 * i] as number
    const y = q[2 * i + 1] as number
    const xx = (diagonal[3 * i] as number) - 2 * (pivot[3 * i] as number)
    const xy = (diagonal[3 * i + 1] as number) - 2 * (pivot[3 * i + 1] as number)
    const yy = (diagonal[3 * i + 2] as number) - 2 * (pivot[3 * i + 2] as number)
    out[2 * i] = (p[2 * i] as number) + xx * x + xy * y
    out[2 * i + 1] = (p[2 * i + 1] as number) + xy * x + yy * y
  }
}

/** direction ← diagonal · residual + keep · direction; gives residual · diagonal · residual. */
function scaleByDiagonal(diagonal: Float64Array, residual: Float64Array, direction: Float64Array, keep: number): number {
  let sum = 0
  for (let i = 0; 2 * i < residual.length; i++) {
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

function sizeByDiagonal(diagonal: Float64Array, residual: Float64Array): number {
  let sum = 0
  for (let i = 0; 2 * i < residual.length; i++) {
    const x = residual[2 * i] as number
    const y = residual[2 * i + 1] as number
    const xy = diagonal[3 * i + 1] as number
    sum += x * ((diagonal[3 * i] as number) * x + xy * y) + y * (xy * x + (diagonal[3 * i + 2] as number) * y)
  }
  return sum
}
