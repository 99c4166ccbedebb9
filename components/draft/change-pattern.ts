import { adapt, readRequests } from '../../engine/adapt/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import type { ChangeView } from './answer.ts'

/** What a proved pattern becomes when it is changed as a whole, or why it does not. */
export function changeOf(pattern: Pattern, written: string): ChangeView {
  const requests = readRequests(written)
  if ('unknown' in requests) return { pattern: null, sentences: [`There is no such change: ${written}.`] }
  const made = adapt(pattern, requests)
  if (!made.ok) {
    const { row, sentence, hint } = made.refusal
    const where = row === null ? '' : `Row ${row}: `
    return { pattern: null, sentences: [where + sentence, ...(hint ? [hint] : [])] }
  }
  const closing = made.closing.map((row) => printRow(row.items))
  return {
    pattern: made.pattern,
    sentences: [
      ...made.changes.map(({ sentence }) => sentence),
      ...(closing.length > 0 ? [`To end with, above the last row: ${closing.join('; ')}.`] : []),
      ...made.offers.map(({ sentence }) => sentence),
    ],
  }
}
