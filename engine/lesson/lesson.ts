import { type Chart, chartOf } from '../chart/index.ts'
import {
  type NeedleState,
  needlesAfter,
  type Step,
  type WorkedPattern,
  type WorkedRow,
} from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'
import { type Balance, balanceAt } from './balance.ts'
import type { CallOut } from './call-out.ts'
import { type CallOutTable, callOutsIn, callOutTable } from './call-out-table.ts'
import { lookCheckAt } from './look-check.ts'

/** A worked pattern with what its lesson needs again and again. */
export interface Lesson {
  readonly worked: WorkedPattern
  readonly chart: Chart
  readonly callOuts: (rowIndex: number, stepIndex: number) => readonly CallOut[]
}

/** A lesson whose call-outs are read off a table that was made before. */
export function lessonFrom(worked: WorkedPattern, table: CallOutTable): Lesson {
  const chart = chartOf(worked)
  return { worked, chart, callOuts: (row, step) => callOutsIn(table, worked, chart, row, step) }
}

/** A lesson that finds its call-outs itself, when they are first asked for. */
export function lessonOf(worked: WorkedPattern): Lesson {
  const chart = chartOf(worked)
  let table: CallOutTable | null = null
  return {
    worked,
    chart,
    callOuts: (row, step) => {
      table ??= callOutTable([worked])
      return callOutsIn(table, worked, chart, row, step)
    },
  }
}

/** Everything that is shown and said at one step. */
export interface LessonStep {
  readonly row: WorkedRow
  readonly step: Step
  /** 'Row 3, stitch 5: yarn over. 18 stitches' */
  readonly status: string
  readonly stitchName: string
  readonly countBefore: number
  readonly countAfter: number
  readonly balance: Balance
  readonly lookCheck: string | null
  readonly callOuts: readonly CallOut[]
  readonly needles: NeedleState
  /** Loops that the step after this one will take. */
  readonly next: readonly number[]
  /** 'Repeat 2, stitch 4 of 6'; null outside the row's own repeat. */
  readonly place: string | null
}

/** 'Row 3', 'Round 3', 'Set-up row 1'. */
export function rowLabelOf(worked: WorkedPattern, row: { readonly number: number }): string {
  const kind = worked.pattern.worked === 'round' ? 'Round' : 'Row'
  if (row.number >= 1) return `${kind} ${row.number}`
  return `Set-up ${kind.toLowerCase()} ${row.number + worked.pattern.setUp.length}`
}

const count = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`

/** The live status: row, stitch and count after it. */
export function statusOf(worked: WorkedPattern, row: WorkedRow, step: Step): string {
  return `${rowLabelOf(worked, row)}, stitch ${step.step}: ${stitch(step.stitch).name}. ${count(step.total)}`
}

function placeWords(row: WorkedRow, step: Step): string | null {
  if (step.repeat === null || step.position === null) return null
  const inRepeat = row.steps.filter((one) => one.repeat === step.repeat).length
  return `Repeat ${step.repeat}, stitch ${step.position} of ${inRepeat}`
}

/** What the lesson shows at a step; null where there is no such step. Indices from 0. */
export function lessonStep(
  { worked, callOuts }: Lesson,
  rowIndex: number,
  stepIndex: number,
): LessonStep | null {
  const row = worked.rows[rowIndex]
  const step = row?.steps[stepIndex]
  if (!row || !step) return null
  return {
    row,
    step,
    status: statusOf(worked, row, step),
    stitchName: stitch(step.stitch).name,
    countBefore: row.steps[stepIndex - 1]?.total ?? row.before.length + row.waiting.length,
    countAfter: step.total,
    balance: balanceAt(row, stepIndex + 1),
    lookCheck: lookCheckAt(worked, rowIndex, stepIndex),
    callOuts: callOuts(rowIndex, stepIndex),
    needles: needlesAfter(worked, rowIndex, stepIndex + 1),
    next: row.steps[stepIndex + 1]?.taken ?? [],
    place: placeWords(row, step),
  }
}
