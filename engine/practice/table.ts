import { type Casebook, casebookOf } from '../mistakes/index.ts'
import { type WorkedPattern, type WorkedRow, work } from '../needles/index.ts'
import { type Pattern, workedAgain } from '../pattern/index.ts'

/** A pattern laid on the table to practise with: worked wide and high enough, and ready for mistakes. */
export interface Table {
  readonly pattern: Pattern
  readonly worked: WorkedPattern
  readonly book: Casebook
  /** Indices of the worked rows that are asked about: the last turn of the pattern, which stands on lace, not on the cast-on. */
  readonly rows: readonly number[]
  /** Turns of the pattern, one above the other. */
  readonly turns: number
}

/** A row shown once in full, once with gaps and once by its counts alone has three repeats. */
export const least = 3
const widest = 6

/** Repeats that a row has of its own. */
export const repeatsIn = (row: Pick<WorkedRow, 'steps'>): number =>
  row.steps.reduce((most, { repeat }) => Math.max(most, repeat ?? 0), 0)

/** Where every row that has repeats at all has enough of them. */
const wideEnough = ({ rows }: WorkedPattern): boolean =>
  rows.every((row) => repeatsIn(row) === 0 || repeatsIn(row) >= least)

const isFixed = ({ castOn }: Pattern): boolean => 'fixed' in castOn

/** Turns to try: a fixed width is read from turn to turn; a low pattern needs something under it. */
const turnsFor = (pattern: Pattern): readonly number[] =>
  isFixed(pattern) ? [3, 2, 1] : pattern.rows.length <= 4 && !pattern.growing ? [2, 1] : [1]

function workedFor(pattern: Pattern): { worked: WorkedPattern; turns: number } | null {
  for (const turns of turnsFor(pattern)) {
    let found: WorkedPattern | null = null
    for (let repeats = least; repeats <= widest; repeats++) {
      const { worked } = work(workedAgain(pattern, turns), repeats)
      if (!worked) break
      found = worked
      if (isFixed(pattern) || wideEnough(worked)) break
    }
    if (found) return { worked: found, turns }
  }
  return null
}

/** Lays a proved pattern out; null where it cannot be worked. */
export function tableOf(pattern: Pattern): Table | null {
  const done = workedFor(pattern)
  if (!done) return null
  const { worked, turns } = done
  const first = worked.rows.length - pattern.rows.length
  return {
    pattern,
    worked,
    book: casebookOf(worked),
    rows: pattern.rows.map((_, i) => first + i),
    turns,
  }
}

/** What the pattern's rows are called in a sentence. */
export const rowKind = ({ pattern }: Pick<Table, 'pattern'>): 'row' | 'round' =>
  pattern.worked === 'round' ? 'round' : 'row'
