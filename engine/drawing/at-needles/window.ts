import type { Fabric, FabricLine, FabricLoop, FabricLoopId } from '../../fabric/index.ts'

/** The last lines of a fabric as a fabric of its own; what hung below them is left out. */
export interface FabricEnd {
  readonly fabric: Fabric
  /** For each loop of that fabric, its number in the whole one. */
  readonly whole: readonly FabricLoopId[]
}

/** The last `lines` lines. The lowest of them stands on nothing, as a cast-on does. */
export function endOfFabric(all: Fabric, lines: number): FabricEnd {
  const from = Math.max(0, all.lines.length - lines)
  const upper = all.lines.slice(from)
  const made = all.courses.slice(from + 1).flat()
  const fresh = new Set(made)
  const later = upper.slice(1).flatMap(({ loops, met }) => [...loops, ...met])
  const lowest = [...new Set([...(upper[0]?.loops ?? []), ...later.filter((id) => !fresh.has(id))])]
  const parents = made.flatMap((id) => loopOf(all, id).parents)
  // Loops that wait elsewhere hang in no line.
  const apart = parents.filter((id) => !fresh.has(id) && !lowest.includes(id))
  const whole = [...new Set([...lowest, ...apart, ...made])].sort((a, b) => a - b)
  const places = new Map(whole.map((id, place) => [id, place]))
  const known = (ids: readonly FabricLoopId[]): FabricLoopId[] => ids.flatMap((id) => places.get(id) ?? [])
  const loops = whole.map((id, place): FabricLoop => {
    const loop = loopOf(all, id)
    const children = known(loop.children)
    if (!fresh.has(id)) return { ...loop, id: place, row: -1, parents: [], twisted: [], children }
    const twisted = loop.twisted.filter((_, i) => places.has(loop.parents[i] ?? -1))
    return { ...loop, id: place, row: loop.row - from, parents: known(loop.parents), twisted, children }
  })
  const courses = all.courses.slice(from).map(known)
  const fabric = {
    loops,
    courses: courses.map((course, i) => (i === 0 ? course.filter((id) => loops[id]?.row === -1) : course)),
    rightToLeft: all.rightToLeft.slice(from),
    lines: upper.map((line, i) => (i === 0 ? lowestLine(line, known(lowest)) : renumbered(line, known))),
  }
  return { fabric, whole }
}

const lowestLine = (line: FabricLine, loops: readonly FabricLoopId[]): FabricLine => ({
  ...line,
  met: [],
  loops,
  slipped: [],
  yarnInFront: [],
})

const renumbered = (
  line: FabricLine,
  known: (ids: readonly FabricLoopId[]) => FabricLoopId[],
): FabricLine => ({
  ...line,
  met: known(line.met),
  loops: known(line.loops),
  slipped: known(line.slipped),
  yarnInFront: known(line.yarnInFront),
})

function loopOf({ loops }: Fabric, id: FabricLoopId): FabricLoop {
  const loop = loops[id]
  if (loop === undefined) throw new Error(`needles: the fabric has no loop ${id}`)
  return loop
}
