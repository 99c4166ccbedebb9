import type { LoopId, Step, WorkedRow } from '../needles/index.ts'
import { effectOf, type Made } from '../stitches/index.ts'
import type { FabricLoop, FabricLoopId } from './fabric.ts'
import { addLoop, drawThrough, known, type Making, numberOf } from './making.ts'

/** A row in the making. */
export interface RowMaking {
  readonly row: WorkedRow
  /** Index into the worked rows. */
  readonly index: number
  readonly course: FabricLoopId[]
  /** What the right needle and the bound-off edge have, in working order. */
  readonly line: FabricLoopId[]
  readonly slipped: FabricLoopId[]
  readonly yarnInFront: FabricLoopId[]
  /** The chain loop of a bind-off that the next loop is drawn through as well. */
  chain: FabricLoopId | null
}

/** Adds what a step makes, slips, binds off or puts on a holder. */
export function addStep(making: Making, inRow: RowMaking, step: Step): void {
  const { taken, stitch } = step
  const mounts = taken.map((id) => making.mounts[id] ?? 'usual')
  const { made, chain, parked } = effectOf(stitch, mounts)
  for (const id of taken) making.holder.delete(id)
  if (parked > 0) for (const id of taken) making.holder.add(id)
  if (chain !== null) bindOff(making, inRow, step, chain)
  for (const [i, one] of made.entries()) {
    const id = known(step.made[i])
    if (one.slipped === null) make(making, inRow, step, one, id)
    else slip(making, inRow, one, id)
  }
}

function slip(making: Making, inRow: RowMaking, made: Made, id: LoopId): void {
  const number = numberOf(making, id)
  making.mounts[id] = made.mount
  known(making.loops[number]).span += 1
  inRow.slipped.push(number)
  // What is near the knitter lies in front on a right-side row.
  if (made.float === (inRow.row.side === 'RS' ? 'near' : 'far')) inRow.yarnInFront.push(number)
  inRow.line.push(number)
}

function make(making: Making, inRow: RowMaking, step: Step, made: Made, id: LoopId): void {
  const { face, mount, parents, twisted } = known(making.worked.loops[id])
  const kind = kindOf(made)
  const number = addLoop(making, id, { row: inRow.index, stitch: step.stitch, kind, face })
  making.mounts[id] = mount
  for (const parent of parents) making.holder.delete(parent)
  if (made.below === null) {
    const through = parents.map((parent) => numberOf(making, parent))
    drawThrough(making, number, through, twisted)
  } else {
    const through = under(making, inRow, step, made.below)
    drawThrough(
      making,
      number,
      through,
      through.map(() => false),
    )
  }
  lay(making, inRow, number)
}

const kinds = {
  loops: 'drawn',
  air: 'over',
  strand: 'strand',
  below: 'below',
  castOn: 'cast on',
} as const satisfies Record<Made['from'], FabricLoop['kind']>

const kindOf = ({ from }: Made): FabricLoop['kind'] => kinds[from]

/** A loop of a bind-off: it lies along the edge, off the needle as soon as the next one is drawn through it. */
function bindOff(making: Making, inRow: RowMaking, { stitch, taken }: Step, made: Made): void {
  const face = (made.face === 'knit') === (inRow.row.side === 'RS') ? 'knit' : 'purl'
  const number = addLoop(making, null, { row: inRow.index, stitch, kind: 'chain', face })
  const through = taken.map((id) => numberOf(making, id))
  drawThrough(making, number, through, made.twisted)
  lay(making, inRow, number)
  inRow.chain = number
}

/** A new loop comes into the row. After a bind-off the last chain loop is passed over it, and it ends the chain. */
function lay(making: Making, inRow: RowMaking, number: FabricLoopId): void {
  inRow.course.push(number)
  inRow.line.push(number)
  const { chain } = inRow
  if (chain === null) return
  inRow.chain = null
  const loop = known(making.loops[number])
  // What is passed over lies outermost on the knit face. It lies along the edge, so it is not called twisted.
  const inFront = loop.face === 'knit'
  loop.parents = inFront ? [chain, ...loop.parents] : [...loop.parents, chain]
  loop.twisted = inFront ? [false, ...loop.twisted] : [...loop.twisted, false]
  known(making.loops[chain]).children.push(number)
}

/** What a lifted increase is drawn through: the loop under the next one, or two under the newest. None at a cast-on. */
function under(
  { loops, idOf }: Making,
  { row, line }: RowMaking,
  step: Step,
  of: 'next' | 'newest',
): FabricLoopId[] {
  const frontParent = (id: FabricLoopId | undefined): FabricLoopId | undefined =>
    id === undefined ? undefined : known(loops[id]).parents[0]
  const ahead = [...row.steps.slice(step.step).flatMap(({ taken }) => taken), ...row.unworked]
  const found = of === 'next' ? frontParent(idOf[ahead[0] ?? -1]) : frontParent(frontParent(line.at(-1)))
  return found === undefined ? [] : [found]
}
