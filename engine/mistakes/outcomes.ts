import { countsWith, type Edit, lastRowOf, takesAlike } from './edits.ts'
import {
  type Course,
  courseOf,
  goOn,
  type Habit,
  movesNow,
  nextRow,
  type RowDone,
  type RowOutcome,
} from './follow.ts'
import { afterMoves } from './markers.ts'
import { rowOn, rowOnAll } from './memo.ts'
import type { Plan } from './plan.ts'

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
        ? (evenRow(plan, course, row) ?? nextRow(course))
        : nextRow(course)
    if (!done) break
    found.push('acts' in done ? outcomeOf(done as RowDone) : done)
    if (done.at !== null) break
  }
  return found
}

/** The first row, where the changes take what the right acts took: nothing has to give way, only the makes differ. */
function evenRow(plan: Plan, course: Course, row: number): RowOutcome | null {
  const right = plan.rows[row]
  if (
    !right?.followed ||
    course.edits.some((edit) => edit.do !== 'change') ||
    !takesAlike(right, course.edits)
  )
    return null
  const counts = countsWith(right, course.edits)
  const total = counts.reduce((sum, count) => sum + count, 0)
  course.before = row
  course.counts = counts
  goOn(course, row)
  return { row, counts, total, over: 0, short: 0, at: null }
}

/** A row that is worked as it should be, on loops that may be others. */
function plainRow(plan: Plan, course: Course, row: number, habit: Habit): RowOutcome {
  const done =
    habit === 'words'
      ? rowOnAll(plan, row, course.counts)
      : rowOn(plan, row, afterMoves(course.counts, movesNow(course, row)))
  course.before = row
  course.counts = done.counts
  goOn(course, row)
  return done
}
