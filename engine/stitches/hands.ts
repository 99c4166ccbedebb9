import * as say from './hand-words.ts'
import type { Motion, StitchEntry } from './stitch.ts'
import { tellMeet, tellPass, tellReturn, tellSlip } from './tell-moving.ts'
import { besideYarnOver, type Held, newTelling, type Telling, yarnAfterwards } from './telling.ts'
import {
  backwardYarnOverSteps,
  doubleYarnOverSteps,
  type Hold,
  type Neighbours,
  yarnOverSteps,
} from './yarn-over-words.ts'

/**
 * The motions of a stitch as short steps for a reader, for either way of holding the yarn. A yarn over needs
 * to know what stands beside it. Left and right, clockwise and anticlockwise stand for sides and turns alone,
 * so that swapping the words gives the steps for a knitter who works the other way round.
 */
export function handSteps(
  stitch: Pick<StitchEntry, 'motions'>,
  hold: Hold,
  neighbours: Neighbours = { before: null, after: null },
): string[] {
  const { motions, afterwards } = handStepsInTurn(stitch, hold, neighbours)
  return [...motions.flat(), ...afterwards]
}

/** The steps of each motion by itself, for whoever shows the motions one by one, and what is done after the last. */
export interface HandSteps {
  readonly motions: readonly (readonly string[])[]
  readonly afterwards: readonly string[]
}

export function handStepsInTurn(
  { motions }: Pick<StitchEntry, 'motions'>,
  hold: Hold,
  neighbours: Neighbours = { before: null, after: null },
): HandSteps {
  const telling = newTelling(motions, hold, neighbours)
  const steps = motions.map((motion, at) => {
    telling.at = at
    return tell(telling, motion)
  })
  return { motions: steps, afterwards: yarnAfterwards(telling) }
}

function tell(telling: Telling, motion: Motion): string[] {
  // The key picks the teller of just this motion, which TypeScript cannot follow through the table.
  return tellers[motion.do](telling, motion as never)
}

type Tellers = {
  readonly [D in Motion['do']]: (telling: Telling, motion: Extract<Motion, { do: D }>) => string[]
}

const tellers: Tellers = {
  slip: tellSlip,
  return: tellReturn,
  meet: tellMeet,
  enter: tellEnter,
  enterBelow: (_, { of }) => [say.belowWords[of]],
  liftStrand: tellLift,
  wrap: ({ hold, face }) => [say.wrapWords[hold][face]],
  draw: tellDraw,
  drop: tellDrop,
  over: tellOver,
  pass: tellPass,
  hold: (_, { loops, where }) => [say.toCableWords(loops, where)],
  unhold: () => [say.fromCableWords],
  park: (_, { loops }) => [say.parkWords(loops)],
  fetch: tellFetch,
  yarn: tellYarn,
  castOn: ({ hold }) => [say.castOnWords[hold]],
  bead: () => [say.beadWords],
}

function tellEnter(telling: Telling, motion: Motion & { do: 'enter' }): string[] {
  const { inPlace, yarn, what } = telling
  const [yarnNow, face] =
    motion.as === 'knitwise' ? (['back', 'knit'] as const) : (['front', 'purl'] as const)
  Object.assign(telling, {
    inPlace: false,
    yarn: yarnNow,
    face,
    entered: Math.max(telling.entered, motion.loops),
  })
  const words = inPlace
    ? say.inPlaceWords(motion.loops)
    : say.enterWords(motion, what ?? say.nextStitches(motion.loops))
  const step = yarn === yarnNow ? say.capital(words) : say.yarnFirstWords[yarnNow] + words
  return motion.loops >= 5 ? [step, say.manyTogetherWords] : [step]
}

function tellLift(telling: Telling, { from }: Motion & { do: 'liftStrand' }): string[] {
  telling.what = 'the lifted strand'
  telling.strand = true
  return [say.liftWords[from]]
}

function tellDraw(telling: Telling, { loosely }: Motion & { do: 'draw' }): string[] {
  telling.right.push('new')
  if (!telling.strand) telling.what = 'the same stitch'
  return [say.drawWords(telling.face, loosely === true)]
}

function tellDrop(telling: Telling): string[] {
  const { entered, strand } = telling
  Object.assign(telling, { what: null, entered: 0, strand: false })
  return [say.dropWords(entered, strand)]
}

function tellOver(telling: Telling, { turns, long, backward }: Motion & { do: 'over' }): string[] {
  const { right, hold } = telling
  right.push(...Array.from({ length: long ? 1 : turns }, (): Held => 'yarn over'))
  telling.yarn = null
  const beside = besideYarnOver(telling)
  if (backward) return backwardYarnOverSteps(hold, beside)
  return turns === 2 ? doubleYarnOverSteps(hold, beside) : yarnOverSteps(hold, beside)
}

function tellFetch(telling: Telling): string[] {
  telling.what = 'the last stitch and the held one'
  return [say.fetchWords]
}

function tellYarn(telling: Telling, { to }: Motion & { do: 'yarn' }): string[] {
  telling.yarn = to
  return [say.yarnWords[to]]
}
