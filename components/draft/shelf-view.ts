import { el, find } from '../mend/dom.ts'
import type { Listed } from './shelf.ts'

export interface ShelfEvents {
  readonly onOpen: (id: string) => void
  readonly onTakeAway: (id: string) => void
}

const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' })

/** Lists the drafts that this browser keeps. */
export function showShelf(
  root: HTMLElement,
  all: readonly Listed[],
  open: string,
  events: ShelfEvents,
): void {
  find(root, '[data-shelf-count]').textContent = String(all.length)
  const list = find(root, '[data-shelf]')
  list.replaceChildren(...all.map((one) => shelfItem(one, one.id === open, events)))
}

function shelfItem(
  { id, title, saved }: Listed,
  isOpen: boolean,
  { onOpen, onTakeAway }: ShelfEvents,
): HTMLElement {
  const when = el('small', {}, isOpen ? 'open here' : `written ${day.format(saved)}`)
  const name = el(
    'button',
    { type: 'button', class: 'draft-name', 'aria-current': String(isOpen) },
    title,
    when,
  )
  name.addEventListener('click', () => onOpen(id))
  const away = el(
    'button',
    { type: 'button', class: 'quiet', 'aria-label': `Throw away ${title}` },
    'Throw away',
  )
  away.addEventListener('click', () => onTakeAway(id))
  return el('li', {}, name, away)
}
