import type { Consequence } from './consequence.ts'
import { type Plan, sectionWords } from './plan.ts'

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

type Known = Omit<Consequence, 'words'>

function countWords(plan: Plan, { counts, total, mistake, knittedRightly }: Known): string {
  const row = rowName(plan, mistake.row)
  const where = counts.map(
    ({ section, meant, now }) => `${sectionWords(plan, section)} has ${now} instead of ${meant}`,
  )
  if (counts.length === 0)
    return `${row} still ends with ${stitches(total.now)}, as it should: counting does not show it.`
  if (total.now === total.meant) {
    const nothing = knittedRightly ? ' Nothing is knitted wrongly.' : ''
    return `${row} still ends with ${stitches(total.now)}, but ${listed(where)}.${nothing}`
  }
  const much = counts.length > 4 ? '' : `: ${listed(where)}`
  return `${row} ends with ${total.now} instead of ${stitches(total.meant)}${much}.`
}

export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`

const hides = ({ settled }: Known): boolean => settled.meant === settled.now

function showWords(plan: Plan, known: Known): string | null {
  const { shows, mistake } = known
  if (shows.row === null) return null
  const row = rowName(plan, shows.row) + (shows.nextTurn ? ' of the next turn' : '')
  switch (shows.by) {
    case 'row end':
      return `It shows in ${low(row)} at the latest: there the words do not come out, ${shows.off === 0 ? 'one stretch over and another short' : off(shows.off)}.`
    case 'count':
      return hides(known)
        ? `Only a count in ${low(rowName(plan, mistake.row))} shows it: later the count is right again and hides it.`
        : `Every later row can be worked all the same: only counting shows it, from ${low(rowName(plan, mistake.row))} on.`
    default:
      return `Only the eye finds it, at the latest in ${low(row)}, when the next lace stands on it.`
  }
}

const low = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)

/** A consequence in sentences: the count, when it shows, what the eye sees. */
export function consequenceWords(plan: Plan, known: Known, section: number | null): string[] {
  const place = section === null ? '' : `, ${sectionWords(plan, section)}`
  const every = known.mistake.everywhere ? ', in every repeat' : ''
  const what = `${rowName(plan, known.mistake.row)}${every === '' ? place : ''}: ${known.name}${every}.`
  const shows = showWords(plan, known)
  return [what, countWords(plan, known), ...(shows ? [shows] : []), ...known.eye]
}
