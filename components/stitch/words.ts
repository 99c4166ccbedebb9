import { type PrintOptions, printRow } from '../../engine/notation/index.ts'
import type { Item } from '../../engine/pattern/index.ts'
import { type Neighbours, neighbourYarnOver, type Stitch } from '../../engine/stitches/index.ts'

/** One wording: whose words they are, and what is written. */
export interface Wording {
  readonly whose: string
  readonly written: string
}

const span = { start: 0, end: 0 }

/** The stitch as one item of a row. */
const itemOf = ({ id, family }: Stitch): Item =>
  family === 'bind off'
    ? { kind: 'bindOff', stitch: id, count: 1, leavesOne: true, span }
    : { kind: 'stitch', stitch: id, times: 1, span }

const termSets: readonly (readonly [string, PrintOptions])[] = [
  ['US short words', { terms: 'us' }],
  ['UK short words', { terms: 'uk' }],
  ['US in full', { terms: 'us', words: 'full' }],
  ['UK in full', { terms: 'uk', words: 'full' }],
]

/** One stitch as each set of terms writes it in a row. Sets that write it alike share a line. */
export function wordingsOf(stitch: Stitch): Wording[] {
  const written = termSets.map(([whose, options]) => ({
    whose,
    written: printRow([itemOf(stitch)], options),
  }))
  const [usFull, ukFull] = [written[2], written[3]]
  return usFull?.written === ukFull?.written
    ? [...written.slice(0, 2), { whose: 'In full', written: usFull?.written ?? '' }]
    : written
}

/** What may stand on either side of a yarn over, and the British word for it there. */
export interface YarnOverCase {
  readonly title: string
  readonly neighbours: Neighbours
  readonly british: string
}

const faces = ['knit', 'purl'] as const

/** The four cases of a stitch that is a yarn over; none for any other. */
export function yarnOverCases({ family }: Stitch): YarnOverCase[] {
  if (family !== 'yarn over') return []
  return faces.flatMap((before) =>
    faces.map((after) => ({
      title: before === after ? `Between two ${before}s` : `After a ${before}, before a ${after}`,
      neighbours: { before, after },
      british: neighbourYarnOver(before, after),
    })),
  )
}
