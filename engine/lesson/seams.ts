import type { Chart, Zone } from '../chart/index.ts'
import type { LoopId, Step, WorkedPattern, WorkedRow } from '../needles/index.ts'

/** The stretch of the written row that a step stands in: its edge, its start, one turn of the repeat, its end. */
function stretchOf(row: WorkedRow, index: number): string {
  const step = row.steps[index] as Step
  if (step.part !== 'row') return step.part
  if (step.repeat !== null) return `repeat ${step.repeat}`
  const repeatsBefore = row.steps.slice(0, index).some((one) => one.repeat !== null)
  return repeatsBefore ? 'end' : 'start'
}

export interface SeamRun {
  readonly stitch: string
  readonly length: number
  /** How many of them stand before the line. */
  readonly before: number
  /** What ends and what begins at the line, in words. */
  readonly from: string
  readonly to: string
}

const stretchWords = (stretch: string, ends: boolean): string => {
  if (stretch.startsWith('repeat'))
    return ends ? 'this repeat' : stretch === 'repeat 1' ? 'the first repeat' : 'the next repeat'
  return (
    { before: 'the edge', after: 'the edge', start: 'the first stitches', end: 'the last stitches' }[
      stretch
    ] ?? stretch
  )
}

/**
 * The run of equal stitches that begins at this step and goes across a line between edge, repeats and end, so that it is
 * longer than either side of the line shows in the words. Null where no such run begins here.
 */
export function seamRunAt(row: WorkedRow, index: number): SeamRun | null {
  const step = row.steps[index]
  if (!step || row.steps[index - 1]?.stitch === step.stitch) return null
  let end = index
  while (row.steps[end + 1]?.stitch === step.stitch) end++
  const length = end - index + 1
  if (length < 2) return null
  const first = stretchOf(row, index)
  let before = 1
  while (before < length && stretchOf(row, index + before) === first) before++
  if (before === length) return null
  // A plain row is one long run; nobody loses count of 'purl'.
  const whole = row.steps.every((one) => one.stitch === step.stitch)
  const to = stretchOf(row, index + before)
  return whole
    ? null
    : { stitch: step.stitch, length, before, from: stretchWords(first, true), to: stretchWords(to, false) }
}

/** For the loops that row `rowIndex` meets: the zone of the chart in which each was made. */
export function zoneByLoop(worked: WorkedPattern, chart: Chart, rowIndex: number): ReadonlyMap<LoopId, Zone> {
  const zones = new Map<LoopId, Zone>()
  for (const row of chart.rows) {
    if (row.index >= rowIndex) break
    for (const cell of row.cells) {
      if (cell.kind !== 'stitch') continue
      for (const id of worked.rows[row.index]?.steps[cell.step]?.made ?? []) zones.set(id, cell.zone)
    }
  }
  return zones
}
