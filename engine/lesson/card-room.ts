import { type StitchId, stitch, symbolOf } from '../stitches/index.ts'
import type { CardRow, CardSheet } from './card.ts'

/** Heights on a quarter sheet, in millimetres, measured in print at 8 points (7.5 in the key). */
const height = {
  /** Inside the card's margins. */
  inside: 123.6,
  title: 6,
  line: 3.54,
  /** The head's own line below the numbers, with the space round it. */
  rule: 4,
  tableHead: 6.8,
  /** A row's rule and padding, beside its lines. */
  row: 1.2,
  keyLine: 3.1,
  keyEntry: 4.4,
  /** An entry whose sign has a digit in it, which must be legible. */
  keyDigit: 5.8,
  /** Blanks to fill with the code, and the space above. */
  blanks: 33.5,
  /** At least so much for notes on a continuation. */
  notes: 15,
  /** Two lines, for a long address. */
  foot: 8.8,
} as const

/** Characters in a line: of the head, of a row's words, of an entry of the key. Narrow enough for the widest letters. */
const characters = { head: 60, row: 37, key: 27 } as const

/** Lines that a text takes when it is broken between words. */
function linesOf(text: string, most: number): number {
  let [lines, used] = [1, 0]
  for (const word of text.split(' ')) {
    if (used > 0 && used + 1 + word.length > most) {
      lines += 1
      used = word.length
    } else used += (used > 0 ? 1 : 0) + word.length
  }
  return lines
}

const rowHeight = (row: CardRow): number => {
  const words = row.lifeline ? `${row.words} lifeline here` : row.words
  const lines = linesOf(words, characters.row) + (row.watch === null ? 0 : linesOf(row.watch, characters.row))
  return height.row + height.line * lines
}

/** The key stands in two columns, entry beside entry. */
function keyHeight(stitches: readonly StitchId[]): number {
  const heights = stitches.map((id) => {
    const { us, name } = stitch(id)
    const sign = symbolOf(id).strokes.some(({ kind }) => kind === 'digit') ? height.keyDigit : height.keyEntry
    return Math.max(sign, height.keyLine * linesOf(`${us} ${name}`, characters.key) + 0.6)
  })
  let sum = 0
  for (let i = 0; i < heights.length; i += 2) sum += Math.max(heights[i] ?? 0, heights[i + 1] ?? 0)
  return sum
}

export interface CardFront {
  readonly practise: string
  readonly stitches: readonly StitchId[]
}

/** Millimetres for rows on the card itself: what its head, its key and its blanks leave. */
function frontRoom({ practise, stitches }: CardFront): number {
  const headLines = 2 + (practise === '' ? 0 : linesOf(`Practise: ${practise}.`, characters.head))
  // One line more stands under the title: other names, and which card of how many it is.
  const head = height.title + (headLines + 1) * height.line + height.rule
  return height.inside - head - height.tableHead - keyHeight(stitches) - height.blanks - height.foot
}

const nextRoom = height.inside - height.title - height.line - height.tableHead - height.notes - height.foot

/** The rows over a card and its continuations, none broken. A card that its key fills has all its rows on the next. */
export function cardSheets(rows: readonly CardRow[], front: CardFront): CardSheet[] {
  const sheets: { rows: CardRow[]; page: number }[] = [{ rows: [], page: 1 }]
  let left = frontRoom(front)
  for (const row of rows) {
    const needed = rowHeight(row)
    const isEmptyNext = sheets.length > 1 && sheets.at(-1)?.rows.length === 0
    if (needed > left && !isEmptyNext) {
      sheets.push({ rows: [], page: sheets.length + 1 })
      left = nextRoom
    }
    sheets.at(-1)?.rows.push(row)
    left -= needed
  }
  return sheets
}
