import type { Line, LinePiece, Shown } from '../../engine/practice/index.ts'
import { el } from '../mend/dom.ts'
import { figureOf } from './figures.ts'
import type { PartView } from './part-view.ts'

type Parts = ReadonlyMap<string, PartView>

/** Something to look at, as elements; what is to be filled in stands in its place in the line. */
export function shownElements(one: Shown, parts: Parts): HTMLElement[] {
  switch (one.form) {
    case 'words':
      return one.words.map((words) => el('p', {}, words))
    case 'picture':
      return [figureOf(one.picture)]
    case 'lines':
      return one.lines.map((line) => lineElement(line, parts))
    case 'stretches':
      return stretchElements(one)
  }
}

function lineElement({ name, pieces }: Line, parts: Parts): HTMLElement {
  const gaps = pieces.flatMap(({ part }) => (part === null ? [] : (parts.get(part) ?? [])))
  const replies = gaps.filter(({ gap }) => gap).map(({ reply }) => reply)
  return el(
    'div',
    { class: 'line', role: 'group', 'aria-label': name },
    el('p', { class: 'name' }, name),
    el('ol', { class: 'pieces' }, ...pieces.map((piece) => pieceElement(piece, parts))),
    ...replies,
  )
}

function pieceElement({ words, part, count }: LinePiece, parts: Parts): HTMLElement {
  const view = part === null ? undefined : parts.get(part)
  const told =
    words !== null
      ? el('span', { class: 'stitch' }, words)
      : view?.gap
        ? view.element
        : el('span', { class: 'stitch open' }, '?', el('span', { class: 'visually-hidden' }, ' to be found'))
  return el(
    'li',
    {},
    told,
    count === null
      ? null
      : el(
          'span',
          { class: 'number count' },
          el('span', { class: 'visually-hidden' }, ', then '),
          String(count),
        ),
  )
}

/** Counts, and the same piece to be read without its picture. */
function stretchElements({ title, stretches, folded }: Shown & { form: 'stretches' }): HTMLElement[] {
  const head = ['Where', 'Should have', 'Has'].map((words) => el('th', { scope: 'col' }, words))
  const rows = stretches.map(({ name, meant, count }) =>
    el(
      'tr',
      {},
      el('th', { scope: 'row' }, name),
      el('td', { class: 'number' }, String(meant)),
      el('td', { class: 'number' }, String(count)),
    ),
  )
  const table = el(
    'table',
    {},
    el('caption', {}, title),
    el('thead', {}, el('tr', {}, ...head)),
    el('tbody', {}, ...rows),
  )
  const reading = [
    el('p', { class: 'small' }, 'From the right, seen from the right side:'),
    el('ul', {}, ...stretches.map((one) => el('li', {}, el('b', {}, `${one.name}: `), one.reading))),
  ]
  return folded
    ? [foldedAway('Counted for you, and read in words', table, ...reading)]
    : [table, foldedAway('The same in words, without the picture', ...reading)]
}

const foldedAway = (words: string, ...inside: HTMLElement[]): HTMLElement =>
  el('details', {}, el('summary', {}, words), ...inside)
