import type { LoopId, WorkedPattern } from '../../needles/index.ts'
import { type Look, type Set, type Shape, setOf, shapesIn } from './actors.ts'
import { drawnOn } from './count-marks.ts'
import type { Curve } from './geometry.ts'
import { layers } from './layers.ts'
import type { LoopLabel, Mark } from './mark.ts'
import { marksIn } from './marks.ts'
import { mirrored } from './mirror.ts'
import type { SheetPiece } from './sheet.ts'
import { contextOf, type StepContext } from './step-context.ts'
import { describe } from './words.ts'
import type { Hold } from './yarn-pose.ts'

/** A step of a row to be seen at the needles. */
export interface StepView {
  readonly worked: WorkedPattern
  /** Index into the worked pattern's rows, and into the row's steps. */
  readonly rowIndex: number
  readonly stepIndex: number
  /** The hand whose needle the stitches come on; 'right' if not said. For left-handers everything is the other way round. */
  readonly hand?: 'right' | 'left'
  /** Where the yarn comes from: the right hand, or the left forefinger. 'English' if not said. */
  readonly hold?: Hold
  /** Loops to be pointed out. */
  readonly labels?: readonly LoopLabel[]
}

/** A piece that is in every frame of a step, with the same number of curves in each. */
export interface Piece {
  /** What goes behind or before something else in the course of a step has a piece for each place. */
  readonly key: string
  /** Greater is nearer to the knitter. */
  readonly layer: number
  readonly look: Look
  /** The loop of the worked pattern that it belongs to; null for anything else. */
  readonly loop: LoopId | null
  /** The half of a loop that lies before its needle: it stands for the loop. */
  readonly front?: true
}

/** The needles at one moment. Unit: stitch widths; x goes right and y up from the middle between the tips. */
export interface Frame {
  /** What the hands do to come here; empty for the first. */
  readonly words: string
  /** Where one may stop and look; the others are only passed. */
  readonly stop: boolean
  /** What it shows, in sentences; empty where nothing rests. */
  readonly description: string
  /** The numbers of all `Frames.fabric` pieces, one after the other. */
  readonly fabric: Float64Array
  /** By the places of `Frames.pieces`. */
  readonly curves: readonly Curve[]
  readonly shown: readonly boolean[]
  /** The loops drawn on each needle, from its tip on: keys of `loops` begin with them. */
  readonly on: { readonly left: readonly LoopId[]; readonly right: readonly LoopId[] }
  readonly marks: readonly Mark[]
}

/** A step as frames: the first is before it, the last after it. Backward it is the same frames from the end. */
export interface Frames {
  readonly hand: 'right' | 'left'
  /** Fabric that no hand touches: nothing of it changes in a step but its place. */
  readonly fabric: readonly Piece[]
  /** Where the numbers of each of its pieces begin in a frame, and where the last ones end. */
  readonly from: readonly number[]
  readonly pieces: readonly Piece[]
  readonly frames: readonly Frame[]
}

/** The frames of a step; null where the pattern has no such step. Computed from the loops and the stitch's motions alone. */
export function atNeedles({
  worked,
  rowIndex,
  stepIndex,
  hold = 'English',
  hand = 'right',
  labels = [],
}: StepView): Frames | null {
  const context = contextOf(worked, rowIndex, stepIndex, hold)
  if (context === null) return null
  const remembered = new Map<string, Float64Array>()
  const sets = context.told.map((_, i) => setOf(context, i, remembered))
  const shapes = sets.map((set) => new Map(shapesIn(set).map((shape) => [shape.key, shape])))
  const copies = copiesOf(shapes)
  const still = stillPieces(context)
  const loopOf = (id: number | null): LoopId | null =>
    id === null ? null : (context.before.sheet.after.fabric.loops[id]?.loop ?? null)
  const frames: Frames = {
    hand: 'right',
    fabric: still.map(({ piece }) => ({
      key: piece.key,
      layer: layers.fabric + piece.depth,
      look: 'below',
      loop: loopOf(piece.loop),
    })),
    from: fromOf(still),
    pieces: copies.map(({ key, layer, look, loop }) => ({
      key: `${key} at ${layer} ${look}`,
      layer,
      look,
      loop: loopOf(loop),
    })),
    frames: sets.map((set, i) => frameOf(set, i, shapes, copies, still, labels)),
  }
  return hand === 'left' ? mirrored(frames) : frames
}

