import type { Motion } from './stitch.ts'

/** The motions that stitches are put together from, under the names that a knitter gives them. */

const drawThrough: readonly Motion[] = [{ do: 'wrap' }, { do: 'draw' }]

/** Into the loops and a new loop drawn through, all still on the left needle. */
export const into = (
  loops: number,
  as: 'knitwise' | 'purlwise',
  leg: 'front' | 'back' = 'front',
): Motion[] => [{ do: 'enter', loops, leg, as }, ...drawThrough]

export const drop: Motion = { do: 'drop' }

export const knit = (loops = 1): Motion[] => [...into(loops, 'knitwise'), drop]
export const knitBack = (loops = 1): Motion[] => [...into(loops, 'knitwise', 'back'), drop]
export const purl = (loops = 1): Motion[] => [...into(loops, 'purlwise'), drop]
export const purlBack = (loops = 1): Motion[] => [...into(loops, 'purlwise', 'back'), drop]

export const slip = (as: 'knitwise' | 'purlwise', times = 1): Motion[] =>
  Array.from({ length: times }, () => ({ do: 'slip', loops: 1, as, together: false }))

export const slipTogether = (as: 'knitwise' | 'throughBack', loops: number): Motion => ({
  do: 'slip',
  loops,
  as,
  together: true,
})

export const giveBack = (loops: number): Motion => ({ do: 'return', loops })
export const meet = (loops: number): Motion => ({ do: 'meet', loops })
export const passOver = (loops: number, over = 1): Motion => ({ do: 'pass', loops, over, from: 'right' })
export const passNextOver: Motion = { do: 'pass', loops: 1, over: 1, from: 'left' }
export const yarnOver = (turns = 1, { long = false, backward = false } = {}): Motion => ({
  do: 'over',
  turns,
  long,
  backward,
})
export const yarnTo = (to: 'front' | 'back'): Motion => ({ do: 'yarn', to })

/** Slip loops knitwise one at a time and knit them together through their backs: ssk, sssk. */
export const slipSlipKnit = (loops: number): Motion[] => [
  ...slip('knitwise', loops),
  meet(loops),
  ...knitBack(loops),
]

/** The purl form: slipped knitwise, returned as they now sit, purled together through their backs. */
export const slipSlipPurl = (loops: number): Motion[] => [
  ...slip('knitwise', loops),
  giveBack(loops),
  ...purlBack(loops),
]

/** The new loop goes back, the next one is passed over it, and it is slipped again. */
export const returnAndPass: readonly Motion[] = [giveBack(1), passNextOver, ...slip('purlwise')]

/**
 * The same after a purl, with the next loop turned first. Passed over a purl from the left as it sits, it
 * would come out twisted; this is what makes the stitch the exact back of a slipped stitch passed over.
 */
export const turnNextReturnAndPass: readonly Motion[] = [
  ...slip('knitwise'),
  giveBack(2),
  passNextOver,
  ...slip('purlwise'),
]

/** Loops on a cable needle, the ones behind them worked, then they. */
export const cross = (
  held: number,
  where: 'front' | 'back',
  work: readonly Motion[],
  workHeld: readonly Motion[],
): Motion[] => [{ do: 'hold', loops: held, where }, ...work, { do: 'unhold' }, ...workHeld]

/** The same motions with every loop drawn up long. */
export const loosely = (motions: readonly Motion[]): Motion[] =>
  motions.map((motion) => (motion.do === 'draw' ? { ...motion, loosely: true } : motion))

/** Several loops from one, which stays on the left needle until all are made. */
export const severalInOne = (parts: readonly ('k' | 'p' | 'yo')[]): Motion[] => [
  ...parts.flatMap((part) =>
    part === 'yo' ? [yarnOver()] : into(1, part === 'k' ? 'knitwise' : 'purlwise'),
  ),
  drop,
]
