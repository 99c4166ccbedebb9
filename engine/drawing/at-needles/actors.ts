import type { FabricLoopId } from '../../fabric/index.ts'
import { stitch } from '../../stitches/index.ts'
import { hang } from './bend.ts'
import { freshYarn } from './fresh-yarn.ts'
import { backwards, type Curve, heightAt, inCubics, joined, type Point, shared } from './geometry.ts'
import {
  cableLoop,
  drawnLoop,
  enteredLoop,
  type LoopLayers,
  layers,
  liftedLoop,
  needleLoop,
} from './layers.ts'
import { type Feet, type LoopCurves, leadsRight, lifted, overNeedle } from './loop-pose.ts'
import type { Waiting } from './moment.ts'
import { needleShapes } from './needle-shapes.ts'
import type { Name, Scene } from './scene.ts'
import type { StrandPart } from './sheet.ts'
import { sizes } from './sizes.ts'
import { holeBelow, type Stage } from './stage.ts'
import type { StepContext } from './step-context.ts'
import { feetIn, type Hung, hungIn } from './yarns.ts'

/** What a piece is painted as. */
export type Look = 'yarn' | 'below' | 'next' | 'new' | 'working' | 'needle' | 'line' | 'gleam'

/** A piece as it lies in one scene. */
export interface Shape {
  readonly key: string
  readonly curve: Curve
  readonly layer: number
  readonly look: Look
  readonly loop: FabricLoopId | null
}

/** A loop on a needle in one scene. */
export interface Hanging {
  readonly loop: FabricLoopId
  readonly name: Name | null
  readonly on: 'left' | 'right' | 'cable'
  readonly x: number
  readonly turn: number
  /** Null where they hang out of sight. */
  readonly feet: Feet | null
}

/** One scene with the places of everything in it. */
export interface Set {
  readonly context: StepContext
  readonly scene: Scene
  readonly stage: Stage
  readonly isFirst: boolean
  readonly isLast: boolean
  readonly places: Float64Array
  readonly hung: Hung
  readonly loops: readonly Hanging[]
}

export function setOf(context: StepContext, index: number, remembered: Map<string, Float64Array>): Set {
  const { told, stages, cloth } = context
  const [one, stage] = [told[index], stages[index]]
  if (one === undefined || stage === undefined) throw new Error(`needles: the step has no scene ${index}`)
  const name = JSON.stringify(stage.hanging)
  const places = remembered.get(name) ?? hang(cloth, stage.hanging)
  remembered.set(name, places)
  const isLast = index === told.length - 1
  const bare = {
    context,
    scene: one.scene,
    stage,
    isFirst: index === 0,
    isLast,
    places,
    hung: hungIn(context, places),
  }
  return { ...bare, loops: loopsOf(bare).map((loop) => ({ ...loop, feet: feetOf(bare, loop) })) }
}

/** All loops on needles, wherever they hang. */
type Bare = Omit<Set, 'loops'>
type Footless = Omit<Hanging, 'feet'>

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
  const slide = {
    left: after.shift.waiting - before.shift.waiting,
    right: after.shift.made - before.shift.made,
  }
  const named = [...stage.places].flatMap(([name, { on, x }]): Footless[] => {
    const loop = numbers.get(name) ?? -1
    return [
      {
        loop,
        name,
        on: on === 'both' ? 'left' : on,
        x,
        turn: name === 'before 1' ? 1 : (scene.hands.turns.get(name) ?? 1),
      },
    ]
  })
  return [
    ...before.left.slice(step.taken.length).map(resting('left', slide.left * stage.moved - stage.pushed)),
    ...before.right.filter(({ id }) => id !== null).map(resting('right', slide.right * stage.moved)),
    ...named,
  ]
}

/** Every piece of a scene but the fabric that no hand touches. */
export const shapesIn = (set: Set): Shape[] => [
  ...needleShapes(set),
  ...set.loops.flatMap((loop) => loopShapes(set, loop)),
  ...fallenShapes(set),
  ...strandShapes(set),
  ...freshYarn(set),
]

const isSeen = (x: number): boolean => Math.abs(x) <= sizes.reach

function loopShapes(set: Set, hanging: Hanging): Shape[] {
  const { loop, x, name, feet } = hanging
  if (!isSeen(x) || feet === null) return []
  const curves = poseOf(set, hanging, feet)
  const order = layersOf(set, hanging)
  return partsOf(set, keyOf(loop, name), loop, curves, order, leadsRight(hanging.turn), lookOf(set, hanging))
}

/** Loops that come to nothing have no number. */
export const keyOf = (loop: FabricLoopId, name: Name | null): string =>
  loop < 0 || name === 'strand 0' ? `${name}` : `${loop}`

