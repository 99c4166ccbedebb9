import type { WorkedRow } from '../needles/index.ts'

/** How the count stands against the beginning of the row. */
export interface Balance {
  /** Loops more (or fewer, negative) than the row began with. */
  readonly difference: number
  /** What the rest of the row still adds. */
  readonly toCome: number
  readonly words: string
}

const signed = (n: number): string => (n > 0 ? `+${n}` : n < 0 ? `−${-n}` : '0')
const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']
const spelt = (n: number): string => small[n] ?? String(n)

/** The balance after the first `done` steps of a row. */
export function balanceAt(row: WorkedRow, done: number): Balance {
  const before = row.before.length + row.waiting.length
  const end = row.after.length + row.unworked.length
  const now = row.steps[done - 1]?.total ?? before
  const difference = now - before
  const toCome = end - now
  return { difference, toCome, words: balanceWords(difference, toCome, end, before) }
}

function balanceWords(difference: number, toCome: number, end: number, before: number): string {
  if (difference === 0 && toCome === 0) return 'Even: as many as the row began with.'
  if (difference === 0)
    return end === before ? 'Even for now.' : `Even for now; this row is meant to end with ${end}.`
  if (end !== before) {
    if (toCome === 0) return `${signed(difference)}, as it is meant: this row ends with ${end}.`
    return `${signed(difference)} so far; this row is meant to end with ${end}, ${signed(end - before)}.`
  }
  const [n, much] = [Math.abs(difference), spelt(Math.abs(difference))]
  if (difference > 0)
    return `${signed(difference)}: ${n === 1 ? 'one decrease' : `decreases of ${much} in all`} will pay ${n === 1 ? 'it' : 'them'} back.`
  return `${signed(difference)}: ${n === 1 ? 'one yarn over' : `${much} yarn overs`} will make ${n === 1 ? 'it' : 'them'} up.`
}
