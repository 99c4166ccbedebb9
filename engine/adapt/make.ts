import { at, constant } from '../base/index.ts'
import { castOnCount, edgeTotals, prove } from '../counts/index.ts'
import { work } from '../needles/index.ts'
import { printRow, readRow } from '../notation/index.ts'
import type { Item, Pattern, Row, Side } from '../pattern/index.ts'
import type { Adaptation, Adapted, SwatchCount } from './adaptation.ts'
import { type Refused, refuse } from './refusal.ts'

type More = Partial<Pick<Adapted, 'offers' | 'closing' | 'kept'>>

/**
 * The new pattern with what changed; refused where it does not prove, cannot be worked, or a row does not read back as
 * it is printed. So no adaptation can let a pattern out that miscounts.
 */
export function finished(draft: Pattern, changes: Adapted['changes'], more: More = {}): Adaptation {
  const pattern = { ...draft, about: aboutAdapted(draft.about) }
  const wrong = unreadable(pattern)
  if (wrong !== null)
    return refuse('does-not-come-out', `Row ${wrong} would not read back as it is written.`, { row: wrong })
  if (!prove(pattern).sound || !canBeWorked(pattern))
    return refuse(
      'does-not-come-out',
      'The rows would not come out on any number of stitches, so the change is not made.',
    )
  const { offers = [], closing = [], kept = null } = more
  return { ok: true, pattern, changes, offers, closing, kept, counts: swatchCounts(pattern) }
}

/** Nobody has knitted or measured the adapted piece yet. */
function aboutAdapted(about: Pattern['about']): Pattern['about'] {
  const { blocked: _, unblocked: __, ...rest } = about
  return { ...rest, tested: 'Adapted and proved by the engine; not yet test-knitted' }
}

const canBeWorked = (pattern: Pattern): boolean =>
  ('fixed' in pattern.castOn ? [1] : [1, 2]).every((n) => work(pattern, n).worked !== null)

const spansOut = (items: readonly Item[]): string =>
  JSON.stringify(items, (key, value: unknown) => (key === 'span' ? undefined : value))

function unreadable(pattern: Pattern): number | null {
  const reads = ({ items }: Row): boolean => {
    const read = readRow(printRow(items), pattern)
    return read.issues.length === 0 && spansOut(read.items) === spansOut(items)
  }
  return [...pattern.setUp, ...pattern.rows].find((row) => !reads(row))?.number ?? null
}

/** Stitches to cast on for one to five repeats, edges counted in; one line for a fixed number. */
export function swatchCounts(pattern: Pattern): SwatchCount[] {
  const edges = edgeTotals(pattern).takes
  const repeats = 'fixed' in pattern.castOn ? [1] : [1, 2, 3, 4, 5]
  const inside = castOnCount(pattern.castOn)
  return repeats.map((n) => ({ repeats: n, stitches: at(inside, n) + edges }))
}

export type Way = Pick<Pattern, 'worked' | 'firstSide' | 'doubleYarnOver' | 'bindOffLeaves'>

/** The side on which a row of that number is worked. Set-up rows end at 0. */
export function sideOf(number: number, way: Pick<Pattern, 'worked' | 'firstSide'>): Side {
  if (way.worked === 'round') return 'RS'
  const odd = Math.abs(number) % 2 === 1
  return odd === (way.firstSide === 'RS') ? 'RS' : 'WS'
}

/** A row from its items; their places are those in its own text. */
export function rowOf(number: number, items: readonly Item[], way: Way): Row {
  const text = printRow(items)
  const read = readRow(text, way)
  const same = spansOut(read.items) === spansOut(items)
  return {
    number,
    side: sideOf(number, way),
    items: same ? read.items : items,
    text,
    span: { start: 0, end: text.length },
  }
}

/** Rows numbered from `first`. */
export const rowsOf = (list: readonly (readonly Item[])[], first: number, way: Way): Row[] =>
  list.map((items, i) => rowOf(first + i, items, way))

/** The same for set-up rows, which end at 0. */
export const setUpOf = (list: readonly (readonly Item[])[], way: Way): Row[] =>
  rowsOf(list, 1 - list.length, way)

/** Refused where the count is not back after the last row, or there is no repeat to adapt. */
export function needsRepeat(pattern: Pattern): Refused | null {
  if (pattern.growing)
    return refuse(
      'growing',
      'The piece changes its width from row to row, so it has no repeat that could be adapted.',
    )
  if ('multiple' in pattern.castOn) return null
  return refuse(
    'no-repeat',
    `It is worked over a fixed number of stitches (${at(constant(pattern.castOn.fixed), 1)}), back and forth, and has no repeat beside a repeat.`,
  )
}
