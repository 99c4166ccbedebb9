import { type Lifeline, mostDone, type Progress } from '../lesson/index.ts'
import { isWithin, partsIn, partsOf } from './stored.ts'

/** More rows than any pattern that the engine works. */
const mostRows = 2000
/** Two lists of that many counts and a little more. */
const mostCharacters = 20_000

const isCounts = (value: unknown, rows: number): value is number[] =>
  Array.isArray(value) && value.length === rows && value.every((count) => isWithin(count, 0, mostDone))

function lifelineOf(value: unknown, rows: number): Lifeline | null | undefined {
  if (value === null) return null
  const parts = partsIn(value, ['row', 'done'])
  if (!parts) return undefined
  const { row, done } = parts
  return isWithin(row, 0, rows - 1) && isCounts(done, rows) ? { row, done } : undefined
}

/** Ticks and lifeline as they were stored, for a pattern of so many rows; null for anything that is not them. */
export function parseProgress(stored: unknown, rows: number): Progress | null {
  const parts = partsOf(stored, ['done', 'passed', 'lifeline'], mostCharacters)
  if (!parts || rows > mostRows) return null
  const { done, passed } = parts
  const lifeline = lifelineOf(parts.lifeline, rows)
  if (!isCounts(done, rows) || !isWithin(passed, 0, mostRows * mostDone) || lifeline === undefined)
    return null
  return { done, passed, lifeline }
}
