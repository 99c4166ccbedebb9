import { type Issue, type IssueCode, limits, type Severity, type Span } from '../base/index.ts'
import type { BindOffItem, Item, RepeatItem } from '../pattern/index.ts'
import type { Token } from './lexer.ts'

/** A slip before it is known whether a pass over follows. */
export interface RawSlip {
  readonly kind: 'slip'
  readonly count: number
  readonly as: 'bare' | 'knitwise' | 'purlwise'
  readonly yarn: 'front' | 'back' | null
  readonly span: Span
}
/** A pass over, before it is joined with what it passes. */
export interface RawPass {
  readonly kind: 'pass'
  readonly what: 'slipped' | 'yarn over'
  readonly span: Span
}
/** A yarn-forward word, before its neighbours are known. */
export interface RawYarnForward {
  readonly kind: 'yarnForward'
  readonly word: string
  readonly span: Span
}
/** A repeat that does not say how far it goes. */
export interface RawRepeat extends Omit<RepeatItem, 'until'> {
  readonly until: RepeatItem['until'] | { readonly kind: 'open' }
}
export type Raw =
  | Exclude<Item, RepeatItem | BindOffItem>
  | RawRepeat
  | BindOffItem
  | RawSlip
  | RawPass
  | RawYarnForward

/** The place of reading in one row, with the problems found so far. */
export interface Reader {
  readonly tokens: readonly Token[]
  readonly issues: Issue[]
  readonly row: number | null
  at: number
  depth: number
}

export const token = (r: Reader, ahead = 0): Token | null => r.tokens[r.at + ahead] ?? null

/** The word at the reading place, or '' where there is none. */
export function word(r: Reader, ahead = 0): string {
  const t = token(r, ahead)
  return t?.kind === 'word' ? t.text : ''
}

/** Steps over the next word if it is one of `words`. */
export function took(r: Reader, ...words: string[]): boolean {
  if (!words.includes(word(r)) || word(r) === '') return false
  r.at++
  return true
}

/** Steps over the words of the longest phrase that stands here; '' where none does. */
export function tookPhrase(r: Reader, ...phrases: string[]): string {
  const longestFirst = [...phrases].sort((a, b) => b.split(' ').length - a.split(' ').length)
  for (const phrase of longestFirst) {
    const words = phrase.split(' ')
    if (words.every((w, i) => word(r, i) === w)) {
      r.at += words.length
      return phrase
    }
  }
  return ''
}

/** From the start of the token at `from` to the end of the last one read. */
export function spanFrom(r: Reader, from: number): Span {
  const start = r.tokens[from]?.span.start ?? r.tokens.at(-1)?.span.end ?? 0
  const end = r.tokens[Math.max(from, r.at - 1)]?.span.end ?? start
  return { start, end }
}

export function report(
  r: Reader,
  code: IssueCode,
  span: Span,
  values: Readonly<Record<string, string | number>> = {},
  severity: Severity = 'error',
): void {
  r.issues.push({ code, severity, span, row: r.row, values })
}

const numberWords = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

/** The whole number that a word is, in figures or letters; null for another word. */
export function numberOf(text: string): number | null {
  if (/^\d+$/.test(text)) return Number(text)
  const spelt = numberWords.indexOf(text)
  return spelt > 0 ? spelt : null
}

/** Keeps a written number within the limits; a number outside is told and replaced by 1. */
export function checkedNumber(r: Reader, n: number, span: Span): number {
  if (n === 0) report(r, 'number-zero', span)
  else if (n > limits.writtenNumber) report(r, 'number-too-large', span, { most: limits.writtenNumber })
  else return n
  return 1
}

/** Steps over a number here and gives it; null where there is none. */
export function tookNumber(r: Reader): number | null {
  const n = numberOf(word(r))
  if (n === null) return null
  r.at++
  return checkedNumber(r, n, spanFrom(r, r.at - 1))
}

export const tookStitches = (r: Reader): boolean =>
  took(r, 'st', 'sts', 'stitch', 'stitches', 'loop', 'loops')
