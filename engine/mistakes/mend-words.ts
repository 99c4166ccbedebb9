import type { MendWay } from './mend.ts'
import type { Mistake } from './mistake.ts'
import { type Plan, sectionWords } from './plan.ts'
import { numberWord, rowName, stitches } from './words.ts'

export interface MendPlace {
  readonly plan: Plan
  readonly mistake: Mistake
  readonly section: number | null
  readonly later: 0 | 1 | 2
  /** Stitches of the lowest row that are worked again. */
  readonly wide: number
}

const rowOf = ({ plan, mistake }: MendPlace): string => rowName(plan, mistake.row).toLowerCase()

const where = ({ plan, section }: MendPlace): string =>
  section === null ? 'the place' : `the place in ${sectionWords(plan, section)}`

/** The row that is still right. */
const below = ({ plan, mistake }: MendPlace): string =>
  mistake.row === 0
    ? 'the cast-on, or cast on afresh'
    : `the end of ${rowName(plan, mistake.row - 1).toLowerCase()}, or to the nearest lifeline under it`

const loops = (n: number): string => (n === 1 ? 'loop' : `${numberWord(n)} loops`)

const rows = (n: number): string => (n === 1 ? 'one row' : `${numberWord(n)} rows`)

const words: Readonly<Record<MendWay, (place: MendPlace) => readonly string[]>> = {
  'un-knit to it': (place) => [
    `Un-knit ${stitches(place.wide)} one by one: put the left tip into the loop under the newest stitch, from the front, and let that stitch go.`,
    'A yarn over simply comes off; two stitches worked together give two loops back, so take both.',
    `Then work on from there by the words of ${rowOf(place)}.`,
  ],
  'lift the strand': (place) =>
    place.later === 1
      ? [
          `Come to ${where(place)} on this row and look at the strand between the two stitches.`,
          'Lift it with the left tip from front to back: it is the yarn over, and its leading leg is in front.',
          'Work it like any other stitch, open, not twisted. It is tight at first; ease in a little yarn from its neighbours.',
        ]
      : [
          `Come to ${where(place)}: ${numberWord(place.later)} strands lie one above the other between the two stitches.`,
          'Lift the lowest with a hook from front to back, draw the next one through it, and so on up.',
          'Put the last loop on the needle with its leading leg in front and go on.',
        ],
  'let it drop': (place) => [
    `Come to ${where(place)} and let the loop that is too many slide off the needle.`,
    place.later === 1
      ? 'It runs down to its own row only. Pull its slack out sideways, stitch by stitch.'
      : `It runs down ${rows(place.later)} and stops there. Pull the slack out sideways, row by row.`,
  ],
  'pick up the loop': (place) => [
    `Pin the free loop first, so that it runs no farther: it hangs at ${where(place)}.`,
    place.later === 0
      ? 'Put it back on the left needle, leading leg in front, un-knit to it and work it as it should be.'
      : `Let the stitches beside it wait. With a hook draw the strand of each row through it, up ${rows(place.later)}, then put it on the needle.`,
  ],
  'pass it over now': (place) => [
    `Come to ${where(place)}: the slipped stitch still stands tall beside the one that was worked after it.`,
    place.later === 0
      ? 'Un-knit to just behind it, then lift it over that stitch and off.'
      : `Let the column beside it down ${rows(place.later)}, lift the tall stitch over, and work the column up again.`,
  ],
  'work the other leg': (place) => [
    `Come to the yarn over${place.section === null ? '' : ` in ${sectionWords(place.plan, place.section)}`}: its leading leg is behind the needle.`,
    'Go in through that leg, the one nearer the tip. Then it stays open, and nothing is left of the mistake.',
  ],
  'work the column again': (place) => [
    place.later === 0
      ? `Let the stitches at ${where(place)} off the needle, and put the ${loops(place.wide)} below them on a spare tip.`
      : `Let the stitches at ${where(place)} run down past ${rowOf(place)}, and pin the ${loops(place.wide)} that they stood on.`,
    'Work them again with their own strands, the lowest row first, as the words say: a hook or two short needles help.',
    'Look at which loop lies in front before you draw the yarn through.',
  ],
  'move the marker': () => [
    'Nothing is knitted wrongly. Take the marker off and hang it where the words have it, one stitch over.',
    'Count the two stretches beside it once more, and go on.',
  ],
  'make one beside it': (place) => [
    `In this row, at ${where(place)}, make one: lift the strand and work it through its back leg, so that it is tight.`,
    'The count is right again. The hole stays closed: the fabric keeps the mistake.',
  ],
  'work two together beside it': (place) => [
    `In this row, at ${where(place)}, work two stitches together.`,
    'The count is right again. The stitch that was too many stays in the row below: the fabric keeps the mistake.',
  ],
  'go back to the row': (place) => [
    `Draw the needle out and rip back to ${below(place)}.`,
    'Pick the loops up with a thinner needle, leading legs in front, and count them before you go on.',
  ],
  'cast on again': () => [
    'Cast on again with the number printed for your repeats; set a marker after each repeat as you go.',
  ],
  'leave it': () => [
    'The count is right and later rows fit. One such place in a large piece is hardly seen once it is blocked.',
  ],
}

/** What to do, step by step. */
export const mendSteps = (way: MendWay, place: MendPlace): readonly string[] => words[way](place)

const fiddly: ReadonlySet<MendWay> = new Set([
  'work the column again',
  'un-knit to it',
  'pick up the loop',
  'lift the strand',
  'pass it over now',
])

/** A word for the hands, where the work is small or long. */
export function cautionFor(way: MendWay, { later, wide }: MendPlace): string | null {
  if (!fiddly.has(way) || (wide < 4 && later < 2 && way !== 'work the column again')) return null
  return 'This is small work: sit in good light, let your hands rest every few minutes, and leave it for another day if they ache. Pain that stays is for a doctor or physiotherapist.'
}
