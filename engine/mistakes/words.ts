import type { Plan } from './plan.ts'

const numbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'] as const

export const numberWord = (n: number): string => numbers[n] ?? String(n)

export const stitches = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`

/** 'Row 3', 'Round 3', 'Set-up row 1'. */
export function rowName(plan: Plan, index: number): string {
  const { pattern } = plan.worked
  const number = plan.rows[index]?.number ?? 0
  const kind = pattern.worked === 'round' ? 'Round' : 'Row'
  return number >= 1 ? `${kind} ${number}` : `Set-up ${kind.toLowerCase()} ${number + pattern.setUp.length}`
}

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** 'one short', 'two over'. */
export const off = (by: number): string => `${numberWord(Math.abs(by))} ${by < 0 ? 'short' : 'over'}`

export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`

/** In the middle of a sentence. */
export const low = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)
