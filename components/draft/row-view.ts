import { el, find } from '../mend/dom.ts'
import type { Marked, MendView, ProblemView, RowView } from './answer.ts'
import { type OnMend, problemItem } from './problems.ts'

/** One row of the page: its words, its needle, its count, and what is wrong with it. */
export interface RowPart {
  readonly li: HTMLLIElement
  readonly field: HTMLTextAreaElement
  text: string
  shown: RowView | null
  spans: readonly number[]
  /** The text that `spans` belongs to. */
  spansOf: string
  marks: string
  problems: string
}

export function rowPart(template: HTMLTemplateElement): RowPart {
  const li = template.content.firstElementChild?.cloneNode(true) as HTMLLIElement
  const field = find<HTMLTextAreaElement>(li, 'textarea')
  return { li, field, text: '', shown: null, spans: [], spansOf: '', marks: '', problems: '' }
}

/** The words as they are now; marks of older words go until the new ones are read. */
export function setText(part: RowPart, text: string): void {
  if (part.field.value !== text) part.field.value = text
  if (part.text === text && part.marks === '') return
  part.text = text
  part.marks = ''
  find(part.li, '.echo').textContent = `${text}\n`
}

export function setName(part: RowPart, name: string, index: number): void {
  const id = `draft-row-${index}`
  const label = find<HTMLLabelElement>(part.li, 'label')
  if (part.field.id !== id) {
    part.field.id = id
    label.htmlFor = id
    find(part.li, '.row-told').id = `${id}-told`
    describe(part)
    for (const tool of part.li.querySelectorAll('[data-tool]'))
      tool.setAttribute('aria-describedby', `${id}-name`)
    label.id = `${id}-name`
  }
  if (label.textContent !== name) label.textContent = name
}

/** The field is described by its counts and by the first thing that is wrong with it. */
function describe({ li, field }: RowPart): void {
  const what = li.querySelector('.row-problems .what')
  if (what) what.id = `${field.id}-what`
  field.setAttribute('aria-describedby', `${field.id}-told${what ? ` ${field.id}-what` : ''}`)
}

const stateWords = {
  fits: 'comes out',
  misfit: 'does not come out',
  unread: 'not understood yet',
  blank: '',
} as const

/** Shows what the engine found; only what changed is written. Null for a row that nothing is written in. */
export function showRow(part: RowPart, view: RowView | null): void {
  const { li, shown: old } = part
  part.spans = view?.spans ?? []
  part.spansOf = part.text
  const put = (selector: string, text: string): void => {
    const there = find(li, selector)
    if (there.textContent !== text) there.textContent = text
  }
  if (view?.strip !== old?.strip || !old) find(li, '.strip').innerHTML = view?.strip ?? ''
  find(li, '.strip-frame').hidden = !view?.strip
  li.dataset.state = view?.state ?? 'blank'
  put('.row-side', view?.side ?? '')
  put('.row-way', view ? (view.rightToLeft ? '←' : '→') : '')
  put('.row-state', view ? stateWords[view.state] : '')
  put('.row-before', view?.before ?? '')
  put('.row-after', view?.after ?? '')
  find(li, '.row-count').hidden = !view?.after
  find(li, '.row-count').classList.toggle('changes', view?.changes ?? false)
  put('.row-tally', view?.tally ?? '')
  put('.row-picture', view?.picture ?? '')
  part.shown = view
}

/** Marks stretches of the words that have a problem. */
export function showMarks(part: RowPart, marks: readonly Marked[]): void {
  const key = `${part.text}\n${JSON.stringify(marks)}`
  if (part.marks === key || (marks.length === 0 && part.marks === '')) return
  part.marks = marks.length === 0 ? '' : key
  const { text } = part
  const pieces: (Node | string)[] = []
  let at = 0
  for (const { start, end, severity } of marks.toSorted((a, b) => a.start - b.start)) {
    if (end <= at || start >= text.length) continue
    const from = Math.max(at, start)
    pieces.push(text.slice(at, from), el('mark', { class: severity }, text.slice(from, end)))
    at = end
  }
  find(part.li, '.echo').replaceChildren(...pieces, `${text.slice(at)}\n`)
  part.field.setAttribute('aria-invalid', String(marks.some(({ severity }) => severity === 'error')))
}

/** The row's problems, each with what can be done about it. */
export function showProblems(
  part: RowPart,
  problems: readonly { readonly problem: ProblemView; readonly mends: readonly MendView[] }[],
  onMend: OnMend,
): void {
  const key = JSON.stringify(problems)
  if (part.problems === key) return
  part.problems = key
  if (problems.length === 0) part.field.setAttribute('aria-invalid', 'false')
  const list = find(part.li, '.row-problems')
  const hadFocus = list.contains(document.activeElement)
  list.replaceChildren(...problems.map(({ problem, mends }) => problemItem(problem, mends, onMend)))
  list.hidden = problems.length === 0
  describe(part)
  if (hadFocus) part.field.focus({ preventScroll: true })
}

/** Lights the loops of one stitch, and no others. */
export function lightLoops(part: RowPart, step: number | null): void {
  for (const lit of part.li.querySelectorAll('.strip .is-here')) lit.classList.remove('is-here')
  if (step !== null) part.li.querySelector(`.strip [data-key="loop-${step}"]`)?.classList.add('is-here')
}
