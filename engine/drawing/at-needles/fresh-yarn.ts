import type { FabricLoopId } from '../../fabric/index.ts'
import { depthOf, keyOf, type Look, type Set, type Shape } from './actors.ts'
import { backwards, type Curve, cubicsIn, cutFirst, inCubics, type Point, shared } from './geometry.ts'
import { layers } from './layers.ts'
import type { Name } from './scene.ts'
import type { SheetPiece, StrandPart } from './sheet.ts'
import type { StepContext } from './step-context.ts'
import { arrivalTo, type Exit, type Lead, leadFrom, wrapRound } from './yarn-pose.ts'
import { exitAt, feetIn, showsKnit, yarnFrom } from './yarns.ts'

/** One new loop's yarn, as it comes from the ball. */
interface Fresh {
  readonly name: Name
  readonly loop: FabricLoopId
  /** What lies between it and the loop before it. */
  readonly arrival: readonly SheetPiece[]
  readonly parts: readonly StrandPart[]
}

/** The yarn of the step's new loops, made or still to be made, and the yarn on from there to the hand. */
export function freshYarn(set: Set): Shape[] {
  const { context, scene, stage } = set
  const exit = exitBefore(set)
  if (exit === null) return []
  const all = freshLoops(context)
  const shapes: Shape[] = []
  let from = exit
  let layer = rootLayer(set)
  const waiting: Fresh[] = []
  let lead: Lead | null = null
  for (const fresh of all) {
    const made = madeNow(set, fresh)
    if (made !== null) {
      shapes.push(...arrivalShapes(set, fresh, from, made.entry, made.isDrawn, layer))
      from = made.exit
      layer = made.layer
    } else if (scene.wrapped !== null && waiting.length === 0 && lead === null && !set.isLast) {
      const wrap = wrapRound(from, stage, scene.wrapped, context.hold)
      shapes.push(...wrapShapes(fresh, wrap, scene.wrapped))
      lead = wrap.lead
      layer = scene.wrapped === 'knit' ? layers.onFar : layers.yarnFront
    } else waiting.push(fresh)
  }
  const { root, hand } = lead ?? leadFrom(from, stage, context.hold)
  const handLayer = lead !== null ? layer : scene.yarn === 'front' ? layers.yarnFront : layers.yarnBehind
  const name = `yarn ${context.rowIndex}-${context.step.step}`
  const rest = waiting.length === 0 ? root : cutFirst(root, used)[1]
  return [
    ...shapes,
    ...alongRoot(waiting, root, layer),
    { key: `${name} root`, curve: rest, layer, look: 'working', loop: null },
    { key: `${name} hand`, curve: hand, layer: handLayer, look: 'working', loop: null },
  ]
}

/** New loops that are not made yet lie in the yarn on its way to the hand: so much of it from its beginning. */
const used = 0.8

function alongRoot(waiting: readonly Fresh[], root: Curve, layer: number): Shape[] {
  if (waiting.length === 0) return []
  const [near] = cutFirst(root, used)
  const pieces = waiting.flatMap((fresh) => [
    ...fresh.arrival.map(({ key, made }) => ({ key, count: cubicsIn(made), loop: fresh.loop })),
    ...fresh.parts
      .toReversed()
      .map((part) => ({ key: `${keyOf(fresh.loop, fresh.name)} ${part}`, count: 1, loop: fresh.loop })),
  ])
  const ways = shared(
    inCubics(
      near,
      pieces.reduce((sum, { count }) => sum + count, 0),
    ),
    pieces.map(({ count }) => count),
  )
  return pieces.map(({ key, loop }, i) => ({
    key,
    curve: orientated(key, ways[i] ?? []),
    layer,
    look: 'working',
    loop,
  }))
}

/** Parts of a loop are kept from left to right, but the yarn comes from the right. */
const orientated = (key: string, way: Curve): Curve =>
  / (leg|half)-(left|right)$/.test(key) ? backwards(way) : way

function freshLoops({ cloth, numbers, told }: StepContext): Fresh[] {
  const names = [
    ...new Set(told.flatMap(({ scene }) => scene.hands.right.filter((name) => name.startsWith('new')))),
  ]
  return names.map((name): Fresh => {
    const loop = numbers.get(name) ?? -1
    const arrival = cloth.pieces.filter(
      ({ arrives, part }) => loop >= 0 && arrives === loop && !/^(leg|half)/.test(part) && part !== 'strand',
    )
    const hasLegs = loop < 0 ? false : cloth.indexOf.has(`${loop} leg-left`)
    return {
      name,
      loop,
      arrival,
      parts: hasLegs ? ['leg-left', 'half-left', 'half-right', 'leg-right'] : ['half-left', 'half-right'],
    }
  })
}

