import type { Edit } from './edits.ts'
import { courseOf, goOn, type Habit, movesNow, nextRow, type RowDone, type RowOutcome } from './follow.ts'
import { afterMoves } from './markers.ts'
import { rowOn, rowOnAll } from './memo.ts'
import type { Plan } from './plan.ts'

const outcomeOf = ({ row, counts, total, over, short, at }: RowDone): RowOutcome => ({ row, counts, total, over, short, at })

const lastEdited = (edits: readonly Edit[]): number =>
  edits.reduce((last, edit) => Math.max(last, edit.do === 'castOn' ? -1 : edit.row), -1)

/**
 * The counts after each row from a mistake on, until the words of a row do not come out, or for `most` rows. Rows that
 * are not changed themselves are remembered by the loops that they meet.
 */
export function outcomes(plan: Plan, edits: readonly Edit[], habit: Habit, most: number): RowOutcome[] {
  const course = courseOf(plan, edits, habit)
  const last = lastEdited(edits)
  const found: RowOutcome[] = []
  while (found.length < most) {
    const row = course.row
    if (row === null) break
    const plain = !course.flipped && (course.edits.length === 0 || row > last) && plan.rows[row]?.followed === true
    const done = plain ? plainRow(plan, course, row, habit) : nextRow(course)
    if (!done) break
    found.push('acts' in done ? outcomeOf(done as RowDone) : done)
    if (done.at !== null) break
  }
  return found
}

/** A row that is worked as it should be, on loops that may be others. */
function plainRow(plan: Plan, course: ReturnType<typeof courseOf>, row: number, habit: Habit): RowOutcome {
  const done =
    habit === 'words'
      ? rowOnAll(plan, row, course.counts)
      : rowOn(plan, row, afterMoves(course.counts, movesNow(course, row)))
  course.before = row
  course.counts = done.counts
  goOn(course, row)
  return done
}
