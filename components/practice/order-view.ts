import type { OrderPart } from '../../engine/practice/index.ts'
import { el } from '../mend/dom.ts'
import { type PartView, replyElement } from './part-view.ts'

/** Pieces in a list, each with two buttons that move it: nothing has to be dragged. */
export function orderView({ id, ask, pieces }: OrderPart): PartView {
  const reply = replyElement(id)
  const told = el('p', { class: 'visually-hidden', role: 'status' })
  const list = el('ol', { class: 'order' })
  const items = new Map(
    pieces.map(({ id: own, words }) => [own, itemOf(own, words, (by) => move(own, words, by))]),
  )
  const order = (): string[] => [...list.children].map((item) => (item as HTMLElement).dataset.piece ?? '')
  const put = (ids: readonly string[]): void => {
    list.replaceChildren(...ids.flatMap((one) => items.get(one)?.item ?? []))
    for (const [i, one] of ids.entries()) items.get(one)?.at(i, ids.length)
  }
  const move = (own: string, words: string, by: -1 | 1): void => {
    const ids = order()
    const at = ids.indexOf(own)
    const other = ids[at + by]
    if (other === undefined) return
    ids[at + by] = own
    ids[at] = other
    put(ids)
    items.get(own)?.focus(by)
    told.textContent = `${words} is now ${at + by + 1} of ${ids.length}.`
    reply.tell(null)
  }
  put(pieces.map((piece) => piece.id))
  return {
    gap: false,
    element: el('fieldset', {}, el('legend', {}, ask), list, told, reply.element),
    reply: reply.element,
    answer: order,
    fill: (answer) => {
      if (typeof answer === 'object') put(answer)
    },
    tell: reply.tell,
  }
}

interface Item {
  readonly item: HTMLLIElement
  /** Its place among so many. */
  readonly at: (place: number, of: number) => void
  /** After a move the hand stays where it pressed. */
  readonly focus: (by: -1 | 1) => void
}

function itemOf(id: string, words: string, move: (by: -1 | 1) => void): Item {
  const button = (by: -1 | 1): HTMLButtonElement => {
    const [sign, name] = by < 0 ? ['↑', 'earlier'] : ['↓', 'later']
    const made = el('button', { type: 'button', 'aria-label': `${words}: one place ${name}` }, sign)
    made.addEventListener('click', () => move(by))
    return made
  }
  const [up, down] = [button(-1), button(1)]
  const item = el('li', { 'data-piece': id }, el('span', { class: 'stitch' }, words), up, down)
  return {
    item,
    at: (place, of) => {
      // Not `disabled`: that would throw the focus away at either end.
      up.setAttribute('aria-disabled', String(place === 0))
      down.setAttribute('aria-disabled', String(place === of - 1))
    },
    focus: (by) => (by < 0 ? up : down).focus(),
  }
}
