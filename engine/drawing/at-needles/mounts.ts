import type { LoopId, WorkedPattern, WorkedRow } from '../../needles/index.ts'
import { effectOf, type Mount } from '../../stitches/index.ts'

/** Loops that sit otherwise than as they were made, at the beginning of each row. */
const remembered = new WeakMap<WorkedPattern, ReadonlyMap<LoopId, Mount>[]>()

/** How a loop sits after the first `done` steps of a row: as it was made, until a step slips it some other way. */
export function mountsAt(worked: WorkedPattern, rowIndex: number, done: number): (id: LoopId) => Mount {
  const changed = new Map(changedBefore(worked, rowIndex))
  const row = worked.rows[rowIndex]
  if (row !== undefined) slipAll(worked, row, done, changed)
  return (id) => changed.get(id) ?? worked.loops[id]?.mount ?? 'usual'
}

function changedBefore(worked: WorkedPattern, rowIndex: number): ReadonlyMap<LoopId, Mount> {
  const rows = remembered.get(worked) ?? [new Map()]
  remembered.set(worked, rows)
  for (let index = rows.length; index <= rowIndex; index++) {
    const changed = new Map(rows[index - 1])
    const row = worked.rows[index - 1]
    if (row !== undefined) slipAll(worked, row, row.steps.length, changed)
    rows.push(changed)
  }
  return rows[rowIndex] ?? new Map()
}

function slipAll(worked: WorkedPattern, row: WorkedRow, done: number, changed: Map<LoopId, Mount>): void {
  const mountOf = (id: LoopId): Mount => changed.get(id) ?? worked.loops[id]?.mount ?? 'usual'
  for (const { stitch, taken, made } of row.steps.slice(0, done)) {
    const slipped = taken.filter((id) => made.includes(id))
    if (slipped.length === 0) continue
    const effect = effectOf(stitch, taken.map(mountOf))
    for (const one of effect.made) {
      const id = one.slipped === null ? undefined : taken[one.slipped - 1]
      if (id !== undefined) changed.set(id, one.mount)
    }
  }
}
