import { mostRepeatsAsked, readEvidence, readRepeats, readVersion } from '../../engine/intake/index.ts'
import {
  answer,
  type Casebook,
  casebookOf,
  checkPage,
  diagnose,
  type PossiblePlace,
  rowBefore,
} from '../../engine/mistakes/index.ts'
import { work } from '../../engine/needles/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { storeFor } from '../stepper/store.ts'
import { find } from './dom.ts'
import { type Findings, type Replies, showFindings, summaryWords } from './findings.ts'
import { askedOf, type Here, hereIn, showCounts, showMeant, showSteps, showWay, tellUnclear } from './form.ts'
import { makeReady, type Stop } from './ready.ts'
import { listenWhere } from './where.ts'

/** One reader looking for one mistake. */
interface Session {
  readonly root: HTMLElement
  readonly form: HTMLFormElement
  readonly bookFor: (repeats: number) => Casebook | null
  book: Casebook
  findings: Findings | null
  /** Stops what is being made ready for another width. */
  stop: Stop
  forgetPlaces: () => void
}

/** Every width that was asked for is worked once. */
function booksOf(pattern: Pattern): (repeats: number) => Casebook | null {
  const known = new Map<number, Casebook | null>()
  return (repeats) => {
    if (!known.has(repeats)) {
      const { worked } = work(pattern, repeats)
      known.set(repeats, worked && casebookOf(worked))
    }
    return known.get(repeats) ?? null
  }
}

interface Start extends Here {
  readonly repeats: number
}

/** A place that a link leads to (#row=2&step=5&repeats=3, indices as the lesson counts them), else the one where the lesson was left. */
function startOf({ dataset }: HTMLElement, lesson: { slug: string; version: string }): Start | null {
  const linked = new URLSearchParams(location.hash.slice(1))
  const number = (name: string): number | null =>
    /^\d{1,4}$/.test(linked.get(name) ?? '') ? Number(linked.get(name)) : null
  const row = number('row')
  const repeats = number('repeats') ?? Number(dataset.repeats)
  if (row !== null)
    return { row, step: number('step'), repeats: Math.min(Math.max(1, repeats), mostRepeatsAsked) }
  const left = storeFor(lesson.slug, lesson.version).place()
  return left && { row: left.row, step: null, repeats: left.repeats }
}

function start(root: HTMLElement): void {
  const { slug = '', version = '', repeats = '1' } = root.dataset
  const pattern = JSON.parse(find(root, 'script[type="application/json"]').textContent ?? '') as Pattern
  const bookFor = booksOf(pattern)
  const known = startOf(root, { slug, version })
  const isFixed = 'fixed' in pattern.castOn
  const width = known && !isFixed ? known.repeats : Number(repeats)
  const book = bookFor(width) ?? bookFor(Number(repeats))
  if (!book) return
  const form = find<HTMLFormElement>(root, 'form')
  const nothing = () => {}
  const session: Session = { root, form, bookFor, book, findings: null, stop: nothing, forgetPlaces: nothing }
  const field = form.querySelector<HTMLInputElement>('[name="repeats"]')
  if (field) field.value = String(book.plan.worked.repeats)
  if (known && book.plan.rows[known.row])
    find<HTMLSelectElement>(form, '[name="row"]').value = String(known.row)
  place(session, known?.step ?? null)
  showWay(form)
  listen(session)
  for (const part of root.querySelectorAll<HTMLElement>('[data-controls]')) part.hidden = false
  session.stop = makeReady(book, hereIn(form).row)
}

/** Shows what belongs to the row and the width that are chosen. */
function place(session: Session, step: number | null): void {
  const { root, form, book } = session
  showSteps(form, book.plan, hereIn(form).row, step)
  showHere(session)
  find(root, '[data-slot="width"]').textContent = widthWords(book)
}

function showHere({ root, form, book }: Session): void {
  const here = hereIn(form)
  showMeant(root, book.plan, here)
  showCounts(form, book.plan, here)
}

const widthWords = ({ plan: { worked } }: Casebook): string =>
  worked.repeats === 1
    ? `${worked.castOn} stitches cast on`
    : `${worked.repeats} repeats, ${worked.castOn} stitches cast on`

