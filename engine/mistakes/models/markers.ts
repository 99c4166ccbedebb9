import { type Act, moved } from '../acts.ts'
import { isDecrease } from '../kin.ts'
import { hasStitch, type Model, type Spot } from '../model.ts'
import type { Plan, RowPlan } from '../plan.ts'

/** For each loop that a row meets, from the right: the section that it lay in when the row before was done. */
function sectionsBefore(plan: Plan, row: RowPlan): number[] {
  const counts = plan.rows[row.index - 1]?.makes ?? row.takes
  return counts.flatMap((count, section) => new Array<number>(count).fill(section))
}

/** The step before which the marker of a line hangs once the row is done: the first one beyond the line. */
function stepAtLine(row: RowPlan, met: readonly number[]): number {
  const [from, to] = [Math.min(...met), Math.max(...met)]
  return row.acts.findIndex(({ section }) => (row.leftward ? section >= to : section <= from))
}

interface Crossing extends Spot {
  readonly step: number
  readonly other: number
  /** The step before which the marker should hang. */
  readonly line: number
}

/**
 * The decreases that take loops from both sides of a marker. It must come off before them; put back straight before or
 * straight after the decrease it may hang in the wrong place. `other` is the step before which it hangs then.
 */
function crossings(plan: Plan, row: RowPlan): Crossing[] {
  const fromRight = sectionsBefore(plan, row)
  const met = row.leftward ? fromRight : fromRight.toReversed()
  let at = 0
  return row.acts.flatMap((act, step): Crossing[] => {
    const own = [...new Set(met.slice(at, at + act.takes))]
    at += act.takes
    if (own.length < 2 || !hasStitch(act, isDecrease)) return []
    const line = stepAtLine(row, own)
    const wrong = [step + 1, step]
      .filter((other) => other !== line)
      .sort((a, b) => Math.abs(a - line) - Math.abs(b - line))
    const [other] = wrong
    return line < 1 || other === undefined ? [] : [{ step, other, line }]
  })
}

/** The acts with the line that a decrease crosses at another step: what lies between changes its section. */
function lineAt(plan: Plan, row: RowPlan, step: number, other: number): readonly Act[] | null {
  const spot = crossings(plan, row).find((one) => one.step === step)
  const line = spot?.line ?? -1
  const [near, far] = [row.acts[line - 1], row.acts[line]]
  if (!near || !far) return null
  return row.acts.map((act, i) =>
    i >= other && i < line
      ? moved(act, far.section)
      : i >= line && i < other
        ? moved(act, near.section)
        : act,
  )
}

export const markerModels: readonly Model[] = [
  {
    kind: 'marker not moved',
    name: 'a marker was left on the wrong side of a decrease that crosses the line',
    howOften: 4,
    misread: false,
    spots: (plan, row) => (row.index === 0 ? [] : crossings(plan, row)),
    edits: (plan, { row, step, other }) => {
      const right = plan.rows[row]
      if (!right || other === null || step === null) return null
      // The row itself is worked as it should be.
      const acts = lineAt(plan, right, step, other)
      return acts && [{ do: 'acts', row, acts, blind: true, like: null }]
    },
  },
]
