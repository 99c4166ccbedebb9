import type { LoopId, Step, WorkedPattern, WorkedRow } from '../needles/index.ts'
import { effectOf, type Made, type Mount } from '../stitches/index.ts'
import type { Fabric, FabricLine, FabricLoop, FabricLoopId } from './fabric.ts'

/** A moment in the work: row `row` (an index into the worked rows) after its first `steps` steps. */
export interface Moment {
  readonly row: number
  readonly steps: number
}

type Draft = { -readonly [K in keyof FabricLoop]: FabricLoop[K] } & { children: FabricLoopId[] }

/** The fabric in the making. The tables only grow. */
interface Making {
  readonly worked: WorkedPattern
  readonly loops: Draft[]
  /** For each loop of the worked table, its number here. */
  readonly idOf: FabricLoopId[]
  /** How each loop of the worked table sits now. */
  readonly mounts: Mount[]
  readonly courses: FabricLoopId[][]
  readonly rightToLeft: boolean[]
  readonly lines: FabricLine[]
  /** Loops off the needles that can still be worked. */
  readonly holder: Set<LoopId>
}

/** One row in the making. */
interface RowMaking {
  readonly index: number
  readonly rightToLeft: boolean
  readonly course: FabricLoopId[]
  /** In working order. */
  readonly line: FabricLoopId[]
  readonly slipped: FabricLoopId[]
  readonly yarnInFront: FabricLoopId[]
  /** The chain loop of a bind-off that the next loop is drawn through as well. */
  chain: FabricLoopId | null
}

/**
 * The loop graph of a worked piece, or of a moment in it: then what lies on either needle is live, and loops made so
 * far have the numbers that they have in the whole piece.
 *
 * A chain loop and the loop after a bind-off are drawn through the chain loop before them too; it was passed over, so
 * it lies in front on the knit face. A piece in the round is laid flat, cut open where its rounds start.
 */
export function fabricOf(worked: WorkedPattern, until?: Moment): Fabric {
  const making: Making = {
    worked, loops: [], idOf: [], mounts: [], courses: [], rightToLeft: [], lines: [], holder: new Set(),
  }
  castOn(making)
  for (const [index, row] of worked.rows.slice(0, until ? until.row + 1 : undefined).entries()) {
    const steps = index === until?.row ? until.steps : row.steps.length
    workRow(making, row, index, steps)
  }
  for (const id of making.lines.at(-1)?.loops ?? []) setLive(making, id)
  for (const id of making.holder) setLive(making, numberOf(making, id))
  const { loops, courses, rightToLeft, lines } = making
  return { loops, courses, rightToLeft, lines }
}

/** The chain of a bind-off lies in the line too, and is off the needle. */
function setLive({ loops }: Making, id: FabricLoopId): void {
  const loop = known(loops[id])
  if (loop.kind !== 'chain' && loop.children.length === 0) loop.live = true
}

/** The working yarn of a cast-on ends at the tip that row 1 starts from: worked flat, it ran the other way. */
function castOn(making: Making): void {
  const { worked, lines } = making
  const [first] = worked.rows
  const count = worked.castOn
  for (const { id, mount } of worked.loops.filter((loop) => loop.row === -1)) {
    addLoop(making, id, { row: -1, stitch: 'co', kind: 'cast on', face: 'knit' })
    making.mounts[id] = mount
    if (id >= count) making.holder.add(id)
  }
  const fromTip = Array.from({ length: count }, (_, id) => id)
  const firstRuns = first?.side !== 'WS'
  const round = worked.pattern.worked === 'round'
  making.courses.push(round ? fromTip : fromTip.toReversed())
  making.rightToLeft.push(round ? firstRuns : !firstRuns)
  lines.push({ met: [], loops: firstRuns ? fromTip.toReversed() : fromTip, slipped: [], yarnInFront: [] })
}

function workRow(making: Making, row: WorkedRow, index: number, steps: number): void {
  // Turned, the next row runs back; in the round it runs on.
  const before = making.worked.rows[index - 1]
  const onward = making.worked.pattern.worked === 'round' && before?.turned === false
  const rightToLeft = before === undefined ? row.side === 'RS' : onward === known(making.rightToLeft[index])
  const inRow: RowMaking = {
    index, rightToLeft, course: [], slipped: [], yarnInFront: [], chain: null,
    line: row.waiting.map((id) => numberOf(making, id)),
  }
  for (const step of row.steps.slice(0, steps)) workStep(making, inRow, row, step)
  // Held loops put back on the left needle are not in `before`; what the row took and left over tells them.
  const ahead = [...row.steps.slice(steps).flatMap(({ taken }) => taken), ...row.unworked]
  for (const id of ahead) making.holder.delete(id)
  const taken = row.steps.flatMap((step) => step.taken)
  const met = [...row.waiting, ...taken, ...row.unworked].map((id) => numberOf(making, id))
  const line = [...inRow.line, ...ahead.map((id) => numberOf(making, id))]
  making.courses.push(inRow.course)
  making.rightToLeft.push(inRow.rightToLeft)
  const fromLeft = (loops: FabricLoopId[]) => (rightToLeft ? loops.reverse() : loops)
  const { slipped, yarnInFront } = inRow
  making.lines.push({ met: fromLeft(met), loops: fromLeft(line), slipped, yarnInFront })
}

