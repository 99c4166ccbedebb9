import type { Side } from '../pattern/index.ts'
import { type Act, moved } from './acts.ts'
import { changedActs, type Edit } from './edits.ts'
import { type Fitted, fit, plainOf } from './habit.ts'
import { afterMoves, markerMoves } from './markers.ts'
import { type Plan, type RowPlan, rowAfter } from './plan.ts'

/** Whether a knitter stops at markers between the repeats, or goes by the words alone until the row ends. */
export type Habit = 'markers' | 'words'

/** A row after something went wrong, as far as counting goes. */
export interface RowOutcome {
  /** Index into the plan's rows. */
  readonly row: number
  /** Loops between the markers after the row, from the right. */
  readonly counts: readonly number[]
  readonly total: number
  /** Loops left when the words were done, and loops that the words lacked. */
  readonly over: number
  readonly short: number
  /** The first section in working order where the words did not come out; null where all did. */
  readonly at: number | null
}

/** A row to be worked: the acts as they fit, and what becomes of the count. */
export interface RowDone extends RowOutcome {
  readonly acts: readonly Act[]
  readonly side: Side
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)

/** The acts of a row by section, in working order. */
function stretches(acts: readonly Act[], row: RowPlan, sections: number): { section: number; acts: Act[] }[] {
  const order = Array.from({ length: sections }, (_, i) => (row.leftward ? i : sections - 1 - i))
  const found = order.map((section) => ({ section, acts: [] as Act[] }))
  for (const act of acts) found[row.leftward ? act.section : sections - 1 - act.section]?.acts.push(act)
  return found
}

/**
 * Works a row's acts on the loops that lie between the markers, or on all of them where these are not heeded. `only`:
 * the sections to be worked, where the others are known to come out right.
 */
export function workRow(
  plan: Plan,
  row: RowPlan,
  acts: readonly Act[],
  counts: readonly number[],
  blind: boolean,
  only: ReadonlySet<number> | null = null,
): RowDone {
  const plain = plainOf(row)
  const sections = plan.sections.length
  const parts = blind
    ? [{ section: null, fitted: fit(acts, sum(counts), plain) }]
    : stretches(acts, row, sections)
        .filter(({ section }) => only === null || only.has(section))
        .map(({ section, acts: own }) => ({
          section,
          fitted: fitOrPlain(own, counts[section] ?? 0, plain, acts, section),
        }))
  const after = new Array<number>(sections).fill(0)
  for (const { fitted } of parts)
    for (const act of fitted.acts) after[act.section] = (after[act.section] ?? 0) + act.makes
  const off = parts.find(({ fitted }) => fitted.over + fitted.short > 0)
  return {
    row: row.index,
    side: row.side,
    acts: parts.flatMap(({ fitted }) => fitted.acts),
    counts: after,
    total: sum(after),
    over: parts.reduce((all, { fitted }) => all + fitted.over, 0),
    short: parts.reduce((all, { fitted }) => all + fitted.short, 0),
    at: off ? (off.section ?? off.fitted.acts.at(-1)?.section ?? 0) : null,
  }
}

/** A section that the row has no words for: its loops are worked plain. */
function fitOrPlain(
  own: readonly Act[],
  loops: number,
  plain: string,
  acts: readonly Act[],
  section: number,
): Fitted {
  const [any] = acts
  if (own.length > 0 || loops === 0 || !any) return fit(own, loops, plain)
  const { acts: done } = fit([{ ...moved(any, section), takes: 0, makes: 0 }], loops, plain)
  return { acts: done.slice(1), over: loops, short: 0 }
}

/** Where the following of a mistake begins: its first row, and the loops between the markers as the row before left them. */
function startOf(plan: Plan, edits: readonly Edit[]): { row: number; counts: readonly number[] } {
  const cast = edits.find((edit) => edit.do === 'castOn')
  if (cast) return { row: 0, counts: recast(plan, cast.count) }
  const row = Math.min(...edits.map((edit) => ('row' in edit ? edit.row : 0)))
  return { row, counts: (row === 0 ? plan.castOn : plan.rows[row - 1]?.makes) ?? [] }
}

/** Other loops than the row needs: markers are set as the row goes, so that the difference lies at its end. */
function recast(plan: Plan, count: number): number[] {
  const counts = [...plan.castOn]
  const end = plan.rows[0]?.leftward === false ? 0 : counts.length - 1
  const step = end === 0 ? 1 : -1
  let off = count - sum(counts)
  for (let at = end; at >= 0 && at < counts.length && off !== 0; at += step) {
    const now = Math.max(0, (counts[at] ?? 0) + off)
    off -= now - (counts[at] ?? 0)
    counts[at] = now
  }
  return counts
}

/** A row with the sides changed. Its sections go by the words: the first repeat is the one that is worked first. */
const flippedRow = (row: RowPlan): RowPlan => ({ ...row, side: row.side === 'RS' ? 'WS' : 'RS' })

/** The rows that are worked after a mistake, one by one, with what is known before each. */
export interface Course {
  readonly plan: Plan
  /** Those that are still to come: the next turn of the pattern is worked as it should be. */
  edits: readonly Edit[]
  readonly habit: Habit
  row: number | null
  before: number | null
  counts: readonly number[]
  flipped: boolean
}

export function courseOf(plan: Plan, edits: readonly Edit[], habit: Habit): Course {
  const { row, counts } = startOf(plan, edits)
  return { plan, edits, habit, row, before: row === 0 ? null : row - 1, counts, flipped: false }
}

/** Works the next row of a course; null where there is none. */
export function nextRow(course: Course): RowDone | null {
  const { plan, edits } = course
  while (course.row !== null && edits.some((edit) => edit.do === 'skip' && edit.row === course.row))
    course.row = rowAfter(plan, course.row)
  const at = course.row
  const meant = at === null ? undefined : plan.rows[at]
  if (at === null || !meant?.followed) return null
  if (edits.some((edit) => edit.do === 'flip' && edit.row === at)) course.flipped = true
  const row = course.flipped ? flippedRow(meant) : meant
  const acts = changedActs(meant, edits)
  const blind =
    course.habit === 'words' ||
    course.flipped ||
    edits.some((edit) => edit.do === 'acts' && edit.row === at && edit.blind)
  const counts = blind ? course.counts : afterMoves(course.counts, movesNow(course, at))
  const done = workRow(plan, row, acts, counts, blind)
  course.before = at
  course.counts = done.counts
  goOn(course, at)
  return done
}

/** From a row to the one after it. */
export function goOn(course: Course, row: number): void {
  course.row = rowAfter(course.plan, row)
  if (course.row !== null && course.row <= row) course.edits = []
}

/** How the markers are moved before a row: as the row asks that the hands believe they work. */
export function movesNow({ plan, edits, before }: Course, row: number): readonly number[] {
  const own = markerMoves(plan, before, row)
  const other = edits.find((edit) => edit.do === 'acts' && edit.row === row)
  if (other?.do !== 'acts' || !other.like) return own
  return own.map((by, section) => {
    const like = other.like?.[section]
    return like === undefined ? by : (markerMoves(plan, before, like)[section] ?? by)
  })
}
