import type { Change } from '../../engine/adapt/index.ts'
import type { MakeOver } from '../../engine/intake/index.ts'
import { el } from '../mend/dom.ts'
import { refusalParts } from './refusal-view.ts'
import type { Outcome } from './run.ts'
import { pressing, spoken } from './spoken.ts'
import { capital } from './words.ts'

/** A step with its name in words and what came of it. */
export interface StepShown {
  readonly step: MakeOver
  readonly words: string
  readonly outcome: Outcome
}

export interface StepReplies {
  readonly takeOut: (index: number) => void
  readonly instead: (index: number, written: string) => void
}

/** What was done, step by step, each with what it changed or why it could not be. */
export const stepItems = (steps: readonly StepShown[], replies: StepReplies): HTMLElement[] =>
  steps.map((shown, i) => stepItem(shown, i, replies))

function stepItem({ step, words, outcome }: StepShown, i: number, replies: StepReplies): HTMLElement {
  const name = outcome.came === 'unknown' ? `‘${step.written}’` : capital(words)
  const out = pressing('Take it out', () => replies.takeOut(i), `Take it out: ${words}`)
  return el(
    'li',
    { class: `step ${outcome.came === 'done' ? 'done' : 'stuck'}`, 'data-step': i },
    el('div', { class: 'head' }, el('b', {}, ...spoken(name)), out),
    ...outcomeParts(step, outcome, (written) => replies.instead(i, written)),
  )
}

function outcomeParts(step: MakeOver, outcome: Outcome, instead: (written: string) => void): HTMLElement[] {
  switch (outcome.came) {
    case 'done':
      return [el('ul', { class: 'changes' }, ...outcome.changes.map(changeItem))]
    case 'refused':
      return refusalParts(outcome.refusal, outcome.before)
    case 'missing':
      return [el('p', {}, 'The other pattern could not be fetched, or the library has none of that name.')]
    case 'waits':
      return [el('p', {}, 'Not tried yet: a step before it stands in the way.')]
    case 'unknown': {
      const meant = step.kind === 'unknown' ? step.suggestion : null
      const told = el('p', {}, 'Nothing is known by that name, so it was not done.')
      return meant === null ? [told] : [told, pressing(`Was ‘${meant}’ meant?`, () => instead(meant))]
    }
  }
}

const changeItem = ({ ease, sentence }: Change): HTMLElement =>
  ease === 'hard'
    ? el('li', { class: 'hard' }, el('strong', {}, 'Take care: '), ...spoken(sentence))
    : el('li', {}, ...spoken(sentence))
