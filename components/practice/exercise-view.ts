import type { Answers, Exercise, Part, Picture, Reply } from '../../engine/practice/index.ts'
import { el } from '../mend/dom.ts'
import { figureOf } from './figures.ts'
import { type PartView, partView } from './part-view.ts'
import { shownElements } from './shown-view.ts'

/** An exercise on the page. */
export interface ExerciseView {
  /** What is to be read and looked at first. */
  readonly before: readonly HTMLElement[]
  readonly form: HTMLFormElement
  /** Why it is so; hidden until it is asked for. */
  readonly why: HTMLElement
  readonly answers: () => Answers
  readonly fill: (answers: Answers) => void
  readonly showReplies: (replies: readonly Reply[]) => void
  readonly showWhy: () => void
}

const isGap = (part: Part): boolean => part.form === 'choose' && part.gap

export function viewOf(exercise: Exercise): ExerciseView {
  const parts = new Map(exercise.parts.map((part) => [part.id, partView(part)]))
  const shown = besideEachOther(exercise.shown.flatMap((one) => shownElements(one, parts)))
  const hasGaps = exercise.parts.some(isGap)
  const own = exercise.parts.filter((part) => !isGap(part)).flatMap(({ id }) => parts.get(id)?.element ?? [])
  const form = el('form', { novalidate: true, autocomplete: 'off' }, ...(hasGaps ? shown : []), ...own)
  const why = whyOf(exercise)
  return {
    before: [...exercise.ask.map((words) => el('p', {}, words)), ...(hasGaps ? [] : shown)],
    form,
    why: why.element,
    answers: () => Object.fromEntries([...parts].map(([id, view]) => [id, view.answer()])),
    fill: (answers) => {
      for (const [id, view] of parts) view.fill(answers[id] ?? '')
    },
    showReplies: (replies) => tell(parts, replies),
    showWhy: why.show,
  }
}

/** Several pictures lie beside each other, to be compared. */
function besideEachOther(all: readonly HTMLElement[]): HTMLElement[] {
  const figures = all.filter((one) => one.tagName === 'FIGURE')
  if (figures.length < 2) return [...all]
  return [el('div', { class: 'pictures' }, ...figures), ...all.filter((one) => !figures.includes(one))]
}

/** What is said of each answer; what is not named has nothing to say. */
function tell(parts: ReadonlyMap<string, PartView>, replies: readonly Reply[]): void {
  for (const [id, view] of parts) view.tell(replies.find(({ part }) => part === id) ?? null)
}

/** Pictures of the answer are drawn when it is looked at. */
function whyOf({ because, after }: Exercise): { element: HTMLElement; show: () => void } {
  const element = el('section', { class: 'why', hidden: true, 'aria-label': 'Why' }, el('h3', {}, 'Why'))
  element.append(...because.map((words) => el('p', {}, words)))
  return {
    element,
    show: () => {
      if (element.hidden) element.append(...after.map((picture: Picture) => figureOf(picture)))
      element.hidden = false
    },
  }
}