function partsOf(
  set: Set,
  key: string,
  loop: FabricLoopId,
  curves: LoopCurves,
  order: LoopLayers,
  rightLeads: boolean,
  look: Look,
): Shape[] {
  return [...curves].map(([part, curve]): Shape => {
    const isFront = part.endsWith(rightLeads ? 'right' : 'left')
    const own = part.startsWith('half')
      ? isFront
        ? order.front
        : order.back
      : isFront
        ? order.frontLeg
        : order.backLeg
    return { key: `${key} ${part}`, curve, loop, look, layer: own ?? depthOf(set, `${loop} ${part}`) }
  })
}

/** Where a piece lies among those of the fabric. */
export function depthOf({ context: { cloth } }: Set, key: string): number {
  const piece = cloth.pieces[cloth.indexOf.get(key) ?? -1]
  return piece === undefined ? layers.fabric : layers.fabric + piece.depth
}

function lookOf({ context, isLast, isFirst }: Set, { name, loop }: Hanging): Look {
  const { worked, rowIndex, step, before } = context
  const id = before.sheet.after.fabric.loops[loop]?.loop ?? -1
  const steps = worked.rows[rowIndex]?.steps ?? []
  if (isLast) return step.made.includes(id) ? 'new' : steps[step.step]?.taken.includes(id) ? 'next' : 'yarn'
  if (name === null) return isFirst && steps[step.step - 2]?.made.includes(id) ? 'new' : 'yarn'
  return name.startsWith('new') ? 'working' : 'next'
}

function feetOf(set: Bare, { loop, name, x }: Footless): Feet | null {
  const { scene, hung, stage } = set
  const from = name === null ? undefined : scene.through.get(name)
  if (from !== undefined) return holeFeet(set, name, from)
  if (name === 'strand 0') return strandFeet(set)
  if (loop < 0) {
    const y = heightAt(stage.right.line, x) - 0.75
    return {
      left: { at: [x - 0.4, y], up: [0.2, 1] },
      right: { at: [x + 0.4, y], up: [-0.2, 1] },
      legs: false,
    }
  }
  const feet = feetIn(hung, loop)
  return feet !== null && !feet.legs && isNewest(set, loop) ? hangingOver(feet, stage, x) : feet
}

/** The yarn of the newest yarn over runs on to the hand: it need not reach down to a next loop yet. */
function hangingOver(feet: Feet, { right }: Stage, x: number): Feet {
  return { ...feet, left: { at: [x - 0.34, heightAt(right.line, x) - 0.3], up: [0.1, 1] } }
}

function isNewest({ context, scene, isLast }: Bare, loop: FabricLoopId): boolean {
  const { before, after, numbers } = context
  if (isLast) return after.made.at(-1) === loop
  const name = scene.hands.right.findLast((one) => one.startsWith('new'))
  return name === undefined ? before.made.at(-1) === loop : numbers.get(name) === loop
}

/** A new loop stands in the old ones that it was drawn through; several in one of them stand side by side. */
function holeFeet({ stage, scene }: Bare, name: Name | null, from: readonly Name[]): Feet {
  const xs = from.map((one) => stage.places.get(one)?.x ?? stage.hole[0])
  const x = xs.reduce((sum, one) => sum + one, 0) / Math.max(1, xs.length)
  const all = [...scene.through.keys()]
  const place = x + 0.16 * ((all.length - 1) / 2 - all.indexOf(name ?? 'before 1'))
  const y = heightAt(stage.left.line, place) - holeBelow - 0.06
  const foot = (side: number): { at: Point; up: Point } => ({ at: [place + side * 0.08, y], up: [0.1, 1] })
  return { left: foot(-1), right: foot(1), legs: true }
}

/** A lifted strand begins and ends where it ran out of the loops beside it. */
function strandFeet({ context, hung }: Bare): Feet | null {
  const pieces = context.cloth.pieces.filter(
    ({ part, loop }) => part === 'strand' && loop === context.numbers.get('strand 0'),
  )
  const [first, last] = [hung.curve(pieces[0]?.key ?? ''), hung.curve(pieces.at(-1)?.key ?? '')]
  if (first === null || last === null) return null
  const ends: Point[] = [
    [first[0] ?? 0, first[1] ?? 0],
    [last.at(-2) ?? 0, last.at(-1) ?? 0],
  ]
  const [left, right] = ends.toSorted((a, b) => a[0] - b[0])
  if (left === undefined || right === undefined) return null
  return { left: { at: left, up: [0.3, 0.4] }, right: { at: right, up: [-0.3, 0.4] }, legs: true }
}

