import type { WorkedPattern } from '../needles/index.ts'
import { rowLabelOf } from './lesson.ts'

/** A thread through all loops of a finished row, to rip back to. */
export interface Lifeline {
  /** Index of the row whose loops it holds. */
  readonly row: number
  /** How often each row was done when that row was just finished. */
  readonly done: readonly number[]
}

/** What a reader has done of a pattern, over all its turns. */
export interface Progress {
  /** How often each row was ticked; indices of the worked rows, set-up rows first. */
  readonly done: readonly number[]
  /** Row ends that the last steps went past, one after the other: going back over one takes its tick away. */
  readonly passed: number
  readonly lifeline: Lifeline | null
}

type Pieces = Pick<WorkedPattern, 'rows' | 'pattern'>

/** No row is done more often, as far as this notes. */
export const mostDone = 999

export const nothingDone = ({ rows }: Pick<Pieces, 'rows'>): Progress => ({
  done: rows.map(() => 0),
  passed: 0,
  lifeline: null,
})

const plus = (done: readonly number[], rows: readonly number[], by: 1 | -1): number[] => {
  const counts = [...done]
  for (const row of rows) counts[row] = Math.min(mostDone, Math.max(0, (counts[row] ?? 0) + by))
  return counts
}

/** One tick more or fewer at a row, by hand. */
export const ticked = (progress: Progress, row: number, by: 1 | -1): Progress => ({
  ...progress,
  done: plus(progress.done, [row], by),
})

/** A step went past the end of a row. */
export const wentPast = (progress: Progress, row: number): Progress => ({
  ...ticked(progress, row, 1),
  passed: progress.passed + 1,
})

/** A step went back over the end of a row: that row is not done yet after all. */
export const wentBackOver = (progress: Progress, row: number): Progress =>
  progress.passed === 0 ? progress : { ...ticked(progress, row, -1), passed: progress.passed - 1 }

/** The reader went elsewhere: all ticks stay. */
export const wentElsewhere = (progress: Progress): Progress => ({ ...progress, passed: 0 })

/** The row that is worked after a row; after the last one the pattern is worked again. */
export const rowAfterIn = ({ rows, pattern }: Pieces, row: number): number =>
  row + 1 < rows.length ? row + 1 : Math.min(pattern.setUp.length, rows.length - 1)

/** Rows done since a row, up to the one that is worked now. */
function rowsSince(pieces: Pieces, row: number, here: number): number[] {
  const since: number[] = []
  let at = rowAfterIn(pieces, row)
  while (at !== here && since.length < pieces.rows.length) {
    since.push(at)
    at = rowAfterIn(pieces, at)
  }
  return at === here ? since : []
}

/** Puts the lifeline in a row while row `here` is worked. There is one at a time. */
export function withLifeline(progress: Progress, pieces: Pieces, row: number, here: number): Progress {
  const done =
    row === here ? plus(progress.done, [row], 1) : plus(progress.done, rowsSince(pieces, row, here), -1)
  return { ...progress, lifeline: { row, done } }
}

export const withoutLifeline = (progress: Progress): Progress => ({ ...progress, lifeline: null })

/** Takes away the ticks of all that was ripped out. */
export const rippedToLifeline = (progress: Progress): Progress =>
  progress.lifeline ? { ...progress, done: progress.lifeline.done, passed: 0 } : progress

/** Rows that have more ticks than they had at the lifeline, with how many. */
export function tickedSinceLifeline({ done, lifeline }: Progress): { row: number; times: number }[] {
  return done.flatMap((times, row) => {
    const more = times - (lifeline?.done[row] ?? times)
    return more > 0 ? [{ row, times: more }] : []
  })
}

/** 'rows 3 to 5', 'row 3', 'the 9 rows since then'. */
export function rowsSinceWords(
  worked: WorkedPattern,
  since: readonly { row: number; times: number }[],
): string {
  const kind = worked.pattern.worked === 'round' ? 'round' : 'row'
  const [first, last] = [since[0]?.row ?? 0, since.at(-1)?.row ?? 0]
  const isRun = last - first === since.length - 1 && since.every(({ times }) => times === 1)
  const numbers = [worked.rows[first]?.number ?? 0, worked.rows[last]?.number ?? 0] as const
  if (!isRun || numbers[0] < 1) {
    const sum = since.reduce((all, { times }) => all + times, 0)
    return sum === 1 ? `the ${kind} since then` : `the ${sum} ${kind}s since then`
  }
  return first === last ? `${kind} ${numbers[0]}` : `${kind}s ${numbers[0]} to ${numbers[1]}`
}

const ordinal = (n: number): string => {
  const ending = n % 100 > 10 && n % 100 < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th')
  return `${n}${ending}`
}

/** 'Row 3, 2nd time': which time it is that a row is worked. */
export function timeWords(worked: WorkedPattern, { done }: Progress, row: number): string {
  const one = worked.rows[row]
  return one ? `${rowLabelOf(worked, one)}, ${ordinal((done[row] ?? 0) + 1)} time` : ''
}

/** 'Lifeline in row 4', with the time where the row was done more than once. */
export function lifelineWords(worked: WorkedPattern, lifeline: Lifeline): string {
  const row = worked.rows[lifeline.row]
  const times = lifeline.done[lifeline.row] ?? 0
  if (!row) return ''
  return `Lifeline in ${rowLabelOf(worked, row).toLowerCase()}${times > 1 ? `, ${ordinal(times)} time` : ''}`
}
