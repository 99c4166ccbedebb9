import { modulo } from '../base/index.ts'
import type { StitchId } from '../stitches/index.ts'
import { above, below, type Line, type Place } from './lines.ts'
import { makesOf, type Shown, type ShownRow, takesOf, type Word } from './shown.ts'

/** How a column is found in a word, with so many loops below and above to its right, and what is done there. */
export interface ColumnEdit {
  /** The column's stitch, at or before stitch `at` of the row's repeat. */
  readonly stitch: (row: ShownRow, at: number) => StitchId
  readonly find: (word: Word, takes: number, makes: number, stitch: StitchId) => number | null
  readonly change: (word: Word, at: number, stitch: StitchId) => Word
}

export interface ColumnDone {
  readonly shown: Shown
  /** Before which stitch of each row's repeat, as it is told now, the column stands or stood. */
  readonly places: readonly number[]
}

interface ChangedRow {
  readonly row: ShownRow
  readonly at: number
}

/**
 * Every row with one column changed in each repeat, also in the parts of repeats at its ends. Null where an end is
 * not cut as the column wants it.
 */
export function columnIn(shown: Shown, line: Line, edit: ColumnEdit): ColumnDone | null {
  const rows = [...shown.setUp, ...shown.rows]
  const places = [...line.setUp, ...line.rows]
  // The columns are one for each repeat. `first` says which of them is the rightmost in the piece: as far to the right as
  // may be, both when a column is put in and when it is taken out, so that the one undoes the other.
  for (const first of [-3, -2, -1, 0, 1, 2, 3]) {
    const done = rows.map((row, i) => changedRow(row, places[i] as Place, first, edit))
    if (done.includes(null)) continue
    const all = done as ChangedRow[]
    const changed = all.map(({ row }) => row)
    const setUp = shown.setUp.length
    return {
      shown: { setUp: changed.slice(0, setUp), rows: changed.slice(setUp) },
      places: all.slice(setUp).map(({ at }) => at),
    }
  }
  return null
}

function changedRow(row: ShownRow, place: Place, first: number, edit: ColumnEdit): ChangedRow | null {
  const loops = [below(row, place), above(row, place)] as const
  for (const told of toldOtherwise(row)) {
    const there = placeIn(told, ...loops)
    const changed = there && changedAsTold(told, { ...there, turn: there.turn + first }, edit)
    if (there && changed) return { row: changed, at: there.at }
  }
  return null
}

/** The same row with its repeat begun elsewhere: as far as an end goes on as the repeat does. */
function toldOtherwise(row: ShownRow): ShownRow[] {
  const told = [row]
  let { right, repeat, left } = row
  while (left.length > 0 && left[0] === repeat[0]) {
    right = [...right, ...left.slice(0, 1)]
    repeat = [...repeat.slice(1), ...repeat.slice(0, 1)]
    left = left.slice(1)
    told.push({ ...row, right, repeat, left })
  }
  ;({ right, repeat, left } = row)
  while (right.length > 0 && right.at(-1) === repeat.at(-1)) {
    left = [...right.slice(-1), ...left]
    repeat = [...repeat.slice(-1), ...repeat.slice(0, -1)]
    right = right.slice(0, -1)
    told.push({ ...row, right, repeat, left })
  }
  return told
}

function placeIn(row: ShownRow, takes: number, makes: number): Place | null {
  const width = takesOf(row.repeat)
  for (const at of row.repeat.keys()) {
    const rest = takes - below(row, { turn: 0, at })
    const place = { turn: rest / width, at }
    if (modulo(rest, width) === 0 && above(row, place) === makes) return place
  }
  return null
}

/** `place` is the rightmost column's. Those right of the first repeat lie in the right end; what is left over, in the left one. */
function changedAsTold(row: ShownRow, place: Place, edit: ColumnEdit): ShownRow | null {
  const inRight = -place.turn
  const inLeft = row.fewer - inRight
  if (inRight < 0 || inLeft < 0) return null
  const stitch = edit.stitch(row, place.at)
  const end = (word: Word, loops: readonly Loops[]): Word | null => changedEnd(word, loops, stitch, edit)
  const right = end(
    row.right,
    turns(inRight, (i) => loopsAt(row, place.at, -1 - i, row.right)),
  )
  const left = end(
    row.left,
    turns(inLeft, (i) => loopsAt(row, place.at, inLeft - 1 - i, [])),
  )
  if (right === null || left === null) return null
  return { ...row, right, repeat: edit.change(row.repeat, place.at, stitch), left }
}

/** Loops below and above to the right of a place. */
type Loops = readonly [number, number]

const turns = (count: number, loops: (i: number) => Loops): Loops[] =>
  Array.from({ length: count }, (_, i) => loops(i))

/** Where stitch `at` of a repeat so many repeats on from `start` lies. */
function loopsAt(row: ShownRow, at: number, turn: number, start: Word): Loops {
  const before = row.repeat.slice(0, at)
  return [
    takesOf(start) + turn * takesOf(row.repeat) + takesOf(before),
    makesOf(start) + turn * makesOf(row.repeat) + makesOf(before),
  ]
}

/** The columns of an end are changed from the left on, so that those to the right keep their places. */
function changedEnd(word: Word, loops: readonly Loops[], stitch: StitchId, edit: ColumnEdit): Word | null {
  let changed = word
  for (const [takes, makes] of loops) {
    const at = edit.find(changed, takes, makes, stitch)
    if (at === null) return null
    changed = edit.change(changed, at, stitch)
  }
  return changed
}
