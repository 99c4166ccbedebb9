import { type Effect, effectWords, type MistakeKind } from '../mistakes/index.ts'
import type { TipKind } from './tips.ts'

export type CallOutKind = MistakeKind | TipKind

/** Something to be careful of at just this step. */
export interface CallOut {
  readonly kind: CallOutKind
  /** What goes wrong, or what is special here: 'A yarn over was left out'. */
  readonly title: string
  readonly words: string
  /** Loops at the end of the row if it happened once; null where nothing goes wrong, or the row does not come to its end. */
  readonly rowEnds: number | null
  /** Folded where the reader has just met it: after the first repeat, and once it was said in the row. */
  readonly folded: boolean
}

/** A call-out as it is for a row of any count. */
export interface Note {
  readonly kind: CallOutKind
  readonly title: string
  /** What the mistake does; a tip has only words. */
  readonly effect: Effect | null
  readonly words: string
}

/** A note at a row that is meant to end with so many. */
export function callOutOf({ kind, title, effect, words }: Note, meant: number, folded: boolean): CallOut {
  return {
    kind,
    title,
    words: effect ? effectWords(effect, meant) : words,
    rowEnds: effect?.saysCount ? meant + effect.off : null,
    folded,
  }
}