function poseOf(
  { stage, scene, context }: Set,
  { name, on, x, turn, loop }: Hanging,
  feet: Feet,
): LoopCurves {
  const cubics = halfCubics(context, loop)
  const isLifted = name !== null && scene.lifted?.loops.includes(name) === true
  if (isLifted && stage.top !== null) {
    const among = scene.lifted?.loops.indexOf(name) ?? 0
    return lifted(feet, [stage.top[0] + among * 0.12, stage.top[1] + among * 0.03], cubics)
  }
  const line =
    on === 'cable' ? cableLine(scene, stage, x) : on === 'left' ? stage.left.line : stage.right.line
  return overNeedle(feet, { line, x, turn, slack: slackOf(context, loop), cubics })
}

export function cableLine({ hands }: Scene, { left }: Stage, x: number) {
  const y = heightAt(left.line, x) + (hands.cable?.where === 'front' ? -0.42 : 0.42)
  return { rise: 0, height: y }
}

function halfCubics({ before }: StepContext, loop: FabricLoopId): number {
  const half = before.sheet.strands.get(loop)?.halves.left.made.length
  return half === undefined ? 1 : (half - 2) / 6
}

/** Loops of a nupp are drawn up long; one loop of two turns is twice as long as it need be. */
function slackOf({ before }: StepContext, loop: FabricLoopId): number {
  const made = before.sheet.after.fabric.loops[loop]
  if (made === undefined || made.row < 0) return 0
  const { motions } = stitch(made.stitch)
  if (motions.some((motion) => motion.do === 'draw' && motion.loosely)) return 0.3
  return motions.some((motion) => motion.do === 'over' && motion.long) ? 0.22 : 0
}

function layersOf({ scene, context }: Set, { name, on, loop }: Hanging): LoopLayers {
  if (on === 'cable') return cableLoop(scene.hands.cable?.where ?? 'front')
  if (name === null) return needleLoop(on)
  if (scene.lifted?.loops.includes(name)) return liftedLoop
  if (scene.through.has(name)) return drawnLoop(!isTowardKnitter(context, loop))
  if (scene.tip.at === 'loops' && scene.tip.loops.includes(name)) return enteredLoop(scene.tip)
  return needleLoop(on)
}

const isTowardKnitter = ({ before }: StepContext, loop: FabricLoopId): boolean => {
  const face = before.sheet.after.fabric.loops[loop]?.face ?? 'knit'
  return (face === 'knit') === (before.sheet.row.side === 'RS')
}

/** Loops of the stitch that are off the needles: they hang in the fabric. */
function fallenShapes(set: Set): Shape[] {
  const { context, hung } = set
  const { numbers } = context
  const onNeedles = new Set(set.loops.map(({ loop, name }) => keyOf(loop, name)))
  const fallen = [...numbers].filter(
    ([name, loop]) => !name.startsWith('new') && name !== 'strand 0' && !onNeedles.has(`${loop}`),
  )
  return fallen.flatMap(([, loop]) =>
    parts.flatMap((part): Shape[] => {
      const key = `${loop} ${part}`
      const curve = hung.curve(key)
      if (curve === null) return []
      return [{ key, curve, loop, layer: depthOf(set, key), look: set.isLast ? 'below' : 'next' }]
    }),
  )
}

const parts: readonly StrandPart[] = ['leg-left', 'half-left', 'half-right', 'leg-right']

/** The running strand that an increase lifts, while it is on neither needle: between its loops before, and in the fabric after. */
function strandShapes(set: Set): Shape[] {
  const { context, hung, loops, isLast, isFirst } = set
  const lifter = context.numbers.get('strand 0')
  if (lifter === undefined || loops.some(({ name }) => name === 'strand 0')) return []
  const before =
    set.scene.hands.left.length > 0 && !set.scene.hands.right.some((name) => name.startsWith('new'))
  const pieces = context.cloth.pieces.filter(({ part, loop, until }) =>
    !isLast && (isFirst || before) ? until === lifter : part === 'strand' && loop === lifter,
  )
  const run = joined(
    pieces.flatMap(({ key }) => {
      const curve = hung.curve(key)
      return curve === null ? [] : [curve]
    }),
  )
  if (run.length === 0) return []
  const forward = (run[0] ?? 0) <= (run.at(-2) ?? 0)
  const curves = shared(inCubics(forward ? run : backwards(run), 4), [1, 1, 1, 1])
  return parts.map(
    (part, i): Shape => ({
      key: `strand 0 ${part}`,
      curve: curves[i] ?? [],
      loop: lifter,
      layer: depthOf(set, pieces[0]?.key ?? ''),
      look: isLast ? 'below' : 'next',
    }),
  )
}
