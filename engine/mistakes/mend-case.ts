import type { WorkedPattern } from '../needles/index.ts'
import type { Consequence } from './consequence-facts.ts'
import type { Edit } from './edits.ts'
import type { Mend, MendWay } from './mend.ts'
import { cautionFor, type MendPlace, mendSteps } from './mend-words.ts'
import type { Mistake } from './mistake.ts'
import type { Plan } from './plan.ts'
import type { WrongPiece } from './work-wrong.ts'

/** A mistake to be mended, with what is known of it. */
export interface Case {
  readonly plan: Plan
  readonly mistake: Mistake
  readonly edits: readonly Edit[]
  readonly consequence: Consequence
  readonly section: number | null
}

const placeIn = ({ plan, mistake, section }: Case, later: 0 | 1 | 2, wide: number): MendPlace => ({
  plan,
  mistake,
  section,
  later,
  wide,
})

/** A mend with its words. */
export function mendBy(
  one: Case,
  way: MendWay,
  later: 0 | 1 | 2,
  wide: number,
  piece: WorkedPattern | null,
  exact: boolean,
): Mend {
  const place = placeIn(one, later, wide)
  return {
    way,
    later,
    exact,
    cosmetic: way === 'make one beside it' || way === 'work two together beside it',
    stitches: wide,
    steps: mendSteps(way, place),
    caution: cautionFor(way, place),
    piece,
  }
}

/** The right piece up to the row that a wrong one has come to; null past the last row. */
export function rightUpTo(plan: Plan, piece: WrongPiece): WorkedPattern | null {
  const straight = piece.rows.every((row, i) => row.row === piece.from + i && row.index === row.row)
  return straight ? { ...plan.worked, rows: plan.worked.rows.slice(0, piece.worked.rows.length) } : null
}
