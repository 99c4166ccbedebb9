import type { Adapted } from '../../engine/adapt/index.ts'
import { at } from '../../engine/base/index.ts'
import { prove } from '../../engine/counts/index.ts'
import { castOnWords } from '../../engine/lesson/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { el } from '../mend/dom.ts'
import { rowWord } from '../pattern-facts.ts'
import { counted } from './words.ts'

/** The proof in words, and how many to cast on. */
export function proofParts({ pattern, counts }: Adapted): HTMLElement[] {
  const one = 'fixed' in pattern.castOn
  return [
    el('p', { class: 'proof', 'data-proof': true }, proofWords(pattern)),
    el('h3', {}, 'How many to cast on'),
    el('p', {}, ruleWords(pattern)),
    ...(one ? [] : [countTable(counts)]),
  ]
}

/** Proved again here, from the rows as they stand: nothing is taken over. */
function proofWords(pattern: Pattern): string {
  const proof = prove(pattern)
  if (!proof.sound) return 'Not proved. Do not knit from it; start again from the pattern as it was.'
  const what = rowWord(pattern).toLowerCase()
  const rows = counted(pattern.rows.length, what, `${what}s`)
  const every = 'fixed' in pattern.castOn ? 'Proved' : 'Proved for every number of repeats'
  const takes = `${every}: each of its ${rows} takes all the stitches on the needle and not one more`
  const [first, last] = [proof.rows[0]?.before, proof.rows.at(-1)?.after]
  if (!first || !last) return `${takes}.`
  if (pattern.growing) return `${takes}; the count changes by ${at(last, 1) - at(first, 1)} in all.`
  return `${takes}, and after the last there are as many as before the first.`
}

function ruleWords(pattern: Pattern): string {
  const { edges } = prove(pattern)
  if ('fixed' in pattern.castOn)
    return `Cast on ${counted(pattern.castOn.fixed + edges, 'stitch', 'stitches')}: this piece always begins with that number.`
  const beside = edges > 0 ? `, and ${counted(edges, 'stitch', 'stitches')} more for the edges` : ''
  const join = pattern.worked === 'round' ? ' Join to the round without a twist.' : ''
  return `A ${castOnWords(pattern.castOn)}${beside}.${join}`
}

function countTable(counts: Adapted['counts']): HTMLElement {
  const head = (words: string): HTMLElement => el('th', { scope: 'row' }, words)
  const cell = (n: number): HTMLElement => el('td', { class: 'number' }, String(n))
  return el(
    'table',
    { class: 'cast-on' },
    el('caption', { class: 'visually-hidden' }, 'Stitches to cast on, edge stitches included'),
    el(
      'tbody',
      {},
      el('tr', {}, head('Repeats'), ...counts.map(({ repeats }) => cell(repeats))),
      el('tr', { class: 'strong' }, head('Cast on'), ...counts.map(({ stitches }) => cell(stitches))),
    ),
  )
}
