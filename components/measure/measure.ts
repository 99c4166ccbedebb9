import {
  emptyMeasures,
  inUnitOf,
  type MeasureTexts,
  type MeasureUnit,
  measureTexts,
  readMeasures,
} from '../../engine/intake/index.ts'
import { measuresOf } from '../../engine/measure/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { find } from '../mend/dom.ts'
import { pieceFacts } from './facts.ts'
import { fill, tellUnclear, typedIn } from './form.ts'
import { type Shown, showSheet, spokenWords } from './sheet.ts'
import { type MeasureStore, measureStore } from './store.ts'

/** One reader planning one piece. */
interface Session {
  readonly root: HTMLElement
  readonly form: HTMLFormElement
  readonly pattern: Pattern
  readonly store: MeasureStore
  /** The unit that the fields are written in. */
  unit: MeasureUnit
  /** What the sheet was last reckoned from. */
  shown: string
  /** What stood in the fields before they were emptied. */
  before: MeasureTexts | null
  speaking: number
}

function start(root: HTMLElement): void {
  const { slug = '', needle = '' } = root.dataset
  const pattern = JSON.parse(find(root, 'script[type="application/json"]').textContent ?? '') as Pattern
  const form = find<HTMLFormElement>(root, 'form')
  const store = measureStore(slug)
  const texts = store.texts() ?? { ...emptyMeasures, needle }
  const session: Session = {
    root,
    form,
    pattern,
    store,
    unit: unitIn(texts),
    shown: '',
    before: null,
    speaking: 0,
  }
  fill(form, texts)
  listen(session)
  update(session, 'all')
  for (const part of root.querySelectorAll<HTMLElement>('[data-controls]')) part.hidden = false
}

const unitIn = ({ unit }: MeasureTexts): MeasureUnit => (unit === 'in' ? 'in' : 'cm')

const typed = (form: HTMLFormElement): MeasureTexts => measureTexts(typedIn(form)) ?? emptyMeasures

function listen(session: Session): void {
  const { form, root } = session
  form.addEventListener('input', () => update(session, 'known'))
  form.addEventListener('change', ({ target }) => {
    if (target instanceof HTMLInputElement && target.name === 'unit') changeUnit(session)
    update(session, 'all')
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    update(session, 'all')
    const heading = find(root, '.sheet h2')
    heading.focus({ preventScroll: true })
    heading.scrollIntoView({ block: 'start' })
  })
  find(root, '[data-do="print"]').addEventListener('click', () => print())
  find(root, '[data-do="empty"]').addEventListener('click', () => emptyOrPutBack(session))
}

/** The fields keep what they mean: lengths are written anew in the other unit. */
function changeUnit(session: Session): void {
  const texts = typed(session.form)
  const unit = unitIn(texts)
  fill(session.form, inUnitOf({ ...texts, unit: session.unit }, unit))
  session.unit = unit
}

/** Nothing is lost by a slip: the same button puts back what it emptied. */
function emptyOrPutBack(session: Session): void {
  const { form, root } = session
  const texts = typed(form)
  const next = session.before ?? { ...emptyMeasures, needle: root.dataset.needle ?? '' }
  session.before = session.before ? null : texts
  fill(form, next)
  session.unit = unitIn(next)
  find(root, '[data-do="empty"]').textContent = session.before ? 'Put it back' : 'Empty all fields'
  update(session, 'all')
}

/** Reckons anew. While a reader types, only problems that she was told of already are told. */
function update(session: Session, tell: 'known' | 'all'): void {
  const { root, form, pattern, store } = session
  const texts = typed(form)
  const { wishes, unclear } = readMeasures(texts)
  tellUnclear(form, unclear, tell)
  // Leaving a field changes nothing: what the reader is just about to press must not be made anew under her hand.
  const told = JSON.stringify(texts)
  if (told === session.shown) return
  session.shown = told
  const shown = {
    measures: measuresOf(pattern, wishes),
    wishes,
    unit: session.unit,
    facts: pieceFacts(pattern),
  }
  showSheet(root, shown)
  store.save(texts)
  speak(session, shown)
}

/** Said once the reader has stopped typing, or a screen reader would hear every digit. */
function speak(session: Session, shown: Shown): void {
  clearTimeout(session.speaking)
  session.speaking = window.setTimeout(() => {
    const status = find(session.root, '[role="status"]')
    const words = spokenWords(shown)
    if (status.textContent !== words) status.textContent = words
  }, 800)
}

for (const root of document.querySelectorAll<HTMLElement>('[data-measure]')) start(root)
