import type { Chart } from '../chart/index.ts'
import { casebookOf, likelyMistakesAt, type MistakeKind } from '../mistakes/index.ts'
import type { WorkedPattern } from '../needles/index.ts'
import type { Note } from './call-out.ts'
import { tipsAt } from './tips.ts'

/** Slips that can happen at any stitch: at this one they are no news. Common practice, no source. */
const anywhere: ReadonlySet<MistakeKind> = new Set<MistakeKind>([
  'stitch dropped',
  'knit for purl',
  'decrease too many',
  'yarn over too many',
  'rows switched',
])

/** How often it is made times how much it harms: less is not worth a learner's reading. */
const leastWeight = 10
/** A second warning must weigh nearly as much as the first. */
const leastShare = 2 / 3

/** More teaches less. */
const most = 2

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** The mistakes to be warned of at a step, heaviest first, with what they do as the models work it out. */
function warningsAt(worked: WorkedPattern, rowIndex: number, stepIndex: number): Note[] {
  const likely = likelyMistakesAt(
    casebookOf(worked),
    rowIndex,
    stepIndex,
    most,
    (kind, weight) => weight >= leastWeight && !anywhere.has(kind),
  )
  const [first] = likely
  return likely
    .filter(({ weight }) => weight >= leastShare * (first?.weight ?? 0))
    .map(({ kind, name, effect }) => ({ kind, title: capital(name), effect, words: '' }))
}

/**
 * What to be careful of at a step, at most two: what is special there, then what goes wrong there.
 * @param chart the chart of the same worked pattern, which knows the repeats' lines
 */
export function notesAt(
  worked: WorkedPattern,
  chart: Chart,
  rowIndex: number,
  stepIndex: number,
): readonly Note[] {
  const tips = tipsAt(worked, chart, rowIndex, stepIndex).map((tip) => ({ ...tip, effect: null }))
  return [...tips, ...warningsAt(worked, rowIndex, stepIndex)].slice(0, most)
}
