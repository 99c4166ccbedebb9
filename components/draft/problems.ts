import type { DraftChange } from '../../engine/intake/index.ts'
import { el } from '../mend/dom.ts'
import type { MendView, ProblemView } from './answer.ts'

export type OnMend = (change: DraftChange) => void

/** Words in which what stands between backticks is set as it would be written. */
function spoken(words: string): (Node | string)[] {
  return words.split('`').map((part, i) => (i % 2 === 1 ? el('code', {}, part) : part))
}

/** A problem: what, why, and what can be done with one press. */
export function problemItem(problem: ProblemView, mends: readonly MendView[], onMend: OnMend): HTMLLIElement {
  const said = el(
    'p',
    { class: 'what' },
    el('strong', {}, problem.severity === 'error' ? 'Look at this: ' : 'Perhaps: '),
  )
  said.append(...spoken(problem.message))
  const item = el('li', { class: problem.severity }, said)
  if (problem.hint !== null) {
    const hint = el('p', { class: 'hint' })
    hint.append(...spoken(problem.hint))
    item.append(hint)
  }
  if (mends.length > 0)
    item.append(el('div', { class: 'mends' }, ...mends.map((mend) => mendButton(mend, onMend))))
  return item
}

function mendButton({ words, shown, remaining, change }: MendView, onMend: OnMend): HTMLButtonElement {
  const button = el('button', { type: 'button', class: 'mend' }, el('span', { class: 'mend-words' }, words))
  if (shown) {
    const [before, fresh, after] = shown
    button.append(el('span', { class: 'mend-text' }, before, el('mark', {}, fresh), after))
  }
  const then =
    remaining === 0
      ? 'then every row comes out'
      : `then ${remaining} to look at ${remaining === 1 ? 'remains' : 'remain'}`
  button.append(el('span', { class: 'mend-then' }, then))
  button.addEventListener('click', () => onMend(change))
  return button
}
