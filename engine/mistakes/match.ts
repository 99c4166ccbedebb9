import { lastRowOf } from './edits.ts'
import { type Evidence, midRow } from './evidence.ts'
import { courseOf, type Habit, nextRow, type RowOutcome } from './follow.ts'
import { rowAfter } from './plan.ts'
import { type Casebook, rowsFollowed, sightsFor, type Trace, tracesIn } from './traces.ts'

/** A mistake that agrees with what the reader found. */
export interface Fitting {
  readonly trace: Trace
  /** What its counts are in the row of the evidence. */
  readonly outcome: RowOutcome
  /** Rows between the mistake and the evidence. */
  readonly ago: number
  readonly weight: number
}

/** With markers a reader stops at them; who only knows the total goes by the words. */
export const habitOf = (evidence: Evidence): Habit => (evidence.counts ? 'markers' : 'words')

/** An earlier row is less likely: it was counted, or looked at, since then. */
const fading = 0.55

export const outcomesBy = (trace: Trace, habit: Habit): readonly RowOutcome[] =>
  habit === 'markers' ? trace.marked : trace.unmarked

/** Whether counts agree with the evidence. */
export function countsAgree(evidence: Evidence, outcome: RowOutcome): boolean {
  if (evidence.total !== undefined && evidence.total !== outcome.total) return false
  if (evidence.rowEnd !== undefined && evidence.rowEnd !== outcome.over - outcome.short) return false
  return (
    evidence.counts?.every((count, section) => count === null || count === outcome.counts[section]) ?? true
  )
}

/** The state of the needles after some steps of the evidence's row, if this mistake was made. */
function partWay(book: Casebook, trace: Trace, evidence: Evidence, habit: Habit): RowOutcome | null {
  const { step, row } = evidence
  const course = courseOf(book.plan, trace.edits, habit)
  for (let rows = 0; rows < rowsFollowed; rows++) {
    const before = course.row === row ? course.counts : null
    const done = nextRow(course)
    if (!done) return null
    if (!before) continue
    const until = done.acts.findIndex((act) => act.step !== null && act.step >= (step ?? 0))
    const acts = until < 0 ? done.acts : done.acts.slice(0, until)
    const counts = midRow(acts, before)
    return {
      ...done,
      counts,
      total: counts.reduce((all, count) => all + count, 0),
      over: 0,
      short: 0,
      at: null,
    }
  }
  return null
}

const looksAgree = (book: Casebook, evidence: Evidence, trace: Trace, ago: number): boolean => {
  if (!evidence.looks || evidence.looks.length === 0) return true
  const seen = sightsFor(book, trace).filter(({ later }) => later <= ago)
  return evidence.looks.every((look) =>
    seen.some(
      (sight) =>
        sight.look === look &&
        (evidence.section === undefined ||
          evidence.section === null ||
          sight.section === null ||
          sight.section === evidence.section),
    ),
  )
}

/** A mistake whose counts were wrong when she still counted them right is none of hers. `earlier`: rows before the evidence. */
function agreesEarlier(
  { plan }: Casebook,
  { rightUpTo, row: now }: Evidence,
  earlier: readonly RowOutcome[],
): boolean {
  if (rightUpTo === undefined) return true
  // A row with a higher number than the evidence's lies a turn of the pattern lower.
  const height = (row: number): number => (row <= now ? row + plan.rows.length : row)
  return earlier.every(
    ({ row, counts }) =>
      height(row) > height(rightUpTo) ||
      counts.every((count, section) => count === plan.rows[row]?.makes[section]),
  )
}

/** Which rows to search for what shows in a row: it and those before it, across the foot of the pattern too. */
export function rowsToSearch({ plan }: Casebook, { row, firstTurn = false }: Evidence): number[] {
  const before = (at: number): number[] => {
    const below = at > 0 ? [at - 1] : []
    const around = !firstTurn && rowAfter(plan, plan.rows.length - 1) === at ? [plan.rows.length - 1] : []
    return [...below, ...around]
  }
  const found = [row]
  for (let i = 0; i < found.length && found.length < rowsFollowed; i++)
    found.push(...before(found[i] ?? 0).filter((at) => !found.includes(at)))
  return found
}

/** All single mistakes that agree with the evidence, likeliest first. */
export function fittingMistakes(book: Casebook, evidence: Evidence): Fitting[] {
  const habit = habitOf(evidence)
  const found: Fitting[] = []
  for (const row of rowsToSearch(book, evidence)) {
    for (const trace of tracesIn(book, row)) {
      const outcomes = outcomesBy(trace, habit)
      const ago = outcomes.findIndex((outcome) => outcome.row === evidence.row)
      if (ago < 0 || !happened(trace, evidence, ago)) continue
      const outcome = evidence.step == null ? outcomes[ago] : partWay(book, trace, evidence, habit)
      if (!outcome || !countsAgree(evidence, outcome)) continue
      if (!agreesEarlier(book, evidence, outcomes.slice(0, ago)) || !looksAgree(book, evidence, trace, ago))
        continue
      found.push({ trace, outcome, ago, weight: trace.weight * fading ** ago })
    }
  }
  return found.sort((a, b) => b.weight - a.weight)
}

/** In a row that is not done, only what is done can be wrong; and what is made up for later is not yet. */
function happened({ mistake, edits }: Trace, { step, row }: Evidence, ago: number): boolean {
  if (ago < lastRowOf(edits) - mistake.row) return false
  return step == null || ago > 0 || mistake.row !== row || (mistake.step !== null && mistake.step < step)
}
