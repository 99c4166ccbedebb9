import {
  nothingDone,
  type Progress,
  rippedToLifeline,
  rowAfterIn,
  rowLabelOf,
  rowsSinceWords,
  ticked,
  tickedSinceLifeline,
  withLifeline,
  withoutLifeline,
} from '../../engine/lesson/index.ts'
import { act, type Session, save } from './session.ts'

/** Keeps new ticks or another lifeline, and shows them. */
function keep(session: Session, progress: Progress): void {
  session.progress = progress
  session.done.show(session)
  save(session)
}

const labelOf = ({ lesson: { worked } }: Session, index: number): string => {
  const row = worked.rows[index]
  return row ? rowLabelOf(worked, row) : ''
}

const countAfter = ({ lesson: { worked } }: Session, index: number): number => {
  const row = worked.rows[index]
  return row ? row.after.length + row.unworked.length : 0
}

/** Puts the lifeline in a row, or takes it out where no row is named. */
export function putLifeline(session: Session, row: number | null): void {
  const { lesson, progress, spot, view } = session
  if (row === null) {
    keep(session, withoutLifeline(progress))
    view.tell('The lifeline is out. The ticks stay.')
    return
  }
  keep(session, withLifeline(progress, lesson.worked, row, spot.row))
  const isDone = row !== spot.row || spot.step === (lesson.worked.rows[row]?.steps.length ?? 0) - 1
  const label = labelOf(session, row).toLowerCase()
  view.tell(
    `Lifeline in ${label}${isDone ? '' : ', once it is done'}: with a blunt needle, through all ${countAfter(session, row)} stitches and past the markers.`,
  )
}

/** Goes back to just behind the lifeline. Ticks stay unless the reader takes them away. */
export function ripBack(session: Session): void {
  const { lesson, progress, view } = session
  const { lifeline } = progress
  if (!lifeline) return
  const next = rowAfterIn(lesson.worked, lifeline.row)
  act(session, { do: 'row', row: next })
  const since = tickedSinceLifeline(session.progress)
  const rows = rowsSinceWords(lesson.worked, since)
  const label = labelOf(session, lifeline.row).toLowerCase()
  const words = [
    `At the lifeline in ${label}: count ${countAfter(session, lifeline.row)} stitches.`,
    `${labelOf(session, next)} comes next.`,
    ...(since.length > 0 ? [`The ticks of ${rows} are kept.`] : []),
  ]
  view.tell(words.join(' '), since.length > 0 ? { do: 'rip-ticks', words: `Untick ${rows}` } : undefined)
}

/** Does what a button about ticks and lifelines asks for. */
export function keepCount(session: Session, name: string): void {
  const { progress, spot, view, lesson } = session
  if (name === 'lifeline') putLifeline(session, spot.row)
  if (name === 'rip') ripBack(session)
  if (name === 'tick') keep(session, ticked(progress, spot.row, 1))
  if (name === 'untick') keep(session, ticked(progress, spot.row, -1))
  if (name === 'rip-ticks') {
    keep(session, rippedToLifeline(progress))
    view.tell('The ticks are as they were at the lifeline.')
  }
  if (name === 'clear') clear(session)
  if (name === 'restore') {
    keep(session, session.cleared ?? nothingDone(lesson.worked))
    view.tell('The ticks and the lifeline are back.')
  }
}

function clear(session: Session): void {
  const { lesson, progress, view } = session
  if (progress.lifeline === null && progress.done.every((times) => times === 0)) return
  session.cleared = progress
  keep(session, nothingDone(lesson.worked))
  view.tell('All ticks and the lifeline are taken away.', { do: 'restore', words: 'Put them back' })
}
