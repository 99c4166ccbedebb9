import type { Pattern, Row } from '../pattern/index.ts'
import { stitchesUsed } from '../pattern/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'
import type { Offer } from './adaptation.ts'
import { rowsNamed } from './say.ts'
import { leanFromBehind, plainerOf, sameFromBehind } from './twins.ts'

/** The exact mirror images of sk2p and of its wrong-side form are seldom worked; a plain double leans as they do. */
const plainDoubles: Readonly<Record<StitchId, StitchId>> = { ssksp: 'k3tog', 'sl1 ssp psso': 'p3tog' }

/** What a row is worked in, as far as an offer asks. */
export type Stitched = Pick<Row, 'number' | 'side'> & { readonly stitches: Iterable<StitchId> }

/** The plainer stitch for one that a row of that side works; null where it is plain enough. */
export const plainerIn = (id: StitchId, side: Row['side']): StitchId | null =>
  plainDoubles[id] ?? (side === 'WS' ? plainerOf(id) : null)

/** Every plainer stitch that a pattern could do with, awkward ones in the order of first use. */
export const offersIn = ({ setUp, rows }: Pattern): Offer[] =>
  offersAmong(
    [...setUp, ...rows].map(({ number, side, items }) => ({ number, side, stitches: stitchesUsed(items) })),
  )

/** The same for rows that are not yet written. */
export function offersAmong(rows: readonly Stitched[]): Offer[] {
  const found = new Map<StitchId, number[]>()
  for (const { number, side, stitches } of rows)
    for (const id of new Set(stitches))
      if (plainerIn(id, side) !== null) found.set(id, [...(found.get(id) ?? []), number])
  return [...found].map(([id, numbers]) => offerOf(id, numbers))
}

function offerOf(id: StitchId, rows: readonly number[]): Offer {
  const double = plainDoubles[id]
  const plainer = double ?? plainerOf(id) ?? id
  const sameFabric = double === undefined && sameFromBehind(id, plainer)
  const sentence = double === undefined ? offerWords(id, plainer, sameFabric, rows) : doubleWords(id, double)
  return { rows, stitch: id, plainer, sameFabric, sentence }
}

const doubleWords = (id: StitchId, plainer: StitchId): string =>
  `\`${stitch(plainer).us}\` is easier than \`${stitch(id).us}\` and leans the same way; only the loops behind lie in another order.`

function offerWords(id: StitchId, plainer: StitchId, same: boolean, rows: readonly number[]): string {
  const start = `\`${stitch(plainer).us}\` is easier on the wrong side than \`${stitch(id).us}\` in ${rowsNamed(rows)}`
  return same ? `${start}, and makes the same fabric.` : `${start}; ${lookWords(id, plainer)}.`
}

const leanWords: Readonly<Record<string, string>> = {
  left: 'to the left',
  right: 'to the right',
  centre: 'upright',
}

function lookWords(id: StitchId, plainer: StitchId): string {
  const [from, to] = [leanFromBehind(id), leanFromBehind(plainer)].map(
    (lean) => leanWords[lean ?? ''] ?? 'otherwise',
  )
  if (from !== to) return `on the right side it then lies ${to} instead of ${from}`
  return 'on the right side its stitches are no longer twisted, or lie in another order'
}
