import type { LoopId, Step, WorkedPattern, WorkedRow } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'

/** What stands in one place of a row as it is seen: a step with its cells, or a loop that the row left unworked. */
export interface Piece {
  /** Index into the row's steps; null for an unworked loop. */
  readonly step: number | null
  readonly width: number
  /** Loops from the right, as they are seen. */
  readonly taken: readonly LoopId[]
  readonly made: readonly LoopId[]
  /** Of the loops taken, the one that lies in front. */
  readonly front: LoopId | null
}

/** Whether the row runs from right to left in the picture. */
export const startsRight = (worked: WorkedPattern, row: WorkedRow): boolean =>
  worked.pattern.worked === 'round' || row.side === 'RS'

/** A worked row from right to left as it is seen from the right side, with the loops that a turn left on either needle. */
export function piecesOf(worked: WorkedPattern, row: WorkedRow): Piece[] {
  const rightToLeft = startsRight(worked, row)
  const seen = (loops: readonly LoopId[]) => (rightToLeft ? loops : loops.toReversed())
  const pieces = [
    ...row.waiting.map(unworked),
    ...row.steps.map((step, index) => ({
      step: index,
      width: stitch(step.stitch).cells,
      taken: seen(step.taken),
      made: seen(step.made),
      front: frontOf(worked, step),
    })),
    ...row.unworked.map(unworked),
  ]
  return rightToLeft ? pieces : pieces.reverse()
}

const unworked = (loop: LoopId): Piece => ({ step: null, width: 1, taken: [loop], made: [loop], front: loop })

function frontOf(worked: WorkedPattern, step: Step): LoopId | null {
  const made = step.made[0]
  const front = made === undefined ? undefined : worked.loops[made]?.parents[0]
  return front ?? step.taken[0] ?? null
}
