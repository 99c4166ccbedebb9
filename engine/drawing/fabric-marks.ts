import type { Fabric, FabricLoopId, Yarn, YarnPiece } from '../fabric/index.ts'
import type { WorkedPattern } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'
import type { Node } from './display.ts'
import { type Box, toUnits, type UnitFrame } from './fabric-frame.ts'
import { ink, type Tint } from './fabric-paint.ts'

/** Loops to be marked, by number in the fabric. What is left out is not marked. */
export interface FabricMarks {
  /** Yarn overs: tinted, dotted with ink, and a ring in the hole of each. */
  readonly yarnOvers?: readonly FabricLoopId[]
  /** Loops gathered from several: the parent on top, which shows the lean, is tinted and barred with ink. */
  readonly decreases?: readonly FabricLoopId[]
  /** Edge stitches: tinted, with a line of ink along them. */
  readonly edges?: readonly FabricLoopId[]
  /** The loops of one repeat: tinted, and a bracket under them. */
  readonly repeat?: readonly FabricLoopId[]
}

/** Everything that can be marked, found in the worked rows. */
export function marksOf(worked: WorkedPattern, fabric: Fabric): Required<FabricMarks> {
  const stepOf = (id: FabricLoopId) => {
    const loop = worked.loops[fabric.loops[id]?.loop ?? -1]
    return loop === undefined ? undefined : worked.rows[loop.row]?.steps[loop.step]
  }
  const ids = fabric.loops.map(({ id }) => id)
  const inRepeats = worked.rows.findIndex(
    ({ side, steps }) => side === 'RS' && steps.some(({ repeat }) => repeat !== null),
  )
  return {
    yarnOvers: ids.filter((id) => isEyelet(fabric, id)),
    decreases: ids.filter((id) => isDecrease(fabric, id)),
    edges: fabric.lines.flatMap(({ loops }) => [loops[0], loops.at(-1)].filter((id) => id !== undefined)),
    repeat: ids.filter((id) => fabric.loops[id]?.row === inRepeats && stepOf(id)?.repeat === 1),
  }
}

/** A yarn over with a hole under it; one inside an increase in one stitch has none. */
export const isEyelet = ({ loops }: Fabric, id: FabricLoopId): boolean => {
  const loop = loops[id]
  return loop?.kind === 'over' && stitch(loop.stitch).takes === 0
}

export const isDecrease = ({ loops }: Fabric, id: FabricLoopId): boolean => {
  const loop = loops[id]
  return (
    loop !== undefined &&
    loop.kind === 'drawn' &&
    loop.parents.filter((parent) => loops[parent]?.kind !== 'chain').length > 1
  )
}

/** The paint of every piece under these marks. What is said first wins where a loop is two things. */
export function tintsFor({ fabric, side }: Yarn, marks: FabricMarks): (piece: YarnPiece) => Tint {
  const tints = new Map<FabricLoopId, Tint>()
  const put = (ids: readonly FabricLoopId[] | undefined, tint: Tint): void => {
    for (const id of ids ?? []) if (!tints.has(id)) tints.set(id, tint)
  }
  put(marks.yarnOvers, 'over')
  put(
    marks.decreases?.flatMap((id) => topParent(fabric, id, side) ?? []),
    'decrease',
  )
  put(marks.edges, 'edge')
  put(marks.repeat, 'repeat')
  return ({ loop, part }) => {
    const ground = (fabric.loops[loop]?.row ?? 0) % 2 === 0 ? 'other-row' : 'plain'
    const tint = tints.get(loop) ?? ground
    return part === 'edge' || part === 'tail' || (tint === 'decrease' && part === 'sinker') ? ground : tint
  }
}

/** The parent that lies on top, seen from a side. */
function topParent({ loops }: Fabric, id: FabricLoopId, side: Yarn['side']): FabricLoopId | undefined {
  const parents = loops[id]?.parents ?? []
  return side === 'right' ? parents[0] : parents.at(-1)
}

/** Rings in the holes and the bracket of the repeat, in the units of the picture. */
export function markNodes(yarn: Yarn, frame: UnitFrame, marks: FabricMarks): Node[] {
  const rings = (marks.yarnOvers ?? []).map((id) => ringNode(yarn, frame, id))
  return [...rings.filter((node) => node !== null), ...bracketNodes(yarn, frame, marks.repeat ?? [])]
}

function ringNode({ places }: Yarn, frame: UnitFrame, id: FabricLoopId): Node | null {
  const place = places[id]
  if (place === undefined) return null
  const [x, y] = toUnits(frame, place.base)
  const look = { className: 'mark-over', stroke: ink, strokeWidth: 0.04 * frame.units }
  return {
    kind: 'circle',
    key: `hole-${id}`,
    x: Math.round(x),
    y: Math.round(y),
    radius: 0.16 * frame.units,
    ...look,
  }
}

const bracket = { below: 0.25, height: 0.22, room: 0.55 } as const

/** The box with room for what is drawn beneath the fabric. */
export const withRoomFor = (box: Box, marks: FabricMarks): Box =>
  (marks.repeat ?? []).length > 0 ? { ...box, bottom: box.bottom - bracket.room } : box

function bracketNodes({ places }: Yarn, frame: UnitFrame, repeat: readonly FabricLoopId[]): Node[] {
  const xs = repeat.flatMap((id) => places[id]?.base[0] ?? [])
  if (xs.length === 0) return []
  const y = frame.box.bottom + bracket.room - bracket.below
  const corner = (x: number, up: number) => toUnits(frame, [x, y + up]).map(Math.round) as [number, number]
  const [left, right] = [Math.min(...xs) - 0.45, Math.max(...xs) + 0.45]
  return [
    {
      kind: 'polyline',
      key: 'repeat',
      className: 'mark-repeat',
      stroke: ink,
      strokeWidth: 0.05 * frame.units,
      cap: 'round',
      points: [
        corner(left, bracket.height),
        corner(left, 0),
        corner(right, 0),
        corner(right, bracket.height),
      ],
    },
  ]
}