type Shapes = ReadonlyMap<string, Shape>

/** Every piece in every layer and look that it has in the step. */
function copiesOf(shapes: readonly Shapes[]): Shape[] {
  const copies = new Map<string, Shape>()
  for (const scene of shapes) {
    for (const shape of scene.values()) {
      const name = `${shape.key} ${shape.layer} ${shape.look}`
      if (!copies.has(name)) copies.set(name, shape)
    }
  }
  return [...copies.values()]
}

interface Still {
  readonly piece: SheetPiece
  /** Its place in the cloth. */
  readonly at: number
}

/** The fabric without the loops that hang on needles and without what the step makes. */
function stillPieces({ cloth, before, after, numbers, rowIndex }: StepContext): Still[] {
  const [made, soon] = [new Set(before.made), new Set(after.made)]
  const row = new Set(before.sheet.after.fabric.courses[rowIndex + 1])
  const held = new Set([before.left, before.right, after.left, after.right].flat().map(({ loop }) => loop))
  for (const loop of numbers.values()) held.add(loop)
  return cloth.pieces.flatMap((piece, at): Still[] => {
    const isThere = !row.has(piece.arrives) || made.has(piece.arrives)
    const isGone = piece.until !== null && soon.has(piece.until)
    const isOn = /^(leg|half)/.test(piece.part) && held.has(piece.loop)
    return isThere && !isGone && !isOn ? [{ piece, at }] : []
  })
}

function fromOf(still: readonly Still[]): number[] {
  const from = [0]
  for (const { piece } of still) from.push((from.at(-1) ?? 0) + piece.made.length)
  return from
}

function frameOf(
  set: Set,
  index: number,
  shapes: readonly Shapes[],
  copies: readonly Shape[],
  still: readonly Still[],
  labels: readonly LoopLabel[],
): Frame {
  const { context, isFirst, isLast } = set
  const { told, worked, rowIndex, before, after } = context
  const here = shapes[index] ?? new Map<string, Shape>()
  return {
    words: told[index]?.words ?? '',
    stop: told[index]?.stop ?? true,
    description: isFirst || isLast ? describe(worked, rowIndex, isLast ? after : before) : '',
    fabric: fabricIn(set, still),
    curves: copies.map(({ key }) => (here.get(key) ?? nearest(shapes, index, key))?.curve ?? []),
    shown: copies.map(({ key, layer, look }) => {
      const shape = here.get(key)
      return shape !== undefined && shape.layer === layer && shape.look === look
    }),
    on: { left: drawnLoops(set, 'left'), right: drawnLoops(set, 'right') },
    marks: marksIn(set, labels),
  }
}

function fabricIn({ places, context: { cloth } }: Set, still: readonly Still[]): Float64Array {
  const fabric = new Float64Array(still.reduce((sum, { piece }) => sum + piece.made.length, 0))
  let to = 0
  for (const { piece, at } of still) {
    const from = cloth.from[at] ?? 0
    fabric.set(places.subarray(from, from + piece.made.length), to)
    to += piece.made.length
  }
  return fabric
}

/** A piece that a scene has not lies as in the nearest scene that has it, unseen. */
function nearest(shapes: readonly Shapes[], index: number, key: string): Shape | undefined {
  for (let away = 1; away < shapes.length; away++) {
    const found = shapes[index - away]?.get(key) ?? shapes[index + away]?.get(key)
    if (found !== undefined) return found
  }
  return undefined
}

function drawnLoops(set: Set, side: 'left' | 'right'): LoopId[] {
  const { loops } = set.context.before.sheet.after.fabric
  return drawnOn(set, side).flatMap(({ loop }) => loops[loop]?.loop ?? [])
}
