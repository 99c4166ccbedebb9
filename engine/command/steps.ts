import type { Step, WorkedPattern } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'

/** A step as the outside contract has it. */
export interface StepEntry {
  readonly row: number
  readonly step: number
  readonly stitch: string
  readonly repeat: number | null
  readonly takes: number
  readonly makes: number
  readonly left: number
  readonly right: number
  readonly total: number
}

const entry = (step: Step): StepEntry => ({
  row: step.row,
  step: step.step,
  stitch: stitch(step.stitch).us,
  repeat: step.repeat,
  takes: step.taken.length,
  makes: step.made.length,
  left: step.left,
  right: step.right,
  total: step.total,
})

/** Every step of every row. Set-up rows have the numbers 0, -1, … */
export const stepEntries = (worked: WorkedPattern): StepEntry[] =>
  worked.rows.flatMap((row) => row.steps.map(entry))

/** The same as lines of text, a row under its heading. */
export function stepText(worked: WorkedPattern): string {
  const lines: string[] = []
  for (const row of worked.rows) {
    lines.push(
      `${row.number >= 1 ? `Row ${row.number}` : 'Set-up row'} (${row.side}), ${row.before.length + row.waiting.length} stitches`,
    )
    for (const step of row.steps.map(entry)) {
      const repeat = step.repeat === null ? '' : `  repeat ${step.repeat}`
      lines.push(
        `  ${String(step.step).padStart(4)}  ${step.stitch.padEnd(12)}  left ${step.left}, right ${step.right}, in all ${step.total}${repeat}`,
      )
    }
  }
  return `${lines.join('\n')}\n`
}
