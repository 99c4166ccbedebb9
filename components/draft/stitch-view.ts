import type { DraftChange } from '../../engine/intake/index.ts'
import { el, find } from '../mend/dom.ts'
import type { ChoiceView, StitchView } from './answer.ts'

/** The stitch that is looked at: the needles there, and what else could stand in its place. */
export interface StitchPart {
  show(view: StitchView | null): void
  focusChoices(): void
}

export interface StitchEvents {
  readonly onGo: (to: readonly [number, number]) => void
  readonly onPut: (change: DraftChange) => void
  /** Back to where the stitch was chosen. */
  readonly onLeave: () => void
}

export function stitchPart(root: HTMLElement, { onGo, onPut, onLeave }: StitchEvents): StitchPart {
  const part = find(root, '[data-stitch]')
  const nothing = find(root, '[data-no-stitch]')
  const slot = (name: string): HTMLElement => find(part, `[data-slot="${name}"]`)
  let shown: StitchView | null = null
  const write = (name: keyof StitchView, html: string): void => {
    if (shown?.[name] !== html || slot(name).innerHTML === '') slot(name).innerHTML = html
  }
  for (const way of ['next', 'back'] as const) {
    find(part, `[data-go="${way}"]`).addEventListener('click', () => {
      const to = shown?.[way]
      if (to) onGo(to)
    })
  }
  part.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') onLeave()
  })
  const list = (name: string, choices: readonly ChoiceView[]): void => {
    const group = find(part, `[data-choices="${name}"]`)
    group.hidden = choices.length === 0
    find(group, '.choices').replaceChildren(...choices.map((one) => choiceButton(one, onPut)))
  }
  /** There are many of these: they are made when somebody asks for them. */
  const others = find<HTMLDetailsElement>(part, '[data-choices="others"]')
  const listOthers = (): void => {
    const all = [...(shown?.others ?? []), ...(shown?.out ? [shown.out] : [])]
    if (others.open) list('others', all)
    else others.hidden = all.length === 0
  }
  others.addEventListener('toggle', listOthers)
  return {
    show(view) {
      part.hidden = view === null
      nothing.hidden = view !== null
      if (!view) {
        shown = null
        return
      }
      const hadFocus = part.contains(document.activeElement) && document.activeElement?.closest('.choices')
      write('status', view.status)
      write('needles', view.needles)
      write('balance', view.balance)
      write('hands', view.hands)
      slot('written').textContent = view.written
      find(part, '[data-go="next"]').setAttribute('aria-disabled', String(view.next === null))
      find(part, '[data-go="back"]').setAttribute('aria-disabled', String(view.back === null))
      list('keeps', view.keeps)
      list('pairs', view.pairs)
      shown = view
      listOthers()
      if (hadFocus) onLeave()
    },
    focusChoices: () => part.querySelector<HTMLElement>('.choices button')?.focus(),
  }
}

function choiceButton(
  { sign, short, words, effect, change }: ChoiceView,
  onPut: StitchEvents['onPut'],
): HTMLElement {
  const button = el('button', { type: 'button', class: 'choice' })
  const picture = el('span', { class: 'sign' })
  picture.innerHTML = sign
  const said = el('span', { class: 'choice-words' }, el('strong', {}, short || 'nothing'))
  if (words !== short) said.append(` ${words}`)
  button.append(picture, said)
  if (effect !== '') said.append(el('small', {}, effect))
  button.addEventListener('click', () => onPut(change))
  return button
}