function listen(session: Session): void {
  const { form, root } = session
  session.forgetPlaces = listenWhere(root, {
    book: () => session.book,
    lead: (found, total) => lead(session, found, total),
  })
  form.addEventListener('change', ({ target }) => {
    const name = target instanceof HTMLInputElement || target instanceof HTMLSelectElement ? target.name : ''
    if (name === 'repeats') widen(session)
    else if (name === 'row') place(session, null)
    else if (name === 'step') showHere(session)
    else if (name === 'way') showWay(form)
    if (['repeats', 'row', 'step'].includes(name)) forget(session)
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    look(session)
  })
}

/** The piece is as wide as the reader says, or she is told why not. */
function widen(session: Session): boolean {
  const { form, bookFor } = session
  const field = form.querySelector<HTMLInputElement>('[name="repeats"]')
  if (!field) return true
  const read = readRepeats(field.value)
  if ('words' in read) {
    tellUnclear(form, [read])
    return false
  }
  const book = bookFor(read.repeats)
  if (!book) {
    tellUnclear(form, [
      {
        field: 'repeats',
        words:
          'So wide a piece is more than this page can look at. Write fewer repeats: those round the place that is wrong.',
      },
    ])
    return false
  }
  tellUnclear(form, [])
  if (book === session.book) return true
  session.book = book
  session.forgetPlaces()
  session.stop()
  session.stop = makeReady(book, hereIn(form).row)
  place(session, hereIn(form).step)
  return true
}

/** The form, filled in for a place that was found: a row not begun is the one before it done. */
function lead(session: Session, found: Pick<PossiblePlace, 'row' | 'done'>, total: number | null): void {
  const { form, book } = session
  const { plan } = book
  const before = found.done === 0 ? rowBefore(plan.worked, found.row) : null
  const row = before ?? found.row
  const isDone = before !== null || found.done >= (plan.rows[row]?.acts.length ?? 0)
  find<HTMLSelectElement>(form, '[name="row"]').value = String(row)
  place(session, isDone ? null : found.done)
  if (total !== null) {
    find<HTMLInputElement>(form, '[name="way"][value="total"]').checked = true
    find<HTMLInputElement>(form, '[name="total"]').value = String(total)
    showWay(form)
  }
  forget(session)
  say(session, '')
  find<HTMLElement>(session.root, '[data-meant]').scrollIntoView({ block: 'start' })
  find<HTMLElement>(form, total === null ? '[name="way"]:checked' : '[name="total"]').focus({
    preventScroll: true,
  })
}

/** What was found belongs to another place. */
function forget(session: Session): void {
  session.findings = null
  find(session.root, '[data-findings]').hidden = true
  say(session, '')
}

function look(session: Session): void {
  const { form, book } = session
  const before = session.book
  if (!widen(session)) return say(session, 'One field needs another look.')
  if (before !== session.book)
    return say(session, 'The counts now belong to another width. Look at them once more.')
  const fields = Object.fromEntries(new FormData(form))
  const told = readEvidence(fields, askedOf(book.plan))
  const copy = readVersion(fields.version)
  const unclear = 'words' in copy ? [...told.unclear, copy] : told.unclear
  tellUnclear(form, unclear)
  if (!told.evidence || 'words' in copy) {
    const many = unclear.length
    return say(session, many === 1 ? 'One field needs another look.' : `${many} fields need another look.`)
  }
  const { about } = book.plan.worked.pattern
  const page = copy.version === null ? null : checkPage(about, copy.version)
  show(session, { diagnosis: diagnose(book, told.evidence), answered: [], page, about })
}

function show(session: Session, findings: Findings): void {
  session.findings = findings
  const { root } = session
  const replies: Replies = {
    answer: (reply, words) => {
      const { diagnosis, answered } = findings
      const question = diagnosis.question?.words ?? ''
      show(session, {
        ...findings,
        diagnosis: answer(diagnosis, reply),
        answered: [...answered, { question, reply: words, before: diagnosis }],
      })
    },
    takeBack: () => {
      const last = findings.answered.at(-1)
      if (last)
        show(session, { ...findings, diagnosis: last.before, answered: findings.answered.slice(0, -1) })
    },
  }
  showFindings(root, findings, replies)
  find(root, '[data-findings]').hidden = false
  say(session, summaryWords(findings))
  const heading = find(root, '[data-findings] h2')
  heading.focus({ preventScroll: true })
  heading.scrollIntoView({ block: 'start' })
}

function say({ root }: Session, words: string): void {
  find(root, '[data-slot="status"]').textContent = words
}

for (const root of document.querySelectorAll<HTMLElement>('[data-mend]')) start(root)
