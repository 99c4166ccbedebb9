import type { Curve, Point, Yarn } from '../../engine/fabric/index.ts'

/** The yarn of one fabric on its way from one shape (t = 0) to another (t = 1): each point goes straight to its new place. */
export function blendYarns(from: Yarn, to: Yarn, t: number): Yarn {
  const number = (a: number, b: number): number => a + (b - a) * t
  const point = (a: Point, b: Point): Point => [number(a[0], b[0]), number(a[1], b[1])]
  const curve = (a: Curve, b: Curve): Curve => a.map((value, i) => number(value, partner(b, i)))
  return {
    ...from,
    pieces: from.pieces.map((a, i) => ({ ...a, curve: curve(a.curve, partner(to.pieces, i).curve) })),
    beads: from.beads.map((a, i) => {
      const b = partner(to.beads, i)
      return { ...a, at: point(a.at, b.at), along: point(a.along, b.along) }
    }),
    places: from.places.map((a, i) => {
      const b = partner(to.places, i)
      return { base: point(a.base, b.base), head: point(a.head, b.head) }
    }),
  }
}

/** What stands at the same place of the other list. Throws where nothing does: that would be the yarn of another fabric. */
function partner<T>(list: readonly T[], index: number): T {
  const found = list[index]
  if (found === undefined) throw new Error('only yarns of one fabric can be blended')
  return found
}
