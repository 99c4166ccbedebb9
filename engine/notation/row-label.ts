/** A row's heading as it may stand before its stitches: 'Row 3 (RS):', 'Rows 2, 4 and 6:', 'Rnd 1:'. */
export interface RowLabel {
  readonly numbers: readonly number[]
  readonly side: 'RS' | 'WS' | null
  /** Characters that the heading takes, its colon and the space after it included. */
  readonly length: number
}

const heading =
  /^\s*(?:(?:rows?|rounds?|rnds?|r)\s*)?(\d+(?:\s*(?:,|&|and|to|through|[-–—])\s*(?:and\s*)?\d+)*)\s*(?:\(?\s*(rs|ws|right side|wrong side)\s*\)?)?\s*(?::|$)\s*/i

/** The heading at the start of `text`, or null where there is none. A range is laid out; more than `most` numbers are not read. */
export function rowLabel(text: string, most = 2000): RowLabel | null {
  const found = heading.exec(text)
  if (!found?.[1]) return null
  const numbers: number[] = []
  const parts = found[1].split(/\s*(?:,|&|\band\b)\s*/i).filter((part) => part !== '')
  for (const part of parts) {
    const ends = part.split(/\s*(?:to|through|[-–—])\s*/i).map(Number)
    const [from, to] = [ends[0] ?? 0, ends[1] ?? ends[0] ?? 0]
    if (to < from || to - from > most || numbers.length > most) return null
    for (let n = from; n <= to; n++) numbers.push(n)
  }
  const side = found[2] ? (/^(ws|wrong)/i.test(found[2]) ? 'WS' : 'RS') : null
  return { numbers, side, length: found[0].length }
}
