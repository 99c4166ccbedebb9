import { limits } from '../base/index.ts'
import { type Chart, chartOf, type Zone } from '../chart/index.ts'
import { type LoopId, layOut, type WorkedPattern, type WorkedRow } from '../needles/index.ts'
import type { Item, Pattern, Row, Side } from '../pattern/index.ts'
import { type Act, stitchAct } from './acts.ts'

/** A row as the hands are to work it, with markers between its sections. */
export interface RowPlan {
  /** Index into the worked rows. */
  readonly index: number
  readonly number: number
  readonly side: Side
  /** Worked from right to left, seen from the right side. */
  readonly leftward: boolean
  /** In working order; step for step those of the worked row. */
  readonly acts: readonly Act[]
  /** Loops that each section gives to the row and gets from it. */
  readonly takes: readonly number[]
  readonly makes: readonly number[]
  /** Whether mistakes in it can be followed: not where the row is left in the middle or loops wait on a holder. */
  readonly followed: boolean
  /** Every stitch of it is the same plain one. */
  readonly resting: boolean
}

/** A worked pattern laid out for making mistakes in it. */
export interface Plan {
  readonly worked: WorkedPattern
  /** From the right, as the chart names them. */
  readonly sections: readonly Zone[]
  readonly rows: readonly RowPlan[]
  /** Loops of each section before the first row. */
  readonly castOn: readonly number[]
  /** For each loop, the step that takes it off the left needle. */
  readonly takenBy: ReadonlyMap<LoopId, { readonly row: number; readonly step: number }>
}

const order = (zone: Zone, repeats: number): number =>
  ({ 'right edge': 0, right: 1, body: 2, left: repeats + 3, 'left edge': repeats + 4 })[zone as string] ??
  Number(zone.slice('repeat '.length)) + 2

function sectionsOf(chart: Chart): Zone[] {
  const zones = new Set<Zone>()
  for (const row of chart.rows) for (const cell of row.cells) if (cell.kind === 'stitch') zones.add(cell.zone)
  return [...zones].sort((a, b) => order(a, chart.repeats) - order(b, chart.repeats))
}

/** Items that are worked as often as there is room, by the place where they are written. */
function openSpans(items: readonly Item[], spans: Set<unknown> = new Set()): Set<unknown> {
  for (const item of items) {
    if (item.kind === 'across') spans.add(item.span)
    else if (item.kind === 'group' || item.kind === 'repeat') openSpans(item.items, spans)
  }
  return spans
}

function followable(row: WorkedRow, written: Row): boolean {
  const plain = written.items.every((item) => !['turn', 'resume', 'joinRound'].includes(item.kind))
  return plain && !row.turned && row.waiting.length === 0 && row.steps.every((step) => step.held === 0)
}

const sums = (acts: readonly Act[], sections: number, of: 'takes' | 'makes'): number[] => {
  const found = new Array<number>(sections).fill(0)
  for (const act of acts) found[act.section] = (found[act.section] ?? 0) + act[of]
  return found
}

function actsOf(written: Row, row: WorkedRow, pattern: Pattern, zoneOf: (step: number) => number): Act[] {
  const open = openSpans(written.items)
  const laid = layOut(written, pattern, row.before.length, limits.stitchesInRow)
  const stitches = laid.filter((one) => one.do === 'stitch').slice(0, row.steps.length)
  return stitches.map((one, step) => stitchAct(one, zoneOf(step), open.has(one.span), step))
}

/** Never rises or falls against the way of working, so that each section is one stretch of the row. */
function orderly(zones: number[], leftward: boolean): number[] {
  let last = leftward ? 0 : Number.POSITIVE_INFINITY
  return zones.map((zone) => {
    last = leftward ? Math.max(last, zone) : Math.min(last, zone)
    return last
  })
}

/** Lays a worked pattern out, with a marker wherever its chart has a line between edge, repeats and ends. */
export function planOf(worked: WorkedPattern, chart: Chart = chartOf(worked)): Plan {
  const sections = sectionsOf(chart)
  const written = [...worked.pattern.setUp, ...worked.pattern.rows]
  const takenBy = new Map<LoopId, { row: number; step: number }>()
  const rows = worked.rows.map((row, index): RowPlan => {
    for (const [step, { taken }] of row.steps.entries())
      for (const id of taken) takenBy.set(id, { row: index, step })
    const seen = chart.rows[index]
    const leftward = seen?.label !== 'left'
    const zones: number[] = []
    for (const cell of seen?.cells ?? [])
      if (cell.kind === 'stitch') zones[cell.step] = sections.indexOf(cell.zone)
    const known = Array.from(
      row.steps,
      (_, step) => zones[step] ?? zones[step - 1] ?? (leftward ? 0 : sections.length - 1),
    )
    const tidy = orderly(known, leftward)
    const from = written[index] as Row
    const acts = actsOf(from, row, worked.pattern, (step) => tidy[step] ?? 0)
    return {
      index,
      number: row.number,
      side: row.side,
      leftward,
      acts,
      takes: sums(acts, sections.length, 'takes'),
      makes: sums(acts, sections.length, 'makes'),
      followed: followable(row, from),
      resting: new Set(row.steps.map((step) => step.stitch)).size === 1,
    }
  })
  return { worked, sections, rows, castOn: rows[0]?.takes ?? [], takenBy }
}

/** The row after a row: the next one, or the first of the pattern again where the count is back. */
export function rowAfter(plan: Plan, row: number): number | null {
  if (row + 1 < plan.rows.length) return row + 1
  const { pattern } = plan.worked
  return pattern.growing || pattern.rows.length === 0 ? null : pattern.setUp.length
}

/** The section's name for a reader: 'repeat 2', 'the right end'. */
export function sectionWords(plan: Plan, section: number): string {
  const zone = plan.sections[section] ?? 'body'
  if (zone.startsWith('repeat')) return zone
  return (
    {
      'right edge': 'the right edge',
      right: 'the right end',
      left: 'the left end',
      'left edge': 'the left edge',
      body: 'the row',
    }[zone as string] ?? zone
  )
}
