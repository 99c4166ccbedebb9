import type { Chart } from '../chart/index.ts'
import type { Step, WorkedPattern, WorkedRow } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'
import { seamRunAt, zoneByLoop } from './seams.ts'

export type CallOutKind =
  | 'yarn over missed'
  | 'single for double'
  | 'pass over forgotten'
  | 'yarn over passed instead'
  | 'yarn over twisted'
  | 'edge forgotten'
  | 'longer run at the seam'
  | 'marker moves'

/** Something that goes wrong at just this step, and what the count would become. */
export interface CallOut {
  readonly kind: CallOutKind
  readonly words: string
  /** Loops at the end of the row if it happened once; null where nothing is wrong with the count. */
  readonly rowEnds: number | null
  /** For ranking: how often learners do it (common practice, no source) times how much it harms. */
  readonly weight: number
}

interface Here {
  readonly worked: WorkedPattern
  readonly chart: Chart
  readonly rowIndex: number
  readonly row: WorkedRow
  readonly step: Step
  readonly stepIndex: number
  /** Loops on the needles after the row, when all goes well. */
  readonly end: number
}

const count = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`

function yarnOverMissed({ step, end }: Here): CallOut | null {
  if (stitch(step.stitch).family !== 'yarn over' || step.made.length === 0) return null
  const n = step.made.length
  const words = `Missed, this ${n === 1 ? 'yarn over' : 'double yarn over'} leaves the row ${n === 1 ? 'one' : 'two'} short: ${end - n} instead of ${end}, and no hole here.`
  return { kind: 'yarn over missed', words, rowEnds: end - n, weight: 10 }
}

function singleForDouble({ step, end }: Here): CallOut | null {
  const s = stitch(step.stitch)
  if (s.takes !== 3 || s.makes !== 1) return null
  const words = `Worked over two stitches only, it is a single decrease: the row ends one over, with ${end + 1} instead of ${end}.`
  return { kind: 'single for double', words, rowEnds: end + 1, weight: 7 }
}

/** Loops that the stitch slips first and then passes over; 0 where it does nothing of the kind. */
function passedFromTheRight(id: string): number {
  return stitch(id).motions.reduce(
    (n, motion) => n + (motion.do === 'pass' && motion.from === 'right' ? motion.loops : 0),
    0,
  )
}

function slipsFirst(id: string): boolean {
  return stitch(id).motions.find((motion) => motion.do !== 'yarn')?.do === 'slip'
}

function passForgotten({ step, end }: Here): CallOut | null {
  const n = passedFromTheRight(step.stitch)
  if (n === 0 || !slipsFirst(step.stitch)) return null
  const words = `If the slipped ${n === 1 ? 'stitch is' : 'stitches are'} not passed over, ${n === 1 ? 'a loop stays' : `${n} loops stay`} on the needle: the row ends with ${end + n} instead of ${end}.`
  return { kind: 'pass over forgotten', words, rowEnds: end + n, weight: 9 }
}

function yarnOverPassed({ step, stepIndex, row, end }: Here): CallOut | null {
  const previous = row.steps[stepIndex - 1]
  const beside = previous !== undefined && stitch(previous.stitch).family === 'yarn over'
  if (!beside || passedFromTheRight(step.stitch) === 0 || !slipsFirst(step.stitch)) return null
  const words = `The yarn over lies just beside the slipped stitch. Pass the slipped stitch, not the yarn over: the count would still be ${end}, but the hole is gone and a bar lies round the stitch.`
  return { kind: 'yarn over passed instead', words, rowEnds: end, weight: 6 }
}

function yarnOverTwisted({ worked, step, row, end }: Here): CallOut | null {
  const over = step.taken.find((id) => {
    const loop = worked.loops[id]
    return loop !== undefined && stitch(loop.stitch).family === 'yarn over'
  })
  if (over === undefined) return null
  const made = step.made.map((id) => worked.loops[id]).find((loop) => loop?.parents.includes(over))
  if (!made) return null
  if (made.twisted[made.parents.indexOf(over)]) {
    return {
      kind: 'yarn over twisted',
      words: 'This stitch twists the yarn over shut, on purpose: the hole stays small.',
      rowEnds: null,
      weight: 2,
    }
  }
  const leg = worked.loops[over]?.mount === 'turned' ? 'back' : 'front'
  const words = `This is the yarn over of the row before: go in through its leading leg, the one in ${leg}. Through the other leg it twists shut; the count stays ${end} and hides it.`
  return { kind: 'yarn over twisted', words, rowEnds: end, weight: row.number < 3 ? 4 : 3 }
}

/** The stitches at the row's beginning that belong to no repeat: what the file calls edge, and what comes before the star. */
function edgeForgotten({ stepIndex, row, end, worked }: Here): CallOut | null {
  if (stepIndex !== 0 || worked.pattern.worked === 'round') return null
  const firstRepeat = row.steps.findIndex((one) => one.repeat !== null)
  const firstInside = row.steps.findIndex((one) => one.part === 'row')
  const edge = row.steps.slice(0, Math.max(0, firstRepeat > 0 ? firstRepeat : firstInside))
  const takes = edge.reduce((sum, one) => sum + one.taken.length, 0)
  if (takes === 0) return null
  const one = takes === 1
  const words = `Forgotten, ${one ? 'this edge stitch shifts' : `these ${takes} edge stitches shift`} everything after ${one ? 'it' : 'them'} sideways: the words of the row come to their end with ${count(takes)} still unworked.`
  return { kind: 'edge forgotten', words, rowEnds: end, weight: 5 }
}

function seamRun(here: Here): CallOut | null {
  const run = seamRunAt(here.row, here.stepIndex)
  if (!run) return null
  const { length, before, from, to } = run
  const words = `From here it is ${stitch(run.stitch).name} ${length} times running: ${before} to end ${from}, ${length - before} to begin ${to}.`
  return { kind: 'longer run at the seam', words, rowEnds: null, weight: 5 }
}

function markerMoves({ worked, chart, rowIndex, step }: Here): CallOut | null {
  if (step.taken.length < 2 || step.made.length === 0) return null
  const zones = zoneByLoop(worked, chart, rowIndex)
  const crossed = new Set(step.taken.map((id) => zones.get(id)).filter((zone) => zone !== undefined))
  if (crossed.size < 2 || ![...crossed].some((zone) => zone?.startsWith('repeat'))) return null
  const words =
    'This decrease takes stitches from both sides of the line between two repeats: take the marker off before it and put it back after it.'
  return { kind: 'marker moves', words, rowEnds: null, weight: 8 }
}

const finders: readonly ((here: Here) => CallOut | null)[] = [
  yarnOverMissed,
  passForgotten,
  markerMoves,
  singleForDouble,
  yarnOverPassed,
  edgeForgotten,
  seamRun,
  yarnOverTwisted,
]

/**
 * What can go wrong at a step, heaviest first, at most `most` of them. All numbers come from the worked row.
 * @param chart the chart of the same worked pattern, which knows the repeats' lines
 */
export function callOutsAt(
  worked: WorkedPattern,
  chart: Chart,
  rowIndex: number,
  stepIndex: number,
  most = 2,
): readonly CallOut[] {
  const row = worked.rows[rowIndex]
  const step = row?.steps[stepIndex]
  if (!row || !step) return []
  const here: Here = {
    worked,
    chart,
    rowIndex,
    row,
    step,
    stepIndex,
    end: row.after.length + row.unworked.length,
  }
  const found = finders.map((find) => find(here)).filter((one) => one !== null)
  return found.sort((a, b) => b.weight - a.weight).slice(0, most)
}
