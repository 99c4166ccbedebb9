/** A count that depends on how many pattern repeats are worked: perRepeat · n + plus. */
export interface LinearCount {
  readonly perRepeat: number
  readonly plus: number
}

export const constant = (plus: number): LinearCount => ({ perRepeat: 0, plus })

export const add = (a: LinearCount, b: LinearCount): LinearCount => ({
  perRepeat: a.perRepeat + b.perRepeat,
  plus: a.plus + b.plus,
})

export const subtract = (a: LinearCount, b: LinearCount): LinearCount => add(a, scale(b, -1))

export const scale = (a: LinearCount, by: number): LinearCount => ({
  // `+ 0` turns -0 into 0, so that counts compare and print alike.
  perRepeat: a.perRepeat * by + 0,
  plus: a.plus * by + 0,
})

export const same = (a: LinearCount, b: LinearCount): boolean =>
  a.perRepeat === b.perRepeat && a.plus === b.plus

/** The count for n repeats. */
export const at = (a: LinearCount, n: number): number => a.perRepeat * n + a.plus

/** The non-negative remainder of a by m (m > 0). */
export const modulo = (a: number, m: number): number => ((a % m) + m) % m

export function greatestCommonDivisor(a: number, b: number): number {
  let [x, y] = [Math.abs(a), Math.abs(b)]
  while (y > 0) [x, y] = [y, x % y]
  return x
}

/** All t with a·t ≡ b (mod m): t = first + k·step for k = 0, 1, …; null where there is none. m > 0. */
export function solveCongruence(a: number, b: number, m: number): { first: number; step: number } | null {
  const g = greatestCommonDivisor(a, m)
  if (modulo(b, g) !== 0) return null
  const step = m / g
  const [reduced, wanted] = [modulo(a / g, step), modulo(b / g, step)]
  // Extended Euclid for the inverse of `reduced` modulo `step`.
  let [oldR, r, oldS, s] = [reduced, step, 1, 0]
  while (r !== 0) {
    const q = Math.floor(oldR / r)
    ;[oldR, r] = [r, oldR - q * r]
    ;[oldS, s] = [s, oldS - q * s]
  }
  return { first: Number((BigInt(modulo(oldS, step)) * BigInt(wanted)) % BigInt(step)), step }
}
