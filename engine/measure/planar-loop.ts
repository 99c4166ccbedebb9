/** A plain loop drawn flat. All lengths in one unit of the caller's choice. */
export interface FlatLoop {
  /** Between two neighbouring stitches. */
  readonly width: number
  /** Between two rows. */
  readonly height: number
  /** Of the arcs over and under, along the middle of the yarn. */
  readonly radius: number
}

/**
 * Yarn in a plain loop of two arcs joined by straight legs that touch both: the whole, one arc (between the points where
 * its legs begin) and one leg. Null legs cannot be: needs a distance between the arcs' middles of at least two radii.
 * Chamberlain's kind of model; the formula is derived in tests/reference/geometry.json, where its published value stands.
 */
export function planarLoop({ width, height, radius }: FlatLoop): {
  readonly length: number
  readonly arc: number
  readonly leg: number
} {
  const apart = Math.hypot(width / 2, height)
  const leg = Math.sqrt(apart ** 2 - 4 * radius ** 2)
  const half = Math.PI / 2 + Math.atan2(height, width / 2) - Math.acos((2 * radius) / apart)
  const arc = 2 * radius * half
  return { length: 2 * arc + 2 * leg, arc, leg }
}
