/** Kinds of mistakes, by names of our own that say what was done. */
export type MistakeKind =
  | 'yarn over left out'
  | 'yarn over made twice'
  | 'yarn over too many'
  | 'yarn over one stitch early'
  | 'yarn over one stitch late'
  | 'yarn over wrapped backwards'
  | 'yarn over worked through the back'
  | 'yarn over dropped on the return'
  | 'yarn over jumped the marker'
  | 'yarn over half made'
  | 'yarn left in front'
  | 'yarn over at the edge lost'
  | 'yarn over passed over'
  | 'yarn over passed over too'
  | 'double yarn over taken as one'
  | 'second wrap slipped off'
  | 'pass over forgotten'
  | 'slipped stitch dropped'
  | 'slipped purlwise'
  | 'slipped one by one'
  | 'single for double'
  | 'double for single'
  | 'decrease left out'
  | 'decrease too many'
  | 'wrong lean'
  | 'other double decrease'
  | 'decrease one stitch early'
  | 'decrease one stitch late'
  | 'decrease and yarn over swapped'
  | 'edge forgotten'
  | 'end forgotten'
  | 'end worked as a repeat'
  | 'seam stitch left out'
  | 'seam stitch worked twice'
  | 'multiple misread'
  | 'chart row cast on'
  | 'wrong row worked'
  | 'rows switched'
  | 'row skipped'
  | 'started on the wrong side'
  | 'row read backwards'
  | 'blank box the same on both sides'
  | 'stitch dropped'
  | 'knit for purl'
  | 'marker not moved'
  | 'yarn over made up later'
  | 'decrease made up later'

/** One mistake, made once, or in the same place of every repeat. Indices from 0. */
export interface Mistake {
  readonly kind: MistakeKind
  /** Index into the worked rows of the row in which the hands go wrong; 0 where it is the cast-on. */
  readonly row: number
  /** The step of the right row where they do; null where it is the whole row or the cast-on. */
  readonly step: number | null
  /** What else the kind must know: the other row's index, the loops cast on, the section of a marker. */
  readonly other: number | null
  /** Made in every repeat: something was read wrongly, not only worked wrongly once. */
  readonly everywhere: boolean
}

/** A short text that is the same for the same mistake. */
export const keyOf = ({ kind, row, step, other, everywhere }: Mistake): string =>
  `${kind}|${row}|${step ?? ''}|${other ?? ''}|${everywhere ? 'all' : ''}`
