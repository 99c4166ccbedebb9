import { isWithin, partsOf } from './stored.ts'

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

const isHold = (value: unknown): value is Hold => value === 'English' || value === 'Continental'

/** Whether a value can be the index of a row or of a step. */
export const isIndex = (value: unknown): value is number => isWithin(value, 0, mostSteps - 1)

/** Whether a lesson can show so many repeats side by side. */
export const isRepeats = (value: unknown): value is number => isWithin(value, 1, mostRepeats)

/** A place as it was stored; null for anything that is not one. Whether a pattern has that stitch is asked later. */
export function parsePlace(stored: unknown): Place | null {
  const parts = partsOf(stored, ['repeats', 'row', 'step', 'hold'], mostCharacters)
  if (!parts) return null
  const { repeats, row, step, hold } = parts
  const isPlace = isRepeats(repeats) && isIndex(row) && isIndex(step) && isHold(hold)
  return isPlace ? { repeats, row, step, hold } : null
}

/** Habits as they were stored; null for anything that is not them. */
export function parseHabits(stored: unknown): Habits | null {
  const parts = partsOf(stored, ['hold', 'slower'], mostCharacters)
  if (!parts) return null
  const { hold, slower } = parts
  return isHold(hold) && typeof slower === 'boolean' ? { hold, slower } : null
}
