import { emptyHands, type Hands, nextLeft } from './in-hands.ts'
import type { HandLoop } from './loops.ts'
import { move } from './perform.ts'
import type { Motion, Mount } from './stitch.ts'

/** A loop that a stitch deals with, by a name that it keeps: 'old 1' is the loop nearest the left tip, 'new 1' the first that is made. */
export type HandLoopName = `${HandLoop['kind']} ${number}`

/** What the hands hold between two motions. */
export interface HandsNow {
  /** On the left needle, from the tip on, as far as the stitch reaches. */
  readonly left: readonly HandLoopName[]
  /** On the right needle since the stitch began; the one nearest the tip comes last. */
  readonly right: readonly HandLoopName[]
  readonly cable: { readonly where: 'front' | 'back'; readonly loops: readonly HandLoopName[] } | null
  readonly parked: readonly HandLoopName[]
  /** On the left needle still, with a new loop drawn through. */
  readonly worked: readonly HandLoopName[]
  /**
   * How far the legs of each loop that is named here are turned, in quarter turns: 1 sits as usual, -1 turned, and more
   * is twisted besides.
   */
  readonly turns: ReadonlyMap<HandLoopName, number>
}

/** What the hands hold before a stitch and after each of its motions: one more than there are motions. */
export function performInTurn(
  motions: readonly Motion[],
  mounts: readonly Mount[],
  takes: number,
): HandsNow[] {
  const hands = emptyHands(mounts)
  nextLeft(hands, takes)
  return [
    now(hands),
    ...motions.map((motion) => {
      move(hands, motion)
      return now(hands)
    }),
  ]
}

const nameOf = ({ kind, number }: HandLoop): HandLoopName => `${kind} ${number}`

function now({ left, right, cable, parked, worked }: Hands): HandsNow {
  const all = [...left, ...right, ...(cable?.loops ?? []), ...parked]
  return {
    left: left.map(nameOf),
    right: right.map(nameOf),
    cable: cable && { where: cable.where, loops: cable.loops.map(nameOf) },
    parked: parked.map(nameOf),
    worked: [...worked].map(nameOf),
    turns: new Map(all.map((loop) => [nameOf(loop), loop.turn])),
  }
}
