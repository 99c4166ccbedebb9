import type { Look } from './look.ts'
import type { Plan } from './plan.ts'

/** What a reader can tell: where she is, and what she counts or sees there. */
export interface Evidence {
  /** Index into the worked rows of the row that she has just worked or is working. */
  readonly row: number
  /** Steps of it that she has done; null or left out where the row is done. */
  readonly step?: number | null
  /** Loops between the markers, from the right seen from the right side; null where she did not count. */
  readonly counts?: readonly (number | null)[]
  /** Loops in all. */
  readonly total?: number
  /** Whether the words came out at the row's end: 0, or so many loops left over (more than 0) or lacking (less). */
  readonly rowEnd?: number
  /** What she sees, of the closed list of looks. */
  readonly looks?: readonly Look[]
  /** Where she sees it: index into the plan's sections. */
  readonly section?: number | null
  /** The rows are worked for the first time: nothing of an earlier turn of the pattern lies below. */
  readonly firstTurn?: boolean
  /** Index of the last row after which she counted and all was right. */
  readonly rightUpTo?: number
}

/** The counts that a reader should find: after a row, or in the middle of it. */
export interface MeantCounts {
  readonly sections: readonly number[]
  readonly total: number
  /** Before the row. */
  readonly before: readonly number[]
  readonly totalBefore: number
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)

export function meantCounts(plan: Plan, row: number, step: number | null = null): MeantCounts {
  const right = plan.rows[row]
  const before = right?.takes ?? plan.castOn
  const made = right?.makes ?? before
  const sections = step === null || !right ? made : midRow(right.acts.slice(0, step), before)
  return { sections, total: sum(sections), before, totalBefore: sum(before) }
}

/** Loops between the markers when only some acts of a row are done. */
export function midRow(
  acts: readonly { section: number; takes: number; makes: number }[],
  before: readonly number[],
): number[] {
  const counts = [...before]
  for (const { section, takes, makes } of acts) counts[section] = (counts[section] ?? 0) + makes - takes
  return counts
}
