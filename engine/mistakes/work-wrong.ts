import {
  type Bench,
  benchBefore,
  benchCastOn,
  type Deed,
  type LoopId,
  type WorkedPattern,
  type WorkedRow,
  workDeeds,
} from '../needles/index.ts'
import type { Edit } from './edits.ts'
import { courseOf, type Habit, nextRow, type RowDone } from './follow.ts'
import type { Plan } from './plan.ts'

/** A piece with a mistake in it, worked loop by loop. */
export interface WrongPiece {
  /** The right rows up to the mistake, then the wrong ones. */
  readonly worked: WorkedPattern
  /** Index into its rows of the first row that is not right, or that may not be. */
  readonly from: number
  /** One for each row from there on. */
  readonly rows: readonly WrongRow[]
}

export interface WrongRow extends RowDone {
  /** Index into the wrong piece's rows. */
  readonly index: number
  /** Loops that slid off the needle in it. */
  readonly fallen: readonly LoopId[]
  readonly belts: readonly { readonly belt: LoopId; readonly round: readonly LoopId[] }[]
}

export interface WrongOptions {
  readonly habit?: Habit
  /** Goes on although the words did not come out. */
  readonly unnoticed?: boolean
}

const benches = new WeakMap<Plan, Map<number, Bench>>()

/** The hands before a row, to be worked from: found once for each row, since many mistakes begin there. */
function benchAt(plan: Plan, row: number): Bench {
  const known = benches.get(plan) ?? new Map<number, Bench>()
  benches.set(plan, known)
  const bench = known.get(row) ?? benchBefore(plan.worked, row)
  known.set(row, bench)
  const { loops, mounts, ahead, behind, holder, issues } = bench
  return {
    ...bench,
    loops: [...loops],
    mounts: [...mounts],
    ahead: [...ahead],
    behind: [...behind],
    holder: [...holder],
    issues: [...issues],
  }
}

/**
 * Works a mistake loop by loop and goes on for `most` rows from the mistake's own, or until the words of a row do not
 * come out. All by the needle code that works the right rows.
 */
export function workWrong(
  plan: Plan,
  edits: readonly Edit[],
  most: number,
  { habit = 'markers', unnoticed = false }: WrongOptions = {},
): WrongPiece {
  const course = courseOf(plan, edits, habit)
  const from = course.row ?? 0
  const cast = edits.find((edit) => edit.do === 'castOn')
  const bench = cast ? benchCastOn(cast.count) : benchAt(plan, from)
  const rows: WorkedRow[] = [...plan.worked.rows.slice(0, from)]
  const wrong: WrongRow[] = []
  while (wrong.length < most) {
    const done = nextRow(course)
    if (!done) break
    const deeds: Deed[] = done.acts.map((act) => act.deed)
    const number = plan.rows[done.row]?.number ?? 0
    const { row, fallen, belts } = workDeeds(
      bench,
      plan.worked.pattern,
      { number, side: done.side },
      rows.length,
      deeds,
    )
    wrong.push({ ...done, index: rows.length, fallen, belts })
    rows.push(row)
    if (done.at !== null && !unnoticed) break
  }
  const worked = { ...plan.worked, castOn: cast?.count ?? plan.worked.castOn, loops: bench.loops, rows }
  return { worked, from, rows: wrong }
}
