import type { ChoosePart, CountPart, Part, Reply } from '../../engine/practice/index.ts'
import { el } from '../mend/dom.ts'
import { figureOf } from './figures.ts'
import { orderView } from './order-view.ts'

type Answer = string | readonly string[]

/** A part of an exercise on the page: where it is answered, and where the reply stands. */
export interface PartView {
  readonly gap: boolean
  readonly element: HTMLElement
  /** In the element, but for a gap: there it stands under the line. */
  readonly reply: HTMLElement
  readonly answer: () => Answer
  readonly fill: (answer: Answer) => void
  /** Null takes back what was said. */
  readonly tell: (reply: Reply | null) => void
}

export function partView(part: Part): PartView {
  if (part.form === 'order') return orderView(part)
  if (part.form === 'count') return countView(part)
  return part.gap ? gapView(part) : listView(part)
}

/** A reply with its sign: said in words and by its place, not by colour alone. */
export function replyElement(id: string): {
  element: HTMLElement
  tell: (reply: Reply | null, before?: string) => void
} {
  const element = el('p', { class: 'reply', id: `${id}-reply`, hidden: true })
  return {
    element,
    tell: (reply, before = '') => {
      element.hidden = reply === null
      element.dataset.right = String(reply?.right ?? '')
      element.textContent = reply ? `${before}${reply.words}` : ''
    },
  }
}

function listView({ id, ask, choices, picture }: ChoosePart): PartView {
  const reply = replyElement(id)
  const radios = choices.map((choice) =>
    el('input', { type: 'radio', name: id, value: choice.id, 'aria-describedby': `${id}-reply` }),
  )
  const labels = choices.map(({ words }, i) => el('label', {}, radios[i] ?? null, el('span', {}, words)))
  const element = el(
    'fieldset',
    { class: picture ? 'with-picture' : '' },
    el('legend', {}, ask),
    picture && figureOf(picture),
    el('div', { class: 'choices' }, ...labels, reply.element),
  )
  return {
    gap: false,
    element,
    reply: reply.element,
    answer: () => radios.find((radio) => radio.checked)?.value ?? '',
    fill: (answer) => {
      for (const radio of radios) radio.checked = radio.value === answer
    },
    tell: reply.tell,
  }
}

function countView({ id, ask }: CountPart): PartView {
  const reply = replyElement(id)
  const input = el('input', {
    type: 'text',
    inputmode: 'numeric',
    maxlength: 20,
    id: `part-${id}`,
    name: id,
    'aria-describedby': `${id}-reply`,
  })
  return {
    gap: false,
    element: el('div', { class: 'field' }, el('label', { for: `part-${id}` }, ask), input, reply.element),
    reply: reply.element,
    answer: () => input.value,
    fill: (answer) => {
      input.value = String(answer)
    },
    tell: reply.tell,
  }
}

const signs = { true: '✓', false: '↻', null: '' } as const
const signWords = { true: 'right', false: 'look again', null: '' } as const

/** A gap in a line. Its reply is told under the line only where there is something to say. */
function gapView({ id, ask, choices }: ChoosePart): PartView {
  const reply = replyElement(id)
  const select = el(
    'select',
    { name: id, 'aria-label': ask, 'aria-describedby': `${id}-sign` },
    el('option', { value: '' }, '…'),
    ...choices.map((choice) => el('option', { value: choice.id }, choice.words)),
  )
  const sign = el('span', { class: 'sign', id: `${id}-sign` })
  const number = ask.replace(/^.*piece (\d+).*$/, '$1')
  return {
    gap: true,
    element: el('span', { class: 'gap' }, select, sign),
    reply: reply.element,
    answer: () => select.value,
    fill: (answer) => {
      select.value = String(answer)
    },
    tell: (told) => {
      const key = String(told?.right ?? null) as keyof typeof signs
      sign.replaceChildren(signs[key], el('span', { class: 'visually-hidden' }, signWords[key]))
      sign.dataset.right = key
      reply.tell(told?.right === false ? told : null, `Piece ${number}: `)
    },
  }
}
