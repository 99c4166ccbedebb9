import type { Sight } from './look.ts'
import type { Mistake } from './mistake.ts'
import type { WrongPiece } from './work-wrong.ts'

/** A count as it should be and as it is. */
export interface Both {
  readonly meant: number
  readonly now: number
}

export interface SectionCount extends Both {
  /** Index into the plan's sections. */
  readonly section: number
}

/** How a mistake comes out, and when that is at the latest. */
export interface Shows {
  /** 'row end': the words of a row do not come out. 'count': only a count tells. 'eye': only looking tells. */
  readonly by: 'row end' | 'count' | 'eye' | 'nothing'
  /** Index into the plan's rows; null where nothing ever shows. */
  readonly row: number | null
  /** It is the same row of the next turn of the pattern. */
  readonly nextTurn: boolean
  /** Loops left over (more than 0) or lacking there. */
  readonly off: number
}

/** What follows from a mistake. */
export interface Consequence {
  readonly mistake: Mistake
  readonly name: string
  /** After the mistake's own row: only what differs. */
  readonly counts: readonly SectionCount[]
  readonly total: Both
  /** Once all rows that it touches are done: a mistake made up for later is right again by then. */
  readonly settled: Both
  /** Whether the words of its own row came out: 0, or loops left over (more than 0) or lacking. */
  readonly rowEnd: number
  readonly shows: Shows
  /** Whether every later row still fits the loops that it meets. */
  readonly laterRowsFit: boolean
  /** Every loop is as it should be: only a marker is not. */
  readonly knittedRightly: boolean
  readonly sights: readonly Sight[]
  /** What the eye sees, in words. */
  readonly eye: readonly string[]
  /** The piece with the mistake in it, its own row and the next, to be drawn beside the right one. */
  readonly wrong: WrongPiece
  readonly words: readonly string[]
}
