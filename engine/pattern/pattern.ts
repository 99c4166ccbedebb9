import type { Span } from '../base/index.ts'
import type { StitchId } from '../stitches/index.ts'

export type Side = 'RS' | 'WS'

/** How far a repeat goes: to the end, to so many stitches before it, or so many times in all. */
export type Until =
  | { readonly kind: 'end' }
  | { readonly kind: 'last'; readonly stitches: number }
  | { readonly kind: 'times'; readonly times: number }

/** A stitch worked `times` times: k3, ssk, yo. */
export interface StitchItem {
  readonly kind: 'stitch'
  readonly stitch: StitchId
  readonly times: number
  readonly span: Span
}
/** Bracketed stitches worked `times` times: (k1, yo) twice. */
export interface GroupItem {
  readonly kind: 'group'
  readonly items: readonly Item[]
  readonly times: number
  readonly span: Span
}
/** The row's own repeat: *…; rep from * …. */
export interface RepeatItem {
  readonly kind: 'repeat'
  readonly items: readonly Item[]
  readonly until: Until
  readonly span: Span
}
/** One stitch all the way: knit; purl to last 3 sts. */
export interface AcrossItem {
  readonly kind: 'across'
  readonly stitch: StitchId
  readonly until: { readonly kind: 'end' } | { readonly kind: 'last'; readonly stitches: number }
  readonly span: Span
}
/** Binding off `count` stitches. `leavesOne`: one more loop is worked and stays on the right needle, unnamed in the row. */
export interface BindOffItem {
  readonly kind: 'bindOff'
  readonly stitch: StitchId
  readonly count: number | 'all'
  readonly leavesOne: boolean
  readonly span: Span
}
/** A marker; it is no stitch. */
export interface MarkerItem {
  readonly kind: 'marker'
  readonly action: 'place' | 'slip' | 'remove'
  readonly span: Span
}
/** The yarn carried to the other face between two stitches; no loop is made. */
export interface YarnItem {
  readonly kind: 'yarn'
  readonly to: 'front' | 'back'
  readonly span: Span
}
/** The row is left here and the work turned; `wrap` where the next stitch is wrapped first. */
export interface TurnItem {
  readonly kind: 'turn'
  readonly wrap: boolean
  readonly span: Span
}
/** The ends of the row are joined, to work on in the round. */
export interface JoinRoundItem {
  readonly kind: 'joinRound'
  readonly span: Span
}
/** `count` held loops go back on the left needle, to be worked next. */
export interface ResumeItem {
  readonly kind: 'resume'
  readonly count: number
  readonly span: Span
}

export type Item =
  | StitchItem
  | GroupItem
  | RepeatItem
  | AcrossItem
  | BindOffItem
  | MarkerItem
  | YarnItem
  | TurnItem
  | JoinRoundItem
  | ResumeItem

export interface Row {
  /** From 1; set-up rows end at 0 and count down before it. */
  readonly number: number
  readonly side: Side
  readonly items: readonly Item[]
  /** The row as it was written. */
  readonly text: string
  /** Where it stands in the source that it was read from. */
  readonly span: Span
}

/** A rule (multiple · n + plus, n ≥ 1) or one fixed number, without edge stitches. */
export type CastOn = { readonly multiple: number; readonly plus: number } | { readonly fixed: number }

export interface Source {
  readonly title: string
  readonly author?: string
  readonly year?: number
  readonly place?: string
}

export interface Correction {
  readonly version: string
  readonly date: string
  readonly change: string
  /** Numbers of the rows that it changed, where the file tells them. */
  readonly rows?: readonly number[] | undefined
}

/** What a pattern says about itself beside its rows. Absent where the file is silent. */
export interface About {
  readonly also: readonly string[]
  readonly notToConfuseWith: readonly string[]
  readonly tradition?: string
  readonly level?: 'Basic' | 'Easy' | 'Intermediate' | 'Complex'
  readonly teaches: readonly string[]
  readonly source?: Source
  readonly contributor?: string
  readonly licence?: string
  readonly tested?: string
  readonly version?: string
  readonly corrections: readonly Correction[]
  readonly yarn?: string
  /** Millimetres. */
  readonly needle?: number
  readonly blocked?: string
  readonly unblocked?: string
  readonly notes?: string
}

export interface Pattern {
  readonly title: string
  readonly castOn: CastOn
  readonly worked: 'flat' | 'round'
  readonly firstSide: Side
  /** Worked once before row 1. */
  readonly setUp: readonly Row[]
  readonly rows: readonly Row[]
  /** The count is not meant to be back after the last row. */
  readonly growing: boolean
  /** Worked before and after every row, in working order. */
  readonly edges: { readonly before: readonly Item[]; readonly after: readonly Item[] }
  readonly doubleYarnOver: 'two' | 'one'
  readonly bindOffLeaves: 'extra' | 'first'
  /** Live loops of another piece that wait to be joined. */
  readonly held: number
  /** Shown although it is not proved, and said so. */
  readonly draft: boolean
  readonly about: About
}
