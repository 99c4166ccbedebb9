import type { WorkedPattern, WorkedRow } from '../needles/index.ts'
import type { Fabric, FabricLoopId } from './fabric.ts'
import { addLoop, emptyMaking, fabricMade, known, type Making, numberOf } from './making.ts'
import { addStep, type RowMaking } from './steps.ts'

/** A moment in the work: row `row` (an index into the worked rows) after its first `steps` steps. */
export interface Moment {
  readonly row: number
  readonly steps: number
}

/**
 * The loop graph of a worked piece, or of a moment in it: then what lies on either needle is live, and loops made so
 * far have the numbers that they have in the whole piece.
 *
 * A chain loop and the loop after a bind-off are drawn through the chain loop before them too, which was passed over
 * them. A piece in the round is laid flat, cut open where its rounds start.
 */
export function fabricOf(worked: WorkedPattern, until?: Moment): Fabric {
  const making = emptyMaking(worked)
  addCastOn(making)
  for (const [index, row] of worked.rows.slice(0, until && until.row + 1).entries()) {
    addRow(making, row, index, index === until?.row ? until.steps : row.steps.length)
  }
  return fabricMade(making)
}

/** The yarn of a cast-on ends at the tip that row 1 starts from, so worked flat it ran the other way. */
function addCastOn(making: Making): void {
  const { worked, courses, rightToLeft, lines, holder, mounts } = making
  for (const { id, row, mount } of worked.loops) {
    if (row !== -1) break
    addLoop(making, id, { row, stitch: 'co', kind: 'cast on', face: 'knit' })
    mounts[id] = mount
    // Loops of another piece follow those of the cast-on.
    if (id >= worked.castOn) holder.add(id)
  }
  const fromTip = Array.from({ length: worked.castOn }, (_, id) => id)
  const tipRight = worked.rows[0]?.side !== 'WS'
  const onward = worked.pattern.worked === 'round'
  courses.push(onward ? fromTip : fromTip.toReversed())
  rightToLeft.push(onward === tipRight)
  lines.push({ met: [], loops: fromLeft(tipRight, fromTip), slipped: [], yarnInFront: [] })
}

function addRow(making: Making, row: WorkedRow, index: number, steps: number): void {
  const runsLeft = leftward(making, row, index)
  const numbers = (ids: readonly FabricLoopId[]): FabricLoopId[] => ids.map((id) => numberOf(making, id))
  const line = numbers(row.waiting)
  const inRow: RowMaking = { row, index, course: [], line, slipped: [], yarnInFront: [], chain: null }
  for (const step of row.steps.slice(0, steps)) addStep(making, inRow, step)
  // Held loops put back on the left needle are not in `before`; what the row took and left over tells them.
  const takenFrom = (first: number) => row.steps.slice(first).flatMap(({ taken }) => taken)
  const ahead = [...takenFrom(steps), ...row.unworked]
  for (const id of ahead) making.holder.delete(id)
  making.courses.push(inRow.course)
  making.rightToLeft.push(runsLeft)
  making.lines.push({
    met: fromLeft(runsLeft, numbers([...row.waiting, ...takenFrom(0), ...row.unworked])),
    loops: fromLeft(runsLeft, [...line, ...numbers(ahead)]),
    slipped: inRow.slipped,
    yarnInFront: inRow.yarnInFront,
  })
}

/** Turned, the next row runs back; in the round it runs on. */
function leftward({ worked, rightToLeft }: Making, row: WorkedRow, index: number): boolean {
  const before = worked.rows[index - 1]
  if (before === undefined) return row.side === 'RS'
  const onward = worked.pattern.worked === 'round' && !before.turned
  return onward === known(rightToLeft[index])
}

const fromLeft = (runsLeft: boolean, inOrder: readonly FabricLoopId[]): FabricLoopId[] =>
  runsLeft ? inOrder.toReversed() : [...inOrder]
