import { type Slot, sheetsOfPaper } from '../card/cards.ts'
import { el, find } from '../mend/dom.ts'
import type { CardView } from './answer.ts'

/** Swatch cards for a sheet of paper, made from the cards that the page came with. */
export function showCards(root: HTMLElement, shown: CardView | null, isRound: boolean, edges: boolean): void {
  const place = find(root, '[data-cards]')
  if (!shown) {
    place.replaceChildren()
    return
  }
  const papers = sheetsOfPaper(shown.card).map((slots) =>
    el('div', { class: 'sheet' }, ...slots.map((slot) => cardFor(root, shown, slot, isRound, edges))),
  )
  place.replaceChildren(...papers)
}

function cardFor(
  root: HTMLElement,
  shown: CardView,
  slot: Slot,
  isRound: boolean,
  edges: boolean,
): HTMLElement {
  const page = slot.sheet?.page ?? 0
  const name = page === 0 ? 'notes' : page === 1 ? 'first' : 'more'
  const template = find<HTMLTemplateElement>(root, `[data-card="${name}"]`)
  const card = template.content.querySelector('.card')?.cloneNode(true) as HTMLElement
  card.querySelector('svg.code')?.remove()
  find(card, 'h2').textContent = shown.card.title
  const under = card.querySelector('.name p')
  if (under && page > 0)
    under.textContent = shown.card.sheets.length > 1 ? `card ${page} of ${shown.card.sheets.length}` : ''
  if (page === 1) fillFirst(card, shown, isRound, edges)
  if (slot.sheet) fillRows(card, slot.sheet.rows, isRound)
  find(card, 'footer').textContent = 'A draft, proved by the page that it was written on; not in the library.'
  return card
}

function fillFirst(
  card: HTMLElement,
  { card: data, signs, words }: CardView,
  isRound: boolean,
  edges: boolean,
): void {
  const repeats = data.repeats === 1 ? 'one repeat' : `${data.repeats} repeats`
  const kind = isRound ? 'round' : 'row'
  const rule = data.rule.charAt(0).toUpperCase() + data.rule.slice(1)
  const rows = `${data.rowCount} ${kind}${data.rowCount === 1 ? '' : 's'}`
  find(card, '.numbers').replaceChildren(
    el('p', {}, `${rule}${edges ? ', with edge stitches' : ''}; ${rows}.`),
    el('p', {}, 'This swatch: ', el('strong', {}, `cast on ${data.castOn}`), `, ${repeats}.`),
  )
  const list = find(card, 'ul')
  const [sample] = list.children
  list.replaceChildren(
    ...signs.map((sign, i) => {
      const item = sample?.cloneNode(true) as HTMLElement
      find(item, '.drawing').innerHTML = sign
      find(item, '.drawing + span').innerHTML = words[i] ?? ''
      return item
    }),
  )
}

function fillRows(card: HTMLElement, rows: NonNullable<Slot['sheet']>['rows'], isRound: boolean): void {
  const body = find(card, 'tbody')
  const [sample] = body.children
  find(card, 'thead th').textContent = isRound ? 'Round' : 'Row'
  body.replaceChildren(
    ...rows.map(({ label, side, words, count, lifeline }) => {
      const line = sample?.cloneNode(true) as HTMLElement
      const head = find(line, 'th')
      const mark = head.querySelector('.side')
      head.replaceChildren(label)
      if (mark && !isRound) {
        mark.textContent = side
        head.append(' ', mark)
      }
      const work = find(line, 'td')
      const rope = work.querySelector('.line')
      work.replaceChildren(`${words} `)
      if (rope && lifeline) work.append(rope)
      line.classList.toggle('lifeline', lifeline)
      find(line, '.count').textContent = String(count)
      return line
    }),
  )
}
