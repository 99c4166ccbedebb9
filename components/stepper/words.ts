import type { WorkedRow } from '../../engine/needles/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import { type Item, type Pattern, type Row, takesAndMakes } from '../../engine/pattern/index.ts'

/** A piece of a row in words: stitches with the steps that they are, or the commas and brackets between them. */
export interface Word {
  readonly text: string
  /** Indices of the row's steps that this piece stands for; none for what is only written. */
  readonly steps: readonly number[]
}

export interface WordBox {
  readonly kind: 'edge' | 'repeat' | 'end'
  readonly label: string
  readonly words: readonly Word[]
}

type Part = 'before' | 'row' | 'after'

const plain = (text: string): Word => ({ text, steps: [] })

const timesWords = (times: number): string => (times === 1 ? '' : times === 2 ? ' twice' : ` ${times} times`)

/** Which of the row's steps each written piece stands for. A step knows the place where it is written. */
function stepsByPlace(row: WorkedRow): (item: Item, part: Part) => readonly number[] {
  const place = (part: Part, { start, end }: Item['span']): string => `${part} ${start} ${end}`
  const steps = new Map<string, number[]>()
  for (const [index, step] of row.steps.entries()) {
    const key = place(step.part, step.span)
    steps.set(key, [...(steps.get(key) ?? []), index])
  }
  return (item, part) => steps.get(place(part, item.span)) ?? []
}

/** The row in its boxes, in the order of working: edge, repeat, end. A row without a repeat of its own is one box. */
export function wordsOf(row: WorkedRow, written: Row, pattern: Pattern): readonly WordBox[] {
  const stepsAt = stepsByPlace(row)
  const list = (items: readonly Item[], part: Part): Word[] =>
    items.flatMap((item, i) => [...(i > 0 ? [plain(', ')] : []), ...wordsOfItem(item, part)])
  const wordsOfItem = (item: Item, part: Part): Word[] => {
    if (item.kind === 'group') {
      return [plain('['), ...list(item.items, part), plain(`]${timesWords(item.times)}`)]
    }
    if (item.kind === 'repeat') return [plain('*'), ...list(item.items, part), plain(` ${reachOf(item)}`)]
    return [{ text: textOf(item, written), steps: stepsAt(item, part) }]
  }
  const { before, after } = pattern.edges
  const swap = row.side === 'WS' && pattern.worked === 'flat' && loopsOf(before) !== loopsOf(after)
  const edges = swap
    ? ([after, 'after', before, 'before'] as const)
    : ([before, 'before', after, 'after'] as const)
  const [first, firstPart, last, lastPart] = edges
  const at = written.items.findIndex((item) => item.kind === 'repeat')
  const middle = written.items[at]
  const joined = (a: Word[], b: Word[]): Word[] =>
    a.length > 0 && b.length > 0 ? [...a, plain(', '), ...b] : [...a, ...b]
  const boxes: WordBox[] =
    middle?.kind === 'repeat'
      ? [
          {
            kind: 'edge',
            label: 'First',
            words: joined(list(first, firstPart), list(written.items.slice(0, at), 'row')),
          },
          { kind: 'repeat', label: labelOf(middle), words: list(middle.items, 'row') },
          {
            kind: 'end',
            label: 'Last',
            words: joined(list(written.items.slice(at + 1), 'row'), list(last, lastPart)),
          },
        ]
      : [
          { kind: 'edge', label: 'Edge', words: list(first, firstPart) },
          {
            kind: 'repeat',
            label: first.length + last.length > 0 ? 'Between the edges' : 'Whole row',
            words: list(written.items, 'row'),
          },
          { kind: 'end', label: 'Edge', words: list(last, lastPart) },
        ]
  return boxes.filter(({ words }) => words.length > 0)
}

const loopsOf = (items: readonly Item[]): number => takesAndMakes(items)?.takes ?? 0

/** A single word for the whole row is only right where it is the whole row. */
const textOf = (item: Item, { items }: Row): string =>
  item.kind === 'across' && item.until.kind === 'end' && items.length > 1
    ? `${printRow([item])} to end`
    : printRow([item])

function reachOf({ until }: Item & { kind: 'repeat' }): string {
  if (until.kind === 'end') return '* to end'
  return until.kind === 'times' ? `* ${until.times} times in all` : `* to last ${until.stitches}`
}

function labelOf({ until }: Item & { kind: 'repeat' }): string {
  if (until.kind === 'end') return 'Repeat to the end'
  if (until.kind === 'times') return `Repeat: ${until.times} times in all`
  return `Repeat to the last ${until.stitches === 1 ? 'stitch' : `${until.stitches} stitches`}`
}

/** How far one is within a piece that stands for several stitches: '2 of 5', counted within one turn of the repeat. */
export function progressIn({ steps }: Word, row: WorkedRow, step: number): string | null {
  const turn = row.steps[step]?.repeat
  const here = steps.filter((index) => row.steps[index]?.repeat === turn)
  return here.length > 1 ? `${here.indexOf(step) + 1} of ${here.length}` : null
}
