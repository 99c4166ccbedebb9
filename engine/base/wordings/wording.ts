import { printable } from '../source.ts'

/** The values that came with a problem. */
export type Values = Readonly<Record<string, string | number>>

/** The words of one kind of problem. */
export interface Wording {
  /** For the page of problems: what this problem is, in general. */
  readonly about: string
  readonly message: (v: Values) => string
  /** What to try. */
  readonly hint?: (v: Values) => string | null
}

export const number = (v: Values, name: string): number => Number(v[name] ?? 0)
export const text = (v: Values, name: string): string => printable(String(v[name] ?? ''))
export const stitches = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`
export const times = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`
export const maybe = (v: Values): string | null =>
  text(v, 'suggestion') === '' ? null : `did you mean \`${text(v, 'suggestion')}\`?`
