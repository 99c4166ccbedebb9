import type { Mistake } from '../mistakes/index.ts'
import type { WorkedPattern } from '../needles/index.ts'
import type { StitchId } from '../stitches/index.ts'

/** Every kind of exercise, by the name that stands in an address, in the order in which they are best done. */
export const exerciseKinds = [
  'comes-next',
  'fill-the-row',
  'read-the-fabric',
  'row-in-order',
  'wrong-repeat',
  'mend-it',
] as const

export type ExerciseKind = (typeof exerciseKinds)[number]

/** A picture that can be drawn when it is looked at. */
export type Picture =
  | { readonly form: 'close-up'; readonly stitch: StitchId; readonly side: 'right' | 'wrong' }
  | { readonly form: 'fabric'; readonly piece: WorkedPattern; readonly title: string }

/** A piece of a row as it stands in a line: told, or a gap that a part of the exercise fills. */
export interface LinePiece {
  /** Null where it is to be found. */
  readonly words: string | null
  /** The part that asks for it. */
  readonly part: string | null
  /** Stitches on both needles after it; null where that is not shown. */
  readonly count: number | null
}

export interface Line {
  readonly name: string
  readonly pieces: readonly LinePiece[]
}

/** Something to look at before answering. */
export type Shown =
  | { readonly form: 'words'; readonly title: string; readonly words: readonly string[] }
  | { readonly form: 'lines'; readonly title: string; readonly lines: readonly Line[] }
  | {
      readonly form: 'stretches'
      readonly title: string
      /** Folded away, because it tells much of what is asked. */
      readonly folded: boolean
      readonly stretches: readonly StretchSeen[]
    }
  | { readonly form: 'picture'; readonly picture: Picture }

/** A stretch of a row, or a whole piece, as it is found. */
export interface StretchSeen {
  readonly name: string
  readonly meant: number
  readonly count: number
  /** Its loops from the right, as the eye takes them in: what the picture shows, in words. */
  readonly reading: string
}

export interface Choice {
  readonly id: string
  readonly words: string
  readonly right: boolean
  /** Said when it is chosen: why, from the loops. */
  readonly reply: string
}

interface Asked {
  /** One word, its own in the exercise. */
  readonly id: string
  readonly ask: string
}

/** One of several. `gap`: it stands in a line, where there is room for a word only. */
export interface ChoosePart extends Asked {
  readonly form: 'choose'
  readonly gap: boolean
  readonly picture: Picture | null
  readonly choices: readonly Choice[]
}

/** A number of stitches. */
export interface CountPart extends Asked {
  readonly form: 'count'
  readonly right: number
  readonly because: string
  /** Other numbers that say what was counted instead. */
  readonly near: readonly { readonly count: number; readonly words: string }[]
}

export interface OrderPiece {
  readonly id: string
  readonly words: string
}

/** The pieces of a row to be put in order; an order is judged by working it. */
export interface OrderPart extends Asked {
  readonly form: 'order'
  /** Index into the worked rows. */
  readonly row: number
  /** As they lie on the table, mixed up. */
  readonly pieces: readonly OrderPiece[]
  readonly right: readonly string[]
  readonly because: string
}

export type Part = ChoosePart | CountPart | OrderPart

/** One exercise as plain data. */
export interface Exercise {
  readonly kind: ExerciseKind
  readonly number: number
  readonly ask: readonly string[]
  readonly shown: readonly Shown[]
  readonly parts: readonly Part[]
  /** The whole of it in words, once it is answered. */
  readonly because: readonly string[]
  /** To be looked at with the answer. */
  readonly after: readonly Picture[]
  /** The mistake that was made for it; null where none was. */
  readonly mistake: Mistake | null
}

/** A kind that a pattern cannot give, and why. */
export interface NoExercise {
  readonly kind: ExerciseKind
  readonly why: string
}

/** What a reader answered, by the parts' ids: a choice's id, a number as it was typed, or the pieces' ids in order. */
export type Answers = Readonly<Record<string, string | readonly string[]>>

export interface Reply {
  readonly part: string
  /** Null where nothing was answered that can be judged. */
  readonly right: boolean | null
  readonly words: string
}
