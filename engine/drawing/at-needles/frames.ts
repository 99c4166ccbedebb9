import type { LoopId, WorkedPattern } from '../../needles/index.ts'
import type { Curve } from './geometry.ts'
import { layers } from './layers.ts'
import type { LoopLabel, Mark } from './mark.ts'
import { marksIn } from './marks.ts'
import { mirrored } from './mirror.ts'
import type { Look, Shape } from './shape.ts'
import { shapesIn } from './shapes.ts'
import { drawnOn, type Staged, staged } from './staged.ts'
import { contextOf } from './step-context.ts'
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
  const shots = context.told.map((_, i) => staged(context, i, remembered))
  const shapes = shots.map((shot) => new Map(shapesIn(shot).map((shape) => [shape.key, shape])))
  const copies = copiesOf(shapes)
  const { cloth } = context
  const loopOf = (id: number | null): LoopId | null =>
    id === null ? null : (context.before.sheet.after.fabric.loops[id]?.loop ?? null)
  const frames: Frames = {
    hand: 'right',
    fabric: cloth.pieces.slice(0, cloth.still).map(({ key, depth, loop }) => ({
      key,
      layer: layers.fabric + depth,
      look: 'below',
      loop: loopOf(loop),
    })),
    from: cloth.from.slice(0, cloth.still + 1),
    pieces: copies.map(({ key, layer, look, loop, front }) => ({
      key: `${key} at ${layer} ${look}`,
      layer,
      look,
      loop: loopOf(loop),
      ...(front ? { front } : {}),
    })),
    frames: shots.map((shot, i) => frameOf(shot, i, shapes, copies, labels)),
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

function frameOf(
  shot: Staged,
  index: number,
  shapes: readonly Shapes[],
  copies: readonly Shape[],
  labels: readonly LoopLabel[],
): Frame {
  const { context, isFirst, isLast } = shot
  const { told, worked, rowIndex, before, after } = context
  const here = shapes[index] ?? new Map<string, Shape>()
  return {
    words: told[index]?.words ?? '',
    stop: told[index]?.stop ?? true,
    description: isFirst || isLast ? describe(worked, rowIndex, isLast ? after : before) : '',
    fabric: shot.places.subarray(0, context.cloth.from[context.cloth.still]),
    curves: copies.map(({ key }) => (here.get(key) ?? nearest(shapes, index, key))?.curve ?? []),
    shown: copies.map(({ key, layer, look }) => {
      const shape = here.get(key)
      return shape !== undefined && shape.layer === layer && shape.look === look
    }),
    on: { left: drawnLoops(shot, 'left'), right: drawnLoops(shot, 'right') },
    marks: marksIn(shot, labels),
  }
}

/** A piece that a scene has not lies as in the nearest scene that has it, unseen. */
function nearest(shapes: readonly Shapes[], index: number, key: string): Shape | undefined {
  for (let away = 1; away < shapes.length; away++) {
    const found = shapes[index - away]?.get(key) ?? shapes[index + away]?.get(key)
    if (found !== undefined) return found
  }
  return undefined
}

function drawnLoops(shot: Staged, side: 'left' | 'right'): LoopId[] {
  const { loops } = shot.context.before.sheet.after.fabric
  return drawnOn(shot, side).flatMap(({ loop }) => loops[loop]?.loop ?? [])
}
