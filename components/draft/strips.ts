import { toSvg } from '../../engine/drawing/index.ts'
import type { Loop, LoopId, WorkedRow } from '../../engine/needles/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { startsRightIn } from './direction.ts'
import { type Columns, columnsOfRow, columnsOver, spread } from './places.ts'
import type { BrokenRow, Segment } from './segments.ts'
import { type OnNeedle, stripDrawing } from './strip.ts'
import { unnamed } from './svg.ts'
import type { WorkedDraft } from './work-draft.ts'

export interface Strip {
  readonly svg: string
  readonly words: string
  readonly spans: readonly number[]
}

/** Every row that can be worked as it lies on the needle, by its index in the draft. */
export function stripsOf({ checked, segments }: WorkedDraft): ReadonlyMap<number, Strip> {
  const strips = new Map<number, Strip>()
  const { pattern } = checked
  for (const segment of segments.all) {
    for (const [i, row] of segment.worked.rows.entries())
      strips.set(segment.first + i, stripOf(segment, row, i, pattern))
  }
  for (const broken of segments.broken) strips.set(broken.index, brokenStrip(broken, segments.all, pattern))
  return strips
}

const seen = (row: WorkedRow, pattern: Pattern): readonly LoopId[] =>
  startsRightIn(pattern, row.side) ? row.before : row.before.toReversed()

function stripOf(segment: Segment, row: WorkedRow, i: number, pattern: Pattern): Strip {
  const { chart, worked } = segment
  const last = worked.rows[i - 1]
  const below = last
    ? loopsBelow(columnsOfRow(chart, last, i - 1), row, chart.columns, pattern)
    : spread(seen(row, pattern), chart.columns)
  const drawn = {
    row,
    loops: worked.loops,
    columns: chart.columns,
    above: columnsOfRow(chart, row, i),
    below,
    bounds: chart.rows[i]?.bounds ?? [],
    rightToLeft: startsRightIn(pattern, row.side),
    undone: 0,
  }
  return written(drawn, row, worked.loops, pattern)
}

/** Loops that the row below did not make, having left them unworked, stand where there is room. */
function loopsBelow(known: Columns, row: WorkedRow, columns: number, pattern: Pattern): Columns {
  if (row.before.every((id) => known.has(id))) return known
  return new Map([...spread(seen(row, pattern), columns), ...known])
}

function brokenStrip(broken: BrokenRow, all: readonly Segment[], pattern: Pattern): Strip {
  const { row, loops, index, undone } = broken
  const under = all.find(({ first, worked }) => first + worked.rows.length === index)
  const last = under?.worked.rows.at(-1)
  const columns = under?.chart.columns ?? row.before.length
  const below =
    under && last
      ? loopsBelow(columnsOfRow(under.chart, last, under.worked.rows.length - 1), row, columns, pattern)
      : spread(seen(row, pattern), columns)
  const parentsOf = (id: LoopId): readonly LoopId[] => loops[id]?.parents ?? []
  const drawn = {
    row,
    loops,
    columns,
    above: columnsOver(row, below, parentsOf),
    below,
    bounds: [],
    rightToLeft: startsRightIn(pattern, row.side),
    undone,
  }
  return written(drawn, row, loops, pattern)
}

function written(drawn: OnNeedle, row: WorkedRow, loops: readonly Loop[], pattern: Pattern): Strip {
  const words = pictureWords(row, loops, drawn.undone, pattern)
  return {
    svg: unnamed(toSvg(stripDrawing(drawn))),
    words,
    spans: row.steps.flatMap((step) => (step.part === 'row' ? [step.span.start, step.span.end] : [-1, -1])),
  }
}

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`

/** What the picture shows: loops, those that stand on several, those that stand on none, those left over. */
function pictureWords(row: WorkedRow, loops: readonly Loop[], undone: number, pattern: Pattern): string {
  const made = row.steps.flatMap((step) => step.made)
  const holes = made.filter((id) => loops[id]?.parents.length === 0 && loops[id]?.row !== -1).length
  const together = made.filter((id) => (loops[id]?.parents.length ?? 0) > 1).length
  const way = startsRightIn(pattern, row.side) ? 'right to left' : 'left to right'
  const parts = [
    `${counted(made.length, 'loop')} on the needle, worked from ${way}`,
    ...(together > 0 ? [`${together} drawn through several loops`] : []),
    ...(holes > 0 ? [`${holes} through none`] : []),
    ...(row.unworked.length > 0 && !row.turned ? [`${counted(row.unworked.length, 'loop')} left over`] : []),
    ...(undone > 0 ? [`loops missing for ${counted(undone, 'stitch').replace('stitchs', 'stitches')}`] : []),
  ]
  return `${parts.join(', ')}.`
}
