import type { Item, Pattern, Row, Until } from './pattern.ts'
import { takesAndMakes } from './totals.ts'

export interface Edges {
  readonly first: readonly Item[]
  readonly last: readonly Item[]
  /** Whether the two changed places for this row. */
  readonly swapped: boolean
}

/**
 * The edge stitches at a row's beginning and end, in working order. They are written for any row; where the two differ
 * in width, a wrong-side row worked flat begins with the one that lies there.
 */
export function edgesOf(row: Pick<Row, 'side'>, pattern: Pattern): Edges {
  const { before, after } = pattern.edges
  const uneven = takesAndMakes(before)?.takes !== takesAndMakes(after)?.takes
  const swapped = row.side === 'WS' && pattern.worked === 'flat' && uneven
  return swapped ? { first: after, last: before, swapped } : { first: before, last: after, swapped }
}

/** A row with its edge stitches, as it is read out: what goes to the end of the row stops before the edge. */
export function withEdges(row: Row, pattern: Pattern): readonly Item[] {
  const { first, last } = edgesOf(row, pattern)
  const keep = takesAndMakes(last)?.takes ?? 0
  const turned = row.items.some((item) => item.kind === 'turn')
  if (turned) return [...first, ...row.items]
  return [...first, ...row.items.map((item) => shortened(item, keep)), ...last]
}

function shortened(item: Item, keep: number): Item {
  if (keep === 0 || (item.kind !== 'repeat' && item.kind !== 'across')) return item
  const { until } = item as { until: Until }
  if (until.kind === 'times') return item
  const last = { kind: 'last' as const, stitches: keep + (until.kind === 'last' ? until.stitches : 0) }
  return { ...item, until: last }
}
