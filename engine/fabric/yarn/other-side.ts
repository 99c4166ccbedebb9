import type { Point } from './points.ts'
import type { Yarn } from './yarn.ts'

/** The same yarn seen from its other side: left is right, and what was in front lies behind. */
export function otherSide(yarn: Yarn): Yarn {
  const turned = ([x, y]: Point): Point => [-x, y]
  return {
    ...yarn,
    side: yarn.side === 'right' ? 'wrong' : 'right',
    pieces: yarn.pieces.map((piece) => ({
      ...piece,
      curve: piece.curve.map((value, i) => (i % 2 === 0 ? -value : value)),
      depth: -piece.depth,
    })),
    beads: yarn.beads.map((bead) => ({ ...bead, at: turned(bead.at), along: turned(bead.along) })),
    places: yarn.places.map(({ base, head }) => ({ base: turned(base), head: turned(head) })),
  }
}
