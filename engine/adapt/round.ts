import type { Pattern } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import type { Adaptation } from './adaptation.ts'
import { itemsOf } from './fold.ts'
import { type Line, lineBetween, type Place, type Wish } from './lines.ts'
import { finished, needsRepeat, rowsOf, setUpOf } from './make.ts'
import { isRefused, type Refused, refuse } from './refusal.ts'
import { roundChanges } from './round-changes.ts'
import { type Shown, type ShownRow, shownOf, takesOf, tellingRow, type Word } from './shown.ts'
import { turnedOver } from './twins.ts'

/**
 * A flat pattern worked in the round: the balancing stitches and the edges go, wrong-side rows turn over and are read
 * back. Where a decrease would straddle the beginning of the round, all rounds begin at another stitch of the repeat;
 * refused where there is none at which every round can begin.
 */
export function round(pattern: Pattern): Adaptation {
  if (pattern.worked === 'round') return refuse('already', 'It is worked in the round already.')
  const shown = needsRepeat(pattern) ?? shownOf(pattern)
  if (isRefused(shown)) return shown
  const line = lineBetween(shown, wishFor(shown))
  if (line === null) return noStart()
  const rounds = roundsOf(shown, line)
  if (isRefused(rounds)) return rounds
  const starts = line.rows.map(({ at }) => at)
  const kept = { flat: pattern, shown, starts }
  return finished(roundPattern(pattern, rounds), roundChanges(pattern, shown, starts, ownStart(shown)), {
    kept,
  })
}

const noStart = (): Refused =>
  refuse(
    'no-straight-line',
    'Wherever the round began, a decrease of some row would be worked across its beginning, from the last stitch of the round to the first.',
    {
      hint: 'work it flat, or move the marker by hand in those rounds: the count is the same, the beginning wanders',
    },
  )

/** A start beside the repeat's own is harder to find; a yarn over that begins or ends a round slips over the marker. */
function wishFor(shown: Shown): Wish {
  const telling = tellingRow(shown)
  const cost = ({ repeat }: ShownRow, { at }: Place, index: number): number => {
    const aside = Math.min(at, repeat.length - at)
    const atOver = [repeat.at(at), repeat.at(at - 1)].some((id) => stitch(id ?? 'k').family === 'yarn over')
    return (atOver ? 1 : 0) + (index === telling ? 3 * aside : aside > 0 ? 0.1 : 0)
  }
  return { cost, mayDrift: true }
}

/** Whether the rounds could begin where the telling row's repeat does. */
function ownStart(shown: Shown): boolean {
  const telling = tellingRow(shown)
  const cost = (_: ShownRow, { at }: Place, index: number): number =>
    index === telling && at > 0 ? Number.POSITIVE_INFINITY : 0
  return lineBetween(shown, { cost, mayDrift: true }) !== null
}

const begunAt = (word: Word, at: number): Word => [...word.slice(at), ...word.slice(0, at)]

function roundsOf(shown: Shown, line: Line): Shown | Refused {
  const places = [...line.setUp, ...line.rows]
  const all = [...shown.setUp, ...shown.rows].map((row, i): ShownRow | Refused => {
    const word = row.side === 'RS' ? row.repeat : turnedOver(row.repeat, row)
    if (isRefused(word)) return word
    const repeat = begunAt(word, places[i]?.at ?? 0)
    return { number: row.number, side: 'RS', right: [], repeat, left: [], fewer: 0 }
  })
  const refused = all.find(isRefused)
  if (refused !== undefined) return refused
  const rows = all as ShownRow[]
  return { setUp: rows.slice(0, shown.setUp.length), rows: rows.slice(shown.setUp.length) }
}

function roundPattern(pattern: Pattern, { setUp, rows }: Shown): Pattern {
  const way = { ...pattern, worked: 'round' as const, firstSide: 'RS' as const }
  const first = setUp[0] ?? rows[0]
  return {
    ...way,
    castOn: { multiple: takesOf(first?.repeat ?? []), plus: 0 },
    edges: { before: [], after: [] },
    setUp: setUpOf(setUp.map(itemsOf), way),
    rows: rowsOf(rows.map(itemsOf), 1, way),
  }
}
