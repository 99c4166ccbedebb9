import { constant, type LinearCount, scale, subtract } from '../base/index.ts'
import { edgeTotals, prove } from '../counts/index.ts'
import { edgesOf, type Item, type Pattern, type Row, type Side, takesAndMakes } from '../pattern/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'
import { isRefused, type Refused, refuse } from './refusal.ts'

/** Stitches one by one. */
export type Word = readonly StitchId[]

/**
 * A row stitch by stitch as the right side shows it, from right to left, each stitch by the name that the hands call it
 * on the row's own side. The repeat is one of the pattern; it comes `fewer` times less than the pattern has repeats,
 * where the ends hold parts of it. Edge stitches are left out.
 */
export interface ShownRow {
  readonly number: number
  readonly side: Side
  readonly right: Word
  readonly repeat: Word
  readonly left: Word
  readonly fewer: number
}

export interface Shown {
  readonly setUp: readonly ShownRow[]
  readonly rows: readonly ShownRow[]
}

export const takesOf = (word: Word): number => word.reduce((sum, id) => sum + stitch(id).takes, 0)
export const makesOf = (word: Word): number => word.reduce((sum, id) => sum + stitch(id).makes, 0)

/** The word so many times over. */
export const timesOver = (word: Word, times: number): Word => Array.from({ length: times }, () => word).flat()

/** Whether the repeat is more than one plain stitch all the way. */
export const isPatterned = ({ repeat }: ShownRow): boolean =>
  repeat.some((id) => id !== repeat[0] || stitch(id).family !== 'plain')

/** The row whose repeat tells a place in the pattern: the first that is patterned. */
export const tellingRow = ({ rows }: Shown): number => Math.max(0, rows.findIndex(isPatterned))

/** A sound pattern's rows stitch by stitch; refused where a row is more than stitches in a line. */
export function shownOf(pattern: Pattern): Shown | Refused {
  const proof = prove(pattern)
  if (!proof.sound)
    return refuse('not-proved', 'The pattern does not come out as it stands, so it cannot be adapted.')
  const edges = edgeTotals(pattern)
  if (edges.takes !== edges.makes || !evenSides(pattern))
    return refuse(
      'edges-change-the-count',
      'Its edge stitches change the count, so the edges cannot be taken away or put on.',
    )
  const inside = (count: LinearCount): LinearCount => subtract(count, constant(edges.takes))
  const show = (rows: readonly Row[], counts: readonly { before: LinearCount }[]) =>
    rows.map((row, i) => shownRow(row, inside(counts[i]?.before ?? constant(0))))
  const [setUp, rows] = [show(pattern.setUp, proof.setUp), show(pattern.rows, proof.rows)]
  const refused = [...setUp, ...rows].find(isRefused)
  if (refused === undefined && isTooLarge([...setUp, ...rows] as ShownRow[]))
    return refuse(
      'too-large',
      `Its repeat is too large to adapt: at most ${mostInRow} stitches a row and ${mostInAll} in all its rows.`,
    )
  return refused ?? { setUp: setUp as ShownRow[], rows: rows as ShownRow[] }
}

function evenSides(pattern: Pattern): boolean {
  const { first, last } = edgesOf({ side: 'RS' }, pattern)
  return [first, last].every((items) => {
    const totals = takesAndMakes(items)
    return totals !== null && totals.takes === totals.makes
  })
}

/** The search for a straight line grows with the square of the row. A wide published repeat has about 60 stitches. */
const mostInRow = 600
const mostInAll = 20_000

function isTooLarge(rows: readonly ShownRow[]): boolean {
  const lengths = rows.map(({ right, repeat, left }) => right.length + repeat.length + left.length)
  return Math.max(...lengths) > mostInRow || lengths.reduce((sum, length) => sum + length, 0) > mostInAll
}

/** A row in working order: before its repeat, the repeat, after it. */
interface Spelled {
  before: StitchId[]
  repeat: StitchId[]
  after: StitchId[]
  fewer: number
  left: LinearCount
  /** What cannot be told as stitches in a line. */
  strange: Item['kind'] | StitchId | null
}

function shownRow(row: Row, loops: LinearCount): ShownRow | Refused {
  const spelled: Spelled = { before: [], repeat: [], after: [], fewer: 0, left: loops, strange: null }
  for (const item of row.items) spell(spelled, item)
  if (spelled.strange !== null) return strangeRow(row.number, spelled.strange)
  const { number, side } = row
  const { before, repeat, after, fewer } = spelled
  if (side === 'RS') return { number, side, right: before, repeat, left: after, fewer }
  const back = { right: after.toReversed(), repeat: repeat.toReversed(), left: before.toReversed() }
  return { number, side, ...back, fewer }
}

function spell(spelled: Spelled, item: Item): void {
  if (item.kind === 'marker' || item.kind === 'yarn') return
  if (item.kind === 'across') return spellRun(spelled, [item.stitch], item.until)
  if (item.kind === 'repeat') return spellRun(spelled, wordOf(spelled, item.items), item.until)
  put(spelled, wordOf(spelled, [item]))
}

type Reach = (Item & { kind: 'repeat' | 'across' })['until']

function spellRun(spelled: Spelled, word: Word, until: Reach): void {
  const takes = takesOf(word)
  const keep = until.kind === 'last' ? until.stitches : 0
  const times =
    until.kind === 'times' ? constant(until.times) : scale(subtract(spelled.left, constant(keep)), 1 / takes)
  if (times.perRepeat === 0) return put(spelled, timesOver(word, times.plus))
  const { perRepeat, plus } = times
  spelled.fewer = plus < 0 ? Math.ceil(-plus / perRepeat) : 0
  spelled.repeat = [...timesOver(word, perRepeat)]
  spelled.after = [...timesOver(word, plus + perRepeat * spelled.fewer)]
  spelled.left = constant(keep)
}

function put(spelled: Spelled, word: Word): void {
  ;(spelled.repeat.length > 0 ? spelled.after : spelled.before).push(...word)
  spelled.left = subtract(spelled.left, constant(takesOf(word)))
}

const inNoLine: readonly string[] = ['holding', 'bind off', 'cast on']

function wordOf(spelled: Spelled, items: readonly Item[]): StitchId[] {
  return items.flatMap((item): StitchId[] => {
    if (item.kind === 'stitch') {
      if (inNoLine.includes(stitch(item.stitch).family)) spelled.strange ??= item.stitch
      return Array.from({ length: item.times }, () => item.stitch)
    }
    if (item.kind === 'group') return [...timesOver(wordOf(spelled, item.items), item.times)]
    if (item.kind !== 'marker' && item.kind !== 'yarn') spelled.strange ??= item.kind
    return []
  })
}

const strangeWords: Readonly<Record<string, string>> = {
  bindOff: 'binds off stitches',
  turn: 'is turned before its end',
  joinRound: 'joins the work into a ring',
  resume: 'takes up stitches from a holder',
}

function strangeRow(row: number, what: string): Refused {
  const does = strangeWords[what] ?? `works \`${what}\``
  return refuse(
    'row-not-plain-stitches',
    `${row >= 1 ? `Row ${row}` : 'A set-up row'} ${does}, and that has no place in this adaptation.`,
    { row, hint: 'leave that row out, or adapt the part without it' },
  )
}
