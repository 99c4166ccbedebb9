/** x to the right, y down, in cells: a cell is 1 wide and 1 high, wide symbols go on to the right. */
export type Point = readonly [number, number]

/** One stroke of a chart symbol. How thick it is, and how large a dot, is the drawing's business. */
export type Stroke =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | { readonly kind: 'polyline'; readonly points: readonly Point[] }
  | { readonly kind: 'circle'; readonly at: Point; readonly radius: number; readonly filled: boolean }
  /** Cubic curves one after the other: each two control points and an end. */
  | {
      readonly kind: 'curve'
      readonly from: Point
      readonly parts: readonly CurvePart[]
      readonly filled: boolean
    }
  | { readonly kind: 'dot'; readonly at: Point }
  /** A number, by its middle. */
  | { readonly kind: 'digit'; readonly text: string; readonly at: Point; readonly size: number }
  /** A whole cell in a light tint. */
  | { readonly kind: 'shade' }
  /** Thin lines that give a tint a shape of its own. */
  | { readonly kind: 'hatch'; readonly lines: readonly (readonly [Point, Point])[] }

export type CurvePart = readonly [number, number, number, number, number, number]

export const line = (x1: number, y1: number, x2: number, y2: number): Stroke => ({
  kind: 'line',
  from: [x1, y1],
  to: [x2, y2],
})

export const polyline = (...points: Point[]): Stroke => ({ kind: 'polyline', points })

export const ring = (x: number, y: number, radius: number): Stroke => ({
  kind: 'circle',
  at: [x, y],
  radius,
  filled: false,
})

export const dot = (x: number, y: number): Stroke => ({ kind: 'dot', at: [x, y] })

export const digit = (text: string | number, x: number, y: number, size = 0.46): Stroke => ({
  kind: 'digit',
  text: String(text),
  at: [x, y],
  size,
})

export const curve = (from: Point, ...parts: CurvePart[]): Stroke => ({
  kind: 'curve',
  from,
  parts,
  filled: false,
})

/** Left and right exchanged, for a symbol `cells` wide. Digits stay readable. */
export const mirrored = (strokes: readonly Stroke[], cells = 1): Stroke[] =>
  strokes.map((stroke) => mirroredStroke(stroke, cells))

function mirroredStroke(stroke: Stroke, cells: number): Stroke {
  const over = ([x, y]: Point): Point => [cells - x, y]
  switch (stroke.kind) {
    case 'line':
      return { ...stroke, from: over(stroke.from), to: over(stroke.to) }
    case 'hatch':
      return { ...stroke, lines: stroke.lines.map(([from, to]) => [over(from), over(to)] as const) }
    case 'polyline':
      return { ...stroke, points: stroke.points.map(over) }
    case 'curve':
      return {
        ...stroke,
        from: over(stroke.from),
        parts: stroke.parts.map(([a, b, c, d, e, f]) => [cells - a, b, cells - c, d, cells - e, f] as const),
      }
    case 'circle':
    case 'dot':
    case 'digit':
      return { ...stroke, at: over(stroke.at) }
    case 'shade':
      return stroke
  }
}

/** An oval, or a long loop with round ends, from (x1, y1) to (x2, y2). */
export function oval(x1: number, y1: number, x2: number, y2: number): Stroke {
  const middle = (y1 + y2) / 2
  const round = Math.min((x2 - x1) / 2, y2 - y1)
  const [inX, inY] = [round * 0.448, ((y2 - y1) / 2) * 0.448]
  return curve(
    [x1, middle],
    [x1, y1 + inY, x1 + inX, y1, x1 + round, y1],
    [x1 + round, y1, x2 - round, y1, x2 - round, y1],
    [x2 - inX, y1, x2, y1 + inY, x2, middle],
    [x2, y2 - inY, x2 - inX, y2, x2 - round, y2],
    [x2 - round, y2, x1 + round, y2, x1 + round, y2],
    [x1 + inX, y2, x1, y2 - inY, x1, middle],
  )
}

/** Strokes from one head to feet: stitches drawn into one. The head stands over the foot that lies in front. */
export const fan = (head: Point, feetX: readonly number[], feetY: number): Stroke[] =>
  feetX.map((x) => line(head[0], head[1], x, feetY))

export type End = 'knit' | 'purl' | 'yarn over'

/** One stitch that becomes several: a stem below, a riser in each cell, each ending in what is made there. From the left. */
export function rake(ends: readonly End[]): Stroke[] {
  const cells = ends.length
  return [
    line(cells / 2, 0.86, cells / 2, 0.56),
    line(0.5, 0.56, cells - 0.5, 0.56),
    ...ends.flatMap((end, index) => riser(index + 0.5, end)),
    ...(cells > 2 ? [digit(cells, cells / 2 + 0.3, 0.79, 0.4)] : []),
  ]
}

function riser(x: number, end: End): Stroke[] {
  if (end === 'knit') return [line(x, 0.56, x, 0.18)]
  return [line(x, 0.56, x, 0.38), end === 'purl' ? dot(x, 0.22) : ring(x, 0.24, 0.14)]
}

/** Vertical strokes in each cell with a band across them: stitches that one passed over them holds together. */
export const banded = (cells: number, bandEnd: number): Stroke[] => [
  ...Array.from({ length: cells }, (_, index) => line(index + 0.5, 0.18, index + 0.5, 0.82)),
  line(0.18, 0.5, bandEnd, 0.5),
]

/**
 * Strands that change places, the front ones whole and rising to the right; those behind broken where they pass.
 * `purled` strands behind end in a dot.
 */
export function crossing(front: number, behind: number, purled: boolean): Stroke[] {
  const [low, high] = [0.84, 0.16]
  const strands = (count: number, first: number, shift: number) =>
    Array.from({ length: count }, (_, i) => ({ foot: first + i + 0.5, shift }))
  const fronts = strands(front, 0, behind)
  const backs = strands(behind, front, -front)
  return [
    ...fronts.map(({ foot, shift }) => line(foot, low, foot + shift, high)),
    ...backs.flatMap((back) => {
      // How far up the two strands meet, 0 at the feet and 1 at the heads.
      const meets = fronts.map((ahead) => (back.foot - ahead.foot) / (ahead.shift - back.shift))
      const at = (part: number): Point => [back.foot + back.shift * part, low + (high - low) * part]
      const gap = 0.26 / (front + behind) + 0.05
      const [under, over] = [at(Math.min(...meets) - gap), at(Math.max(...meets) + gap)]
      const top = at(1)
      return [line(...at(0), ...under), purled ? dot(top[0], top[1] + 0.06) : line(...over, ...top)]
    }),
  ]
}
