import { at } from '../base/index.ts'
import { castOnCount, type Proof } from '../counts/index.ts'
import { lifelineRows } from '../measure/index.ts'
import { printRow } from '../notation/index.ts'
import { type Pattern, stitchesUsed, withEdges } from '../pattern/index.ts'
import { type CardFront, cardSheets } from './card-room.ts'
import { castOnNumbers, castOnWords } from './cast-on.ts'
import { watchesOf } from './watches.ts'

export interface CardRow {
  readonly label: string
  readonly side: 'RS' | 'WS'
  readonly words: string
  /** Stitches after the row, on this swatch. */
  readonly count: number
  /** A good row for a lifeline: plain, and about every tenth, or the last. */
  readonly lifeline: boolean
  /** A wrong count and where it comes from, at the first row where it can come about; null where there is no room for it. */
  readonly watch: string | null
}

/** What fits on one quarter sheet. */
export interface CardSheet {
  readonly rows: readonly CardRow[]
  /** 1 for the card itself, then its continuations. */
  readonly page: number
}

export interface Card {
  readonly title: string
  readonly rule: string
  readonly rowCount: number
  readonly repeats: number
  readonly castOn: number
  readonly practise: string
  /** Stitches for the key, in the order of first use. */
  readonly stitches: readonly string[]
  readonly version: string
  readonly sheets: readonly CardSheet[]
}

/** The sheets with as many warnings as they have lines to spare: a warning is not worth another card. */
function sheetsWith(
  watches: readonly (string | null)[],
  rows: readonly CardRow[],
  front: CardFront,
): readonly CardSheet[] {
  let [kept, sheets] = [rows, cardSheets(rows, front)]
  const most = sheets.length
  for (const [i, watch] of watches.entries()) {
    const tried = kept.map((row, at) => (at === i ? { ...row, watch } : row))
    const laid = cardSheets(tried, front)
    if (laid.length === most) [kept, sheets] = [tried, laid]
  }
  return sheets
}

/** The swatch card of a proved pattern for two repeats (or its fixed number), laid out over as many cards as it needs. */
export function swatchCard(pattern: Pattern, proof: Proof, repeats = 2): Card {
  const fixed = 'fixed' in pattern.castOn
  const n = fixed ? 1 : repeats
  const lifelines = new Set(lifelineRows(pattern))
  const kind = pattern.worked === 'round' ? 'R' : ''
  const line = (row: Pattern['rows'][number], after: number): CardRow => ({
    label: row.number >= 1 ? `${kind}${row.number}` : 'set-up',
    side: row.side,
    words: printRow(withEdges(row, pattern)),
    count: after,
    lifeline: lifelines.has(row.number),
    watch: null,
  })
  const rows = [
    ...pattern.setUp.map((row, i) => line(row, at(proof.setUp[i]?.after ?? castOnCount(pattern.castOn), n))),
    ...pattern.rows.map((row, i) => line(row, at(proof.rows[i]?.after ?? castOnCount(pattern.castOn), n))),
  ]
  const all = [
    ...pattern.edges.before,
    ...pattern.edges.after,
    ...[...pattern.setUp, ...pattern.rows].flatMap((row) => row.items),
  ]
  const practise = pattern.about.teaches.join('; ')
  const stitches = [...stitchesUsed(all)]
  return {
    title: pattern.title,
    rule: castOnWords(pattern.castOn),
    rowCount: pattern.rows.length,
    repeats: n,
    castOn: (fixed ? castOnNumbers(pattern)[0] : castOnNumbers(pattern, n, n)[0])?.stitches ?? 0,
    practise,
    stitches,
    version: pattern.about.version ?? 'draft',
    sheets: sheetsWith(watchesOf(pattern, n), rows, { practise, stitches }),
  }
}
