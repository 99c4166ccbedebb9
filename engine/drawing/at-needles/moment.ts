import type { FabricLoopId } from '../../fabric/index.ts'
import { type LoopId, needlesAfter, type WorkedPattern, type WorkedRow } from '../../needles/index.ts'
import { effectOf, type Mount } from '../../stitches/index.ts'
import { mountsAt } from './mounts.ts'
import type { RowEnd } from './row-end.ts'
import { type Sheet, sheetOf } from './sheet.ts'
import { sizes } from './sizes.ts'
import { type YarnSide, yarnSideAt } from './yarn-side.ts'

/** A loop on a needle at rest. */
export interface Waiting {
  readonly loop: FabricLoopId
  /** Its number in the worked table; null for the newest loop of a bind-off, which the counts leave out. */
  readonly id: LoopId | null
  /** Where it hangs. */
  readonly x: number
  readonly mount: Mount
}

/** The needles between two steps of a row. Unit: stitch widths; x is 0 in the middle between the tips. */
export interface Moment {
  readonly sheet: Sheet
  readonly done: number
  /** From the tip on, on both needles. */
  readonly left: readonly Waiting[]
  readonly right: readonly Waiting[]
  /** How far right of its own places the fabric hangs: as the row began, and as it ends. */
  readonly shift: { readonly waiting: number; readonly made: number }
  /** How far farther right the fabric hangs at the tips than in the row's end: below the row, and what the row has made. */
  readonly straight: { readonly low: number; readonly made: number }
  /** The loops that the row has made, in the order of making. */
  readonly made: readonly FabricLoopId[]
  readonly yarn: YarnSide
}

/** The last few are kept: a step ends where the next one begins. */
const remembered = new WeakMap<WorkedRow, Map<number, Moment>>()
const mostKept = 6

export function momentAt(worked: WorkedPattern, rowIndex: number, done: number): Moment | null {
  const row = worked.rows[rowIndex]
  if (row === undefined) return null
  const kept = remembered.get(row) ?? new Map<number, Moment>()
  remembered.set(row, kept)
  const found = kept.get(done) ?? look(worked, rowIndex, done)
  if (found !== null && !kept.has(done)) {
    if (kept.size >= mostKept) kept.clear()
    kept.set(done, found)
  }
  return found
}

function look(worked: WorkedPattern, rowIndex: number, done: number): Moment | null {
  const sheet = sheetOf(worked, rowIndex)
  if (sheet === null) return null
  const { before, after, row } = sheet
  const mounts = mountsAt(worked, rowIndex, done)
  const { left, right } = needlesAfter(worked, rowIndex, done)
  const known = (id: LoopId): FabricLoopId => sheet.numbers.get(id) ?? -1
  const made = madeBy(sheet, rowIndex, done)
  const onLeft = placesOn(before, left.map(known))
  const firstX =
    onLeft[0] ??
    nextX(
      before,
      row.steps
        .slice(0, done)
        .flatMap(({ taken }) => taken)
        .map(known),
    )
  const chain = chainOnNeedle(after, made)
  const onRight = [...right.map(known), ...(chain === null ? [] : [chain])]
  const rightX = placesOn(after, onRight).toReversed()
  const newestX = rightX[0] ?? slotsOf(after)(after.order.at(-1) ?? -1) + 1
  const shift = { waiting: -sizes.first - firstX, made: sizes.first - newestX }
  const waiting = (loop: FabricLoopId, x: number, id: LoopId | null): Waiting => ({
    loop,
    id,
    x,
    mount: id === null ? 'usual' : mounts(id),
  })
  return {
    sheet,
    done,
    left: left.map((id, i) => waiting(known(id), (onLeft[i] ?? 0) + shift.waiting, id)),
    right: onRight.toReversed().map((loop, i) => {
      const id = loop === chain ? null : (after.fabric.loops[loop]?.loop ?? null)
      return waiting(loop, (rightX[i] ?? 0) + shift.made, id)
    }),
    shift,
    straight: straightening(sheet, shift, left.map(known), made.at(-1)),
    made,
    yarn: yarnSideAt(worked, rowIndex, done),
  }
}

/** Where the loops of a row end hang side by side; bound-off ones lie along the edge. */
function slotsOf({ head, base, fabric, order }: RowEnd): (id: FabricLoopId) => number {
  const there = new Set(order)
  return (id) => {
    if (!there.has(id)) return Number.NaN
    return (fabric.loops[id]?.live === true ? head : base).get(id)?.[0] ?? Number.NaN
  }
}

/** The same for loops of one needle. Where some of them come from a holder, all hang one by one beside the first that does not. */
function placesOn(end: RowEnd, loops: readonly FabricLoopId[]): number[] {
  const places = loops.map(slotsOf(end))
  if (!places.some(Number.isNaN)) return places
  const known = Math.max(
    0,
    places.findIndex((x) => !Number.isNaN(x)),
  )
  const from = places[known] ?? Number.NaN
  return places.map((_, i) => (Number.isNaN(from) ? 0 : from) + known - i)
}

/** The left needle is empty: where its next loop would hang. */
function nextX(before: RowEnd, taken: readonly FabricLoopId[]): number {
  const slot = slotsOf(before)
  const last = taken.map(slot).findLast((x) => !Number.isNaN(x))
  return (last ?? 0) - 1
}

/** How many loops each step makes anew, a loop of a bind-off counted too. */
export function madeBy({ row, after }: Sheet, rowIndex: number, done: number): readonly FabricLoopId[] {
  const count = row.steps.slice(0, done).reduce((sum, step) => sum + newLoops(step.stitch), 0)
  return (after.fabric.courses[rowIndex + 1] ?? []).slice(0, count)
}

export function newLoops(stitch: string): number {
  const { made, chain } = effectOf(stitch)
  const fresh = made.filter(({ slipped }) => slipped === null).length
  return fresh === 0 && chain !== null ? 1 : fresh
}

/** The newest loop, where it is one of a bind-off that the next one will be drawn through. */
function chainOnNeedle({ fabric }: RowEnd, made: readonly FabricLoopId[]): FabricLoopId | null {
  const newest = made.at(-1)
  return newest !== undefined && fabric.loops[newest]?.kind === 'chain' ? newest : null
}

/** How much of what the fabric lies awry at the tips is taken out, and over how many of the last loops it comes back. */
const straightened = { part: 0.85, loops: 5 } as const

/**
 * In a row's end everything has found its place over the whole width. While a part of the row is still to come, the fabric
 * right at the tips hangs straight from one needle to the other, and what the row has made hangs from its own loops.
 */
function straightening(
  { before, after }: Sheet,
  shift: Moment['shift'],
  left: readonly FabricLoopId[],
  newest: FabricLoopId | undefined,
): Moment['straight'] {
  const part = -straightened.part * Math.min(1, left.length / straightened.loops)
  const next = left.find((id) => before.base.has(id) && after.base.has(id)) ?? -1
  const [old, late] = [before.base.get(next)?.[0], after.base.get(next)?.[0]]
  const low =
    old === undefined || late === undefined
      ? 0
      : late + shift.made - (old + shift.waiting) - (2 * sizes.first - 1)
  const base = after.base.get(newest ?? -1)?.[0]
  const made = base === undefined ? 0 : base + shift.made - sizes.first
  return { low: part * low, made: part * made }
}
