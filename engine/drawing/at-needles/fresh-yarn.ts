import type { FabricLoopId } from '../../fabric/index.ts'
import { backwards, type Curve, cubicsIn, cutFirst, inCubics, type Point, shared } from './geometry.ts'
import { layers } from './layers.ts'
import type { Name } from './scene.ts'
import { keyOf, type Look, type Shape } from './shape.ts'
import type { SheetPiece, StrandPart } from './sheet.ts'
import { depthOf, loopIdOf, type Staged } from './staged.ts'
import type { StepContext } from './step-context.ts'
import { type Wrap, wrapRound } from './wrap-pose.ts'
import { arrivalTo, type Exit, leadFrom } from './yarn-pose.ts'
import { runsInFront } from './yarn-side.ts'
import { exitAt, feetIn, showsKnit, yarnFrom } from './yarns.ts'

/** One new loop's yarn, as it comes from the ball. */
interface Fresh {
  readonly name: Name
  readonly loop: FabricLoopId
  /** What lies between it and the loop before it. */
  readonly arrival: readonly SheetPiece[]
  readonly parts: readonly StrandPart[]
}

/** Where the yarn has got to, from loop to loop. */
interface Thread {
  exit: Exit
  layer: number
  readonly shapes: Shape[]
}

/**
 * The yarn of the step's new loops, made or still to be made, and on from there to the hand. What is not a loop yet lies in
 * the yarn on its way to the hand, so that the same yarn is there before and after.
 */
export function freshYarn(shot: Staged): Shape[] {
  const { context, scene, stage } = shot
  const thread: Thread = { exit: exitBefore(shot), layer: firstLayer(shot), shapes: [] }
  const waiting = freshLoops(context).filter((fresh) => !madeSoFar(shot, thread, fresh))
  const [next, ...later] = waiting
  const isWrapped = scene.wrapped !== null && next !== undefined && !shot.isLast
  if (isWrapped) {
    const wrap = wrapRound(thread.exit, stage, scene.wrapped, context.hold)
    thread.shapes.push(...wrapShapes(next, wrap, scene.wrapped))
    thread.layer = scene.wrapped === 'knit' ? layers.onFar : layers.yarnFront
    return [...thread.shapes, ...toHand(context, later, wrap.lead, thread.layer, thread.layer)]
  }
  const lead = leadFrom(thread.exit, stage, context.hold, scene.yarn)
  const layer = scene.yarn === 'front' ? layers.yarnFront : layers.yarnBehind
  return [...thread.shapes, ...toHand(context, waiting, lead, thread.layer, layer)]
}

/** So much of the yarn's way from its loop to between the tips serves loops still to be made. */
const used = 0.8

function toHand(
  { rowIndex, step }: StepContext,
  waiting: readonly Fresh[],
  { root, hand }: Wrap['lead'],
  rootLayer: number,
  layer: number,
): Shape[] {
  const name = `yarn ${rowIndex}-${step.step}`
  const [near, rest] = waiting.length === 0 ? [[], root] : cutFirst(root, used)
  return [
    ...alongRoot(waiting, near, rootLayer),
    { key: `${name} root`, curve: rest, layer: rootLayer, look: 'working', loop: null },
    { key: `${name} hand`, curve: hand, layer, look: 'working', loop: null },
  ]
}

function alongRoot(waiting: readonly Fresh[], near: Curve, layer: number): Shape[] {
  if (waiting.length === 0) return []
  const pieces = waiting.flatMap(({ loop, name, arrival, parts }) => [
    ...arrival.map(({ key, made }) => ({ key, loop, count: cubicsIn(made), isPart: false })),
    // Parts of a loop are kept from left to right, but the yarn comes from the right.
    ...parts
      .toReversed()
      .map((part) => ({ key: `${keyOf(loop, name)} ${part}`, loop, count: 1, isPart: true })),
  ])
  const counts = pieces.map(({ count }) => count)
  const ways = shared(
    inCubics(
      near,
      counts.reduce((sum, count) => sum + count, 0),
    ),
    counts,
  )
  return pieces.map(({ key, loop, isPart }, i): Shape => {
    const way = ways[i] ?? []
    return { key, curve: isPart ? backwards(way) : way, layer, look: 'working', loop }
  })
}

