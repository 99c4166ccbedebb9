import { moved } from '../acts.ts'
import { isDecrease } from '../kin.ts'
import { hasStitch, type Model, type Spot } from '../model.ts'
import type { Plan, RowPlan } from '../plan.ts'

/** For each loop that a row meets, from the right: the section that it lay in when the row before was done. */
function sectionsBefore(plan: Plan, row: RowPlan): number[] {
  const counts = plan.rows[row.index - 1]?.makes ?? row.takes
  return counts.flatMap((count, section) => new Array<number>(count).fill(section))
}

/** The decreases that take loops from both sides of a marker, with the section on the other side of it afterwards. */
function crossings(plan: Plan, row: RowPlan): Spot[] {
  const fromRight = sectionsBefore(plan, row)
  const met = row.leftward ? fromRight : fromRight.toReversed()
  let at = 0
  return row.acts.flatMap((act, step) => {
    const own = new Set(met.slice(at, at + act.takes))
    at += act.takes
    if (own.size < 2 || !hasStitch(act, isDecrease)) return []
    const beside = [row.acts[step - 1], row.acts[step + 1]]
    return beside.flatMap((one) => (one && one.section !== act.section ? [{ step, other: one.section }] : []))
  })
}

export const markerModels: readonly Model[] = [
  {
    kind: 'marker not moved',
    name: 'a marker was left on the wrong side of a decrease that crosses the line',
    howOften: 4,
    misread: false,
    spots: (plan, row) => (row.index === 0 ? [] : crossings(plan, row)),
    edits: (plan, { row, step, other }) => {
      const acts = plan.rows[row]?.acts
      if (!acts || other === null) return null
      // The row itself is worked as it should be.
      return [{ do: 'acts', row, acts: acts.map((act, i) => (i === step ? moved(act, other) : act)), blind: true, like: null }]
    },
  },
]
