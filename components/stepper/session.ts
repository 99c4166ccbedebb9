import { mostRepeats, type Place } from '../../engine/intake/index.ts'
import {
  type CallOutTable,
  type Lesson,
  lessonFrom,
  type Progress,
  rowLabelOf,
} from '../../engine/lesson/index.ts'
import { work } from '../../engine/needles/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import type { Hold } from '../../engine/stitches/index.ts'
import { groupEnd, groupWords } from './aloud.ts'
import type { Done } from './done.ts'
import type { Change } from './motion.ts'
import { progressAfter } from './progress.ts'
import { exists, isFirst, isLast, type Move, moved, type Spot, type Widths } from './state.ts'
import type { Store } from './store.ts'
import type { View } from './view.ts'
import type { Wall } from './wall.ts'

/** One lesson being stepped through. */
export interface Session {
  readonly root: HTMLElement
  readonly view: View
  readonly done: Done
  readonly wall: Wall
  readonly store: Store
  readonly lessonFor: LessonFor
  lesson: Lesson
  spot: Spot
  hold: Hold
  progress: Progress
  /** What was cleared last, to be put back. */
  cleared: Progress | null
}

type LessonFor = (repeats: number) => Lesson | null

/** What the page hands to its script. */
export interface Given {
  readonly pattern: Pattern
  readonly callOuts: CallOutTable
}

/** Every width that was asked for is worked once. */
export function lessonsOf({ pattern, callOuts }: Given): LessonFor {
  const known = new Map<number, Lesson | null>()
  return (repeats) => {
    if (repeats < 1 || repeats > mostRepeats) return null
    if (!known.has(repeats)) {
      const { worked } = work(pattern, repeats)
      known.set(repeats, worked && lessonFrom(worked, callOuts))
    }
    return known.get(repeats) ?? null
  }
}

/** Goes on where the reader stopped, if this pattern has that stitch. */
export function resume(session: Session, place: Place | null): void {
  const lesson = place && session.lessonFor(place.repeats)
  if (place && lesson && exists(lesson.worked, place)) {
    const { row, step, hold } = place
    Object.assign(session, { lesson, hold, spot: { repeats: lesson.worked.repeats, row, step } })
  }
  show(session, 'at once')
  if (isFirst(session.lesson.worked, session.spot)) return
  if (isLast(session.lesson.worked, session.spot)) session.view.tell(endWords(session), beginAgain)
  else session.view.tell(`Welcome back: ${hereWords(session)}. Begin again?`, beginAgain)
}

/** Shows a spot that exists, however far away it is. */
export function goTo(session: Session, spot: Spot): void {
  const lesson = session.lessonFor(spot.repeats)
  if (!lesson) return
  Object.assign(session, { spot, lesson })
  show(session, 'at once')
  tellEnd(session)
  save(session)
}

const beginAgain = { do: 'begin', words: 'Begin again' } as const

function hereWords({ lesson: { worked }, spot }: Session): string {
  const row = worked.rows[spot.row]
  return row ? `${rowLabelOf(worked, row).toLowerCase()}, stitch ${spot.step + 1}` : ''
}

function endWords({ lesson: { worked } }: Session): string {
  const kind = worked.pattern.worked === 'round' ? 'round' : 'row'
  return `That was the last stitch of the pattern. It goes on from ${kind} 1 again.`
}

function tellEnd(session: Session): void {
  const isEnd = isLast(session.lesson.worked, session.spot)
  session.view.tell(isEnd ? endWords(session) : null, beginAgain)
}

/** Does what the reader asked for and shows where it leads. */
export function act(session: Session, move: Move): void {
  const old = session.spot
  const spot = moved((repeats) => session.lessonFor(repeats)?.worked ?? null, old, move)
  const lesson = session.lessonFor(spot.repeats)
  if (spot === old || !lesson) return
  Object.assign(session, { spot, lesson, progress: progressAfter(session.progress, old, spot, move) })
  show(session, changeOf(session, old, move))
  tellEnd(session)
  save(session)
}

/** Goes on by a group of stitches that are written as one, and gives its words; null where nothing comes next. */
export function actGroup(session: Session): string | null {
  const widths: Widths = (repeats) => session.lessonFor(repeats)?.worked ?? null
  const from = moved(widths, session.spot, { do: 'next' })
  if (from === session.spot) return null
  session.progress = progressAfter(session.progress, session.spot, from, { do: 'next' })
  return endGroup(session, from)
}

/** Goes to the end of the group that begins at a spot, and gives its words. */
export function endGroup(session: Session, from: Spot): string {
  const { worked } = session.lesson
  const to = groupEnd(worked, from)
  goTo(session, to)
  return groupWords(worked, from, to)
}

export function show(session: Session, change: Change): void {
  session.view.show(session, change)
  session.done.show(session)
  session.wall.show(session.spot)
}

function changeOf({ lesson: { worked }, spot }: Session, old: Spot, move: Move): Change {
  if (move.do !== 'next' && move.do !== 'back') return 'at once'
  if (spot.row === old.row) return move.do === 'next' ? 'on' : 'back'
  const isRound = worked.pattern.worked === 'round'
  if (move.do === 'next') return isRound ? 'on' : 'turn on'
  return isRound ? 'at once' : 'turn back'
}

export function save({ store, view, spot, hold, progress }: Session): void {
  store.savePlace({ ...spot, hold })
  store.saveHabits({ hold, slower: view.stage.slower })
  store.saveProgress(progress)
}
