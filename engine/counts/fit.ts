import { add, at, constant, type LinearCount, modulo, same, scale, subtract } from '../base/index.ts'
import { type Item, type Row, takesAndMakes } from '../pattern/index.ts'

/** How a row fits the loops that it meets, for every number of pattern repeats n ≥ 1 at once. */
export interface Fit {
  /** Loops left unworked; zero unless the row is turned, or does not fit. Negative where loops are missing. */
  readonly rest: LinearCount
  readonly made: LinearCount
  readonly turned: boolean
  /** How often the row's own repeat is worked; null where it has none. */
  readonly repeats: LinearCount | null
  /** Held loops joined. */
  readonly held: LinearCount
  readonly misfit: Misfit | null
}

/** Why a row does not fit. `repeatTakes` is the width of the repeat that does not come out even. */
export type Misfit =
  | { readonly kind: 'rest'; readonly rest: LinearCount }
  | {
      readonly kind: 'uneven'
      readonly available: LinearCount
      readonly keep: number
      readonly repeatTakes: number
      readonly item: Item
    }
  | { readonly kind: 'short'; readonly available: LinearCount; readonly keep: number; readonly item: Item }
  | { readonly kind: 'empty'; readonly item: Item }

interface Walk {
  left: LinearCount
  made: LinearCount
  held: LinearCount
  repeats: LinearCount | null
  turned: boolean
  misfit: Misfit | null
}

/** How often a repeat of `takes` stitches goes into `loops` (perRepeat·n + plus), or why it does not, for every n ≥ 1. */
function repeatsIn(loops: LinearCount, takes: number): LinearCount | 'uneven' | 'short' {
  const even = modulo(loops.perRepeat, takes) === 0 && modulo(loops.plus, takes) === 0
  if (at(loops, 1) < 0 || loops.perRepeat < 0) return 'short'
  return even ? scale(loops, 1 / takes) : 'uneven'
}

/** The nearest whole number of repeats, to go on with after a row that does not fit. */
function nominalRepeats(loops: LinearCount, takes: number): LinearCount {
  const perRepeat = Math.max(0, Math.round(loops.perRepeat / takes))
  const atOne = Math.max(0, Math.floor(at(loops, 1) / takes))
  return { perRepeat, plus: atOne - perRepeat }
}

function walkOpenEnded(
  walk: Walk,
  item: Item & { kind: 'repeat' | 'across' },
  takes: number,
  makes: number,
): void {
  const keep = item.until.kind === 'last' ? item.until.stitches : 0
  const loops = subtract(walk.left, constant(keep))
  if (takes === 0) {
    walk.misfit ??= { kind: 'empty', item }
    return
  }
  const found = repeatsIn(loops, takes)
  if (found === 'uneven')
    walk.misfit ??= { kind: 'uneven', available: walk.left, keep, repeatTakes: takes, item }
  if (found === 'short') walk.misfit ??= { kind: 'short', available: walk.left, keep, item }
  const repeats = typeof found === 'string' ? nominalRepeats(loops, takes) : found
  walk.left = subtract(walk.left, scale(repeats, takes))
  walk.made = add(walk.made, scale(repeats, makes))
  if (item.kind === 'repeat') walk.repeats = walk.repeats ? add(walk.repeats, repeats) : repeats
}

function walkItem(walk: Walk, item: Item): void {
  if (item.kind === 'turn') walk.turned = true
  else if (item.kind === 'resume') walk.left = add(walk.left, constant(item.count))
  else if (item.kind === 'across') walkOpenEnded(walk, item, 1, 1)
  else if (item.kind === 'bindOff' && item.count === 'all') walk.left = constant(0)
  else if (item.kind === 'repeat' && item.until.kind !== 'times') {
    const inner = takesAndMakes(item.items)
    if (inner) walkOpenEnded(walk, item, inner.takes, inner.makes)
  } else {
    const totals = takesAndMakes([item])
    if (!totals) return
    walk.left = subtract(walk.left, constant(totals.takes))
    walk.made = add(walk.made, constant(totals.makes))
    walk.held = add(walk.held, constant(totals.held))
    if (item.kind === 'repeat' && item.until.kind === 'times')
      walk.repeats = add(walk.repeats ?? constant(0), constant(item.until.times))
  }
}

/**
 * Fits a row to `ahead` loops (perRepeat·n + plus), edge stitches aside. Exact for every n ≥ 1: a repeat must go into
 * the loops without a remainder whatever n is, and at its end the row must have taken all of them, unless it is turned.
 */
export function fitRow(items: readonly Item[], ahead: LinearCount): Fit {
  const walk: Walk = {
    left: ahead,
    made: constant(0),
    held: constant(0),
    repeats: null,
    turned: false,
    misfit: null,
  }
  for (const item of items) {
    walkItem(walk, item)
    if (walk.turned) break
  }
  const missing = at(walk.left, 1) < 0 || walk.left.perRepeat < 0
  if ((!walk.turned || missing) && !same(walk.left, constant(0)))
    walk.misfit ??= { kind: 'rest', rest: walk.left }
  const { left: rest, made, turned, repeats, held, misfit } = walk
  return { rest, made, turned, repeats, held, misfit }
}

/** The items of a row that stand in a repeat of its own, or null where it has none. */
export const ownRepeat = (row: Row): (Item & { kind: 'repeat' }) | null =>
  row.items.find((item): item is Item & { kind: 'repeat' } => item.kind === 'repeat') ?? null
