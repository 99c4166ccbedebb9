import type { FabricLoopId } from '../../fabric/index.ts'
import type { Step, WorkedPattern } from '../../needles/index.ts'
import { stitch } from '../../stitches/index.ts'
import { type Cloth, clothOf } from './cloth.ts'
import { type Moment, momentAt } from './moment.ts'
import type { Name, Told } from './scene.ts'
import { scenesOf } from './scenes.ts'
import { type Stage, stageOf } from './stage.ts'
import { stillIn } from './still.ts'
import type { Hold } from './yarn-pose.ts'
import { neighboursOf } from './yarn-side.ts'

/** A step of a row with everything that its frames are drawn from. */
export interface StepContext {
  readonly worked: WorkedPattern
  readonly rowIndex: number
  readonly step: Step
  readonly before: Moment
  readonly after: Moment
  readonly told: readonly Told[]
  readonly stages: readonly Stage[]
  readonly cloth: Cloth
  /** The loops that the step makes, in the order of making. */
  readonly fresh: readonly FabricLoopId[]
  /** The fabric's number of every loop that has a name; loops that come to nothing have none. */
  readonly numbers: ReadonlyMap<Name, FabricLoopId>
  readonly hold: Hold
}

/** The last one is kept: a step is asked for before it, after it and in its course. */
const remembered = new WeakMap<
  WorkedPattern,
  { readonly name: string; readonly context: StepContext | null }
>()

export function contextOf(
  worked: WorkedPattern,
  rowIndex: number,
  stepIndex: number,
  hold: Hold,
): StepContext | null {
  const name = `${rowIndex} ${stepIndex} ${hold}`
  const known = remembered.get(worked)
  if (known?.name === name) return known.context
  const context = look(worked, rowIndex, stepIndex, hold)
  remembered.set(worked, { name, context })
  return context
}

function look(worked: WorkedPattern, rowIndex: number, stepIndex: number, hold: Hold): StepContext | null {
  const step = worked.rows[rowIndex]?.steps[stepIndex]
  if (step === undefined) return null
  const before = momentAt(worked, rowIndex, stepIndex)
  const after = momentAt(worked, rowIndex, stepIndex + 1)
  if (before === null || after === null) return null
  const told = scenesOf({
    stitch: stitch(step.stitch),
    mounts: before.left.slice(0, step.taken.length).map(({ mount }) => mount),
    hold,
    neighbours: neighboursOf(before.sheet.row, stepIndex),
    yarn: { before: before.yarn, after: after.yarn },
    chain: before.right[0]?.id === null,
  })
  const stages = told.map(({ scene }, i) =>
    stageOf(before, after, scene, step.taken.length, i === told.length - 1),
  )
  const fresh = after.made.slice(before.made.length)
  const numbers = numbersOf(before, step, told, fresh)
  return {
    worked,
    rowIndex,
    step,
    before,
    after,
    told,
    stages,
    cloth: clothOf(
      before.sheet,
      [stages[0], stages.at(-1)].flatMap((stage) => (stage ? [stage.hanging] : [])),
      stillIn({ before, after, numbers, rowIndex, last: before.sheet.row.steps[stepIndex - 1]?.made ?? [] }),
    ),
    fresh,
    numbers,
    hold,
  }
}

function numbersOf(
  before: Moment,
  step: Step,
  told: readonly Told[],
  fresh: readonly FabricLoopId[],
): ReadonlyMap<Name, FabricLoopId> {
  const { loops } = before.sheet.after.fabric
  const numbers = new Map<Name, FabricLoopId>()
  for (const [i, id] of step.taken.entries()) numbers.set(`old ${i + 1}`, before.sheet.numbers.get(id) ?? -1)
  const taken = new Set(numbers.values())
  const others = fresh.flatMap((id) => loops[id]?.parents ?? []).filter((id) => !taken.has(id))
  const isBelow = fresh.some((id) => loops[id]?.kind === 'below')
  for (const [i, id] of others.filter((one) => isApart(before, one)).entries()) {
    numbers.set(isBelow ? 'below 0' : `held ${i + 1}`, id)
  }
  const last = told.at(-1)?.scene.hands.right.filter((name) => name.startsWith('new')) ?? []
  for (const [i, name] of last.entries()) numbers.set(name, fresh[i] ?? -1)
  const lifter = fresh.find((id) => loops[id]?.kind === 'strand')
  if (lifter !== undefined) numbers.set('strand 0', lifter)
  const chain = before.right[0]
  if (chain?.id === null) numbers.set('before 1', chain.loop)
  return numbers
}

/** Whether a loop lies on neither needle. */
const isApart = ({ left, right }: Moment, loop: FabricLoopId): boolean =>
  ![...left, ...right].some((one) => one.loop === loop)
