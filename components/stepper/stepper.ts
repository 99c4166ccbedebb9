import { mostRepeats, type Place } from '../../engine/intake/index.ts'
import { type Lesson, lessonOf, rowLabelOf } from '../../engine/lesson/index.ts'
import { work } from '../../engine/needles/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import type { Hold } from '../../engine/stitches/index.ts'
import { onChoice } from './fields.ts'
import { keyMove, onTap } from './keys.ts'
import type { Change } from './motion.ts'
import { exists, firstSpot, isFirst, isLast, type Move, moved, type Spot } from './state.ts'
import { type Store, storeFor } from './store.ts'
import { find, type View, viewOn } from './view.ts'

/** One lesson being stepped through. */
interface Session {
  readonly root: HTMLElement
  readonly view: View
  readonly store: Store
  readonly lessonFor: (repeats: number) => Lesson | null
  lesson: Lesson
  spot: Spot
  hold: Hold
}

/** Every width that was asked for is worked once. */
function lessonsOf(pattern: Pattern): (repeats: number) => Lesson | null {
  const known = new Map<number, Lesson | null>()
  return (repeats) => {
    if (repeats < 1 || repeats > mostRepeats) return null
    if (!known.has(repeats)) {
      const { worked } = work(pattern, repeats)
      known.set(repeats, worked && lessonOf(worked))
    }
    return known.get(repeats) ?? null
  }
}

function start(root: HTMLElement): void {
  const { slug = '', version = '', repeats = '1' } = root.dataset
  const pattern = JSON.parse(find(root, 'script[type="application/json"]').textContent ?? '') as Pattern
  const lessonFor = lessonsOf(pattern)
  const lesson = lessonFor(Number(repeats))
  if (!lesson) return
  const store = storeFor(slug, version)
  const first = { lesson, spot: firstSpot(lesson.worked), hold: 'English' as const }
  const session: Session = { ...first, root, store, lessonFor, view: viewOn(root, first) }
  const habits = store.habits()
  session.hold = habits?.hold ?? 'English'
  session.view.stage.slower = habits?.slower ?? false
  resume(session, store.place())
  listen(session)
  for (const control of root.querySelectorAll<HTMLElement>('[data-controls]')) control.hidden = false
}

/** Goes on where the reader stopped, if this pattern has that stitch. */
function resume(session: Session, place: Place | null): void {
  const lesson = place && session.lessonFor(place.repeats)
  if (place && lesson && exists(lesson.worked, place)) {
    const { row, step, hold } = place
    Object.assign(session, { lesson, hold, spot: { repeats: lesson.worked.repeats, row, step } })
  }
  session.view.show(session, 'at once')
  if (isFirst(session.lesson.worked, session.spot)) return
  if (isLast(session.lesson.worked, session.spot)) session.view.tell(endWords(session))
  else session.view.tell(`Welcome back: ${hereWords(session)}. Begin again?`)
}

function hereWords({ lesson: { worked }, spot }: Session): string {
  const row = worked.rows[spot.row]
  return row ? `${rowLabelOf(worked, row).toLowerCase()}, stitch ${spot.step + 1}` : ''
}

function endWords({ lesson: { worked } }: Session): string {
  const kind = worked.pattern.worked === 'round' ? 'round' : 'row'
  return `That was the last stitch of the pattern. It goes on from ${kind} 1 again.`
}

function act(session: Session, move: Move): void {
  const old = session.spot
  const spot = moved((repeats) => session.lessonFor(repeats)?.worked ?? null, old, move)
  const lesson = session.lessonFor(spot.repeats)
  if (spot === old || !lesson) return
  Object.assign(session, { spot, lesson })
  session.view.show(session, changeOf(session, old, move))
  session.view.tell(isLast(lesson.worked, spot) ? endWords(session) : null)
  save(session)
}

function changeOf({ lesson: { worked }, spot }: Session, old: Spot, move: Move): Change {
  if (move.do !== 'next' && move.do !== 'back') return 'at once'
  if (spot.row === old.row) return move.do === 'next' ? 'on' : 'back'
  const isRound = worked.pattern.worked === 'round'
  if (move.do === 'next') return isRound ? 'on' : 'turn on'
  return isRound ? 'at once' : 'turn back'
}

function save({ store, view, spot, hold }: Session): void {
  store.savePlace({ ...spot, hold })
  store.saveHabits({ hold, slower: view.stage.slower })
}

function listen(session: Session): void {
  const { root } = session
  const needles = find<HTMLElement>(root, '[data-stage]')
  document.addEventListener('keydown', (event) => {
    const move = keyMove(event, needles)
    if (!move) return
    event.preventDefault()
    act(session, move)
  })
  onTap(needles, (move) => act(session, move))
  root.addEventListener('click', ({ target }) => {
    const name = target instanceof Element ? target.closest<HTMLElement>('[data-do]')?.dataset.do : undefined
    if (name !== undefined) watch(session, name)
    const move = name === undefined ? undefined : buttonMove(session, name)
    if (move) act(session, move)
  })
  listenToFields(session)
}

/** The motions of the stitch that is shown: nothing of the place in the pattern changes. */
function watch({ view: { stage } }: Session, name: string): void {
  if (name === 'again') stage.again()
  if (name === 'motion-on') stage.move(1)
  if (name === 'motion-back') stage.move(-1)
}

function buttonMove({ lesson: { worked }, spot }: Session, name: string): Move | undefined {
  switch (name) {
    case 'next':
    case 'back':
      return { do: name }
    case 'repeat-on':
      return { do: 'repeat', by: 1 }
    case 'repeat-back':
      return { do: 'repeat', by: -1 }
    case 'begin':
      return { do: isLast(worked, spot) ? 'again' : 'begin' }
    default:
      return undefined
  }
}

function listenToFields(session: Session): void {
  const { root, view } = session
  const row = find<HTMLSelectElement>(root, '[data-to-row]')
  onChoice(
    row,
    (to) => act(session, { do: 'row', row: to }),
    () => session.spot.row,
  )
  const width = root.querySelector<HTMLSelectElement>('[data-to-width]')
  if (width) {
    onChoice(
      width,
      (repeats) => act(session, { do: 'repeats', repeats }),
      () => session.spot.repeats,
    )
  }
  for (const hold of root.querySelectorAll<HTMLInputElement>('[data-hold]')) {
    hold.checked = hold.value === session.hold
    hold.addEventListener('change', () => {
      session.hold = hold.value === 'Continental' ? 'Continental' : 'English'
      view.show(session, 'at once')
      save(session)
    })
  }
  const slower = find<HTMLInputElement>(root, '[data-slower]')
  slower.checked = view.stage.slower
  slower.addEventListener('change', () => {
    view.stage.slower = slower.checked
    save(session)
  })
}

for (const root of document.querySelectorAll<HTMLElement>('[data-stepper]')) start(root)
