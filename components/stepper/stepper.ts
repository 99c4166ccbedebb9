import { nothingDone } from '../../engine/lesson/index.ts'
import { hasVoice, say } from './aloud.ts'
import { doneOn } from './done.ts'
import { onChoice } from './fields.ts'
import { keyMove, onTap } from './keys.ts'
import { keepCount, putLifeline } from './lifeline.ts'
import { followLink } from './linked.ts'
import {
  act,
  actGroup,
  endGroup,
  type Given,
  lessonsOf,
  resume,
  type Session,
  save,
  show,
} from './session.ts'
import { firstSpot, isLast, type Move } from './state.ts'
import { storeFor } from './store.ts'
import { find, viewOn } from './view.ts'
import { wallOn } from './wall.ts'

function start(root: HTMLElement): void {
  const { slug = '', version = '', repeats = '1' } = root.dataset
  const lessonFor = lessonsOf(
    JSON.parse(find(root, 'script[type="application/json"]').textContent ?? '') as Given,
  )
  const lesson = lessonFor(Number(repeats))
  if (!lesson) return
  const { worked } = lesson
  const store = storeFor(slug, version)
  const first = { lesson, spot: firstSpot(worked), hold: 'English' as const }
  const progress = store.progress(worked.rows.length) ?? nothingDone(worked)
  const [view, done, wall] = [viewOn(root, first), doneOn(root), wallOn(root)]
  const session: Session = { ...first, root, store, lessonFor, view, done, wall, progress, cleared: null }
  const habits = store.habits()
  session.hold = habits?.hold ?? 'English'
  session.view.stage.slower = habits?.slower ?? false
  resume(session, store.place())
  listen(session)
  for (const control of root.querySelectorAll<HTMLElement>('[data-controls]')) control.hidden = false
  find<HTMLElement>(root, '[data-voice]').hidden = !hasVoice()
  followLink(session)
  session.wall.putIfAsked()
  addEventListener('hashchange', () => followLink(session))
}

function listen(session: Session): void {
  const { root } = session
  const needles = find<HTMLElement>(root, '[data-stage]')
  document.addEventListener('keydown', (event) => {
    const move = keyMove(event, needles)
    if (!move) return
    event.preventDefault()
    go(session, move)
  })
  onTap(needles, (move) => go(session, move))
  root.addEventListener('click', ({ target }) => {
    const name = target instanceof Element ? target.closest<HTMLElement>('[data-do]')?.dataset.do : undefined
    if (name !== undefined) watch(session, name)
    if (name === 'wall') session.wall.turn()
    const move = name === undefined ? undefined : buttonMove(session, name)
    if (move) go(session, move)
    else if (name !== undefined && isAllowed(target)) keepCount(session, name)
  })
  listenToFields(session)
}

/** A stitch on or back; read aloud, a whole group on. */
function go(session: Session, move: Move): void {
  const { root } = session
  const isAloud = root.querySelector<HTMLInputElement>('[data-aloud]')?.checked ?? false
  if (!isAloud || move.do !== 'next') return act(session, move)
  const words = actGroup(session)
  if (words !== null) readOut(session, words)
}

function readOut({ root }: Session, words: string): void {
  find(root, '[data-said]').textContent = words
  say(words)
}

/** Not `disabled`, so that the keyboard keeps its place; but what has nothing to do does nothing. */
const isAllowed = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('[aria-disabled="true"]') === null

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
  const lifeline = find<HTMLSelectElement>(root, '[data-to-lifeline]')
  onChoice(
    lifeline,
    (row) => putLifeline(session, row < 0 ? null : row),
    () => session.progress.lifeline?.row ?? -1,
  )
  for (const hold of root.querySelectorAll<HTMLInputElement>('[data-hold]')) {
    hold.checked = hold.value === session.hold
    hold.addEventListener('change', () => {
      session.hold = hold.value === 'Continental' ? 'Continental' : 'English'
      show(session, 'at once')
      save(session)
    })
  }
  const aloud = find<HTMLInputElement>(root, '[data-aloud]')
  aloud.checked = false
  aloud.addEventListener('change', () => {
    if (aloud.checked) readOut(session, endGroup(session, session.spot))
  })
  const slower = find<HTMLInputElement>(root, '[data-slower]')
  slower.checked = view.stage.slower
  slower.addEventListener('change', () => {
    view.stage.slower = slower.checked
    save(session)
  })
}

for (const root of document.querySelectorAll<HTMLElement>('[data-stepper]')) start(root)
