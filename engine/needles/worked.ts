import type { Span } from '../base/index.ts'
import type { Pattern, Side } from '../pattern/index.ts'
import type { StitchId } from '../stitches/index.ts'

export type LoopId = number

/** One loop. Loops are kept in a table in the order in which they were made; `id` is the place there. */
export interface Loop {
  readonly id: LoopId
  /** Index into `WorkedPattern.rows`; -1 for the cast-on. */
  readonly row: number
  /** Index into that row's steps; -1 for the cast-on. */
  readonly step: number
  readonly stitch: StitchId
  /** The loops it was drawn through, front to back as seen from the right side. Empty for a yarn over or a cast-on. */
  readonly parents: readonly LoopId[]
  /** For each parent, whether it was twisted shut by this stitch. */
  readonly twisted: readonly boolean[]
  /** Its look from the right side. */
  readonly face: 'knit' | 'purl'
  /** Which leg leads on the needle: 'usual' has the leading leg in front. As it was made. */
  readonly mount: 'usual' | 'turned'
}

/** One stitch of the catalogue, worked. */
export interface Step {
  /** The row's number as the pattern numbers it. */
  readonly row: number
  /** From 1 in each row, in working order. */
  readonly step: number
  readonly stitch: StitchId
  /** Loops that left the left needle, in the order in which they left it. */
  readonly taken: readonly LoopId[]
  /** Loops that came on the right needle, in the order in which they came. A slipped loop is both. */
  readonly made: readonly LoopId[]
  /** Loops on each needle after the step. */
  readonly left: number
  readonly right: number
  readonly total: number
  /** The row's own repeat in working order from 1; null outside it. */
  readonly repeat: number | null
  /** Stitches since that repeat began, from 1; null outside it. */
  readonly position: number | null
  /** 'before' and 'after' are the edge stitches that the file names apart from the rows. */
  readonly part: 'before' | 'row' | 'after'
  /** Where the stitch is written. In the edge's text for an edge stitch. */
  readonly span: Span
  /** Loops from the holder that this step took. */
  readonly held: number
}

/** A marker handled before step `beforeStep` (from 1; one past the last step: at the row's end). */
export interface MarkerUse {
  readonly action: 'place' | 'slip' | 'remove'
  readonly beforeStep: number
}

export interface WorkedRow {
  readonly number: number
  readonly side: Side
  readonly steps: readonly Step[]
  /** The left needle before the row, from the tip on: the loop worked first comes first. */
  readonly before: readonly LoopId[]
  /** Loops left waiting on the right needle before the row (only after a turn), the one nearest the tip last. */
  readonly waiting: readonly LoopId[]
  /** The right needle after the row, in the order of working: the last made comes last. */
  readonly after: readonly LoopId[]
  /** Loops not worked because the row was turned, from the tip on. */
  readonly unworked: readonly LoopId[]
  readonly turned: boolean
  readonly markers: readonly MarkerUse[]
}

export interface WorkedPattern {
  readonly pattern: Pattern
  /** Pattern repeats; 1 for a fixed cast-on. */
  readonly repeats: number
  /** Loops cast on, edges included. */
  readonly castOn: number
  readonly loops: readonly Loop[]
  /** Set-up rows first. */
  readonly rows: readonly WorkedRow[]
}
