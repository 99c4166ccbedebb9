import type { Item, Pattern, Row } from '../pattern/index.ts'
import { type Adaptation, easy } from './adaptation.ts'
import { finished, rowsOf, setUpOf } from './make.ts'
import { refuse } from './refusal.ts'

/**
 * `count` (1 to 40) garter rows below the lace, as set-up rows, and as many above it, which are told apart: they are
 * worked once, after the last time of the rows.
 */
export function borders(pattern: Pattern, count: number): Adaptation {
  if (!Number.isInteger(count) || count < 1 || count > 40)
    return refuse('no-place', 'A border has 1 to 40 rows.')
  if (pattern.growing)
    return refuse(
      'growing',
      'The piece changes its width from row to row: a border belongs to its finished edges.',
    )
  const below = garter(count, pattern)
  const setUp = setUpOf([...below, ...pattern.setUp.map(({ items }) => items)], pattern)
  const how = pattern.worked === 'round' ? 'knit and purl rounds by turns' : 'rows knitted on both sides'
  const what = pattern.worked === 'round' ? 'round' : 'row'
  const sentence = `${count} ${how} come before ${what} 1, and as many after the last time of the ${what}s: garter, which does not curl.`
  return finished({ ...pattern, setUp }, [easy(sentence)], { closing: closingRows(pattern, count) })
}

const garter = (count: number, { worked }: Pattern): Item[][] =>
  Array.from({ length: count }, (_, i) => {
    const stitch = worked === 'round' && i % 2 === 1 ? 'p' : 'k'
    return [{ kind: 'across', stitch, until: { kind: 'end' }, span: { start: 0, end: 0 } }]
  })

/** Garter rows to work once after the rows of a pattern. */
export const closingRows = (pattern: Pattern, count: number): Row[] =>
  rowsOf(garter(count, pattern), pattern.rows.length + 1, pattern)
