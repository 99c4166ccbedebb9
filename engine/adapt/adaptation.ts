import type { Pattern, Row } from '../pattern/index.ts'
import type { StitchId } from '../stitches/index.ts'
import type { Refused } from './refusal.ts'
import type { Shown } from './shown.ts'

/** One thing that an adaptation changed, in words for the knitter. */
export interface Change {
  /** Whether a beginner can take it in her stride, or should know why it is hard. */
  readonly ease: 'easy' | 'hard'
  /** The rows of the new pattern that it speaks of; empty where it speaks of all. */
  readonly rows: readonly number[]
  readonly sentence: string
}

/** A plainer stitch that could stand in for an awkward one, and what that does to the look. */
export interface Offer {
  /** Rows of the new pattern where the awkward stitch is worked. */
  readonly rows: readonly number[]
  readonly stitch: StitchId
  readonly plainer: StitchId
  /** Whether the fabric stays the same, loop for loop. */
  readonly sameFabric: boolean
  readonly sentence: string
}

/** Stitches to cast on for so many repeats, edge stitches counted in. */
export interface SwatchCount {
  readonly repeats: number
  readonly stitches: number
}

/** What a piece worked flat had at its sides, so that the way back from the round restores it. */
export interface Kept {
  readonly flat: Pattern
  readonly shown: Shown
  /** For each row, how many stitches into its repeat the round begins, set-up rows apart. */
  readonly starts: readonly number[]
}

export interface Adapted {
  readonly ok: true
  /** Proved for every number of repeats, and worked. */
  readonly pattern: Pattern
  readonly changes: readonly Change[]
  readonly offers: readonly Offer[]
  readonly counts: readonly SwatchCount[]
  /** Rows to work once after the last repeat of the rows, which the pattern itself cannot hold. */
  readonly closing: readonly Row[]
  /** Given back to `flat`, it restores the sides. Null where nothing went. */
  readonly kept: Kept | null
}

export type Adaptation = Adapted | Refused

export const easy = (sentence: string, rows: readonly number[] = []): Change => ({
  ease: 'easy',
  rows,
  sentence,
})
export const hard = (sentence: string, rows: readonly number[] = []): Change => ({
  ease: 'hard',
  rows,
  sentence,
})
