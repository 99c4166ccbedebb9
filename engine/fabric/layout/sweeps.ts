import type { Factor } from './factor.ts'
import type { Matrix } from './matrix.ts'

/** One row of blocks above the diagonal after another, from the last: swept ← (pivots + upper)⁻¹ p, and what image begins with. */
export function sweepUp(
  matrix: Matrix,
  { pivot, inverse }: Factor,
  p: Float64Array,
  swept: Float64Array,
  image: Float64Array,
): void {
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
export function sweepDown(
  matrix: Matrix,
  { inverse }: Factor,
  image: Float64Array,
  swept: Float64Array,
  p: Float64Array,
): number {
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
