import type { Chart } from '../../engine/chart/index.ts'
import type { LoopId, WorkedRow } from '../../engine/needles/index.ts'

/** Where loops stand across the fabric, in columns from the right. */
export type Columns = ReadonlyMap<LoopId, number>

/** Loops side by side over the whole width, seen from the right. */
export function spread(loops: readonly LoopId[], columns: number): Columns {
  const each = columns / Math.max(1, loops.length)
  return new Map(loops.map((id, i) => [id, (i + 0.5) * each]))
}

/** Where a worked row's loops stand: in the chart's cells of the stitches that made them, seen from the right. */
export function columnsOfRow(chart: Chart, row: WorkedRow, index: number): Columns {
  const drawn = chart.rows[index]
  const at = new Map<LoopId, number>()
  if (!drawn) return at
  for (const cell of drawn.cells) {
    if (cell.kind !== 'stitch') continue
    const made = row.steps[cell.step]?.made ?? []
    const seen = drawn.label === 'right' ? made : made.toReversed()
    const each = cell.span / Math.max(1, seen.length)
    for (const [i, id] of seen.entries()) at.set(id, cell.column + (i + 0.5) * each)
  }
  return at
}

/** A row that does not come out has no place in the chart: its loops stand over the middle of those they came from. */
export function columnsOver(
  row: WorkedRow,
  parents: Columns,
  parentsOf: (id: LoopId) => readonly LoopId[],
): Columns {
  const at = new Map<LoopId, number>()
  const order = row.steps.flatMap((step) => step.made)
  const known = order.map((id) => {
    const under = parentsOf(id).flatMap((one) => parents.get(one) ?? [])
    if (under.length > 0) return under.reduce((sum, one) => sum + one, 0) / under.length
    return parents.get(id) ?? null
  })
  for (const [i, id] of order.entries()) {
    const here = known[i]
    if (here != null) at.set(id, here)
    else at.set(id, between(known, i))
  }
  return at
}

/** Between the neighbours that stand on something. */
function between(known: readonly (number | null)[], i: number): number {
  const before = known.slice(0, i).findLast((one) => one !== null)
  const after = known.slice(i + 1).find((one) => one !== null)
  if (before == null) return (after ?? 0.5) + ((after ?? 1) > (known.at(-1) ?? 0) ? 0.6 : -0.6)
  return after == null ? before + 0.6 : (before + after) / 2
}
