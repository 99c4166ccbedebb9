import type { LoopId, WorkedPattern } from './worked.ts'

/** What is on both needles at one moment of a row. */
export interface NeedleState {
  /** From the left tip outward: the loop worked next comes first. */
  readonly left: readonly LoopId[]
  /** The loop nearest the right tip comes last. */
  readonly right: readonly LoopId[]
}

/** The needles of row `rowIndex` after its first `done` steps (0: before the row). */
export function needlesAfter(worked: WorkedPattern, rowIndex: number, done: number): NeedleState {
  const row = worked.rows[rowIndex]
  if (!row) return { left: [], right: [] }
  const steps = row.steps.slice(0, done)
  const takenCount = steps.reduce((sum, step) => sum + step.taken.length, 0)
  // Held loops put back on the left needle are not in `before`; what the row took and left over tells them.
  const order = [...row.steps.flatMap((step) => step.taken), ...row.unworked]
  return { left: order.slice(takenCount), right: [...row.waiting, ...steps.flatMap((step) => step.made)] }
}
