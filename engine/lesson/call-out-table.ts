import { type Chart, chartOf } from '../chart/index.ts'
import type { WorkedPattern } from '../needles/index.ts'
import { type CallOut, callOutOf, type Note } from './call-out.ts'
import { notesAt } from './call-outs.ts'

/**
 * The call-outs of one pattern as plain data: found once where the pages are made, so that a reader's browser need not
 * work mistakes. Up to three repeats each width has its own; in a wider piece every repeat between the first and the
 * last is as the middle one of three.
 */
export interface CallOutTable {
  readonly notes: readonly Note[]
  /** What is said together: indices of notes. */
  readonly sets: readonly (readonly number[])[]
  /** By the number of repeats: for each row and step the index of its set. */
  readonly widths: Readonly<Record<number, SetRows>>
}

type SetRows = readonly (readonly number[])[]

/** The widths that a table must have to serve for any. */
export const tabledWidths = [1, 2, 3] as const
const widest = 3

/** The index of a thing in a list, where it is put if it is new. */
function indexIn<T>(list: T[], known: Map<string, number>, thing: T): number {
  const text = JSON.stringify(thing)
  const index = known.get(text) ?? list.push(thing) - 1
  known.set(text, index)
  return index
}

/** Finds the call-outs of every step of a pattern worked at these widths. */
export function callOutTable(widths: readonly WorkedPattern[]): CallOutTable {
  const notes: Note[] = []
  const sets: number[][] = []
  const [knownNotes, knownSets] = [new Map<string, number>(), new Map<string, number>()]
  const setOf = (found: readonly Note[]): number =>
    indexIn(
      sets,
      knownSets,
      found.map((note) => indexIn(notes, knownNotes, note)),
    )
  const rowsOf = (worked: WorkedPattern): number[][] => {
    const chart = chartOf(worked)
    return worked.rows.map(({ steps }, row) =>
      steps.map((_, step) => setOf(notesAt(worked, chart, row, step))),
    )
  }
  return {
    notes,
    sets,
    widths: Object.fromEntries(widths.map((worked) => [worked.repeats, rowsOf(worked)])),
  }
}

/** Steps of a row before the second repeat that the hands come to. */
function stepsBeforeSecond({ rows, repeats }: Chart, rowIndex: number): number {
  const row = rows[rowIndex]
  const first: readonly string[] =
    row?.label === 'left' ? ['left edge', 'left', `repeat ${repeats}`] : ['right edge', 'right', 'repeat 1']
  return row?.cells.filter((cell) => cell.kind === 'stitch' && first.includes(cell.zone)).length ?? 0
}

/** For each step of a row the index of its set. */
function setsOfRow(
  table: CallOutTable,
  worked: WorkedPattern,
  chart: Chart,
  rowIndex: number,
): readonly number[] {
  const own = table.widths[worked.repeats]?.[rowIndex]
  const model = table.widths[widest]?.[rowIndex]
  const steps = worked.rows[rowIndex]?.steps.length ?? 0
  if (own || !model || worked.repeats < widest) return own ?? []
  const more = steps - model.length
  const repeat = more / (worked.repeats - widest)
  const second = stepsBeforeSecond(chart, rowIndex)
  return Array.from({ length: steps }, (_, step) => {
    if (step < second + repeat) return model[step] ?? 0
    const isMiddle = step < second + repeat + more
    return model[isMiddle ? second + ((step - second) % repeat) : step - more] ?? 0
  })
}

/** The call-outs of a step, read off the table. */
export function callOutsIn(
  table: CallOutTable,
  worked: WorkedPattern,
  chart: Chart,
  rowIndex: number,
  stepIndex: number,
): CallOut[] {
  const row = worked.rows[rowIndex]
  if (!row) return []
  const sets = setsOfRow(table, worked, chart, rowIndex)
  const notesOf = (set: number | undefined): Note[] =>
    (table.sets[set ?? -1] ?? []).flatMap((index) => table.notes[index] ?? [])
  const meant = row.after.length + row.unworked.length
  const said = new Set(sets.slice(0, stepIndex).flatMap((set) => notesOf(set).map(({ kind }) => kind)))
  const isLater = (row.steps[stepIndex]?.repeat ?? 1) > 1
  return notesOf(sets[stepIndex]).map((note) => callOutOf(note, meant, isLater || said.has(note.kind)))
}
