import { effectOfHands } from './effect.ts'
import { emptyHands, type Hands, makeRight, must, takeLeft } from './in-hands.ts'
import { loopBelow, strandLoop } from './loops.ts'
import { fetchHeld, giveBack, hold, slip, unhold } from './moving.ts'
import type { Effect, Motion, Mount } from './stitch.ts'
import { draw, drop, enter, over, pass } from './working.ts'

/**
 * Performs motions on loops of a left needle whose loop i + 1 sits as `mounts[i]` (as usual where that is
 * silent; held loops sit as usual), and finds what they do. Throws on motions that no hands can make.
 *
 * The rules: the loop that the tip enters first lies on top on the knit face; loops passed over lie above
 * those, the one farthest from the tip outermost. Slipping together from the left turns the order over.
 */
export function perform(motions: readonly Motion[], mounts: readonly Mount[] = []): Effect {
  const hands = emptyHands(mounts)
  for (const motion of motions) move(hands, motion)
  return effectOfHands(hands)
}

/** One motion more. */
export function move(hands: Hands, motion: Motion): void {
  must(!hands.wrapped || motion.do === 'draw', `${motion.do}: the wrapped yarn must be drawn through first`)
  // The key picks the handler of just this motion, which TypeScript cannot follow through the table.
  handlers[motion.do](hands, motion as never)
}

type Handlers = { readonly [D in Motion['do']]: (hands: Hands, motion: Extract<Motion, { do: D }>) => void }

const handlers: Handlers = {
  slip,
  return: (hands, { loops }) => giveBack(hands, loops),
  meet: (hands, { loops }) => giveBack(hands, loops),
  enter,
  enterBelow: (hands, { of }) => {
    hands.entered = { loops: [loopBelow(of)], face: 'knit', adds: -1 }
  },
  liftStrand: (hands, { from }) => {
    hands.left.unshift(strandLoop(from))
  },
  wrap: (hands) => {
    must(hands.entered !== null, 'wrap: the tip is in no loop')
    hands.wrapped = true
  },
  draw,
  drop,
  over,
  pass,
  hold,
  unhold,
  park: (hands, { loops }) => {
    hands.parked.push(...takeLeft(hands, loops))
  },
  fetch: (hands, { loops }) => fetchHeld(hands, loops),
  yarn: (hands, { to }) => {
    hands.yarnAt = to === 'front' ? 'near' : 'far'
  },
  castOn: (hands) => {
    makeRight(hands, { from: 'castOn' })
  },
  bead: (hands) => {
    hands.beaded = true
  },
}
