import type { FabricLoopId } from '../../fabric/index.ts'
import type { LoopId } from '../../needles/index.ts'
import type { Moment } from './moment.ts'
import type { SheetPiece } from './sheet.ts'

interface Between {
  readonly before: Moment
  readonly after: Moment
  readonly rowIndex: number
  /** The loops that the stitch deals with. */
  readonly numbers: ReadonlyMap<unknown, FabricLoopId>
  /** What the step before has made. */
  readonly last: readonly LoopId[]
}

/** Tells the fabric that a step only moves from what it takes, makes or paints otherwise. */
export function stillIn({ before, after, rowIndex, numbers, last }: Between): (piece: SheetPiece) => boolean {
  const { fabric } = before.sheet.after
  const [made, soon] = [new Set(before.made), new Set(after.made)]
  const row = new Set(fabric.courses[rowIndex + 1])
  const held = new Set(numbers.values())
  for (const side of [before.left, before.right, after.left, after.right]) {
    for (const { loop } of side) held.add(loop)
  }
  return (piece) => {
    if (row.has(piece.arrives) && !made.has(piece.arrives)) return false
    if (piece.until !== null && soon.has(piece.until)) return false
    return isOfLoop(piece) ? !held.has(piece.loop) : !isPainted(before, piece, last)
  }
}

/** A leg or half a head, not yarn between loops. */
export const isOfLoop = ({ part }: SheetPiece): boolean => part.startsWith('leg') || part.startsWith('half')

/** The yarn beside a loop that the step before has made is painted with it. */
export const isPainted = (
  { made, sheet }: Moment,
  { loop, arrives, part }: SheetPiece,
  last: readonly LoopId[],
): boolean =>
  (part === 'sinker' || part === 'float' || part === 'belt') &&
  made.includes(arrives) &&
  last.includes(sheet.after.fabric.loops[loop]?.loop ?? -1)
