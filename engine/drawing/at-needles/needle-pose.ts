import { alongLine, type Curve, heightAt, type Point, plus, polyline, toward } from './geometry.ts'
import type { NeedlePlace } from './needle-places.ts'
import { sizes } from './sizes.ts'

/** A needle's half thickness at so far from its tip, in stitch widths. */
const taper: readonly (readonly [number, number])[] = [
  [0, 0.018],
  [0.03, 0.038],
  [0.12, 0.058],
  [0.3, 0.09],
  [0.55, 0.128],
  [0.85, 0.158],
  [1.2, sizes.needle],
  [16, sizes.needle],
]

function halfAt(distance: number): number {
  let [near, before] = [0, 0]
  for (const [far, half] of taper) {
    if (distance <= far)
      return far === near ? half : before + ((half - before) * (distance - near)) / (far - near)
    near = far
    before = half
  }
  return sizes.needle
}

export type NeedlePart = 'body' | 'upper' | 'lower' | 'gleam'

/** A stretch of a needle, from `from` to `to` along it, counted from its tip: always with the same number of curves. */
export function needleParts(
  { line, tip }: NeedlePlace,
  side: 'left' | 'right',
  from: number,
  to: number,
): ReadonlyMap<NeedlePart, Curve> {
  const { right, up } = alongLine(line)
  const end: Point = [tip, heightAt(line, tip)]
  const away = side === 'left' ? -1 : 1
  const stops = taper.map(([distance]) => Math.min(to, Math.max(from, distance)))
  const edge = (turn: 1 | -1): Point[] =>
    stops.map((d) => plus(plus(end, right, away * d), up, turn * halfAt(d)))
  const [upper, lower] = [edge(1), edge(-1)]
  const gleam = stops
    .slice(3)
    .map((d) => plus(plus(end, right, away * Math.max(d, Math.min(to, 0.5))), up, halfAt(d) * 0.42))
  return new Map<NeedlePart, Curve>([
    ['body', polyline([...upper, ...lower.toReversed()])],
    ['upper', polyline(upper)],
    ['lower', polyline(lower)],
    ['gleam', polyline(gleam)],
  ])
}

/** A short needle with two tips, for stitches that wait while others pass them. */
export function cableCurve(middle: Point, half: number): Curve {
  const [x, y] = middle
  const r = sizes.needle * 0.8
  const points: Point[] = [
    [x - half, y],
    [x - half + 0.5, y + r],
    [x + half - 0.5, y + r],
    [x + half, y],
    [x + half - 0.5, y - r],
    [x - half + 0.5, y - r],
    [x - half, y],
  ]
  return polyline(points)
}

/** A thin pin from end to end, for loops that wait longer than a stitch. */
export function pinCurve(from: Point, to: Point): Curve {
  const along = toward(from, to, [1, 0])
  const up: Point = [-along[1] * pinHalf, along[0] * pinHalf]
  const [a, b] = [plus(from, along, 0.1), plus(to, along, -0.1)]
  return polyline([from, plus(a, up), plus(b, up), to, plus(b, up, -1), plus(a, up, -1), from])
}

const pinHalf = 0.065
