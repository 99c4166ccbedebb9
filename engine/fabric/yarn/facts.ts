import { effectOf, type Made, type Twist } from '../../stitches/index.ts'
import type { Fabric, FabricLoop, FabricLoopId } from '../fabric.ts'

/** What the drawing needs to know of a loop beyond the graph; the catalogue tells it by the loop's stitch. */
export interface LoopFacts {
  /** The loops of one stitch, in the order in which they were made. */
  readonly step: readonly FabricLoopId[]
  /** What the catalogue says of it, if its parents sat as usual, and if they sat turned. Null for a cast-on. */
  readonly made: Made | null
  readonly madeFromTurned: Made | null
  /** In a crossing: whether it was drawn through a loop that travels in front, seen from the right side. */
  readonly crossesInFront: boolean | null
}

const nothing: LoopFacts = { step: [], made: null, madeFromTurned: null, crossesInFront: null }

/** The facts of every loop. */
export function factsOf(fabric: Fabric): readonly LoopFacts[] {
  const facts: LoopFacts[] = fabric.loops.map(() => nothing)
  for (const course of fabric.courses) {
    let i = 0
    while (i < course.length) {
      const loop = fabric.loops[course[i] ?? -1]
      if (loop === undefined) break
      const count = loop.row < 0 ? 1 : madeBy(loop).length
      const step = course.slice(i, i + Math.max(1, count))
      for (const [place, id] of step.entries()) facts[id] = factsFor(fabric, step, place)
      i += step.length
    }
  }
  return facts
}

/** The new loops of a stitch; a slipped one is not new, and a chain loop stands for a bound-off one. */
function madeBy({ stitch }: FabricLoop, mounts: readonly ('usual' | 'turned')[] = []): readonly Made[] {
  const { made, chain } = effectOf(stitch, mounts)
  const fresh = made.filter(({ slipped }) => slipped === null)
  return fresh.length === 0 && chain !== null ? [chain] : fresh
}

const turned = Array.from({ length: 9 }, () => 'turned' as const)

function factsFor(fabric: Fabric, step: readonly FabricLoopId[], place: number): LoopFacts {
  const loop = fabric.loops[step[place] ?? -1]
  if (loop === undefined || loop.row < 0) return { ...nothing, step }
  const made = madeBy(loop)[place] ?? null
  const madeFromTurned = madeBy(loop, turned)[place] ?? null
  return { step, made, madeFromTurned, crossesInFront: inFrontOf(loop, made) }
}

/** Which way the hands face tells which side of the work is the front of a crossing. */
function inFrontOf({ stitch, face }: FabricLoop, made: Made | null): boolean | null {
  const { inFront } = effectOf(stitch)
  const [through] = made?.through ?? []
  if (made === null || through === undefined || inFront.length === 0) return null
  return inFront.includes(through) === (made.face === face)
}

/** Which way the front leg of a twisted parent leans; null where that parent is open. */
export function twistOf(loop: FabricLoop, parent: number, { made, madeFromTurned }: LoopFacts): Twist | null {
  if (loop.twisted[parent] !== true) return null
  for (const one of [made, madeFromTurned]) {
    if (one === null) continue
    // A chain loop that was passed over comes on top of what the stitch itself went through.
    const place =
      loop.face === 'knit'
        ? parent - (loop.parents.length - one.through.length)
        : one.through.length - 1 - parent
    const twist = one.twists[place] ?? null
    if (twist !== null) return twist
  }
  return 'left'
}
