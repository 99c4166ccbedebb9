import type { Motion } from './stitch.ts'
import type { Hold } from './yarn-over-words.ts'

/** Plain sentences for single motions. Left, right and the clock's way stand for sides and turns alone. */

const numbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const

export const inWords = (n: number): string => numbers[n] ?? String(n)

/** 'both', 'all three'. */
export const allOf = (n: number): string => (n === 1 ? 'it' : n === 2 ? 'both' : `all ${inWords(n)}`)

export const nextStitches = (n: number): string =>
  n === 1 ? 'the next stitch' : `the next ${inWords(n)} stitches`

type Enter = Motion & { do: 'enter' }

/** Where the tip goes; `what` names the loops. Begins small, since the yarn's place may come first. */
export function enterWords({ loops, leg, as }: Enter, what: string): string {
  const fromLeft = (as === 'knitwise') === (leg === 'front')
  const way = fromLeft ? 'from left to right' : 'from right to left'
  const legs = `, under the ${leg} ${loops === 1 ? 'leg' : 'legs'}`
  const first = loops === 1 ? '' : fromLeft ? ', the farthest one first' : ', the nearest one first'
  return `put the right tip into ${what}${loops === 1 ? '' : ' at once'}, ${way}${legs}${first}.`
}

export const wrapWords: Record<Hold, Record<'knit' | 'purl', string>> = {
  English: {
    knit: 'With the right hand, carry the yarn round the right tip, anticlockwise as seen from the tip.',
    purl: 'With the right hand, lay the yarn over the right tip and round it, anticlockwise as seen from the tip.',
  },
  Continental: {
    knit:
      'With the right tip, catch the yarn that runs behind from the left forefinger: ' +
      'it lies round the tip anticlockwise, as seen from the tip.',
    purl:
      'With the left forefinger, press the yarn down in front so that it lies over the right tip, ' +
      'anticlockwise as seen from the tip.',
  },
}

export function drawWords(face: 'knit' | 'purl', loosely: boolean): string {
  const way =
    face === 'knit' ? 'Draw the new loop through, toward you' : 'Push the new loop through, away from you'
  return loosely ? `${way}, and let it be long and loose.` : `${way}.`
}

export const dropWords = (loops: number, strand: boolean): string =>
  strand
    ? 'Let the strand go from the left needle.'
    : loops === 1
      ? 'Let the old stitch drop off the left needle.'
      : `Let ${allOf(loops)} old stitches drop off the left needle.`

const asIf = {
  knitwise: 'tip into it as if to knit',
  purlwise: 'tip into it as if to purl',
  throughBack: 'reach behind, tip into its back leg from the left',
} as const

export const slipWords = (as: keyof typeof asIf): string => {
  const way = as === 'throughBack' ? 'through the back' : as
  return `Slip the next stitch ${way}: ${asIf[as]}, and move it over unworked.`
}

export const slipTogetherWords = (as: keyof typeof asIf, what: string, loops: number): string => {
  const how = {
    knitwise: 'as if to knit them together',
    purlwise: 'as if to purl them together',
    throughBack: 'from the left, through their back legs',
  }[as]
  const order = as === 'purlwise' ? '' : ': they change places'
  return `Put the right tip into ${what} at once, ${how}, and move ${allOf(loops)} over unworked${order}.`
}

export const liftWords = {
  front: 'With the left tip, pick up the strand between the needles from front to back.',
  back: 'With the left tip, pick up the strand between the needles from back to front.',
} as const

export const belowWords = {
  next: 'Put the right tip, as if to knit, into the top of the stitch just below the next one.',
  newest:
    'With the left tip, lift the stitch two rows below the newest one on the right needle, ' +
    'and put the right tip into it as if to knit.',
} as const

export const yarnWords = {
  front: 'Bring the yarn to the front, between the needles.',
  back: 'Hold the yarn at the back.',
} as const

export const castOnWords: Record<Hold, string> = {
  English:
    'With the right hand, twist the working yarn into a loop, set it on the right needle and draw it snug.',
  Continental:
    'Dip the right tip under the yarn that runs to the left forefinger, lift it off twisted, and draw the loop snug.',
}

export const beadWords = 'Slide a bead down over the next stitch.'

/** For many loops at once, which can strain the hands. */
export const manyTogetherWords =
  'If the tip will not go in, do not force it: a fine crochet hook is kinder to your wrists.'

export const toCableWords = (loops: number, where: 'front' | 'back'): string =>
  `Move ${nextStitches(loops)} to a cable needle and hold ${loops === 1 ? 'it' : 'them'} at the ${where}.`

export const fromCableWords =
  'Bring the cable needle to the left tip, and put what it holds back to be worked next.'

export const parkWords = (loops: number): string =>
  `Move ${nextStitches(loops)} to a holder or a length of smooth yarn, to wait there.`

export const fetchWords =
  'Bring the next held stitch up to the left needle, beside the last stitch of the row.'

export const inPlaceWords = (loops: number): string =>
  `leave the right tip there, ready to take ${allOf(loops)} as one.`

export const yarnFirstWords = {
  back: 'With the yarn at the back, ',
  front: 'With the yarn in front, ',
} as const

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
