import type { Item, Pattern } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import { type Adaptation, type Change, easy, hard, type Kept, type Offer } from './adaptation.ts'
import { itemsOf } from './fold.ts'
import { finished, needsRepeat, rowsOf, setUpOf, sideOf } from './make.ts'
import { offersAmong } from './offers.ts'
import { isRefused, type Refused, refuse } from './refusal.ts'
import { capital, rowsNamed } from './say.ts'
import { type Shown, type ShownRow, shownOf, type Word } from './shown.ts'
import { nearlyAlike, plainerOf, turnedOver } from './twins.ts'

export interface FlatOptions {
  /** 'same look' keeps the look however awkward the stitch; 'plainer' takes the plainer stitch where there is one. */
  readonly wrongSide?: 'same look' | 'plainer'
  /** What `round` kept of the flat piece: its sides come back where the rounds still fit them. */
  readonly kept?: Kept | null
}

/**
 * A pattern in the round worked flat: every second row is a wrong-side row, read back, each stitch by its twin of that
 * side. An odd number of rounds is written out twice. Without sides kept from before, one edge stitch is put on each side.
 */
export function flat(pattern: Pattern, options: FlatOptions = {}): Adaptation {
  if (pattern.worked === 'flat') return refuse('already', 'It is worked flat already.')
  const shown = needsRepeat(pattern) ?? shownOf(pattern)
  if (isRefused(shown)) return shown
  const back = options.kept ? restored(pattern, shown, options.kept) : null
  if (back !== null) return back
  const twice = shown.rows.length % 2 === 1
  const rounds = twice ? [...shown.rows, ...shown.rows] : shown.rows
  const way = { ...pattern, worked: 'flat' as const, firstSide: 'RS' as const }
  const setUp = onSides(shown.setUp, 1 - shown.setUp.length)
  const rows = onSides(rounds, 1)
  if (isRefused(setUp)) return setUp
  if (isRefused(rows)) return rows
  const offers = offersAmong(rows.map((row) => ({ ...row, stitches: row.repeat })))
  const plainer = options.wrongSide === 'plainer'
  const [lower, upper] = plainer ? [setUp.map(plainRow), rows.map(plainRow)] : [setUp, rows]
  const edge: Item[] = [{ kind: 'stitch', stitch: 'k', times: 1, span: { start: 0, end: 0 } }]
  const draft = {
    ...way,
    edges: { before: edge, after: edge },
    setUp: setUpOf(lower.map(itemsOf), way),
    rows: rowsOf(upper.map(itemsOf), 1, way),
  }
  return finished(draft, changesOf(rounds, rows, twice, plainer ? offers : []), {
    offers: plainer ? [] : offers,
  })
}

/** Rounds as the rows of a flat piece, each on its side. */
export function onSides(rounds: readonly ShownRow[], first: number): ShownRow[] | Refused {
  const rows = rounds.map((round, i): ShownRow | Refused => {
    const number = first + i
    const side = sideOf(number, { worked: 'flat', firstSide: 'RS' })
    const repeat = side === 'RS' ? round.repeat : turnedOver(round.repeat, round)
    return isRefused(repeat) ? repeat : { ...round, number, side, repeat }
  })
  return rows.find(isRefused) ?? (rows as ShownRow[])
}

const plainRow = (row: ShownRow): ShownRow =>
  row.side === 'RS' ? row : { ...row, repeat: row.repeat.map((id) => plainerOf(id) ?? id) }

function changesOf(
  rounds: readonly ShownRow[],
  rows: readonly ShownRow[],
  twice: boolean,
  taken: readonly Offer[],
): Change[] {
  const wrong = rows.filter(({ side }) => side === 'WS')
  const isRest = ({ repeat }: ShownRow): boolean => repeat.every((id) => id === 'p')
  const numbers = (list: readonly ShownRow[]): number[] => list.map(({ number }) => number)
  const [rest, patterned] = [numbers(wrong.filter(isRest)), numbers(wrong.filter((row) => !isRest(row)))]
  const changes: Change[] = [
    easy(
      'One knit stitch is put on each side, because a decrease or a yarn over at the very edge pulls it out of shape. Two stitches more are cast on.',
    ),
  ]
  if (twice)
    changes.push(
      hard(
        `${rounds.length / 2} rounds are an odd number: worked flat, every second time they begin on the wrong side. So they are written out twice.`,
      ),
    )
  if (rest.length > 0) {
    const verb = rest.length === 1 ? 'was a knit round and is' : 'were knit rounds and are'
    changes.push(easy(`${capital(rowsNamed(rest))} ${verb} purled on the wrong side.`, rest))
  }
  if (patterned.length > 0)
    changes.push(
      hard(
        `${capital(rowsNamed(patterned))} ${patterned.length === 1 ? 'has its' : 'have their'} pattern on the wrong side: read from the end back, each stitch by its twin of that side.`,
        patterned,
      ),
    )
  for (const { stitch: id, twin } of nearlyAlike(wrongWords(rounds, rows)))
    changes.push(
      hard(`\`${stitch(id).us}\` has no exact twin on the wrong side; \`${stitch(twin).us}\` comes nearest.`),
    )
  return [...changes, ...taken.map(({ sentence, rows: where }) => easy(`Taken: ${sentence}`, where))]
}

const wrongWords = (rounds: readonly ShownRow[], rows: readonly ShownRow[]): Word[] =>
  rounds.filter((_, i) => rows[i]?.side === 'WS').map(({ repeat }) => repeat)

/** The flat piece with its sides as they were; null where the rounds are no longer the ones that it gave. */
function restored(
  pattern: Pattern,
  shown: Shown,
  { flat: was, shown: before, starts }: Kept,
): Adaptation | null {
  const fits =
    before.rows.length === shown.rows.length &&
    before.rows.every((row, i) => sameRound(row, shown.rows[i]?.repeat ?? [], starts[i] ?? 0))
  if (!fits) return null
  return finished({ ...was, title: pattern.title, about: pattern.about }, [
    easy(
      'The rows have their balancing stitches and edges again, as they were before they went into the round.',
    ),
    easy(`Wrong-side rows are read back again.`),
  ])
}

/** Whether a round is the row that it was made of, begun at stitch `at` of its repeat. */
function sameRound(row: ShownRow, round: Word, at: number): boolean {
  const word = row.side === 'RS' ? row.repeat : turnedOver(row.repeat, row)
  return (
    !isRefused(word) &&
    word.length === round.length &&
    word.every((id, i) => id === round[(i - at + word.length) % word.length])
  )
}
