import type { Adapted } from '../../engine/adapt/index.ts'
import { type Proof, prove } from '../../engine/counts/index.ts'
import { countText } from '../../engine/lesson/index.ts'
import { printRow, type Terms } from '../../engine/notation/index.ts'
import { type Pattern, type Row, withEdges } from '../../engine/pattern/index.ts'
import { el } from '../mend/dom.ts'
import { rowName, rowWord, sideWords } from '../pattern-facts.ts'

/** The rows in words, edge stitches included, with the count after each. */
export function rowsList({ pattern, closing }: Adapted, terms: Terms): HTMLElement[] {
  const proof = prove(pattern)
  const items = [...pattern.setUp, ...pattern.rows].map((row) =>
    rowItem(row, pattern, rowName(pattern, row.number), countAfter(proof, row.number), terms),
  )
  const list = el('ol', { class: 'worded' }, ...items)
  return closing.length === 0 ? [list] : [list, ...closingPart(closing, pattern, terms)]
}

function rowItem(row: Row, pattern: Pattern, name: string, after: string | null, terms: Terms): HTMLElement {
  const side = pattern.worked === 'flat' ? el('span', { class: 'side' }, ` ${sideWords[row.side]}`) : null
  return el(
    'li',
    {},
    el('p', { class: 'name' }, el('b', {}, name), side),
    el('p', { class: 'words', 'data-row': row.number }, printRow(withEdges(row, pattern), { terms })),
    after === null ? null : el('p', { class: 'after number' }, after),
  )
}

const countAfter = ({ setUp, rows }: Proof, number: number): string | null => {
  const count = [...setUp, ...rows].find(({ row }) => row === number)
  return count ? `${countText(count.after)} after` : null
}

function closingPart(closing: readonly Row[], pattern: Pattern, terms: Terms): HTMLElement[] {
  const word = rowWord(pattern)
  return [
    el('h4', {}, `After the last time of the ${word.toLowerCase()}s, once`),
    el(
      'ol',
      { class: 'worded closing' },
      ...closing.map((row, i) =>
        rowItem(row, pattern, `Closing ${word.toLowerCase()} ${i + 1}`, null, terms),
      ),
    ),
  ]
}
