import { at, type LinearCount, same } from '../base/index.ts'
import type { Proof, RowCount } from '../counts/index.ts'
import { lifelineRows } from '../measure/index.ts'
import type { Terms } from '../notation/index.ts'
import type { Pattern, Row } from '../pattern/index.ts'
import { type RowBoxes, rowBoxes } from './row-boxes.ts'

export interface HandoutRow {
  /** 'Row 3', 'Set-up round 1'. */
  readonly name: string
  /** Null in the round, where every row is worked on the right side. */
  readonly side: 'RS' | 'WS' | null
  /** The way in which the hands go along the row, as the chart shows it. */
  readonly way: 'leftwards' | 'rightwards'
  readonly boxes: RowBoxes
  /** Loops that each repeat has after the row; null where the row is not proved in repeats. */
  readonly eachRepeat: number | null
  /** Stitches on the needle before and after the row. */
  readonly before: number
  readonly after: number
  /** The count is meant to change in this row. */
  readonly changes: boolean
  /** A good row to draw a thread through. */
  readonly lifeline: boolean
}

export interface RowWishes {
  readonly repeats: number
  readonly terms: Terms
  readonly mirrored: boolean
}

/** 'Row 3', 'Set-up round 1'. */
export function handoutRowName({ worked, setUp }: Pattern, { number }: Pick<Row, 'number'>): string {
  const word = worked === 'round' ? 'Round' : 'Row'
  return number >= 1 ? `${word} ${number}` : `Set-up ${word.toLowerCase()} ${number + setUp.length}`
}

const nothing: LinearCount = { perRepeat: 0, plus: 0 }

function handoutRow(pattern: Pattern, row: Row, count: RowCount | undefined, wishes: RowWishes): HandoutRow {
  const { before, after } = count ?? { before: nothing, after: nothing }
  const isBack = pattern.worked === 'flat' && row.side === 'WS'
  return {
    name: handoutRowName(pattern, row),
    side: pattern.worked === 'flat' ? row.side : null,
    way: isBack === wishes.mirrored ? 'leftwards' : 'rightwards',
    boxes: rowBoxes(row, pattern, { terms: wishes.terms }),
    eachRepeat: after.perRepeat > 0 ? after.perRepeat : null,
    before: at(before, wishes.repeats),
    after: at(after, wishes.repeats),
    changes: !same(before, after),
    lifeline: lifelineRows(pattern).includes(row.number),
  }
}

/** Every row, set-up rows first, with the counts that are proved for so many repeats. */
export const handoutRows = (pattern: Pattern, proof: Proof, wishes: RowWishes): HandoutRow[] => [
  ...pattern.setUp.map((row, i) => handoutRow(pattern, row, proof.setUp[i], wishes)),
  ...pattern.rows.map((row, i) => handoutRow(pattern, row, proof.rows[i], wishes)),
]
