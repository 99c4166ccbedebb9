import { rowName } from '../mistakes/index.ts'
import { printRow } from '../notation/index.ts'
import { type Item, type Row, stitchesUsed, takesAndMakes } from '../pattern/index.ts'
import type { Exercise, OrderPiece } from './exercise.ts'
import { planIn } from './faults.ts'
import { drawn, type Random, shuffled } from './luck.ts'
import type { Table } from './table.ts'
import { stitches } from './words.ts'

type Made = Omit<Exercise, 'kind' | 'number'>

/** More pieces than that are tidied rather than thought about. */
const mostPieces = 9

/** A row with the items that can be put in another order. */
export interface Ordered {
  readonly row: number
  readonly items: readonly Item[]
  /** A repeat of the row, or all of it. */
  readonly of: 'repeat' | 'row'
}

/** The row as it is written, by its place among the worked rows. */
export const writtenRow = ({ worked: { pattern } }: Table, row: number): Row | undefined =>
  [...pattern.setUp, ...pattern.rows][row]

const isFree = (item: Item): boolean => item.kind === 'stitch' || item.kind === 'group'

/** The items of a row's repeat, or of a row that has none; null where their order cannot be changed freely. */
export function orderedIn(table: Table, row: number): Ordered | null {
  const items = writtenRow(table, row)?.items ?? []
  const [repeat, ...more] = items.filter((item) => item.kind === 'repeat')
  if (more.length > 0) return null
  const [own, of] =
    repeat?.kind === 'repeat' ? ([repeat.items, 'repeat'] as const) : ([items, 'row'] as const)
  return own.every(isFree) && own.length > 1 && stitchesUsed(own).size > 1 ? { row, items: own, of } : null
}

const labelOf = (item: Item): string => printRow([item])

/** Mixed up so that it reads otherwise. */
function mixed(pieces: readonly OrderPiece[], random: Random): OrderPiece[] {
  const reads = (all: readonly OrderPiece[]): string => all.map(({ words }) => words).join()
  for (let tries = 0; tries < 20; tries++) {
    const found = shuffled(pieces, random)
    if (reads(found) !== reads(pieces)) return found
  }
  return [...pieces.slice(1), ...pieces.slice(0, 1)]
}

/** Ids say nothing of the order: they are dealt out after the shuffle. */
function dealt(ordered: Ordered, random: Random): { pieces: OrderPiece[]; right: string[] } {
  const plain = ordered.items.map((item, i) => ({ id: String(i), words: labelOf(item) }))
  const lying = mixed(plain, random)
  const idOf = (id: string): string => `p${lying.findIndex((piece) => piece.id === id) + 1}`
  return {
    pieces: lying.map(({ id, words }) => ({ id: idOf(id), words })),
    right: plain.map(({ id }) => idOf(id)),
  }
}

const readable = (all: readonly Ordered[]): Ordered[] => {
  const short = all.filter(({ items }) => items.length <= mostPieces)
  return short.length > 0 ? short : [...all]
}

/** The pieces of a repeat, mixed up, to be put in the row's order. */
export function rowInOrder(table: Table, random: Random): Made | string {
  const all = table.rows.flatMap((row) => orderedIn(table, row) ?? [])
  if (all.length === 0)
    return 'Each of its rows is one kind of stitch, or goes to the end of the row: there is no order to be found.'
  const many = readable(all).filter(({ items }) => items.length > 2)
  const ordered = drawn(many.length > 0 ? many : readable(all), random)
  const { pieces, right } = dealt(ordered, random)
  const name = rowName(planIn(table), ordered.row)
  const sum = takesAndMakes(ordered.items) ?? { takes: 0, makes: 0 }
  const what = ordered.of === 'repeat' ? `One repeat of ${name.toLowerCase()}` : name
  return {
    ask: [
      `${what} fell apart into ${pieces.length} pieces. It takes ${stitches(sum.takes)} and makes ${sum.makes}, in whatever order they lie: the count will not help, so think of where each hole and each decrease belongs.`,
      ...beforeWords(table, ordered),
    ],
    shown: [],
    parts: [
      {
        form: 'order',
        id: 'order',
        ask: 'Put the pieces in the order in which they are worked, the first on top.',
        row: ordered.row,
        pieces,
        right,
        because: `${what} is ${printRow(ordered.items)}.`,
      },
    ],
    because: [`${what} is ${printRow(ordered.items)}.`],
    after: [],
    mistake: null,
  }
}

/** What stands round the repeat, so that the row can be thought through. */
function beforeWords(table: Table, { row, of }: Ordered): string[] {
  if (of === 'row') return []
  const items = writtenRow(table, row)?.items ?? []
  const at = items.findIndex((item) => item.kind === 'repeat')
  const [before, after] = [items.slice(0, at), items.slice(at + 1)]
  const parts = [
    ...(before.length > 0 ? [`Before the repeats stands ${printRow(before)}`] : []),
    ...(after.length > 0 ? [`after them ${printRow(after)}`] : []),
  ]
  const words = parts.join('; ')
  return words === '' ? [] : [`${words.charAt(0).toUpperCase()}${words.slice(1)}.`]
}
