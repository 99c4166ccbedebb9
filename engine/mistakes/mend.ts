import type { WorkedPattern } from '../needles/index.ts'

/** Ways to mend, by what the hands do. */
export type MendWay =
  | 'un-knit to it'
  | 'lift the strand'
  | 'let it drop'
  | 'pick up the loop'
  | 'pass it over now'
  | 'work the other leg'
  | 'work the column again'
  | 'move the marker'
  | 'make one beside it'
  | 'work two together beside it'
  | 'go back to the row'
  | 'cast on again'
  | 'leave it'

/** One way to mend a mistake. */
export interface Mend {
  readonly way: MendWay
  /** Rows since the mistake's own: 0 in the same row. */
  readonly later: 0 | 1 | 2
  /** The fabric is then the right one, loop for loop: found by mending it. */
  readonly exact: boolean
  /** Only the count is right again; the fabric keeps the mistake. */
  readonly cosmetic: boolean
  /** Stitches of the lowest row that are worked again. */
  readonly stitches: number
  readonly steps: readonly string[]
  /** For the hands; null where nothing strains them. */
  readonly caution: string | null
  /** The mended piece, up to the row that is done; null where nothing is knitted. */
  readonly piece: WorkedPattern | null
}
