import { type HandLoop, type NewDraft, newLoop, oldLoop, type Turn } from './loops.ts'
import type { Mount } from './stitch.ts'

/**
 * What the hands hold. The left needle is as long as is asked for: loops appear on it when a motion reaches
 * them.
 */
export interface Hands {
  readonly mounts: readonly Mount[]
  /** From the tip on. */
  left: HandLoop[]
  /** In the order in which they came: the one nearest the tip last. */
  right: HandLoop[]
  cable: { readonly where: 'front' | 'back'; readonly loops: readonly HandLoop[] } | null
  /** Loops of a crossing by the side that they travel on. */
  readonly crossing: { readonly front: HandLoop[]; readonly back: HandLoop[] }
  /** What the right tip is in, entered first first, and the turn that working adds. */
  entered: {
    readonly loops: readonly HandLoop[]
    readonly face: 'knit' | 'purl'
    readonly adds: number
  } | null
  wrapped: boolean
  /** Drawn through since the last drop. */
  readonly worked: Set<HandLoop>
  /** Old loops met so far on the left needle. */
  reached: number
  fetched: number
  /** New loops so far. */
  made: number
  readonly parked: HandLoop[]
  /** The loop that was on the right needle before the stitch was passed over. */
  chained: boolean
  yarnAt: 'near' | 'far' | null
  /** A bead waits for the next loop. */
  beaded: boolean
}

export const emptyHands = (mounts: readonly Mount[]): Hands => ({
  mounts,
  left: [],
  right: [],
  cable: null,
  crossing: { front: [], back: [] },
  entered: null,
  wrapped: false,
  worked: new Set(),
  reached: 0,
  fetched: 0,
  made: 0,
  parked: [],
  chained: false,
  yarnAt: null,
  beaded: false,
})

/** Motions that no hands can make are a mistake in the catalogue, so they throw. */
export function must(holds: boolean, otherwise: string): asserts holds {
  if (!holds) throw new Error(otherwise)
}

/** The next loops of the left needle, from the tip on. */
export function nextLeft(hands: Hands, count: number): HandLoop[] {
  while (hands.left.length < count) {
    hands.left.push(oldLoop(hands.reached + 1, hands.mounts[hands.reached] ?? 'usual'))
    hands.reached += 1
  }
  return hands.left.slice(0, count)
}

/** A new loop comes on the right needle. */
export function makeRight(hands: Hands, draft: NewDraft, turn?: Turn): void {
  hands.made += 1
  hands.right.push(newLoop(hands.made, draft, turn))
}

export function takeLeft(hands: Hands, count: number): HandLoop[] {
  const taken = nextLeft(hands, count)
  hands.left = hands.left.slice(count)
  return taken
}

/** Loops that move while others wait on a cable needle travel on the other side of the work from those. */
export function noteCrossing({ cable, crossing }: Hands, loops: readonly HandLoop[]): void {
  if (cable !== null) crossing[cable.where === 'front' ? 'back' : 'front'].push(...loops)
}
