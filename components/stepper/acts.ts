import {
  atNeedles,
  type Drawing,
  type Frames,
  frameDrawing,
  movingDrawing,
  restAt,
  toSvg,
} from '../../engine/drawing/index.ts'
import { type Lesson, landmarkAt } from '../../engine/lesson/index.ts'
import type { Hold } from '../../engine/stitches/index.ts'
import type { Spot } from './state.ts'

/** A stitch at the needles: its frames and its pictures, each made when it is asked for. */
export interface Act {
  /** The words of all its frames. */
  readonly told: Frames['told']
  readonly frames: () => Frames
  /** Before the stitch and after it, at rest. */
  readonly first: () => string
  readonly last: () => string
  /** With an element for everything that moves in it, as it begins. */
  readonly moving: () => string
}

/** The stitch at a spot; null where the pattern has none. */
export function actOf({ worked }: Lesson, { row, step }: Spot, hold: Hold): Act | null {
  const landmark = landmarkAt(worked, row, step)
  const labels = landmark === null ? [] : [landmark]
  const view = { worked, rowIndex: row, stepIndex: step, hold, labels }
  const after = restAt(view, 'after')
  if (!after) return null
  const frames = once(() => atNeedles(view) ?? after)
  return {
    told: after.told,
    frames,
    first: once(() => pictureOf(restAt(view, 'before') ?? after)),
    last: once(() => pictureOf(after)),
    moving: once(() => {
      const [first] = frames().frames
      return first ? needlesSvg(movingDrawing(frames(), first)) : ''
    }),
  }
}

/** Of frames with one among them. */
function pictureOf(frames: Frames): string {
  const [frame] = frames.frames
  return frame ? needlesSvg(frameDrawing(frames, frame)) : ''
}

export const needlesSvg = (drawing: Drawing): string => toSvg(drawing, { idPrefix: 'needles' })

function once<T>(make: () => T): () => T {
  let made: { readonly thing: T } | null = null
  return () => {
    made ??= { thing: make() }
    return made.thing
  }
}
