/** A place or a direction in stitch widths: x goes right, y up, both as the knitter sees them. */
export type Point = readonly [number, number]

/** One cubic or several in a row: the start, then two handles and an end for each. */
export type Curve = readonly number[]

export const point = (x: number, y: number): Point => [x, y]
export const plus = (a: Point, b: Point, times = 1): Point => [a[0] + b[0] * times, a[1] + b[1] * times]
export const mix = (a: Point, b: Point, part: number): Point => [
  a[0] + (b[0] - a[0]) * part,
  a[1] + (b[1] - a[1]) * part,
]
export const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])
export const times = (a: Point, by: number): Point => [a[0] * by, a[1] * by]

/** The direction from a to b; `otherwise` where they are one place. */
export function toward(a: Point, b: Point, otherwise: Point): Point {
  const length = apart(a, b)
  return length < 1e-6 ? otherwise : [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
}

/** One cubic from its ends and the handles at them, given as ways from the ends. */
export const cubic = (a: Point, fromA: Point, fromB: Point, b: Point): Curve => [
  a[0],
  a[1],
  a[0] + fromA[0],
  a[1] + fromA[1],
  b[0] + fromB[0],
  b[1] + fromB[1],
  b[0],
  b[1],
]

/** A straight way, as a cubic. */
export const straight = (a: Point, b: Point): Curve => {
  const third = times([b[0] - a[0], b[1] - a[1]], 1 / 3)
  return cubic(a, third, times(third, -1), b)
}

/** Straight ways from point to point. */
export function polyline(points: readonly Point[]): Curve {
  const curve: number[] = []
  for (const [i, [x, y]] of points.entries()) {
    const [fromX, fromY] = points[i - 1] ?? [x, y]
    const [dx, dy] = [(x - fromX) / 3, (y - fromY) / 3]
    if (i > 0) curve.push(fromX + dx, fromY + dy, x - dx, y - dy)
    curve.push(x, y)
  }
  return curve
}

export const startOf = (curve: Curve): Point => [at(curve, 0), at(curve, 1)]
export const endOf = (curve: Curve): Point => [at(curve, curve.length - 2), at(curve, curve.length - 1)]
export const cubicsIn = (curve: Curve): number => (curve.length - 2) / 6

/** A number that must be there. A stray index would tangle the yarn without a word. */
export function at(numbers: ArrayLike<number>, index: number): number {
  const value = numbers[index]
  if (value === undefined) throw new Error(`needles: there is no number ${index} of ${numbers.length}`)
  return value
}

/** The same way, run from its end. */
export function backwards(curve: Curve): Curve {
  const result: number[] = []
  for (let i = curve.length - 2; i >= 0; i -= 2) result.push(at(curve, i), at(curve, i + 1))
  return result
}

/** A curve moved by a way that may change along it, from 0 at its start to 1 at its end. */
export function moved(curve: Curve, by: (part: number) => Point): Curve {
  const last = curve.length / 2 - 1
  const result: number[] = []
  for (let i = 0; i <= last; i++) {
    const [x, y] = by(i / last)
    result.push(at(curve, 2 * i) + x, at(curve, 2 * i + 1) + y)
  }
  return result
}

/** Curves that follow each other, as one. */
export function joined(curves: readonly Curve[]): Curve {
  const all: number[] = []
  for (const curve of curves)
    for (let i = all.length === 0 ? 0 : 2; i < curve.length; i++) all.push(at(curve, i))
  return all
}

/** The first cubic of a curve, cut at `part`; what follows it stays with the second half. */
export function cutFirst(curve: Curve, part: number): readonly [Curve, Curve] {
  const p = (i: number): Point => [at(curve, 2 * i), at(curve, 2 * i + 1)]
  const [a, b, c] = [mix(p(0), p(1), part), mix(p(1), p(2), part), mix(p(2), p(3), part)]
  const [d, e] = [mix(a, b, part), mix(b, c, part)]
  const m = mix(d, e, part)
  return [
    [...p(0), ...a, ...d, ...m],
    [...m, ...e, ...c, ...p(3), ...curve.slice(8)],
  ]
}

/** The same way in so many cubics, at least as many as it has: the longest one is cut in halves until there are enough. */
export function inCubics(curve: Curve, count: number): Curve {
  if (cubicsIn(curve) >= count) return curve
  const parts = Array.from({ length: cubicsIn(curve) }, (_, i): Curve => curve.slice(6 * i, 6 * i + 8))
  while (parts.length < count) {
    const lengths = parts.map((part) => apart(startOf(part), endOf(part)))
    const longest = lengths.indexOf(Math.max(...lengths))
    parts.splice(longest, 1, ...cutFirst(parts[longest] ?? [], 0.5))
  }
  return joined(parts)
}

/** A way cut into pieces of so many cubics each, which must be as many as it has in all. */
export function shared(curve: Curve, counts: readonly number[]): Curve[] {
  let from = 0
  return counts.map((count) => {
    const piece = curve.slice(6 * from, 6 * (from + count) + 2)
    from += count
    return piece
  })
}

/** From 0 to 1 while x goes from a to b, evenly at both ends. */
export function eased(x: number, a: number, b: number): number {
  const part = Math.min(1, Math.max(0, (x - a) / (b - a)))
  return part * part * (3 - 2 * part)
}

/** A straight line: how high it lies above x. */
export interface Line {
  readonly rise: number
  readonly height: number
}

export const heightAt = ({ rise, height }: Line, x: number): number => height + rise * x

/** The direction of a line toward the right, and square to it upward. */
export function alongLine({ rise }: Line): { readonly right: Point; readonly up: Point } {
  const length = Math.hypot(1, rise)
  return { right: [1 / length, rise / length], up: [-rise / length, 1 / length] }
}
