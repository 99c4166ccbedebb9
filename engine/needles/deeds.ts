import type { Pattern, Row } from '../pattern/index.ts'
import { effectOf, type Mount } from '../stitches/index.ts'
import {
  castOn,
  emptyHands,
  type Hands,
  type LaidStitch,
  type RowWork,
  turnWork,
  workStitch,
} from './hands.ts'
import type { Loop, LoopId, Step, WorkedPattern, WorkedRow } from './worked.ts'

/** One thing done in a row, as it was meant or not: what a row is worked from when it is not worked from its words. */
export type Deed =
  | LaidStitch
  /** The next loop slides off the left needle unworked. */
  | { readonly do: 'fall' }
  /** The loop that lies `over` loops from the right tip is lifted over those and off. */
  | { readonly do: 'lift'; readonly over: number }

/** The hands before a row: loops, how they sit, and what lies on the left needle. */
export type Bench = Hands

/** A row worked from deeds. */
export interface DeedsDone {
  readonly row: WorkedRow
  /** Loops that slid off the needle. */
  readonly fallen: readonly LoopId[]
  /** Loops that lie round the necks of others, and those others. */
  readonly belts: readonly { readonly belt: LoopId; readonly round: readonly LoopId[] }[]
  /** How many deeds could not be done, because loops were lacking. */
  readonly undone: number
}

/** The hands as they are in a worked piece before its row `rowIndex` (one past the last: after all rows). */
export function benchBefore(worked: WorkedPattern, rowIndex: number): Bench {
  const row = worked.rows[rowIndex]
  const last = worked.rows[rowIndex - 1]
  const made = worked.loops.findIndex((loop) => loop.row >= rowIndex)
  const loops = made < 0 ? [...worked.loops] : worked.loops.slice(0, made)
  const mounts = loops.map((loop) => loop.mount)
  for (const earlier of worked.rows.slice(0, rowIndex)) noteSlips(earlier, mounts)
  const hands: Bench = { ...emptyHands(), loops, mounts }
  if (row) {
    hands.ahead = [...row.before]
    hands.behind = [...row.waiting]
  } else if (last) {
    turnWork(hands, worked.pattern, [...last.after], [...last.unworked], last.turned)
  }
  return hands
}

/** Slipping a loop can turn it. */
function noteSlips(row: WorkedRow, mounts: Mount[]): void {
  for (const step of row.steps) {
    if (!step.made.some((id) => step.taken.includes(id))) continue
    const sits = step.taken.map((id) => mounts[id] ?? 'usual')
    const { made } = effectOf(step.stitch, sits)
    for (const [i, one] of made.entries()) {
      const id = step.made[i]
      if (one.slipped !== null && id !== undefined) mounts[id] = one.mount
    }
  }
}

/** The hands with so many loops cast on and nothing worked. */
export function benchCastOn(count: number): Bench {
  const hands = emptyHands()
  hands.ahead = castOn(hands, count, 'co')
  return hands
}

/**
 * Works a row from deeds and turns the work (or goes on round): the same needle code that works a row from its words.
 * The loop table of `bench` grows. What is left on the left needle at the end is `unworked` and stays for nobody.
 */
export function workDeeds(
  bench: Bench,
  pattern: Pick<Pattern, 'worked'>,
  row: Pick<Row, 'number' | 'side'>,
  index: number,
  deeds: readonly Deed[],
): DeedsDone {
  const before = bench.ahead
  const waiting = bench.behind
  const work: RowWork = {
    row,
    index,
    left: [...before],
    taken: 0,
    right: [...waiting],
    steps: [],
    markers: [],
  }
  const fallen: LoopId[] = []
  const belts: { belt: LoopId; round: LoopId[] }[] = []
  let undone = 0
  for (const deed of deeds) {
    if (deed.do === 'stitch') undone += workStitch(bench, work, deed) ? 0 : 1
    else if (deed.do === 'fall') undone += fall(work, fallen) ? 0 : 1
    else undone += lift(bench, work, deed.over, belts) ? 0 : 1
  }
  takeFallenFirst(work, fallen)
  const unworked = work.left.slice(work.taken)
  turnWork(bench, pattern, work.right, unworked, false)
  bench.behind = []
  const { number, side } = row
  return {
    row: {
      number,
      side,
      steps: work.steps,
      before,
      waiting,
      after: work.right,
      unworked,
      turned: false,
      markers: [],
    },
    fallen,
    belts,
    undone,
  }
}

/** A loop that fell counts as taken by the stitch worked just before, so that the steps still tell the whole needle. */
function fall(work: RowWork, fallen: LoopId[]): boolean {
  const id = work.left[work.taken]
  if (id === undefined) return false
  work.taken++
  fallen.push(id)
  const last = work.steps.at(-1)
  if (last)
    work.steps[work.steps.length - 1] = {
      ...last,
      taken: [...last.taken, id],
      left: last.left - 1,
      total: last.total - 1,
    }
  return true
}

/** Loops that fell before the row's first stitch go with that one. */
function takeFallenFirst(work: RowWork, fallen: readonly LoopId[]): void {
  const told = new Set(work.steps.flatMap((step) => step.taken))
  const untold = fallen.filter((id) => !told.has(id))
  const first = work.steps[0]
  if (first && untold.length > 0) work.steps[0] = { ...first, taken: [...first.taken, ...untold] }
}

function lift(
  bench: Bench,
  work: RowWork,
  over: number,
  belts: { belt: LoopId; round: LoopId[] }[],
): boolean {
  const at = work.right.length - 1 - over
  const belt = work.right[at]
  if (belt === undefined) return false
  work.right.splice(at, 1)
  belts.push({ belt, round: work.right.slice(at) })
  const made = work.steps.findIndex((step) => step.made.includes(belt))
  const step = work.steps[made]
  if (step) leaveOut(bench, work, made, step, belt)
  return true
}

/** A step whose only loop was lifted off leaves nothing on the needle: it is no step any more. */
function leaveOut(bench: Bench, work: RowWork, at: number, step: Step, belt: LoopId): void {
  if (step.taken.length > 0 || step.made.length > 1) {
    work.steps[at] = {
      ...step,
      made: step.made.filter((id) => id !== belt),
      right: step.right - 1,
      total: step.total - 1,
    }
    return
  }
  work.steps.splice(at, 1)
  for (let i = at; i < work.steps.length; i++) {
    const later = work.steps[i] as Step
    work.steps[i] = { ...later, step: later.step - 1, right: later.right - 1, total: later.total - 1 }
  }
  for (let id = bench.loops.length - 1; id >= 0; id--) {
    const loop = bench.loops[id] as Loop
    if (loop.row !== work.index) break
    if (loop.step > at) bench.loops[id] = { ...loop, step: loop.step - 1 }
  }
}
