import type { LoopId, WorkedPattern } from '../needles/index.ts'
import type { Mount, StitchId } from '../stitches/index.ts'
import type { Fabric, FabricLine, FabricLoop, FabricLoopId } from './fabric.ts'

type Draft = { -readonly [K in keyof FabricLoop]: FabricLoop[K] } & { children: FabricLoopId[] }

/** A fabric in the making. The tables only grow. */
export interface Making {
  readonly worked: WorkedPattern
  readonly loops: Draft[]
  /** For each loop of the worked table, its number here. */
  readonly idOf: FabricLoopId[]
  /** How each loop of the worked table sits now. */
  readonly mounts: Mount[]
  readonly courses: FabricLoopId[][]
  readonly rightToLeft: boolean[]
  readonly lines: FabricLine[]
  /** Loops off the needles that can still be worked. */
  readonly holder: Set<LoopId>
}

export const emptyMaking = (worked: WorkedPattern): Making => ({
  worked,
  loops: [],
  idOf: [],
  mounts: [],
  courses: [],
  rightToLeft: [],
  lines: [],
  holder: new Set(),
})

/** What is made so far; what lies on a needle or a holder is live. */
export function fabricMade(making: Making): Fabric {
  const { loops, courses, rightToLeft, lines, holder } = making
  const waiting = [...(lines.at(-1)?.loops ?? []), ...[...holder].map((id) => numberOf(making, id))]
  for (const id of waiting) {
    const loop = known(loops[id])
    // The chain of a bind-off lies in the line too, and is off the needle.
    loop.live = loop.kind !== 'chain' && loop.children.length === 0
  }
  return { loops, courses, rightToLeft, lines }
}

interface Facts {
  readonly row: number
  readonly stitch: StitchId
  readonly kind: FabricLoop['kind']
  readonly face: FabricLoop['face']
}

/** A new loop, drawn through nothing yet. `loop` is null for what the worked table does not have. */
export function addLoop(making: Making, loop: LoopId | null, facts: Facts): FabricLoopId {
  const id = making.loops.length
  making.loops.push({ id, loop, ...facts, parents: [], twisted: [], children: [], span: 1, live: false })
  if (loop !== null) making.idOf[loop] = id
  return id
}

export function drawThrough(
  { loops }: Making,
  id: FabricLoopId,
  parents: readonly FabricLoopId[],
  twisted: readonly boolean[],
): void {
  const loop = known(loops[id])
  loop.parents = parents
  loop.twisted = twisted
  for (const parent of parents) known(loops[parent]).children.push(id)
}

export const numberOf = ({ idOf }: Making, id: LoopId): FabricLoopId => known(idOf[id])

/** What the worked table promises to be there. Throws where it is not: a programming error. */
export function known<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('fabric: a loop that is not in the table')
  return value
}
