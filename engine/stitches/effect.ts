import { type Hands, must } from './in-hands.ts'
import { type Draft, type HandLoop, isOld, mountOf, twistOf } from './loops.ts'
import type { Effect, Made } from './stitch.ts'

/** What was done, once the hands are at rest: everything in its place, nothing entered and left. */
export function effectOfHands(hands: Hands): Effect {
  mustBeAtRest(hands)
  const takes = takenFrom(hands)
  const numberOf = (loop: HandLoop): number => (loop.kind === 'held' ? takes + loop.number : loop.number)
  const right = hands.right.map((loop) => madeOf(loop, numberOf))
  const made = hands.chained ? [] : right
  const living = new Set([
    ...made.flatMap(({ through, slipped }) => [...through, slipped]),
    ...hands.parked.map(numberOf),
  ])
  return {
    takes,
    held: hands.fetched,
    parked: hands.parked.length,
    made,
    boundOff: numbersTo(takes + hands.fetched).filter((number) => !living.has(number)),
    chain: hands.chained ? (right[0] ?? null) : null,
    inFront: hands.crossing.front.map(numberOf),
  }
}

export const numbersTo = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1)

function mustBeAtRest({
  cable,
  worked,
  wrapped,
  entered,
  left,
  right,
  parked,
  chained,
  beaded,
}: Hands): void {
  must(cable === null, 'the cable needle still holds loops')
  must(worked.size === 0 && !wrapped && entered === null, 'loops were entered and not dropped')
  must(
    left.every(({ kind }) => kind === 'old'),
    'the left needle keeps a loop that was not there before',
  )
  must(
    right.every(({ kind }) => kind !== 'strand'),
    'a strand was slipped and not worked',
  )
  must(parked.every(isOld), 'only loops of the row before can be put on a holder')
  must(!chained || right.length === 1, 'binding off leaves one loop in place of the one before')
  must(!beaded, 'a bead was slid up for no loop')
}

/**
 * The loops that left are those nearest the tip: what a stitch leaves on the left needle lies behind all that
 * it took.
 */
function takenFrom({ left, reached }: Hands): number {
  const takes = reached - left.length
  must(
    left.every(({ number }, i) => number === takes + i + 1),
    'a loop was jumped over on the left needle',
  )
  return takes
}

type NumberOf = (loop: HandLoop) => number

function madeOf(loop: HandLoop, numberOf: NumberOf): Made {
  const { draft } = loop
  const through = draft?.through ?? []
  const twists = through.map(({ turn }) => twistOf(turn))
  return {
    through: through.map((parent) => numberOf(parent.loop)),
    twisted: twists.map((twist) => twist !== null),
    twists,
    mount: mountOf(loop.turn),
    ...(draft === null ? slippedOnly(numberOf(loop), loop) : newly(draft)),
  }
}

type Rest = Omit<Made, 'through' | 'twisted' | 'twists' | 'mount'>

/** A slipped loop keeps its look; `face` has nothing to say there. */
const slippedOnly = (number: number, { float }: HandLoop): Rest => ({
  face: 'knit',
  slipped: number,
  from: 'loops',
  strandTwist: null,
  below: null,
  float,
  banded: false,
  beaded: false,
})

const newly = ({ face, from, strandTurn, below, banded, beaded }: Draft): Rest => ({
  face,
  slipped: null,
  from,
  strandTwist: twistOf(strandTurn),
  below,
  float: null,
  banded,
  beaded,
})
