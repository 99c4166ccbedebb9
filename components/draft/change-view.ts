import type { Draft } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { el, find } from '../mend/dom.ts'
import type { ChangeView } from './answer.ts'

export interface ChangeEvents {
  readonly draft: () => Draft
  /** Null where that took too long. */
  readonly onAsk: (pattern: Pattern, written: string) => Promise<ChangeView | null>
  readonly onTake: (pattern: Pattern) => void
}

export interface ChangePart {
  /** Only a proved draft can be changed as a whole; null for any other. */
  show(proved: Pattern | null): void
}

/** The part of the page where the whole pattern is made over, with a report of what changed. */
export function changePart(root: HTMLElement, { draft, onAsk, onTake }: ChangeEvents): ChangePart {
  const part = find(root, '[data-changes]')
  const [choice, number] = [
    find<HTMLSelectElement>(part, 'select'),
    find<HTMLInputElement>(part, '[data-number]'),
  ]
  const [report, field] = [find(part, '[data-report]'), find(part, '[data-number-field]')]
  let pattern: Pattern | null = null
  const chosen = (): HTMLOptionElement | undefined => choice.selectedOptions[0]
  const setNumber = (): void => {
    const { asks, usual } = chosen()?.dataset ?? {}
    field.hidden = asks === undefined
    find(field, 'label').textContent = asks ?? ''
    number.value = usual ?? ''
  }
  const tell = (title: string, sentences: readonly string[]): void =>
    report.replaceChildren(el('h3', {}, title), el('ul', {}, ...sentences.map((one) => el('li', {}, one))))
  const change = async (): Promise<void> => {
    const asked = draft()
    if (!pattern) return tell('Not yet', ['Every row has to come out first.'])
    const words = chosen()?.textContent?.trim() ?? ''
    const made = await onAsk(pattern, `${choice.value} ${field.hidden ? '' : number.value}`.trim())
    if (!made) return tell(`${words}: not done`, ['That took too long and was stopped.'])
    if (asked !== draft()) return tell(`${words}: not done`, ['The rows were changed meanwhile.'])
    if (made.pattern) onTake(made.pattern)
    tell(made.pattern ? `${words}: done` : `${words}: not possible`, made.sentences)
  }
  choice.addEventListener('change', setNumber)
  find(part, '[data-do="change"]').addEventListener('click', () => void change())
  setNumber()
  part.hidden = false
  return {
    show(proved) {
      pattern = proved
    },
  }
}
