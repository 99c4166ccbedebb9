import type { Chart } from '../chart/index.ts'
import type { Step, WorkedPattern, WorkedRow } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'
import { seamRunAt, zoneByLoop } from './seams.ts'

/** What is special at a step without being a mistake. */
export type TipKind =
  | 'longer run at the seam'
  | 'marker moves'
  | 'yarn over twisted on purpose'
  | 'leading leg behind'

export interface Tip {
  readonly kind: TipKind
  readonly title: string
  readonly words: string
}

interface Here {
  readonly worked: WorkedPattern
  readonly chart: Chart
  readonly rowIndex: number
  readonly row: WorkedRow
  readonly step: Step
  readonly stepIndex: number
}

function markerMoves({ worked, chart, rowIndex, step }: Here): Tip | null {
  if (step.taken.length < 2 || step.made.length === 0) return null
  const zones = zoneByLoop(worked, chart, rowIndex)
  const crossed = new Set(step.taken.map((id) => zones.get(id)).filter((zone) => zone !== undefined))
  const repeats = [...crossed].filter((zone) => zone.startsWith('repeat')).length
  if (crossed.size < 2 || repeats === 0) return null
  const line = repeats === crossed.size ? 'between two repeats' : 'where the repeats begin or end'
  return {
    kind: 'marker moves',
    title: 'The marker moves here',
    words: `This decrease takes stitches from both sides of the line ${line}: take the marker off before it and put it back after it.`,
  }
}

function seamRun({ row, stepIndex }: Here): Tip | null {
  const run = seamRunAt(row, stepIndex)
  if (!run) return null
  const { length, before, from, to } = run
  return {
    kind: 'longer run at the seam',
    title: 'A longer run than it looks',
    words: `From here it is ${stitch(run.stitch).name} ${length} times running: ${before} to end ${from}, ${length - before} to begin ${to}.`,
  }
}

/** A yarn over of a row before that asks for something else than going into its front leg. */
function yarnOverLeg({ worked, step }: Here): Tip | null {
  const over = step.taken
    .map((id) => worked.loops[id])
    .find((loop) => loop && stitch(loop.stitch).family === 'yarn over')
  const made = step.made.map((id) => worked.loops[id]).find((loop) => over && loop?.parents.includes(over.id))
  if (!over || !made) return null
  if (made.twisted[made.parents.indexOf(over.id)])
    return {
      kind: 'yarn over twisted on purpose',
      title: 'Twisted on purpose',
      words: 'This stitch twists the yarn over shut, on purpose: the hole stays small.',
    }
  if (over.mount !== 'turned') return null
  return {
    kind: 'leading leg behind',
    title: 'Which leg of the yarn over',
    words:
      'The leading leg of this yarn over lies behind the needle: go in there. Through the other leg it twists shut.',
  }
}

const finders = [markerMoves, seamRun, yarnOverLeg]

/** The tips at a step, the weightiest first. */
export function tipsAt(worked: WorkedPattern, chart: Chart, rowIndex: number, stepIndex: number): Tip[] {
  const row = worked.rows[rowIndex]
  const step = row?.steps[stepIndex]
  if (!row || !step) return []
  const here: Here = { worked, chart, rowIndex, row, step, stepIndex }
  return finders.map((find) => find(here)).filter((tip) => tip !== null)
}
