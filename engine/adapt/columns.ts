import type { Pattern } from '../pattern/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'
import { type Adaptation, easy } from './adaptation.ts'
import { type ColumnEdit, columnIn } from './column-in.ts'
import { type Line, linesBetween, lineThrough, type Place, type Ranked } from './lines.ts'
import { finished, needsRepeat } from './make.ts'
import { rebuilt } from './rebuild.ts'
import { isRefused, type Refused, refuse } from './refusal.ts'
import {
  makesOf,
  type Shown,
  type ShownRow,
  shownOf,
  takesOf,
  tellingRow,
  timesOver,
  type Word,
} from './shown.ts'

/**
 * One plain stitch more in every repeat on every row, one above the other: between the stitches of the fabric, so that no stitch
 * of the lace changes. `before`: before which stitch (from 1) of the first patterned row's repeat, from right to left;
 * left out, where it is least seen. Refused where a decrease stands in the way.
 */
export function plainStitchIn(pattern: Pattern, before?: number): Adaptation {
  const shown = needsRepeat(pattern) ?? shownOf(pattern)
  if (isRefused(shown)) return shown
  const telling = tellingRow(shown)
  const cost = (row: ShownRow, { at }: Place, index: number): number =>
    index === telling && before !== undefined && at !== before - 1 ? Number.POSITIVE_INFINITY : seen(row, at)
  const lines = linesBetween(shown, { cost, mayDrift: false })
  const done = firstDone(shown, lines, adding)
  if (done === null) return inTheWay(before)
  return finished(rebuilt(pattern, done.shown), [easy(changeWords('more', done.is))])
}

const inTheWay = (before: number | undefined): Refused =>
  before === undefined
    ? refuse(
        'no-straight-line',
        'In every place some row has a stitch across, so no plain column fits between.',
      )
    : refuse(
        'no-straight-line',
        `Before stitch ${before} of the repeat a straight column would cut through a decrease of some row.`,
        { hint: 'try another place in the repeat' },
      )

/**
 * The other way: a column that is plain on every row goes. `at`: which stitch (from 1) of the first patterned row's
 * repeat; left out, the one that is least missed. Refused where two yarn overs would come to stand side by side.
 */
export function plainStitchOut(pattern: Pattern, at?: number): Adaptation {
  const shown = needsRepeat(pattern) ?? shownOf(pattern)
  if (isRefused(shown)) return shown
  const telling = tellingRow(shown)
  const starts = [...(shown.rows[0]?.repeat.keys() ?? [])]
  const lines = starts.flatMap((start): Ranked[] => {
    const line = lineThrough(shown, start, (row, place) => isColumn(row, place.at))
    if (line === null || (at !== undefined && line.rows[telling]?.at !== at - 1)) return []
    return [{ line, cost: costOf(shown, line, missed) }]
  })
  const done = firstDone(shown, lines, takingOut)
  if (done === null) return noPlainColumn(at)
  return finished(rebuilt(pattern, done.shown), [easy(changeWords('fewer', done.was))])
}

const noPlainColumn = (at: number | undefined): Refused =>
  refuse(
    'no-straight-line',
    at === undefined
      ? 'It has no column that is plain on every row and stands apart from the yarn overs.'
      : `Stitch ${at} of the repeat does not stand in a column that is plain on every row, or without it two yarn overs would meet.`,
  )

const changeWords = (change: 'more' | 'fewer', stitch: number): string =>
  `Each repeat has one plain stitch ${change} on every row: in the first patterned row it ${change === 'more' ? 'is' : 'was'} stitch ${stitch} of the repeat. Cast on one stitch ${change} for each repeat.`

interface Done {
  readonly shown: Shown
  /** The column's stitch in the telling row: of the pattern given, and as it is told now. */
  readonly was: number
  readonly is: number
}

/** The change on the best line where it can be made in every row. */
function firstDone(shown: Shown, lines: readonly Ranked[], edit: ColumnEdit): Done | null {
  const telling = tellingRow(shown)
  for (const { line } of lines.toSorted((a, b) => a.cost - b.cost)) {
    const done = columnIn(shown, line, edit)
    if (done === null || oversMeet(shown, done.shown)) continue
    return { shown: done.shown, was: (line.rows[telling]?.at ?? 0) + 1, is: (done.places[telling] ?? 0) + 1 }
  }
  return null
}

type Cost = (row: ShownRow, at: number) => number

const costOf = (shown: Shown, line: Line, cost: Cost): number =>
  shown.rows.reduce((sum, row, i) => sum + cost(row, line.rows[i]?.at ?? 0), 0)

/** What a column between these stitches is worked in: as both its neighbours, or knitted as the right side shows it. */
function columnStitch({ side, repeat }: ShownRow, at: number): StitchId {
  const [one, other] = [repeat.at(at % Math.max(1, repeat.length)), repeat.at(at - 1)]
  if (one !== undefined && one === other && stitch(one).family === 'plain') return one
  return side === 'RS' ? 'k' : 'p'
}

/** Whether stitch `at` of the repeat is what a column there would be worked in. */
const isColumn = (row: ShownRow, at: number): boolean =>
  row.repeat[at] === columnStitch({ ...row, repeat: row.repeat.toSpliced(at, 1) }, at)

/** Between two plain stitches a column is least seen; between a hole and its decrease it shows most. */
function seen({ repeat }: ShownRow, at: number): number {
  const families = [repeat.at(at), repeat.at(at - 1)].map((id) => stitch(id ?? 'k').family)
  const lace = families.filter((family) => family !== 'plain').length
  return lace === 2 ? 4 : lace
}

/** A plain stitch is least missed where it has plain ones beside it. */
const missed: Cost = (row, at) => seen({ ...row, repeat: row.repeat.toSpliced(at, 1) }, at)

const isOver = (id: StitchId): boolean => stitch(id).family === 'yarn over'

const pairsOfOvers = ({ right, repeat, left }: ShownRow): number => {
  const word = [...right, ...timesOver(repeat, 2), ...left]
  return word.filter((id, i) => isOver(id) && isOver(word[i + 1] ?? 'k')).length
}

/** Two yarn overs that come to stand side by side would be one large hole. */
const oversMeet = (was: Shown, now: Shown): boolean =>
  now.rows.some((row, i) => pairsOfOvers(row) > pairsOfOvers(was.rows[i] ?? row))

function boundary(word: Word, takes: number, makes: number): number | null {
  for (let at = 0; at <= word.length; at++) {
    const before = word.slice(0, at)
    if (takesOf(before) === takes && makesOf(before) === makes) return at
  }
  return null
}

const adding: ColumnEdit = {
  stitch: columnStitch,
  find: boundary,
  change: (word, at, id) => word.toSpliced(at, 0, id),
}

const takingOut: ColumnEdit = {
  stitch: ({ repeat }, at) => repeat[at] ?? 'k',
  find: (word, takes, makes, id) => {
    const at = boundary(word, takes, makes)
    return at !== null && word[at] === id ? at : null
  },
  change: (word, at) => word.toSpliced(at, 1),
}
