import type { FabricLoopId } from '../../fabric/index.ts'
import { type Curve, endOf, type Point, startOf, toward } from './geometry.ts'
import type { Foot } from './loop-pose.ts'
import type { StrandPart } from './sheet.ts'
import type { StepContext } from './step-context.ts'
import type { Exit } from './yarn-pose.ts'

/** The fabric as it hangs in one scene, by piece. */
export interface Hung {
  readonly curve: (key: string) => Curve | null
}

export const hungIn = ({ cloth }: StepContext, places: Float64Array): Hung => ({
  curve: (key) => {
    const index = cloth.indexOf.get(key)
    if (index === undefined) return null
    const curve: number[] = []
    const end = cloth.from[index + 1] ?? 0
    for (let i = cloth.from[index] ?? 0; i < end; i++) curve.push(places[i] as number)
    return curve
  },
})

/** Where the yarn of a curve starts, and which way it goes. */
const startFoot = (curve: Curve): Foot => ({
  at: startOf(curve),
  up: toward(startOf(curve), [curve[2] ?? 0, curve[3] ?? 0], [0, 1]),
})

const endFoot = (curve: Curve): Foot => ({
  at: endOf(curve),
  up: toward(endOf(curve), [curve.at(-4) ?? 0, curve.at(-3) ?? 0], [0, 1]),
})

/** A loop's feet in the fabric; null where they hang out of sight. */
export function feetIn(hung: Hung, id: FabricLoopId): { left: Foot; right: Foot; legs: boolean } | null {
  const part = (name: StrandPart): Curve | null => hung.curve(`${id} ${name}`)
  const [leftLeg, rightLeg] = [part('leg-left'), part('leg-right')]
  if (leftLeg !== null && rightLeg !== null) {
    return { left: startFoot(leftLeg), right: endFoot(rightLeg), legs: true }
  }
  const [left, right] = [part('half-left'), part('half-right')]
  return left !== null && right !== null
    ? { left: startFoot(left), right: endFoot(right), legs: false }
    : null
}

export const exitAt = ({ at, up }: Foot, legs: boolean): Exit => ({ at, away: [-up[0], -up[1]], over: !legs })

/** The loop that the working yarn runs out of before the step, and the side that it does so on; null where there is none. */
export function yarnFrom({
  before,
  rowIndex,
  worked,
}: StepContext): { readonly loop: FabricLoopId; readonly side: 'left' | 'right' } | null {
  const { fabric } = before.sheet.after
  const newest = before.made.at(-1)
  if (newest !== undefined) return { loop: newest, side: 'left' }
  if (worked.pattern.worked === 'round' && worked.rows[rowIndex - 1]?.turned !== true) return null
  const course = fabric.courses.slice(0, rowIndex + 1).findLastIndex((one) => one.length > 0)
  const loop = fabric.courses[course]?.at(-1)
  if (loop === undefined) return null
  const runsLeft = (fabric.rightToLeft[course] ?? false) === (before.sheet.row.side === 'RS')
  return { loop, side: runsLeft ? 'left' : 'right' }
}

/** Whether a loop shows its knit face to the knitter. */
export function showsKnit({ before }: StepContext, id: FabricLoopId): boolean {
  const face = before.sheet.after.fabric.loops[id]?.face ?? 'knit'
  return (face === 'knit') === (before.sheet.row.side === 'RS')
}

export const middleOf = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
