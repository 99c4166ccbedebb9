import { type Hands, makeRight, must, nextLeft, noteCrossing } from './in-hands.ts'
import { type HandLoop, isOld, type NewDraft } from './loops.ts'
import type { Motion } from './stitch.ts'

export function enter(hands: Hands, { loops, leg, as }: Motion & { do: 'enter' }): void {
  const next = nextLeft(hands, loops)
  // From the left (knitwise in front, purlwise behind) the tip meets the far loop first.
  const fromLeft = (as === 'knitwise') === (leg === 'front')
  hands.entered = {
    loops: fromLeft ? next.reverse() : next,
    face: as === 'knitwise' ? 'knit' : 'purl',
    adds: leg === 'front' ? -1 : 1,
  }
}

export function draw(hands: Hands): void {
  const { entered } = hands
  must(hands.wrapped && entered !== null, 'draw: no yarn was wrapped')
  const draft = {
    ...(entered.loops.every(isOld) ? throughLoops(entered) : throughBase(entered)),
    beaded: hands.beaded,
  }
  makeRight(hands, draft)
  noteCrossing(hands, entered.loops)
  for (const loop of entered.loops) if (loop.kind !== 'below') hands.worked.add(loop)
  if (entered.loops[0]?.kind === 'below') hands.entered = null
  hands.wrapped = false
  hands.beaded = false
}

type Entered = NonNullable<Hands['entered']>

const throughLoops = ({ loops, face, adds }: Entered): NewDraft => ({
  from: 'loops',
  face,
  through: loops.map((loop) => ({ loop, turn: loop.turn + adds })),
})

function throughBase({ loops, face, adds }: Entered): NewDraft {
  const [base] = loops
  must(
    loops.length === 1 && base !== undefined && base.kind !== 'new',
    'draw: a strand is worked alone, a new loop not at all',
  )
  return base.kind === 'strand'
    ? { from: 'strand', face, strandTurn: base.turn + adds }
    : { from: 'below', face, below: base.below }
}

export function drop(hands: Hands): void {
  must(hands.worked.size > 0, 'drop: nothing was drawn through the loops on the left needle')
  hands.left = hands.left.filter((loop) => !hands.worked.has(loop))
  hands.worked.clear()
  hands.entered = null
}

/** A backward yarn over comes up behind the needle and down in front, so its leading leg is at the back. */
export function over(hands: Hands, { turns, long, backward }: Motion & { do: 'over' }): void {
  for (let i = 0; i < (long ? 1 : turns); i += 1) makeRight(hands, { from: 'air' }, backward ? -1 : 1)
}

export function pass(hands: Hands, motion: Motion & { do: 'pass' }): void {
  if (motion.from === 'right') passFromRight(hands, motion)
  else passFromLeft(hands, motion)
}

function passFromRight(hands: Hands, { loops, over: under }: Motion & { do: 'pass' }): void {
  const { right } = hands
  if (right.length === under && loops === 1 && !hands.chained) {
    // Nothing of this stitch is left to pass: it is the loop from before, as in binding off.
    hands.chained = true
    return
  }
  const first = right.length - under - loops
  must(first >= 0, `pass ${loops} over ${under}: the right needle has ${right.length}`)
  const passed = right.slice(first, first + loops)
  hands.right = [
    ...right.slice(0, first),
    ...right.slice(first + loops).map((loop) => ringed(loop, passed, 'right')),
  ]
}

function passFromLeft(hands: Hands, { loops, over: under }: Motion & { do: 'pass' }): void {
  const next = nextLeft(hands, under + loops)
  const passed = next.slice(under).reverse()
  hands.left = [
    ...next.slice(0, under).map((loop) => ringed(loop, passed, 'left')),
    ...hands.left.slice(under + loops),
  ]
}

/** A new loop once others were passed over it, outermost first. */
function ringed(loop: HandLoop, passed: readonly HandLoop[], from: 'left' | 'right'): HandLoop {
  must(loop.draft !== null, 'pass: only new loops can be passed over')
  must(
    passed.every(({ kind }) => kind !== 'strand'),
    'pass: a strand is worked, not passed',
  )
  // From the right over a new knit loop, a ring comes flat as it does when knitted through the back; else the
  // other way.
  const adds = (from === 'right') === (loop.draft.face === 'knit') ? 1 : -1
  const rings = passed.filter(isOld).map((ring) => ({ loop: ring, turn: ring.turn + adds }))
  const banded = loop.draft.banded || rings.length < passed.length
  return { ...loop, draft: { ...loop.draft, through: [...rings, ...loop.draft.through], banded } }
}