function freshLoops({ cloth, numbers, told }: StepContext): Fresh[] {
  const names = told.flatMap(({ scene }) => scene.hands.right.filter((name) => name.startsWith('new')))
  return [...new Set(names)].map((name): Fresh => {
    const loop = numbers.get(name) ?? -1
    const isBeside = ({ arrives, part }: SheetPiece): boolean =>
      loop >= 0 &&
      arrives === loop &&
      part !== 'strand' &&
      !part.startsWith('leg') &&
      !part.startsWith('half')
    const hasLegs = loop >= 0 && cloth.indexOf.has(`${loop} leg-left`)
    return {
      name,
      loop,
      arrival: cloth.pieces.slice(cloth.still).filter(isBeside),
      parts: hasLegs ? ['leg-left', 'half-left', 'half-right', 'leg-right'] : ['half-left', 'half-right'],
    }
  })
}

/** Runs the yarn on through a loop that is made in this scene. */
function madeSoFar(shot: Staged, thread: Thread, fresh: Fresh): boolean {
  const { scene, isLast, loops, hung, context } = shot
  const { name, loop } = fresh
  if (isLast && loop < 0) return false
  const here = loops.find((one) => (isLast ? one.loop === loop : one.name === name))
  const feet = here === undefined && isLast ? feetIn(hung, loop) : (here?.feet ?? null)
  if (feet === null) return false
  const isDrawn = scene.through.has(name)
  thread.shapes.push(...arrivalShapes(shot, fresh, thread, exitAt(feet.right, feet.legs), isDrawn))
  thread.exit = exitAt(feet.left, feet.legs)
  thread.layer = loop < 0 || showsKnit(context, loop) ? layers.yarnBehind : layers.yarnBefore
  return true
}

function exitBefore({ context, hung, stage, loops }: Staged): Exit {
  const from = yarnFrom(context)
  const feet =
    from &&
    (loops.find(({ loop, name }) => loop === from.loop && name === null)?.feet ?? feetIn(hung, from.loop))
  if (from !== null && feet !== null) return exitAt(feet[from.side], feet.legs)
  // It comes round from the end of the round before, or from beyond the picture's edge.
  const beside: Point = [stage.hanging.middle + 0.75, -1.12]
  return { at: beside, away: [-0.4, -0.6], over: false }
}

function firstLayer({ context, isLast }: Staged): number {
  const { before, step } = context
  const passing = runsInFront(before.sheet.row, isLast ? step.step : step.step - 1)
  if (passing !== null) return passing ? layers.yarnBefore : layers.yarnBehind
  const from = yarnFrom(context)
  return from === null || showsKnit(context, from.loop) ? layers.yarnBehind : layers.yarnBefore
}

/** As it lies in the fabric once the step is done; until then it only hangs from one loop to the next. */
function arrivalShapes(
  shot: Staged,
  { arrival, loop }: Fresh,
  { exit, layer }: Thread,
  entry: Exit,
  isDrawn: boolean,
): Shape[] {
  const { isLast, hung, context } = shot
  const counts = arrival.map(({ made }) => cubicsIn(made))
  const total = counts.reduce((sum, count) => sum + count, 0)
  if (total === 0) return []
  const ways = shared(inCubics(arrivalTo(exit, entry), total), counts)
  return arrival.map((piece, i): Shape => {
    const isNew = context.step.made.includes(loopIdOf(shot, piece.loop) ?? -1)
    const look: Look = !isLast ? 'working' : isNew ? 'new' : 'below'
    const own = isLast ? hung.curve(piece.key) : null
    return {
      key: piece.key,
      curve: own ?? ways[i] ?? [],
      layer: isDrawn ? layer : depthOf(shot, piece.key),
      look,
      loop,
    }
  })
}

const wrapLayers: Readonly<Record<'knit' | 'purl', Readonly<Record<StrandPart | 'arrival', number>>>> = {
  knit: {
    arrival: layers.yarnBehind,
    'leg-right': layers.backRight,
    'half-right': layers.onFar,
    'half-left': layers.onFar,
    'leg-left': layers.onFar,
  },
  purl: {
    arrival: layers.yarnFront,
    'leg-right': layers.yarnFront,
    'half-right': layers.yarnFront,
    'half-left': layers.drawnBack,
    'leg-left': layers.yarnFront,
  },
}

function wrapShapes({ arrival, loop, name, parts }: Fresh, wrap: Wrap, face: 'knit' | 'purl'): Shape[] {
  const counts = arrival.map(({ made }) => cubicsIn(made))
  const total = counts.reduce((sum, count) => sum + count, 0)
  const ways = total === 0 ? [] : shared(inCubics(wrap.arrival, total), counts)
  const bare = { look: 'working', loop } as const
  return [
    ...arrival.map(({ key }, i) => ({ ...bare, key, curve: ways[i] ?? [], layer: wrapLayers[face].arrival })),
    ...parts.map((part) => ({
      ...bare,
      key: `${keyOf(loop, name)} ${part}`,
      curve: wrap.loop.get(part) ?? [],
      layer: wrapLayers[face][part],
    })),
  ]
}
