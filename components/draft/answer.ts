import type { Severity } from '../../engine/base/index.ts'
import type { Draft, DraftChange, DraftPlace } from '../../engine/intake/index.ts'
import type { Card } from '../../engine/lesson/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'

/** A stretch of a field's text that has a problem. */
export interface Marked {
  readonly start: number
  readonly end: number
  readonly severity: Severity
}

/** A problem in words; what is between backticks stands, or should stand, in the text. */
export interface ProblemView {
  readonly place: DraftPlace
  readonly severity: Severity
  readonly code: string
  readonly name: string
  readonly message: string
  readonly hint: string | null
  readonly start: number
}

/** A suggestion for a problem, by the problem's index in the answer. */
export interface MendView {
  readonly problem: number
  readonly words: string
  readonly change: DraftChange
  /** The row as it would read, in three pieces: what is new is the middle one. */
  readonly shown: readonly [string, string, string] | null
  readonly remaining: number
}

export interface RowView {
  readonly number: number
  readonly name: string
  readonly side: string
  readonly rightToLeft: boolean
  /** 'comes out', 'does not come out', 'not understood'. */
  readonly state: 'fits' | 'misfit' | 'unread' | 'blank'
  /** The row on its needle, as SVG; empty where nothing can be drawn. */
  readonly strip: string
  readonly before: string
  readonly after: string
  readonly changes: boolean
  readonly tally: string
  /** What the picture shows, in words. */
  readonly picture: string
  /** Start and end of each step's word in the row's text; -1 for an edge stitch. */
  readonly spans: readonly number[]
}

export interface ChartCellView {
  readonly step: number
  readonly column: number
  readonly span: number
}

export interface ChartView {
  readonly key: string
  readonly width: number
  readonly height: number
  readonly rows: readonly string[]
  readonly rest: string
  /** By the index of the row in the draft, from the bottom. */
  readonly cells: readonly {
    readonly index: number
    readonly name: string
    readonly cells: readonly ChartCellView[]
  }[]
  readonly stitches: string
  /** Which rows are in it where it is not all of them. */
  readonly only: string | null
}

export interface Summary {
  readonly sound: boolean
  readonly rows: number
  readonly headline: string
  /** The first row with an error, by its number. */
  readonly first: number | null
  readonly stated: string | null
  readonly derived: string | null
  /** The cast-on that the rows need, to be taken; null where it is stated already or there is none. */
  readonly take: DraftChange | null
  readonly castOnWords: string
  readonly repeats: number
  readonly isFixed: boolean
  readonly worked: 'flat' | 'round'
}

/** Everything that is shown of a draft but the stitch that is looked at. */
export interface Answer {
  readonly rows: readonly RowView[]
  readonly marks: {
    readonly before: readonly Marked[]
    readonly after: readonly Marked[]
    readonly rows: readonly (readonly Marked[])[]
  }
  readonly problems: readonly ProblemView[]
  readonly summary: Summary
  readonly chart: ChartView | null
  /** Null unless every row comes out. */
  readonly pattern: Pattern | null
}

/** A swatch card with its signs as SVG and their words as HTML. */
export interface CardView {
  readonly card: Card
  readonly signs: readonly string[]
  readonly words: readonly string[]
}

/** Another stitch that can be put where one is. */
export interface ChoiceView {
  readonly words: string
  readonly short: string
  readonly sign: string
  /** What it does to the count; empty where the row keeps its balance. */
  readonly effect: string
  readonly change: DraftChange
}

export interface StitchView {
  readonly index: number
  readonly step: number
  readonly status: string
  readonly balance: string
  readonly hands: string
  readonly needles: string
  readonly isFirst: boolean
  readonly isLast: boolean
  /** 'It is written as ‘k2tog’ and stands there in every repeat.' */
  readonly written: string
  readonly keeps: readonly ChoiceView[]
  readonly pairs: readonly ChoiceView[]
  readonly others: readonly ChoiceView[]
  readonly out: ChoiceView | null
  readonly next: readonly [number, number] | null
  readonly back: readonly [number, number] | null
}

/** A pattern made over, with what changed; null with the reasons why not. */
export interface ChangeView {
  readonly pattern: Pattern | null
  readonly sentences: readonly string[]
}

/** What the page asks of the worker that works rows out. */
export type WorkAsk =
  | { readonly ask: 'check'; readonly draft: Draft; readonly repeats: number | null }
  | { readonly ask: 'mends' }
  | { readonly ask: 'stitch'; readonly index: number; readonly step: number }

/** What it asks of the one that writes and reads pattern files and makes cards, which is fetched only then. */
export type FileAsk =
  | { readonly ask: 'write'; readonly draft: Draft }
  | { readonly ask: 'card'; readonly draft: Draft }
  | { readonly ask: 'read'; readonly name: string; readonly text: string }
  | { readonly ask: 'change'; readonly pattern: Pattern; readonly written: string }

/** Answers carry the number of what they answer. */
export type Told =
  | { readonly told: 'check'; readonly answer: Answer }
  | { readonly told: 'mends'; readonly mends: readonly MendView[] }
  | { readonly told: 'stitch'; readonly view: StitchView | null }
  | { readonly told: 'write'; readonly text: string }
  | { readonly told: 'change'; readonly change: ChangeView }
  /** Null where the draft is not proved. */
  | { readonly told: 'card'; readonly card: CardView | null }
  | {
      readonly told: 'read'
      readonly draft: Draft | null
      readonly problems: string
      readonly remarks: boolean
    }
