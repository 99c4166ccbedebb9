import { changedActs, countsWith, type Edit, lastRowOf, sectionsTouched, takesAlike } from './edits.ts'
import {
  type Course,
  courseOf,
  goOn,
  type Habit,
  movesNow,
  nextRow,
  type RowDone,
  type RowOutcome,
  workRow,
} from './follow.ts'
import { afterMoves } from './markers.ts'
import { rowAsMeant, rowOn, rowOnAll } from './memo.ts'
import type { Plan, RowPlan } from './plan.ts'

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)

const outcomeOf = ({ row, counts, total, over, short, at }: RowDone): RowOutcome => ({
  row,
  counts,
  total,
  over,
  short,
  at,
})

/**
 * The counts after each row from a mistake on, until the words of a row do not come out, or for `most` rows. Rows that
 * are not changed themselves are remembered by the loops that they meet.
 */
export function outcomes(plan: Plan, edits: readonly Edit[], habit: Habit, most: number): RowOutcome[] {
  const course = courseOf(plan, edits, habit)
  const last = lastRowOf(edits)
  const found: RowOutcome[] = []
  while (found.length < most) {
    const row = course.row
    if (row === null) break
    const plain =
      !course.flipped && (course.edits.length === 0 || row > last) && plan.rows[row]?.followed === true
    const done = plain
      ? plainRow(plan, course, row, habit)
      : found.length === 0
        ? (changedRow(plan, course, row) ?? nextRow(course))
        : nextRow(course)
    if (!done) break
    found.push('acts' in done ? outcomeOf(done as RowDone) : done)
    if (done.at !== null) break
  }
  return found
}

/** A row with small changes in it, met with the right loops: only the stretches that are changed need be worked. */
function changedRow(plan: Plan, course: Course, row: number): RowOutcome | null {
  const right = plan.rows[row]
  const { edits } = course
  if (!right?.followed || edits.some((edit) => edit.do !== 'change')) return null
  const done = takesAlike(right, edits)
    ? evenRow(right, edits)
    : course.habit === 'markers'
      ? unevenRow(plan, right, edits)
      : null
  if (!done) return null
  course.before = row
  course.counts = done.counts
  goOn(course, row)
  return done
}

/** The changes take what the right acts took: nothing has to give way, only the makes differ. */
function evenRow(right: RowPlan, edits: readonly Edit[]): RowOutcome {
  const counts = countsWith(right, edits)
  return { row: right.index, counts, total: sum(counts), over: 0, short: 0, at: null }
}

/** The changed stretches are worked on the loops that lie there; the markers keep all others as they should be. */
function unevenRow(plan: Plan, right: RowPlan, edits: readonly Edit[]): RowOutcome {
  const touched = sectionsTouched(right, edits)
  const done = workRow(plan, right, changedActs(right, edits), right.takes, false, touched)
  const counts = right.makes.map(
    (count, section) => (touched.has(section) ? done.counts[section] : count) ?? 0,
  )
  return { ...outcomeOf(done), counts, total: sum(counts) }
}

/** A row that is worked as it should be, on loops that may be others. */
function plainRow(plan: Plan, course: Course, row: number, habit: Habit): RowOutcome {
  const done = isAsMeant(plan, course)
    ? rowAsMeant(plan, row)
    : habit === 'words'
      ? rowOnAll(plan, row, course.counts)
      : rowOn(plan, row, afterMoves(course.counts, movesNow(course, row)))
  course.before = row
  course.counts = done.counts
  goOn(course, row)
  return done
}

/** Whether the row before left what it should. */
function isAsMeant(plan: Plan, { before, counts }: Course): boolean {
  const meant = before === null ? undefined : plan.rows[before]?.makes
  return (
    meant !== undefined && (meant === counts || meant.every((count, section) => count === counts[section]))
  )
}