interface Made {
  readonly entry: Exit
  readonly exit: Exit
  readonly layer: number
  /** It hangs through loops that are on the left needle still. */
  readonly isDrawn: boolean
}

/** A new loop that hangs on a needle in this scene. */
function madeNow(set: Set, { name, loop }: Fresh): Made | null {
  const { scene, isLast, loops } = set
  const isDrawn = scene.through.has(name)
  const knit = loop < 0 || showsKnit(set.context, loop)
  const layer = knit ? layers.yarnBehind : layers.yarnBefore
  if (isLast && loop < 0) return null
  const hanging = loops.find((one) => (isLast ? one.loop === loop : one.name === name))
  const feet = hanging === undefined ? (isLast ? feetIn(set.hung, loop) : null) : hanging.feet
  if (feet === null || feet === undefined) return null
  return { entry: exitAt(feet.right), exit: exitAt(feet.left), layer, isDrawn }
}

function exitBefore(set: Set): Exit | null {
  const { context, hung, stage } = set
  const from = yarnFrom(context)
  const feet = from === null ? null : feetIn(hung, from.loop)
  const onNeedle = set.loops.find(({ loop, name }) => loop === from?.loop && name === null)?.feet ?? feet
  if (from !== null && onNeedle !== null) return exitAt(onNeedle[from.side])
  // It comes round from the end of the round before, or from beyond the picture's edge.
  const first: Point = [stage.hanging.middle + 0.75, -1.12]
  return { at: first, away: [-0.4, -0.6] }
}

function rootLayer({ context }: Set): number {
  const from = yarnFrom(context)
  return from === null || showsKnit(context, from.loop) ? layers.yarnBehind : layers.yarnBefore
}

function arrivalShapes(
  set: Set,
  { arrival, loop }: Fresh,
  from: Exit,
  entry: Exit,
  isDrawn: boolean,
  layer: number,
): Shape[] {
  const counts = arrival.map(({ made }) => cubicsIn(made))
  const total = counts.reduce((sum, count) => sum + count, 0)
  if (total === 0) return []
  const look: Look = set.isLast ? 'below' : 'working'
  const own = arrival.map(({ key }) => set.hung.curve(key))
  const isWhole = own.every((curve) => curve !== null)
  if (set.isLast && isWhole) {
    return arrival.map(({ key }, i) => ({ key, curve: own[i] ?? [], layer: depthOf(set, key), look, loop }))
  }
  const ways = shared(inCubics(arrivalTo(from, entry), total), counts)
  return arrival.map(({ key }, i) => ({
    key,
    curve: ways[i] ?? [],
    layer: isDrawn ? layer : depthOf(set, key),
    look,
    loop,
  }))
}

function wrapShapes(fresh: Fresh, wrap: ReturnType<typeof wrapRound>, face: 'knit' | 'purl'): Shape[] {
  const counts = fresh.arrival.map(({ made }) => cubicsIn(made))
  const total = counts.reduce((sum, count) => sum + count, 0)
  const ways = total === 0 ? [] : shared(inCubics(wrap.arrival, total), counts)
  const key = keyOf(fresh.loop, fresh.name)
  const order: Readonly<Record<StrandPart, number>> =
    face === 'knit'
      ? {
          'leg-right': layers.backRight,
          'half-right': layers.onFar,
          'half-left': layers.onFar,
          'leg-left': layers.onFar,
        }
      : {
          'leg-right': layers.yarnFront,
          'half-right': layers.yarnFront,
          'half-left': layers.drawnBack,
          'leg-left': layers.yarnFront,
        }
  const loop = fresh.loop
  const bare = face === 'knit' ? layers.yarnBehind : layers.yarnFront
  return [
    ...fresh.arrival.map(
      (piece, i): Shape => ({ key: piece.key, curve: ways[i] ?? [], layer: bare, look: 'working', loop }),
    ),
    ...fresh.parts.map(
      (part): Shape => ({
        key: `${key} ${part}`,
        curve: wrap.loop.get(part) ?? [],
        layer: order[part],
        look: 'working',
        loop,
      }),
    ),
  ]
}
