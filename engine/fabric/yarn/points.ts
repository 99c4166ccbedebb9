/** A place or a direction: x to the right, y up. */
export type Point = readonly [number, number]

/** A run of cubics: the start, then two handles and an end for each. */
export type Curve = readonly number[]

export const plus = (a: Point, b: Point, times = 1): Point => [a[0] + b[0] * times, a[1] + b[1] * times]
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]]
export const times = (a: Point, k: number): Point => [a[0] * k, a[1] * k]
export const mix = (a: Point, b: Point, part: number): Point => [
  a[0] + (b[0] - a[0]) * part,
  a[1] + (b[1] - a[1]) * part,
]
export const size = (a: Point): number => Math.hypot(a[0], a[1])
export const apart = (a: Point, b: Point): number => size(minus(a, b))
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1]
/** A quarter turn to the left: up from what points right. */
export const turnedLeft = (a: Point): Point => [-a[1], a[0]]
/** A quarter turn to the right: right from what points up. */
export const turnedRight = (a: Point): Point => [a[1], -a[0]]

/** The direction of a, or `otherwise` where it has none. */
export function unit(a: Point, otherwise: Point): Point {
  const length = size(a)
  return length > 1e-9 ? [a[0] / length, a[1] / length] : otherwise
}

/** Cubics through points, each given with the handle that leaves it; the handle that arrives is its opposite unless said. */
export function curveThrough(
  ...stops: readonly { readonly at: Point; readonly out: Point; readonly in?: Point }[]
): Curve {
  const [first, ...rest] = stops
  if (first === undefined) return []
  const numbers: number[] = [...first.at]
  let before = first
  for (const stop of rest) {
    numbers.push(...plus(before.at, before.out), ...plus(stop.at, stop.in ?? stop.out, -1), ...stop.at)
    before = stop
  }
  return numbers
}

export const startOf = (curve: Curve): Point => [curve[0] ?? Number.NaN, curve[1] ?? Number.NaN]
export const endOf = (curve: Curve): Point => [curve.at(-2) ?? Number.NaN, curve.at(-1) ?? Number.NaN]

/** The same way run from its end. */
export function reversed(curve: Curve): Curve {
  const result: number[] = []
  for (let i = curve.length - 2; i >= 0; i -= 2)
    result.push(curve[i] ?? Number.NaN, curve[i + 1] ?? Number.NaN)
  return result
}

/** One cubic cut in two at `part`. */
export function cut(curve: Curve, part: number): readonly [Curve, Curve] {
  const point = (i: number): Point => [curve[2 * i] ?? Number.NaN, curve[2 * i + 1] ?? Number.NaN]
  const [p0, p1, p2, p3] = [point(0), point(1), point(2), point(3)]
  const [a, b, c] = [mix(p0, p1, part), mix(p1, p2, part), mix(p2, p3, part)]
  const [d, e] = [mix(a, b, part), mix(b, c, part)]
  const m = mix(d, e, part)
  return [
    [...p0, ...a, ...d, ...m],
    [...m, ...e, ...c, ...p3],
  ]
}
