import type { Pattern } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import type { HandoutStitch } from './handout-key.ts'
import type { HandoutRow } from './handout-rows.ts'

export interface Stuck {
  /** Four questions, in order. */
  readonly questions: readonly string[]
  /** Three mends for what can go wrong with just these stitches. */
  readonly mends: readonly { readonly title: string; readonly words: string }[]
}

interface Used {
  readonly overs: boolean
  readonly passes: boolean
  readonly decreases: boolean
}

function usedIn(key: readonly HandoutStitch[]): Used {
  const stitches = key.flatMap(({ id }) => (id === 'none' ? [] : [stitch(id)]))
  return {
    overs: stitches.some(({ family }) => family === 'yarn over'),
    passes: stitches.some(({ motions }) => motions.some((motion) => motion.do === 'pass')),
    decreases: stitches.some(({ takes, makes }) => takes > makes && makes > 0),
  }
}

/** Common practice, no source. The likelier first; each with what must be in the rows for it to happen. */
const mends: readonly { title: string; words: string; when: (used: Used) => boolean }[] = [
  {
    title: 'A hole is missing',
    words:
      'Lift the bar between the two stitches onto the needle, from front to back, and work it as the yarn over.',
    when: ({ overs }) => overs,
  },
  {
    title: 'One stitch too many at a decrease',
    words:
      'Look for a slipped stitch that was not passed over: in the next row lift it over its neighbour. If the decrease was left out, work those stitches together in the next row.',
    when: ({ passes, decreases }) => passes || decreases,
  },
  {
    title: 'A stitch has dropped',
    words:
      'Catch it with a removable marker at once. Hook it up through the bars above it, one after the other.',
    when: () => true,
  },
  {
    title: 'A hole too many',
    words:
      'In the next row let that yarn over slide off the needle; ease its slack into the stitches beside it.',
    when: ({ overs }) => overs,
  },
  {
    title: 'The stretch looks wrong and the count is right',
    words: 'Undo stitch by stitch to the last place where it looks right, and go on from there.',
    when: () => true,
  },
  {
    title: 'The row does not come out',
    words: 'Look at the edge first: were its stitches worked at both ends?',
    when: () => true,
  },
]

const and = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`

function changeWords(pattern: Pattern, rows: readonly HandoutRow[]): string {
  const row = pattern.worked === 'round' ? 'round' : 'row'
  const changing = rows.filter(({ changes }) => changes).map(({ name }) => name.toLowerCase())
  if (changing.length === 0) return `No ${row} of this pattern changes the count.`
  if (changing.length === rows.length) return `Every ${row} changes it, as the table says.`
  return `In ${and(changing)} it is. In no other.`
}

/** What to ask one's own knitting before asking the teacher, and what to do then. */
export function stuckBox(
  pattern: Pattern,
  rows: readonly HandoutRow[],
  key: readonly HandoutStitch[],
): Stuck {
  const row = pattern.worked === 'round' ? 'round' : 'row'
  const inRepeats = rows.some(({ eachRepeat }) => eachRepeat !== null)
  const used = usedIn(key)
  return {
    questions: [
      inRepeats
        ? 'What does each repeat count? Count from marker to marker, not the whole needle.'
        : 'What does each ten count? Put a marker after every ten stitches and count from marker to marker.',
      'Where is the first stretch that is off? All before it is right.',
      `Is the count meant to change? ${changeWords(pattern, rows)}`,
      `What does the ${row} below show? See what each stitch stands on.`,
    ],
    mends: mends.filter(({ when }) => when(used)).slice(0, 3),
  }
}
