import { at, type LinearCount } from '../../engine/base/index.ts'
import { type Chart, chartOf } from '../../engine/chart/index.ts'
import type { Proof, RowCount } from '../../engine/counts/index.ts'
import type { DraftChecked } from '../../engine/intake/index.ts'
import {
  type Bench,
  benchBefore,
  benchCastOn,
  type Loop,
  layOut,
  type WorkedPattern,
  type WorkedRow,
  work,
  workDeeds,
} from '../../engine/needles/index.ts'
import type { CastOn, Pattern, Row } from '../../engine/pattern/index.ts'

/** Rows one above the other that all come out, worked by themselves. Rows go by their index, set-up rows first. */
export interface Segment {
  readonly first: number
  readonly worked: WorkedPattern
  readonly chart: Chart
}

/** A row that does not come out, worked as far as the loops go. */
export interface BrokenRow {
  readonly index: number
  readonly row: WorkedRow
  readonly loops: readonly Loop[]
  /** Stitches of the row for which no loops were left. */
  readonly undone: number
}

export interface Segments {
  readonly all: readonly Segment[]
  readonly broken: readonly BrokenRow[]
}

export const rowsOf = ({ setUp, rows }: Pattern): readonly Row[] => [...setUp, ...rows]
export const countsOf = ({ setUp, rows }: Proof): readonly RowCount[] => [...setUp, ...rows]

const stops = [
  'row-leaves-stitches',
  'row-needs-stitches',
  'row-too-short',
  'repeat-does-not-fit',
  'repeat-takes-nothing',
  'held-loops-missing',
]

/** Rows whose count is wrong. */
export const misfitRows = ({ problems }: DraftChecked): ReadonlySet<number> =>
  new Set(
    problems.flatMap(({ issue }) =>
      issue.row !== null && stops.includes(issue.code) && issue.severity === 'error' ? [issue.row] : [],
    ),
  )

const castOnFor = (count: LinearCount, edges: number): CastOn =>
  count.perRepeat === 0
    ? { fixed: Math.max(1, count.plus - edges) }
    : { multiple: count.perRepeat, plus: count.plus - edges }

function partOf(pattern: Pattern, rows: readonly Row[], castOn: CastOn): Pattern {
  return {
    ...pattern,
    castOn,
    setUp: rows.filter((row) => row.number < 1),
    rows: rows.filter((row) => row.number >= 1),
  }
}

/** The draft's rows worked in stretches between rows that cannot be worked, each stretch on the count that it meets. */
export function segmentsOf(checked: DraftChecked, repeats: number): Segments {
  const { pattern, proof, unread } = checked
  if (!proof) return { all: [], broken: [] }
  const [rows, counts, misfit] = [rowsOf(pattern), countsOf(proof), misfitRows(checked)]
  const all: Segment[] = []
  const broken: BrokenRow[] = []
  let first = 0
  const close = (end: number): void => {
    const before = counts[first]?.before
    const part = rows.slice(first, end)
    if (part.length > 0 && before) {
      const castOn = first === 0 ? pattern.castOn : castOnFor(before, proof.edges)
      const { worked } = work(partOf(pattern, part, castOn), repeats)
      if (worked) all.push({ first, worked, chart: chartOf(worked) })
    }
    first = end + 1
  }
  for (const [index, row] of rows.entries()) {
    const isUnread = unread.has(row.number)
    if (!isUnread && !misfit.has(row.number)) continue
    const start = first
    close(index)
    const under = all.at(-1)
    const count = counts[index]?.before
    const stands = under && under.first === start && under.first + under.worked.rows.length === index
    if (isUnread || !count) continue
    const bench = stands
      ? benchBefore(under.worked, index - start)
      : benchCastOn(Math.max(0, at(count, repeats)))
    broken.push(brokenRow(bench, pattern, row, index))
  }
  close(rows.length)
  return { all, broken }
}

/** More stitches of a row that does not come out are not drawn. */
const mostDrawn = 400

function brokenRow(bench: Bench, pattern: Pattern, row: Row, index: number): BrokenRow {
  const laid = layOut(row, pattern, bench.ahead.length, mostDrawn)
  const deeds = laid.flatMap((one) => (one.do === 'stitch' ? [one] : []))
  const done = workDeeds(bench, pattern, row, index, deeds)
  return { index, row: done.row, loops: bench.loops, undone: done.undone }
}

/** Repeats side by side that are shown where nobody chose a number: two, or one where two are too wide. */
export function usualRepeats({ castOn }: Pattern, widest = 34): number {
  if ('fixed' in castOn) return 1
  return castOn.multiple * 2 + castOn.plus <= widest ? 2 : 1
}
