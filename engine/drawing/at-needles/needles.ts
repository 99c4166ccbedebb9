import type { Drawing } from '../display.ts'
import { restAt, type StepView } from './frames.ts'
import { frameDrawing, needlesTitle } from './picture.ts'
import { frameSize } from './places.ts'

/** A moment in the work: the needles after the first `done` steps of a row. */
export interface NeedleView extends Omit<StepView, 'stepIndex'> {
  readonly done: number
}

/** Both needles as the knitter sees them, the tips in the middle; loops that there is no room for are counted. */
export function needlesDrawing({ done, ...view }: NeedleView): Drawing {
  const frames = restAt({ ...view, stepIndex: Math.max(0, done - 1) }, done > 0 ? 'after' : 'before')
  const frame = frames?.frames[0]
  if (frames && frame) return frameDrawing(frames, frame)
  const { width, height } = frameSize
  return { width, height, unit: 'px', title: needlesTitle, description: 'There is no such row.', nodes: [] }
}
