import type { Act } from './acts.ts'
import type { Plan } from './plan.ts'
import type { WrongPiece } from './work-wrong.ts'

/** A stretch of a row's acts, as they should be and as they were, that stand on the same loops. Half open. */
export interface Stretch {
  readonly from: number
  readonly rightTo: number
  readonly wrongTo: number
}

type Grow = { -readonly [K in keyof Stretch]: Stretch[K] }

const sameAct = (a: Act | undefined, b: Act | undefined): boolean => {
  if (a === b) return true
  if (!a || !b || a.section !== b.section || a.deed.do !== 'stitch' || b.deed.do !== 'stitch') return false
  return a.deed.stitch === b.deed.stitch && a.deed.motions === b.deed.motions
}

/** How many acts at the beginning and at the end are as they should be. */
function alike(right: readonly Act[], wrong: readonly Act[]): { head: number; tail: number } {
  const room = Math.min(right.length, wrong.length)
  let head = 0
  while (head < room && sameAct(right[head], wrong[head])) head++
  let tail = 0
  while (tail < room - head && sameAct(right.at(-1 - tail), wrong.at(-1 - tail))) tail++
  return { head, tail }
}

/** The acts between what begins alike and what ends alike. */
function difference({ right, wrong }: Rows): Grow {
  const { head, tail } = alike(right, wrong)
  const [rightTo, wrongTo] = [right.length - tail, wrong.length - tail]
  return { from: Math.min(head, reach(wrong, head, wrongTo)), rightTo, wrongTo }
}

/** A loop that is lifted over others was made before them: where the farthest such loop of a stretch was made. */
function reach(acts: readonly Act[], from: number, to: number): number {
  let first = from
  for (let at = from; at < to; at++) {
    const { deed } = acts[at] as Act
    if (deed.do !== 'lift') continue
    let [back, loops] = [at, 0]
    while (back > 0 && loops <= deed.over) loops += acts[--back]?.makes ?? 0
    first = Math.min(first, back)
  }
  return first
}

/** The stretch of a row that stands on the loops of the stretch below: plain rows say nothing of where they differ. */
function above(low: Stretch, lower: Rows, { right, wrong }: Rows, turned: boolean): Grow {
  const made = interval(lower.wrong, low.from, low.wrongTo, 'makes')
  const [before, after] = turned ? [made.after, made.before] : [made.before, made.after]
  let [head, tail, met, left] = [0, 0, 0, 0]
  while (
    head < wrong.length &&
    sameAct(right[head], wrong[head]) &&
    met + (wrong[head]?.takes ?? 0) <= before
  )
    met += wrong[head++]?.takes ?? 0
  while (
    tail < Math.min(right.length, wrong.length) - head &&
    sameAct(right.at(-1 - tail), wrong.at(-1 - tail)) &&
    left + (wrong.at(-1 - tail)?.takes ?? 0) <= after
  )
    left += wrong.at(-1 - tail++)?.takes ?? 0
  return { from: head, rightTo: right.length - tail, wrongTo: wrong.length - tail }
}

const sum = (acts: readonly Act[], of: 'takes' | 'makes'): number =>
  acts.reduce((all, act) => all + act[of], 0)

interface Rows {
  readonly right: readonly Act[]
  readonly wrong: readonly Act[]
}

/** Loops before and after a stretch, on the needle that the row works from or to. */
interface Interval {
  readonly before: number
  readonly after: number
}

const interval = (acts: readonly Act[], from: number, to: number, of: 'takes' | 'makes'): Interval => ({
  before: sum(acts.slice(0, from), of),
  after: sum(acts.slice(to), of),
})

/** Widens a stretch by one act at its beginning or end; false where the row is at an end. */
function widen(stretch: Grow, rows: Rows, at: 'from' | 'to'): boolean {
  if (at === 'from') {
    if (stretch.from === 0) return false
    stretch.from--
    return true
  }
  if (stretch.rightTo >= rows.right.length || stretch.wrongTo >= rows.wrong.length) return false
  stretch.rightTo++
  stretch.wrongTo++
  return true
}

/**
 * Widens two stretches, one row above the other, until the upper one stands on just the loops that the lower one makes.
 * Flat, the upper row runs the other way. False where that comes to no end.
 */
function fitTogether(low: Grow, lower: Rows, up: Grow, upper: Rows, turned: boolean): boolean {
  for (let tries = 0; tries < 400; tries++) {
    const made = interval(lower.wrong, low.from, low.wrongTo, 'makes')
    const met = interval(upper.wrong, up.from, up.wrongTo, 'takes')
    const seen = turned ? { before: met.after, after: met.before } : met
    const [head, tail] = [seen.before - made.before, seen.after - made.after]
    if (head === 0 && tail === 0) return true
    // More loops before the upper stretch than before the lower one: it begins too late.
    if (head > 0 ? !widen(up, upper, turned ? 'to' : 'from') : head < 0 && !widen(low, lower, 'from'))
      return false
    if (head !== 0) continue
    if (tail > 0 ? !widen(up, upper, turned ? 'from' : 'to') : !widen(low, lower, 'to')) return false
  }
  return false
}

/** For each row of a wrong piece: the stretch that is to be worked again so that all of it is right. Null where that is no stretch. */
export function regionOf(plan: Plan, piece: WrongPiece): Stretch[] | null {
  const rows = piece.rows.map((row): Rows => ({ right: plan.rows[row.row]?.acts ?? [], wrong: row.acts }))
  const turned = plan.worked.pattern.worked === 'flat'
  const grow: Grow[] = []
  for (const [i, row] of rows.entries()) {
    const low = grow[i - 1]
    grow.push(low ? above(low, rows[i - 1] as Rows, row, turned) : difference(row))
  }
  for (let round = 0; round < 50; round++) {
    const before = JSON.stringify(grow)
    for (let i = 1; i < grow.length; i++) {
      const [low, up] = [grow[i - 1] as Grow, grow[i] as Grow]
      if (!fitTogether(low, rows[i - 1] as Rows, up, rows[i] as Rows, turned)) return null
    }
    if (JSON.stringify(grow) === before) return standsRight(rows, grow) ? grow : null
  }
  return null
}

/** Whether the right stretches stand on one another too, and the lowest on the loops that the wrong one took. */
function standsRight(rows: readonly Rows[], grow: readonly Stretch[]): boolean {
  return grow.every(({ from, rightTo, wrongTo }, i) => {
    const { right, wrong } = rows[i] as Rows
    const takes = sum(right.slice(from, rightTo), 'takes')
    if (i === 0) return takes === sum(wrong.slice(from, wrongTo), 'takes')
    const below = grow[i - 1] as Stretch
    return takes === sum((rows[i - 1] as Rows).right.slice(below.from, below.rightTo), 'makes')
  })
}
