import type { FabricLoopId } from '../../fabric/index.ts'
import { type StitchId, stitch } from '../../stitches/index.ts'
import { liftAt } from './cloth.ts'
import { heightAt, type Line } from './geometry.ts'
import {
  cableLoop,
  drawnLoop,
  enteredLoop,
  holderLoop,
  type LoopLayers,
  liftedLoop,
  needleLoop,
} from './layers.ts'
import { type Feet, type LoopCurves, leadsRight, lifted, overNeedle } from './loop-pose.ts'
import { newLoops } from './moment.ts'
import type { Scene } from './scene.ts'
import { keyOf, type Look, type Shape } from './shape.ts'
import type { Stage } from './stage.ts'
import { depthOf, type HungLoop, loopIdOf, type Staged } from './staged.ts'
import type { StepContext } from './step-context.ts'
import { showsKnit } from './yarns.ts'

/** A loop on a needle, in halves that lie before the needle and behind it. */
export function loopShapes(shot: Staged, hung: HungLoop): Shape[] {
  const { loop, name, feet, turn } = hung
  if (feet === null) return []
  const order = layersOf(shot, hung)
  const look = lookOf(shot, hung)
  return [...poseOf(shot, hung, feet)].map(([part, curve]): Shape => {
    const isFront = part.endsWith(leadsRight(turn) ? 'right' : 'left')
    const isHalf = part.startsWith('half')
    const own = isHalf ? (isFront ? order.front : order.back) : isFront ? order.frontLeg : order.backLeg
    const layer = own ?? depthOf(shot, `${loop} ${part}`)
    const shape = { key: `${keyOf(loop, name)} ${part}`, curve, loop, look, layer }
    return isFront && isHalf ? { ...shape, front: true } : shape
  })
}

/** Loops that a stitch is about to take, and those that have just been made, are painted as such. */
function lookOf(shot: Staged, { name, loop }: HungLoop): Look {
  const { context, isFirst, isLast } = shot
  const { worked, rowIndex, step } = context
  const steps = worked.rows[rowIndex]?.steps ?? []
  if (isLast) {
    const isNext = steps[step.step]?.taken.includes(loopIdOf(shot, loop) ?? -1)
    return context.fresh.includes(loop) ? 'new' : isNext ? 'next' : 'yarn'
  }
  const [last, { made }] = [steps[step.step - 2], context.before]
  const isNew = isFirst && last !== undefined && made.indexOf(loop) >= made.length - newLoops(last.stitch)
  if (name === null) return isNew ? 'new' : 'yarn'
  // The loop of a bind-off came last, and is lifted next.
  if (name === 'before 1') return isFirst ? 'new' : 'next'
  return name.startsWith('new') ? 'working' : 'next'
}

function poseOf(
  { stage, scene, context }: Staged,
  { name, on, x, turn, loop }: HungLoop,
  feet: Feet,
): LoopCurves {
  const cubics = halfCubics(context, loop)
  const among = name === null ? -1 : (scene.lifted?.loops.indexOf(name) ?? -1)
  if (among >= 0 && stage.top !== null) {
    return lifted(feet, [stage.top[0] + among * 0.12, stage.top[1] + among * 0.03], cubics)
  }
  const lines = {
    left: stage.left.line,
    right: stage.right.line,
    cable: cableLine(scene, stage),
    holder: { rise: 0, height: heightAt(stage.left.line, x) - holderBelow },
  }
  return overNeedle(feet, { line: lines[on], x, turn, slack: slackOf(context, loop), cubics })
}

/** How far below the left needle a holder lies. */
export const holderBelow = 0.62

/** The cable needle lies level, before the left needle and below it, or behind it and above. */
export function cableLine({ hands: { cable } }: Scene, { places, hanging }: Stage): Line {
  const xs = (cable?.loops ?? []).map((name) => places.get(name)?.x ?? 0)
  const x = xs.reduce((sum, one) => sum + one, 0) / Math.max(1, xs.length)
  return { rise: 0, height: liftAt(hanging, x) + (cable?.where === 'front' ? -0.42 : 0.42) }
}

/** As many as its halves have in the fabric, so that it can go there. */
function halfCubics({ before }: StepContext, loop: FabricLoopId): number {
  const half = before.sheet.strands.get(loop)?.halves.left.made.length
  return half === undefined ? 1 : (half - 2) / 6
}

const slacks = new Map<StitchId, number>()

function slackOf({ before }: StepContext, loop: FabricLoopId): number {
  const made = before.sheet.after.fabric.loops[loop]
  if (made === undefined || made.row < 0) return 0
  const slack = slacks.get(made.stitch) ?? slackFrom(made.stitch)
  slacks.set(made.stitch, slack)
  return slack
}

/** Loops of a nupp are drawn up long; one loop of two turns is twice as long as it need be. */
function slackFrom(id: StitchId): number {
  const { motions } = stitch(id)
  if (motions.some((motion) => motion.do === 'draw' && motion.loosely)) return 0.3
  return motions.some((motion) => motion.do === 'over' && motion.long) ? 0.22 : 0
}

function layersOf({ scene, context }: Staged, { name, on, loop }: HungLoop): LoopLayers {
  if (on === 'cable') return cableLoop(scene.hands.cable?.where ?? 'front')
  if (on === 'holder') return holderLoop
  if (name === null) return needleLoop(on)
  if (scene.lifted?.loops.includes(name)) return liftedLoop
  if (scene.through.has(name)) return drawnLoop(loop >= 0 && !showsKnit(context, loop))
  if (scene.tip.at === 'loops' && scene.tip.loops.includes(name)) return enteredLoop(scene.tip)
  return needleLoop(on)
}
