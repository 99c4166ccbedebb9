import type { Pattern } from '../../engine/pattern/index.ts'
import {
  type Answers,
  type Exercise,
  type ExerciseKind,
  exerciseKinds,
  exerciseOf,
  firstNumber,
  isExercise,
  judge,
  kindWords,
  nextNumber,
  numberText,
  readNumber,
  readSpot,
  rightAnswers,
  type Spot,
  spotText,
  type Table,
  tableOf,
} from '../../engine/practice/index.ts'
import { el, find } from '../mend/dom.ts'
import { type ExerciseView, viewOf } from './exercise-view.ts'

/** One reader at one exercise. */
interface Session {
  readonly root: HTMLElement
  readonly table: Table
  spot: Spot
}

const firstSpot: Spot = { kind: exerciseKinds[0], number: firstNumber }

function start(root: HTMLElement): void {
  const pattern = JSON.parse(find(root, 'script[type="application/json"]').textContent ?? '') as Pattern
  const table = tableOf(pattern)
  if (!table) return
  const session: Session = { root, table, spot: readSpot(location.hash, firstSpot) }
  for (const part of root.querySelectorAll<HTMLElement>('[data-controls]')) part.hidden = false
  addEventListener('hashchange', () => {
    const spot = readSpot(location.hash, session.spot)
    if (spotText(spot) === spotText(session.spot)) return
    session.spot = spot
    show(session)
    find(root, '[data-slot="name"]').focus()
  })
  listenForNumbers(session)
  show(session)
}

/** The address has the exercise: what it changes to is shown. */
const goTo = (spot: Spot): void => {
  location.hash = spotText(spot)
}

function listenForNumbers(session: Session): void {
  const form = find<HTMLFormElement>(session.root, '[data-go]')
  const field = find<HTMLInputElement>(form, 'input')
  const note = find(form, '[data-slot="number-note"]')
  const plain = note.textContent ?? ''
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    const number = readNumber(field.value.normalize('NFKC').replaceAll(/\s/g, ''))
    field.toggleAttribute('aria-invalid', number === null)
    note.textContent = number === null ? 'A number has four digits, such as 0407.' : plain
    if (number === null) return field.focus()
    field.value = ''
    goTo({ ...session.spot, number })
  })
}

function show(session: Session): void {
  const { root, table, spot } = session
  const { kind, number } = spot
  find(root, '[data-slot="name"]').textContent = kindWords[kind].title
  find(root, '[data-slot="number"]').textContent = numberText(number)
  markKinds(root, spot)
  const exercise = exerciseOf(table, kind, number)
  const place = find(root, '[data-slot="exercise"]')
  place.replaceChildren(
    ...(isExercise(exercise)
      ? exerciseParts(session, exercise)
      : [el('p', {}, `This pattern cannot ask it. ${exercise.why}`)]),
  )
  find(root, '[data-exercise]').hidden = false
}

/** Links to the other kinds keep the number. */
function markKinds(root: HTMLElement, { kind, number }: Spot): void {
  for (const link of root.querySelectorAll<HTMLAnchorElement>('[data-kind]')) {
    const own = link.dataset.kind as ExerciseKind
    link.hash = spotText({ kind: own, number })
    if (own === kind) link.setAttribute('aria-current', 'true')
    else link.removeAttribute('aria-current')
  }
}

function exerciseParts(session: Session, exercise: Exercise): HTMLElement[] {
  const view = viewOf(exercise)
  const status = el('p', { class: 'status', role: 'status' })
  const buttons = el(
    'div',
    { class: 'send' },
    el('button', { type: 'submit' }, 'Look at my answer'),
    button('Show me', () => showAnswer(view, exercise, status)),
    button('Another one', () => goTo({ ...session.spot, number: nextNumber(session.spot.number) })),
  )
  view.form.append(buttons)
  view.form.addEventListener('submit', (event) => {
    event.preventDefault()
    lookAt(session.table, exercise, view, status)
  })
  return [...view.before, view.form, status, view.why]
}

function button(words: string, press: () => void): HTMLButtonElement {
  const made = el('button', { type: 'button' }, words)
  made.addEventListener('click', press)
  return made
}

function lookAt(table: Table, exercise: Exercise, view: ExerciseView, status: HTMLElement): void {
  const answers: Answers = view.answers()
  const replies = judge(table, exercise, answers)
  view.showReplies(replies)
  const all = replies.every(({ right }) => right === true)
  if (all) view.showWhy()
  status.textContent = summary(replies.map(({ right }) => right))
}

/** What came of it, in one sentence: no marks, only where to look again. */
function summary(rights: readonly (boolean | null)[]): string {
  const open = rights.filter((right) => right === null).length
  const off = rights.filter((right) => right === false).length
  if (open === rights.length) return 'Nothing is answered yet. Guess if you like: being wrong costs nothing.'
  if (open + off === 0) return rights.length === 1 ? 'That is right.' : 'All of it is right.'
  const again = open + off === 1 ? 'One place needs another look.' : `${open + off} places need another look.`
  return off === 0 ? `Right so far. ${again}` : `${again} Why is said beside it.`
}

function showAnswer(view: ExerciseView, exercise: Exercise, status: HTMLElement): void {
  view.fill(rightAnswers(exercise))
  view.showReplies([])
  view.showWhy()
  status.textContent = 'The answer stands in its place, and why below it.'
}

for (const root of document.querySelectorAll<HTMLElement>('[data-practice]')) start(root)
