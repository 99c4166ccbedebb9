import type { Item, Pattern, Row } from '../pattern/index.ts'
import type { StitchId } from '../stitches/index.ts'
import { type Adaptation, easy } from './adaptation.ts'
import { finished, rowsOf, setUpOf } from './make.ts'
import { offersIn, plainerIn } from './offers.ts'
import { refuse } from './refusal.ts'

/**
 * Awkward stitches as plainer ones that take and make as many loops: all of them, or `only` one. What that does to the
 * look is told by each offer that is taken.
 */
export function plainer(pattern: Pattern, only: StitchId | null = null): Adaptation {
  const taken = offersIn(pattern).filter(({ stitch }) => only === null || stitch === only)
  if (taken.length === 0)
    return refuse('already', 'It has no awkward stitch of that kind that a plainer one could stand in for.')
  const ids = new Set(taken.map(({ stitch }) => stitch))
  const swap = ({ items, side }: Row): Item[] => swapped(items, side, ids)
  const draft = {
    ...pattern,
    setUp: setUpOf(pattern.setUp.map(swap), pattern),
    rows: rowsOf(pattern.rows.map(swap), 1, pattern),
  }
  const changes = taken.map(({ sentence, rows }) => easy(`Taken: ${sentence}`, rows))
  return finished(draft, changes, { offers: offersIn(draft) })
}

function swapped(items: readonly Item[], side: Row['side'], ids: ReadonlySet<StitchId>): Item[] {
  const other = (id: StitchId): StitchId => (ids.has(id) ? (plainerIn(id, side) ?? id) : id)
  return items.map((item): Item => {
    if (item.kind === 'stitch' || item.kind === 'across') return { ...item, stitch: other(item.stitch) }
    if (item.kind === 'group' || item.kind === 'repeat')
      return { ...item, items: swapped(item.items, side, ids) }
    return item
  })
}
