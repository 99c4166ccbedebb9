import { stitch } from '../../stitches/index.ts'
import type { FabricLine, FabricLoop, FabricLoopId } from '../fabric.ts'
import { at } from './at.ts'
import { cellsBetween } from './cells.ts'
import { type Beside, type MeshMaking, newNode, type Upright } from './mesh.ts'

/** A row: a node for each loop that it made or slipped, what joins them to one another and to what they stand on. */
export function addLine(making: MeshMaking, index: number, line: FabricLine): void {
  const { fabric, top, besides } = making
  const slipped = new Set(line.slipped)
  const feet = line.met.map((id) => at(top, id))
  const known = { nodes: making.nodes, uprights: making.uprights.length }
  const nodes = line.loops.map((id) => {
    const loop = at(fabric.loops, id)
    if (loop.row === index - 1) return newBase(making, loop)
    return slipped.has(id) ? pass(making, id) : at(top, id)
  })
  for (let i = 1; i < nodes.length; i++) {
    const [left, right] = [at(nodes, i - 1), at(nodes, i)]
    const kind = besideKind(
      at(fabric.loops, at(line.loops, i - 1)),
      at(fabric.loops, at(line.loops, i)),
      slipped,
    )
    const isOld = [left < known.nodes, right < known.nodes]
    if (kind === null || (isOld[0] && isOld[1])) continue
    besides.push({ left, right, kind: isOld[0] || isOld[1] ? 'step' : kind })
  }
  making.lines.push(nodes)
  making.cells.push(...cellsBetween(feet, nodes, making.uprights.slice(known.uprights)))
}

function newBase(making: MeshMaking, loop: FabricLoop): number {
  const node = newNode(making)
  making.base[loop.id] = node
  making.top[loop.id] = node
  for (const parent of loop.parents) {
    if (making.top[parent] === undefined) newHeld(making, parent)
    const kind = loop.kind === 'below' ? 'below' : uprightKind(making, parent)
    making.uprights.push({ loop: parent, foot: at(making.top, parent), top: node, kind, aside: 0 })
    if (kind !== 'below') at(making.heads, parent).push(node)
  }
  return node
}

/** A loop of another piece, which waits on a holder. */
export function newHeld(making: MeshMaking, id: FabricLoopId): void {
  const node = newNode(making)
  making.base[id] = node
  making.top[id] = node
}

export function uprightKind({ fabric, otherPiece }: MeshMaking, id: FabricLoopId): Upright['kind'] {
  const { kind } = at(fabric.loops, id)
  if (kind === 'chain' || kind === 'over') return kind
  return otherPiece.has(id) ? 'held' : 'plain'
}

/** A slipped loop passes a row. */
function pass(making: MeshMaking, id: FabricLoopId): number {
  const node = newNode(making)
  making.uprights.push({ loop: id, foot: at(making.top, id), top: node, kind: 'slipped', aside: 0 })
  making.top[id] = node
  return node
}

/** Null for a chain loop and the next one: the chain loop itself lies along the edge and holds them together. */
function besideKind(a: FabricLoop, b: FabricLoop, slipped: ReadonlySet<FabricLoopId>): Beside['kind'] | null {
  if (a.parents.includes(b.id) || b.parents.includes(a.id)) return null
  if (slipped.has(a.id) || slipped.has(b.id)) return 'float'
  const siblings = a.parents.some((parent) => b.parents.includes(parent))
  if (siblings || inIncrease(a, b) || inIncrease(b, a)) return 'siblings'
  if (a.kind === 'over' || b.kind === 'over') return 'over'
  return a.kind === 'strand' || b.kind === 'strand' ? 'strand' : 'plain'
}

/** Laid over the needle between two loops drawn through one parent. */
const inIncrease = (a: FabricLoop, b: FabricLoop): boolean =>
  a.kind === 'over' && a.stitch === b.stitch && stitch(a.stitch).takes > 0
