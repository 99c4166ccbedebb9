import { freshYarn } from './fresh-yarn.ts'
import { loopShapes } from './loop-shapes.ts'
import { needleShapes } from './needle-shapes.ts'
import { offNeedleShapes } from './off-needle.ts'
import type { Shape } from './shape.ts'
import type { Staged } from './staged.ts'

/** Every piece of a scene but the fabric that no hand touches. */
export const shapesIn = (shot: Staged): Shape[] => [
  ...needleShapes(shot),
  ...shot.loops.flatMap((loop) => loopShapes(shot, loop)),
  ...offNeedleShapes(shot),
  ...freshYarn(shot),
]
