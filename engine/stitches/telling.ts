import type { Motion } from './stitch.ts'
import type { Hold, Neighbours } from './yarn-over-words.ts'

/** What a teller must remember of the motions told so far. */
export interface Telling {
  readonly motions: readonly Motion[]
  readonly hold: Hold
  readonly neighbours: Neighbours
  /** Which motion is told now. */
  at: number
  yarn: 'front' | 'back' | null
  /** The face of the loop being drawn. */
  face: 'knit' | 'purl'
  /** What the tip enters next, where that is not simply the next stitches. */
  what: string | null
  /** The right tip is in the loops already. */
  inPlace: boolean
  /** Loops entered since the last drop. */
  entered: number
  /** The lifted strand is on the left needle. */
  strand: boolean
  /** Loops of this stitch on the right needle. */
  readonly right: Held[]
  /** Those given back to the left needle, from the tip on. */
  readonly returned: Held[]
}

export type Held = 'slipped' | 'new' | 'yarn over'

export const newTelling = (motions: readonly Motion[], hold: Hold, neighbours: Neighbours): Telling => ({
  motions,
  hold,
  neighbours,
  at: 0,
  yarn: null,
  face: 'knit',
  what: null,
  inPlace: false,
  entered: 0,
  strand: false,
  right: [],
  returned: [],
})

const faceOf = (motion: Motion): 'knit' | 'purl' | null =>
  motion.do === 'enter' ? (motion.as === 'knitwise' ? 'knit' : 'purl') : null

/** What stands beside a yarn over: a loop drawn in this stitch, else the stitch beside it in the row. */
export function besideYarnOver({ motions, at, neighbours }: Telling): Neighbours {
  const before = motions
    .slice(0, at)
    .map(faceOf)
    .findLast((face) => face !== null)
  const after = motions
    .slice(at + 1)
    .map(faceOf)
    .find((face) => face !== null)
  // Before a knit of the same stitch the yarn is simply taken to the back, as where nothing is known.
  return { before: before ?? neighbours.before, after: after === 'knit' ? null : (after ?? neighbours.after) }
}

/** A stitch that carried the yarn to one face says where it must go for the next one. */
export function yarnAfterwards({ motions, neighbours: { after } }: Telling): string[] {
  const carried = motions.findLast((motion) => motion.do === 'yarn')
  if (carried?.do !== 'yarn' || after === 'end') return []
  const other = carried.to === 'front' ? 'back' : 'front'
  const served = carried.to === 'front' ? 'purl' : 'knit'
  if (after === served) return []
  const next = carried.to === 'front' ? 'knit' : 'purl'
  const when = after === null ? `Before a ${next}, take` : `For the ${next} that follows, take`
  return [`${when} the yarn between the needles to the ${other}.`]
}
