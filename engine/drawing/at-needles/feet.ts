import type { FabricLoopId } from '../../fabric/index.ts'
import { heightAt, type Point } from './geometry.ts'
import type { Feet, Foot } from './loop-pose.ts'
import { holeBelow } from './needle-places.ts'
import type { Name } from './scene.ts'
import type { Stage } from './stage.ts'
import type { Bare, Footless } from './staged.ts'
import { feetIn } from './yarns.ts'

/** Where a loop on a needle comes out of the fabric, or of the loops that it was just drawn through. */
export function feetOf(bare: Bare, { loop, name, x, on }: Footless): Feet | null {
  const { scene, hung, stage } = bare
  const from = name === null ? undefined : scene.through.get(name)
  if (from !== undefined) return holeFeet(bare, name, from)
  if (name === 'strand 0') return strandFeet(bare)
  if (name?.startsWith('held') || on === 'holder') return besideEdge(bare)
  if (loop < 0) return inTheAir(stage, x)
  const feet = feetIn(hung, loop)
  if (feet === null || feet.legs) return feet
  const over = name?.startsWith('new') && scene.through.size > 0 ? amongDrawn(bare, x) : feet
  return isNewest(bare, loop) ? hangingOver(over, stage, x) : over
}

/** A yarn over among loops drawn through one that is still on the left needle: its yarn comes out of there and goes back. */
function amongDrawn({ stage, scene: { through } }: Bare, x: number): Feet {
  const xs = [...through.values()].flat().map((one) => stage.places.get(one)?.x ?? stage.hole[0])
  const hole = xs.reduce((sum, one) => sum + one, 0) / Math.max(1, xs.length)
  const place = x + (hole - x) * 0.45
  const y = heightAt(stage.right.line, x) - 0.55
  const foot = (side: 1 | -1): Foot => ({ at: [place + side * 0.15, y], up: [(x - place) * 0.5, 1] })
  return { left: foot(-1), right: foot(1), legs: false }
}

/** The yarn of the newest yarn over runs on to the hand: it need not reach down to a next loop yet. */
const hangingOver = (feet: Feet, { right }: Stage, x: number): Feet => ({
  ...feet,
  left: { at: [x - 0.34, heightAt(right.line, x) - 0.3], up: [0.1, 1] },
})

function isNewest({ context, scene, isLast }: Bare, loop: FabricLoopId): boolean {
  const { before, after, numbers } = context
  if (isLast) return after.made.at(-1) === loop
  const name = scene.hands.right.findLast((one) => one.startsWith('new'))
  return name === undefined ? before.made.at(-1) === loop : numbers.get(name) === loop
}

/** A yarn over that is passed over its neighbours in the same stitch leaves no loop in the fabric. */
function inTheAir({ right }: Stage, x: number): Feet {
  const y = heightAt(right.line, x) - 0.75
  return {
    left: { at: [x - 0.4, y], up: [0.2, 1] },
    right: { at: [x + 0.4, y], up: [-0.2, 1] },
    legs: false,
  }
}

/** A loop of another piece, which hangs beside the edge of this one. */
function besideEdge({ stage }: Bare): Feet {
  const x = (stage.places.get('old 1')?.x ?? stage.hole[0]) - 1.35
  const y = heightAt(stage.left.line, x) - 1.5
  return { left: { at: [x - 0.15, y], up: [0, 1] }, right: { at: [x + 0.15, y], up: [0, 1] }, legs: true }
}

/** A new loop stands in the old ones that it was drawn through; several in one of them stand side by side. */
function holeFeet({ stage, scene }: Bare, name: Name | null, from: readonly Name[]): Feet {
  const xs = from.map((one) => stage.places.get(one)?.x ?? stage.hole[0])
  const x = xs.reduce((sum, one) => sum + one, 0) / Math.max(1, xs.length)
  const all = [...scene.through.keys()]
  const place = x + 0.16 * ((all.length - 1) / 2 - all.indexOf(name ?? 'none 0'))
  const y = heightAt(stage.left.line, place) - holeBelow - 0.06
  const foot = (side: number): { at: Point; up: Point } => ({ at: [place + side * 0.08, y], up: [0.1, 1] })
  return { left: foot(-1), right: foot(1), legs: true }
}

/** A lifted strand begins and ends where it ran out of the loops beside it. */
function strandFeet({ context, hung }: Bare): Feet | null {
  const lifter = context.numbers.get('strand 0')
  const pieces = context.cloth.pieces
    .slice(context.cloth.still)
    .filter(({ part, loop }) => part === 'strand' && loop === lifter)
  const [first, last] = [hung.curve(pieces[0]?.key ?? ''), hung.curve(pieces.at(-1)?.key ?? '')]
  if (first === null || last === null) return null
  const ends: Point[] = [
    [first[0] ?? 0, first[1] ?? 0],
    [last.at(-2) ?? 0, last.at(-1) ?? 0],
  ]
  const [left, right] = ends.toSorted((a, b) => a[0] - b[0])
  if (left === undefined || right === undefined) return null
  return { left: { at: left, up: [0.3, 0.4] }, right: { at: right, up: [-0.3, 0.4] }, legs: true }
}
