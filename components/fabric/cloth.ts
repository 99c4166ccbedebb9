import { type FabricMarks, marksOf } from '../../engine/drawing/index.ts'
import {
  blendLayouts,
  type Fabric,
  type FabricLayout,
  fabricOf,
  layOutFabric,
  type Yarn,
  yarnOf,
} from '../../engine/fabric/index.ts'
import { type WorkedPattern, work } from '../../engine/needles/index.ts'
import { type Pattern, workedAgain } from '../../engine/pattern/index.ts'
import { blendYarns } from './blend-yarns.ts'

/** A worked piece as cloth, at rest in the two states that a reader compares. */
export interface Cloth {
  readonly worked: WorkedPattern
  readonly fabric: Fabric
  readonly asKnitted: FabricLayout
  readonly blocked: FabricLayout
  readonly marks: Required<FabricMarks>
}

const known = new WeakMap<WorkedPattern, Cloth>()

/** Laid out once for each worked piece. */
export function clothOf(worked: WorkedPattern): Cloth {
  const before = known.get(worked)
  if (before) return before
  const fabric = fabricOf(worked)
  const cloth: Cloth = {
    worked,
    fabric,
    asKnitted: layOutFabric(fabric, { state: 'unblocked' }),
    blocked: layOutFabric(fabric, { state: 'blocked' }),
    marks: marksOf(worked, fabric),
  }
  known.set(worked, cloth)
  return cloth
}

/** The yarn is worked out in so many steps from as knitted to blocked; between two of them it goes straight. */
const steps = 4

const yarns = new WeakMap<Cloth, Map<number, Yarn>>()

/** The yarn on its way from as knitted (0) to blocked (1). */
export function yarnAt(cloth: Cloth, blocking: number): Yarn {
  const at = Math.min(1, Math.max(0, blocking)) * steps
  const [before, after] = [Math.floor(at), Math.ceil(at)]
  const from = yarnAtStep(cloth, before)
  return before === after ? from : blendYarns(from, yarnAtStep(cloth, after), at - before)
}

function yarnAtStep(cloth: Cloth, step: number): Yarn {
  const known = yarns.get(cloth) ?? new Map<number, Yarn>()
  yarns.set(cloth, known)
  const { fabric, asKnitted, blocked } = cloth
  const yarn = known.get(step) ?? yarnOf(fabric, blendLayouts(asKnitted, blocked, step / steps))
  known.set(step, yarn)
  return yarn
}

/** What a picture shows of a pattern. */
export interface Extent {
  readonly repeats: number
  /** How often the rows are worked. */
  readonly times: number
}

export interface Wanted {
  /** At least so many stitches wide and rows high, where repeats can make it so. */
  readonly stitches: number
  readonly rows: number
}

/** How much of a pattern makes a picture of about that size. A piece of fixed width is as wide as it is. */
export function extentFor(pattern: Pattern, { stitches, rows }: Wanted): Extent {
  const { castOn } = pattern
  const repeats = 'fixed' in castOn ? 1 : Math.max(1, Math.ceil((stitches - castOn.plus) / castOn.multiple))
  return { repeats, times: timesFor(pattern, repeats, Math.ceil(rows / pattern.rows.length)) }
}

/** A growing piece is worked on as long as its rows fit what it has grown to. */
function timesFor(pattern: Pattern, repeats: number, times: number): number {
  if (!pattern.growing) return times
  for (let most = times; most > 1; most--) if (work(workedAgain(pattern, most), repeats).worked) return most
  return 1
}
