/** How a reader carries the yarn. */
export type Hold = 'English' | 'Continental'

/** The stitch that a reader has come to in a lesson. */
export interface Place {
  readonly repeats: number
  /** Index into the worked pattern's rows, set-up rows first. */
  readonly row: number
  /** Index into that row's steps. */
  readonly step: number
  readonly hold: Hold
}

/** What a reader chose once for every lesson. */
export interface Habits {
  readonly hold: Hold
  readonly slower: boolean
}

/** Pattern repeats side by side that a lesson can show. */
export const mostRepeats = 6
/** No row and no pattern that the engine works has more; a place beyond that was never left by a reader. */
const mostSteps = 20_000
/** What is stored has some 70 characters. */
const mostCharacters = 500

// Checked by hand: a schema library would weigh more than all the rest of a lesson's own script.

/** What is known of a value that was stored, by name. */
type Parts = Readonly<Record<string, unknown>>

const isHold = (value: unknown): value is Hold => value === 'English' || value === 'Continental'

const isIndex = (value: unknown): value is number => isWithin(value, 0, mostSteps - 1)

const isWithin = (value: unknown, least: number, most: number): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most

/** A place as it was stored; null for anything that is not one. Whether a pattern has that stitch is asked later. */
export function parsePlace(stored: unknown): Place | null {
  const parts = partsOf(stored, ['repeats', 'row', 'step', 'hold'])
  if (!parts) return null
  const { repeats, row, step, hold } = parts
  const isPlace = isWithin(repeats, 1, mostRepeats) && isIndex(row) && isIndex(step) && isHold(hold)
  return isPlace ? { repeats, row, step, hold } : null
}

/** Habits as they were stored; null for anything that is not them. */
export function parseHabits(stored: unknown): Habits | null {
  const parts = partsOf(stored, ['hold', 'slower'])
  if (!parts) return null
  const { hold, slower } = parts
  return isHold(hold) && typeof slower === 'boolean' ? { hold, slower } : null
}

/** An object that has just these names of its own, from its text; null for anything else. */
function partsOf(stored: unknown, names: readonly string[]): Parts | null {
  if (typeof stored !== 'string' || stored.length > mostCharacters) return null
  try {
    const value: unknown = JSON.parse(stored)
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return null
    const own = Object.keys(value)
    return own.length === names.length && names.every((name) => own.includes(name)) ? (value as Parts) : null
  } catch {
    return null
  }
}
