import type { FabricLoopId } from '../../fabric/index.ts'
import type { LoopId } from '../../needles/index.ts'
import { hang } from './cloth.ts'
import { feetOf } from './feet.ts'
import { layers } from './layers.ts'
import type { Feet } from './loop-pose.ts'
import type { Waiting } from './moment.ts'
import type { Name, Scene } from './scene.ts'
import { sizes } from './sizes.ts'
import type { Placed, Stage } from './stage.ts'
import type { StepContext } from './step-context.ts'
import { type Hung, hungIn } from './yarns.ts'

/** A loop on a needle in one scene. */
export interface HungLoop {
  readonly loop: FabricLoopId
  /** Null for loops that the stitch leaves alone. */
  readonly name: Name | null
  readonly on: Placed['on']
  readonly x: number
  /** Quarter turns of its legs: 1 sits as usual. */
  readonly turn: number
  /** Null where they hang out of sight. */
  readonly feet: Feet | null
}

/** One scene with the places of everything in it. */
export interface Staged {
  readonly context: StepContext
  readonly scene: Scene
  readonly stage: Stage
  /** Which scene of the step it is. */
  readonly index: number
  readonly isFirst: boolean
  readonly isLast: boolean
  /** Of the cloth's pieces. */
  readonly places: Float64Array
  readonly hung: Hung
  readonly loops: readonly HungLoop[]
}

export type Bare = Omit<Staged, 'loops'>
export type Footless = Omit<HungLoop, 'feet'>

/** `hung`: how the cloth hangs, for scenes in which it hangs alike. */
export function staged(context: StepContext, index: number, hungSoFar: Map<string, Float64Array>): Staged {
  const { told, stages, cloth } = context
  const [one, stage] = [told[index], stages[index]]
  if (one === undefined || stage === undefined) throw new Error(`needles: the step has no scene ${index}`)
  const name = JSON.stringify(stage.hanging)
  const places = hungSoFar.get(name) ?? hang(cloth, stage.hanging)
  hungSoFar.set(name, places)
  const [isFirst, isLast] = [index === 0, index === told.length - 1]
  const hung = hungIn(context, places)
  const bare = { context, index, scene: one.scene, stage, isFirst, isLast, places, hung }
  const loops = loopsOf(bare).map((loop) => ({ ...loop, feet: isSeen(loop) ? feetOf(bare, loop) : null }))
  return { ...bare, loops }
}

const isSeen = ({ x }: Footless): boolean => Math.abs(x) <= sizes.reach

function loopsOf({ context, scene, stage, isLast }: Bare): Footless[] {
  const { before, after, step, numbers } = context
  const resting =
    (on: 'left' | 'right', by: number) =>
    ({ loop, x, mount }: Waiting): Footless => ({
      loop,
      name: null,
      on,
      x: x + by,
      turn: mount === 'usual' ? 1 : -1,
    })
  if (isLast) return [...after.left.map(resting('left', 0)), ...after.right.map(resting('right', 0))]
  const named = [...stage.places].flatMap(([name, { on, x }]): Footless[] => {
    const loop = numbers.get(name)
    if (loop === undefined && !name.startsWith('new')) return []
    const turn = name === 'before 1' || name === 'none 0' ? 1 : (scene.hands.turns.get(name) ?? 1)
    return [{ loop: loop ?? -1, name, on, x, turn }]
  })
  return [
    ...before.left.slice(step.taken.length).map(resting('left', stage.moved.left)),
    ...before.right.filter(({ id }) => id !== null).map(resting('right', stage.moved.right)),
    ...named,
  ]
}

/** The loops of a needle that a scene draws, from the tip on. */
export function drawnOn({ loops }: Staged, side: 'left' | 'right'): HungLoop[] {
  const here = loops.filter(({ on, feet, loop }) => on === side && feet !== null && loop >= 0)
  return here.toSorted((a, b) => (side === 'left' ? b.x - a.x : a.x - b.x))
}

/** The worked pattern's number of a loop of the fabric; null for a loop of a bind-off. */
export const loopIdOf = (
  { context: { before } }: Pick<Staged, 'context'>,
  loop: FabricLoopId,
): LoopId | null => before.sheet.after.fabric.loops[loop]?.loop ?? null

/** Where a piece lies among those of the fabric. */
export function depthOf({ context: { cloth } }: Pick<Staged, 'context'>, key: string): number {
  const piece = cloth.pieces[cloth.indexOf.get(key) ?? -1]
  return piece === undefined ? layers.fabric : layers.fabric + piece.depth
}
