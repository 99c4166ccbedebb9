import type { LoopId, WorkedPattern } from '../../needles/index.ts'
import { copiesOf } from './copies.ts'
import type { Curve } from './geometry.ts'
import { layers } from './layers.ts'
import type { LoopLabel, Mark } from './mark.ts'
import { marksIn } from './marks.ts'
import { mirrored } from './mirror.ts'
import type { Look } from './shape.ts'
import { shapesIn } from './shapes.ts'
import { drawnOn, loopIdOf, type Staged, staged } from './staged.ts'
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
  /** The words of all frames of the step, also where only one of them was asked for. */
  readonly told: readonly Pick<Frame, 'words' | 'stop'>[]
}

/** The frames of a step; null where the pattern has no such step. Computed from the loops and the stitch's motions alone. */
export const atNeedles = (view: StepView): Frames | null =>
  framesFor(view, ({ told }) => told.map((_, i) => i))

/** Only the frame before a step or after it, as `atNeedles` has it: a fraction of the work. */
export const restAt = (view: StepView, when: 'before' | 'after'): Frames | null =>
  framesFor(view, ({ told }) => [when === 'before' ? 0 : told.length - 1])

function framesFor(
  { worked, rowIndex, stepIndex, hold = 'English', hand = 'right', labels = [] }: StepView,
  wanted: (context: StepContext) => readonly number[],
): Frames | null {
  const context = contextOf(worked, rowIndex, stepIndex, hold)
  if (context === null) return null
  const hungSoFar = new Map<string, Float64Array>()
  const shots = wanted(context).map((i) => staged(context, i, hungSoFar))
  const copies = copiesOf(shots.map(shapesIn))
  const { cloth, told } = context
  const loopOf = (id: number | null): LoopId | null => (id === null ? null : loopIdOf({ context }, id))
  const frames: Frames = {
    hand: 'right',
    told: told.map(({ words, stop }) => ({ words, stop })),
    fabric: cloth.pieces.slice(0, cloth.still).map(({ key, depth, loop }) => ({
      key,
      layer: layers.fabric + depth,
      look: 'below',
      loop: loopOf(loop),
    })),
    from: cloth.from.slice(0, cloth.still + 1),
    pieces: copies.pieces.map(({ key, layer, look, loop, front }) => ({
      key: `${key} at ${layer} ${look}`,
      layer,
      look,
      loop: loopOf(loop),
      ...(front ? { front } : {}),
    })),
    frames: shots.map((shot, i) => frameOf(shot, copies.scenes[i] ?? { curves: [], shown: [] }, labels)),
  }
  return hand === 'left' ? mirrored(frames) : frames
}

function frameOf(shot: Staged, scene: Pick<Frame, 'curves' | 'shown'>, labels: readonly LoopLabel[]): Frame {
  const { context, isFirst, isLast } = shot
  const { told, worked, rowIndex, before, after, cloth } = context
  return {
    ...scene,
    words: told[shot.index]?.words ?? '',
    stop: told[shot.index]?.stop ?? true,
    description: isFirst || isLast ? describe(worked, rowIndex, isLast ? after : before) : '',
    fabric: shot.places.subarray(0, cloth.from[cloth.still]),
    on: { left: drawnLoops(shot, 'left'), right: drawnLoops(shot, 'right') },
    marks: marksIn(shot, labels),
  }
}

function drawnLoops(shot: Staged, side: 'left' | 'right'): LoopId[] {
  const { loops } = shot.context.before.sheet.after.fabric
  return drawnOn(shot, side).flatMap(({ loop }) => loops[loop]?.loop ?? [])
}
