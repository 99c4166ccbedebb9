import type { Layout } from './layout.ts'
import type { Piece } from './pieces.ts'
import type { Zones } from './zones.ts'

/** The columns between two zones of one row, from the zone at the right edge on: one more than there are zones. */
export type RowBounds = readonly number[]

/**
 * Where the zones of every row begin and end. A boundary lies between the last cell of one zone and the first of the
 * next; where empty cells leave a choice, it stays as near as it can to the row below, so that outlines jog little.
 */
export function boundsOf(rows: readonly (readonly Piece[])[], zones: Zones, layout: Layout): RowBounds[] {
  let below: RowBounds | null = null
  return rows.map((pieces, row) => {
    const starts = layout.starts[row] ?? []
    const own = zones.rows[row] ?? []
    const bounds: number[] = []
    for (let zone = -2; zone <= zones.repeats + 2; zone++) {
      const first = own.findIndex((at) => at >= zone)
      const last = first < 0 ? pieces.length - 1 : first - 1
      const from = last < 0 ? 0 : (starts[last] ?? 0) + (pieces[last]?.width ?? 0)
      const to = first < 0 ? layout.columns : (starts[first] ?? 0)
      const wanted = layout.zoneStarts?.get(zone) ?? below?.[zone + 2] ?? to
      bounds.push(Math.min(to, Math.max(from, wanted)))
    }
    below = bounds
    return bounds
  })
}