function workStep(making: Making, inRow: RowMaking, row: WorkedRow, step: Step): void {
  const { made, chain, parked } = effectOf(
    step.stitch,
    step.taken.map((id) => making.mounts[id] ?? 'usual'),
  )
  for (const id of step.taken) making.holder.delete(id)
  if (parked > 0) for (const id of step.taken) making.holder.add(id)
  if (chain !== null) bindOff(making, inRow, row, step, chain)
  for (const [i, one] of made.entries()) {
    const id = known(step.made[i])
    if (one.slipped === null) makeLoop(making, inRow, step, one, id)
    else slipLoop(making, inRow, row, one, id)
  }
}

function slipLoop(making: Making, inRow: RowMaking, row: WorkedRow, made: Made, id: LoopId): void {
  const number = numberOf(making, id)
  making.mounts[id] = made.mount
  known(making.loops[number]).span += 1
  inRow.slipped.push(number)
  // What is near the knitter lies in front on a right-side row.
  if (made.float === (row.side === 'RS' ? 'near' : 'far')) inRow.yarnInFront.push(number)
  inRow.line.push(number)
}

function makeLoop(making: Making, inRow: RowMaking, step: Step, made: Made, id: LoopId): void {
  const { face, mount, parents, twisted } = known(making.worked.loops[id])
  const kind = kindOf(made)
  const number = addLoop(making, id, { row: inRow.index, stitch: step.stitch, kind, face })
  making.mounts[id] = mount
  for (const parent of parents) making.holder.delete(parent)
  const through = kind === 'below' ? below(making, inRow, step, made) : parents.map((parent) => numberOf(making, parent))
  drawThrough(making, number, through, kind === 'below' ? through.map(() => false) : twisted)
  passChain(making, inRow, number)
  inRow.course.push(number)
  inRow.line.push(number)
}

const kindOf = ({ from }: Made): FabricLoop['kind'] =>
  from === 'air' ? 'over' : from === 'strand' || from === 'below' ? from : from === 'castOn' ? 'cast on' : 'drawn'

/** A new loop of a bind-off, which lies along the edge and is off the needle as soon as the next one is drawn through it. */
function bindOff(making: Making, inRow: RowMaking, row: WorkedRow, step: Step, made: Made): void {
  const face = (made.face === 'knit') === (row.side === 'RS') ? 'knit' : 'purl'
  const number = addLoop(making, null, { row: inRow.index, stitch: step.stitch, kind: 'chain', face })
  drawThrough(making, number, step.taken.map((id) => numberOf(making, id)), made.twisted)
  passChain(making, inRow, number)
  inRow.chain = number
  inRow.course.push(number)
  inRow.line.push(number)
}

/** Passes the chain loop before over a new loop. Lying along the edge, it is not called twisted. */
function passChain(making: Making, inRow: RowMaking, number: FabricLoopId): void {
  const { chain } = inRow
  inRow.chain = null
  if (chain === null) return
  const loop = known(making.loops[number])
  const inFront = loop.face === 'knit'
  loop.parents = inFront ? [chain, ...loop.parents] : [...loop.parents, chain]
  loop.twisted = inFront ? [false, ...loop.twisted] : [...loop.twisted, false]
  known(making.loops[chain]).children.push(number)
}

/** The loop under the row below that a lifted increase is drawn through. */
function below(making: Making, inRow: RowMaking, step: Step, made: Made): FabricLoopId[] {
  const { loops, worked } = making
  if (made.below === 'newest') {
    const newest = inRow.line.at(-1)
    const under = newest === undefined ? undefined : loops[newest]?.parents[0]
    const found = under === undefined ? undefined : loops[under]?.parents[0]
    return found === undefined ? [] : [found]
  }
  const row = known(worked.rows[inRow.index])
  const next = [...row.steps.slice(step.step).flatMap(({ taken }) => taken), ...row.unworked][0]
  const found = next === undefined ? undefined : loops[numberOf(making, next)]?.parents[0]
  return found === undefined ? [] : [found]
}

type Facts = Pick<FabricLoop, 'row' | 'stitch' | 'kind' | 'face'>

function addLoop(making: Making, loop: LoopId | null, facts: Facts): FabricLoopId {
  const id = making.loops.length
  making.loops.push({ id, loop, ...facts, parents: [], twisted: [], children: [], span: 1, live: false })
  if (loop !== null) making.idOf[loop] = id
  return id
}

function drawThrough(making: Making, id: FabricLoopId, parents: readonly FabricLoopId[], twisted: readonly boolean[]): void {
  const loop = known(making.loops[id])
  loop.parents = parents
  loop.twisted = twisted
  for (const parent of parents) known(making.loops[parent]).children.push(id)
}

const numberOf = ({ idOf }: Making, id: LoopId): FabricLoopId => known(idOf[id])

/** What the worked table promises to be there. Throws where it is not: a programming error. */
function known<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('fabric: a loop that is not in the table')
  return value
}
