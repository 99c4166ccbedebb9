import { type Pattern, type Row, stitchesUsed } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import { type Basis, bases } from './bases.ts'
import { rowsBetweenLifelines } from './constants.ts'

export interface LifelinePlan {
  /** Rows of the pattern after which a thread goes in, by their numbers. */
  readonly rows: readonly number[]
  /** In every how-many-th time through. */
  readonly every: number
  /** Whether those rows are plain. */
  readonly plain: boolean
  readonly rests: readonly Basis[]
}

/** One stitch all the way. */
const isAcross = (row: Row): boolean => row.items.length === 1 && row.items[0]?.kind === 'across'

/** Knits and purls alone, a border of other ones with them. */
const isPlain = (row: Row): boolean =>
  [...stitchesUsed(row.items)].every((id) => stitch(id).family === 'plain')

/** The fewest rows between two lifelines: about every tenth row is one. */
const fewest = rowsBetweenLifelines - 2

/**
 * Plain rows after which a lifeline pays: about every tenth, else the last one; none where no row is plain. Rows of one
 * stitch all the way go first: a thread and a count run through them most easily.
 */
export function lifelineRows({ rows }: Pattern): readonly number[] {
  const across = rows.filter(isAcross)
  const plain = (across.length > 0 ? across : rows.filter(isPlain)).map((row) => row.number)
  const chosen: number[] = []
  for (const number of plain) if (number - (chosen.at(-1) ?? 0) >= fewest) chosen.push(number)
  return chosen.length > 0 ? chosen : plain.slice(-1)
}

/** Where lifelines go, and how often: about every ten rows, on a plain row where there is one. */
export function lifelinePlan(pattern: Pattern): LifelinePlan {
  const plain = lifelineRows(pattern)
  const last = pattern.rows.at(-1)?.number ?? 1
  const rows = plain.length > 0 ? plain : [last]
  const every = rows.length > 1 ? 1 : Math.max(1, Math.floor(rowsBetweenLifelines / pattern.rows.length))
  return { rows, every, plain: plain.length > 0, rests: [bases.lifeline] }
}

/** The times through in which a thread goes in, up to the last but one: over the last one the bind-off follows. */
export const lifelinesIn = ({ rows, every }: LifelinePlan, through: number): number =>
  Math.floor(Math.max(0, through - 1) / every) * rows.length

/** Rows in all, set-up rows counted, after which the first threads go in. */
export function firstLifelines(pattern: Pattern, plan: LifelinePlan, through: number, most = 4): number[] {
  const times = Array.from(
    { length: Math.floor(Math.max(0, through - 1) / plan.every) },
    (_, i) => (i + 1) * plan.every,
  )
  return times
    .slice(0, most)
    .flatMap((time) => plan.rows.map((row) => pattern.setUp.length + (time - 1) * pattern.rows.length + row))
    .slice(0, most)
}
