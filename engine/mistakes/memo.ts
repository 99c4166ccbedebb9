import { type RowOutcome, workRow } from './follow.ts'
import type { Plan } from './plan.ts'

type Section = Pick<RowOutcome, 'total' | 'over' | 'short'>

interface Remembered {
  readonly sections: Map<number, Section>
  readonly rows: Map<number, RowOutcome>
  readonly right: Map<number, RowOutcome>
}

const byPlan = new WeakMap<Plan, Remembered>()

function rememberedOf(plan: Plan): Remembered {
  const known = byPlan.get(plan) ?? { sections: new Map(), rows: new Map(), right: new Map() }
  byPlan.set(plan, known)
  return known
}

/** What one section of a rightly worked row makes of so many loops. */
function sectionOn(plan: Plan, row: number, section: number, loops: number): Section {
  const { sections } = rememberedOf(plan)
  const key = (row * plan.sections.length + section) * 4096 + loops
  const known = sections.get(key)
  if (known) return known
  const right = plan.rows[row]
  const counts = plan.sections.map((_, i) => (i === section ? loops : 0))
  const acts = right?.acts.filter((act) => act.section === section) ?? []
  // Borrowed words: a section that has none works its loops plain, beside another's.
  const done = right
    ? workRow(plan, right, acts.length > 0 ? acts : right.acts.slice(0, 1), counts, false)
    : null
  const only = acts.length > 0 || !done ? done : { total: loops, over: loops, short: 0 }
  const found = only ?? { total: loops, over: 0, short: 0 }
  sections.set(key, found)
  return found
}

/** A row worked as it should be on the loops that it should have. */
export function rowAsMeant(plan: Plan, row: number): RowOutcome {
  const { right } = rememberedOf(plan)
  const known = right.get(row)
  if (known) return known
  const counts = plan.rows[row]?.makes ?? []
  const total = counts.reduce((sum, count) => sum + count, 0)
  const found: RowOutcome = { row, counts, total, over: 0, short: 0, at: null }
  right.set(row, found)
  return found
}

/** A right row worked on other counts than it should have, with its markers heeded: only what differs is worked. */
export function rowOn(plan: Plan, row: number, counts: readonly number[]): RowOutcome {
  const right = plan.rows[row]
  const after = [...(right?.makes ?? counts)]
  let [over, short] = [0, 0]
  let at: number | null = null
  for (const [section, loops] of counts.entries()) {
    if (loops === right?.takes[section]) continue
    const done = sectionOn(plan, row, section, loops)
    after[section] = done.total
    over += done.over
    short += done.short
    if (done.over + done.short > 0 && (at === null || right?.leftward === false)) at = section
  }
  return { row, counts: after, total: after.reduce((sum, count) => sum + count, 0), over, short, at }
}

/** The same by the words alone. */
export function rowOnAll(plan: Plan, row: number, counts: readonly number[]): RowOutcome {
  const { rows } = rememberedOf(plan)
  const total = counts.reduce((sum, count) => sum + count, 0)
  const key = row * 4096 + total
  const known = rows.get(key)
  const right = plan.rows[row]
  if (known || !right) return known ?? { row, counts, total, over: 0, short: 0, at: null }
  const { acts: _, side: __, ...found } = workRow(plan, right, right.acts, counts, true)
  rows.set(key, found)
  return found
}
