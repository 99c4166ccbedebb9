import {
  type Bench,
  type Deed,
  type LoopId,
  type Step,
  type WorkedPattern,
  type WorkedRow,
  workDeeds,
} from '../needles/index.ts'
import type { Mount } from '../stitches/index.ts'
import type { Act } from './acts.ts'
import type { Plan } from './plan.ts'
import { regionOf, type Stretch } from './region.ts'
import type { WrongPiece, WrongRow } from './work-wrong.ts'

/** How much has to be worked again. */
export interface Rework {
  readonly piece: WorkedPattern
  readonly stretches: readonly Stretch[]
  /** Loops on the lowest row that the stretch stands on, and rows that are let down. */
  readonly wide: number
  readonly rows: number
}

/** The steps of a wrong row without those of a stretch: what stays on either side. */
interface Sides {
  readonly head: readonly Step[]
  readonly tail: readonly Step[]
}

/** Steps are not acts: what fell or was lifted is none. Steps stand in the order of acts, so they are counted off. */
function sidesOf(row: WorkedRow, acts: readonly Act[], { from, wrongTo }: Stretch): Sides {
  const stitches = (some: readonly Act[]) => some.filter((act) => act.deed.do === 'stitch').length
  const tail = stitches(acts.slice(wrongTo))
  return {
    head: row.steps.slice(0, stitches(acts.slice(0, from))),
    tail: tail === 0 ? [] : row.steps.slice(-tail),
  }
}

/** Numbers the steps and counts the loops anew. */
function recounted(steps: readonly Step[], before: number): Step[] {
  let [left, right] = [before, 0]
  return steps.map((step, i) => {
    left -= step.taken.length
    right += step.made.length
    return { ...step, step: i + 1, left, right, total: left + right }
  })
}

interface Making {
  readonly bench: Bench
  readonly rows: WorkedRow[]
  readonly flat: boolean
}

/** Works one row of the region on its own loops, and sets it in between what stays. */
function setIn(
  making: Making,
  plan: Plan,
  wrong: WrongRow,
  old: WorkedRow,
  stretch: Stretch,
  base: LoopId[],
): LoopId[] {
  const { bench, rows, flat } = making
  const { head, tail } = sidesOf(old, wrong.acts, stretch)
  const deeds: Deed[] = (plan.rows[wrong.row]?.acts ?? [])
    .slice(stretch.from, stretch.rightTo)
    .map((act) => act.deed)
  bench.ahead = base
  bench.behind = []
  const done = workDeeds(bench, plan.worked.pattern, old, wrong.index, deeds)
  const taken = (steps: readonly Step[]) => steps.flatMap((step) => step.taken)
  const made = (steps: readonly Step[]) => steps.flatMap((step) => step.made)
  const before = [...taken(head), ...base, ...taken(tail)]
  const after = [...made(head), ...done.row.after, ...made(tail)]
  rows.push({
    ...old,
    before,
    after,
    unworked: [],
    steps: recounted([...head, ...done.row.steps, ...tail], before.length),
  })
  renumber(bench, wrong.index, rows.at(-1) as WorkedRow)
  return flat ? done.row.after.toReversed() : [...done.row.after]
}

/** Each loop knows its step: steps before it may be more or fewer than there were. */
function renumber(bench: Bench, index: number, row: WorkedRow): void {
  for (const [at, step] of row.steps.entries())
    for (const id of step.made) {
      const loop = bench.loops[id]
      if (loop && loop.row === index && loop.step !== at) bench.loops[id] = { ...loop, step: at }
    }
}

/** From the first wrong act of the row to its end: what is un-knitted when the row is not turned yet. */
export function unknitted(plan: Plan, piece: WrongPiece): Rework | null {
  const [first] = piece.rows
  const region = regionOf(plan, piece)?.[0]
  const right = first && plan.rows[first.row]
  if (piece.rows.length !== 1 || !region || !right) return null
  return rework(plan, piece, [{ from: region.from, rightTo: right.acts.length, wrongTo: first.acts.length }])
}

/**
 * Lets down only the stitches that a mistake has spoilt and works them up again as they should be, on the same loops below
 * and between the same neighbours. Null where the mistake has spoilt too much for that.
 */
export function rework(
  plan: Plan,
  piece: WrongPiece,
  stretches: readonly Stretch[] | null = regionOf(plan, piece),
): Rework | null {
  const [lowest] = stretches ?? []
  const first = piece.rows[0]
  if (!stretches || !lowest || !first) return null
  const making = startOn(plan, piece)
  let base = lowestLoops(piece, first, lowest)
  const wide = base.length
  for (const [i, wrong] of piece.rows.entries()) {
    const old = piece.worked.rows[wrong.index]
    const stretch = stretches[i]
    if (!old || !stretch) return null
    base = setIn(making, plan, wrong, old, stretch, base)
  }
  const worked = { ...piece.worked, loops: making.bench.loops, rows: making.rows }
  return { piece: worked, stretches, wide, rows: piece.rows.length }
}

/** The loops that the lowest stretch stands on, as they came off the needle, those that fell among them. */
function lowestLoops(piece: WrongPiece, first: WrongRow, { from, wrongTo }: Stretch): LoopId[] {
  const takes = (acts: readonly Act[]) => acts.reduce((all, act) => all + act.takes, 0)
  const before = piece.worked.rows[first.index]?.before ?? []
  return before.slice(takes(first.acts.slice(0, from)), takes(first.acts.slice(0, wrongTo)))
}

/** The loops below are as they were before the mistake: let down, they sit as usual, but for those slipped in earlier rows. */
function startOn(plan: Plan, piece: WrongPiece): Making {
  const loops = [...piece.worked.loops]
  const mounts: Mount[] = loops.map((loop) => loop.mount)
  return {
    bench: { loops, mounts, ahead: [], behind: [], holder: [], issues: [], steps: 0 },
    rows: piece.worked.rows.slice(0, piece.from),
    flat: plan.worked.pattern.worked === 'flat',
  }
}
