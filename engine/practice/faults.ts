import {
  type Plan,
  sectionWords,
  sightsFor,
  type Trace,
  tracesIn,
  type WrongPiece,
  type WrongRow,
  workWrong,
} from '../mistakes/index.ts'
import type { StretchSeen } from './exercise.ts'
import { type Readable, readingOf, rightReadable, wrongReadable } from './reading.ts'
import type { Table } from './table.ts'
import { capital } from './words.ts'

/** A mistake made once, in one stretch between two markers, where it can be seen. */
export interface Fault {
  readonly trace: Trace
  readonly section: number
  readonly piece: WrongPiece
  /** The row in which the hands went wrong. */
  readonly row: WrongRow
  readonly wrong: Readable
  readonly right: Readable
}

/** Rows from the mistake's own on that a picture shows. */
const rowsOn = 3

export const planIn = (table: Table): Plan => table.book.plan

/** Stretches of a row that read otherwise than they should. */
export function differingSections({ wrong, right }: Pick<Fault, 'wrong' | 'right'>): number[] {
  return right.counts.flatMap((_, section) =>
    readingOf(wrong, section) === readingOf(right, section) ? [] : [section],
  )
}

/** The right row, to be read beside a wrong one. */
export function rightRow({ worked, rows }: Plan, index: number): Readable {
  const row = rows[index]
  return rightReadable(worked, index, row?.makes ?? [], row?.leftward ?? true)
}

/** Mistakes of a row that are one slip of the hands in one stretch. */
export const slipsIn = (table: Table, row: number): Trace[] =>
  tracesIn(table.book, row).filter(
    ({ mistake, edits, section }) =>
      section !== null &&
      !mistake.everywhere &&
      edits.every((edit) => edit.do === 'change' && edit.row === row),
  )

/** The slip worked out; null where it spills over into another stretch, or where nothing of it is seen. */
export function faultOf(table: Table, trace: Trace): Fault | null {
  const plan = planIn(table)
  const { section, edits, mistake } = trace
  const most = Math.min(rowsOn, plan.rows.length - mistake.row)
  const piece = workWrong(plan, edits, most, { unnoticed: true })
  const row = piece.rows.find((one) => one.row === mistake.row)
  if (section === null || !row) return null
  const leftward = plan.rows[mistake.row]?.leftward ?? true
  const both = { wrong: wrongReadable(piece, row, leftward), right: rightRow(plan, mistake.row) }
  const differ = differingSections(both)
  const seen = sightsFor(table.book, trace).some(({ look }) => look !== 'marker beside its place')
  return seen && differ.length === 1 && differ[0] === section ? { trace, section, piece, row, ...both } : null
}

export const isRepeat = ({ sections }: Plan, section: number): boolean =>
  sections[section]?.startsWith('repeat') ?? false

/** Every stretch of a row that has stitches, as it is found. */
export function stretchesSeen(plan: Plan, found: Readable, right: Readable): StretchSeen[] {
  return right.counts.flatMap((meant, section) => {
    const count = found.counts[section] ?? 0
    if (meant === 0 && count === 0) return []
    const name = capital(sectionWords(plan, section).replace(/^the (?=.* (end|edge))/, ''))
    return [{ name, meant, count, reading: readingOf(found, section) }]
  })
}
