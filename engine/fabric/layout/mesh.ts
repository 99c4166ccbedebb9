import { stitch } from '../../stitches/index.ts'
import type { Fabric, FabricLine, FabricLoop, FabricLoopId } from '../fabric.ts'
import { at } from './at.ts'
import { cellsBetween, type MeshCell } from './cells.ts'

/** Two neighbours in a line, left one first. 'step': one of them was left alone by the row; 'siblings': from one parent. */
export interface Beside {
  readonly left: number
  readonly right: number
  readonly kind: 'plain' | 'over' | 'strand' | 'siblings' | 'float' | 'step'
}

/** A loop, or the part of a slipped loop that one row passes, from the node at its foot to one at its top. */
export interface Upright {
  readonly loop: FabricLoopId
  readonly foot: number
  readonly top: number
  readonly kind: 'plain' | 'over' | 'slipped' | 'below' | 'chain' | 'held'
}

/**
 * The fabric as nodes: one where each loop leaves its parents, one where a slipped loop passes a row, one for each
 * head that nothing was drawn through. A loop's head is where its child begins, so a decrease gathers by itself.
 */
export interface Mesh {
  readonly nodes: number
  /** By loop: the node of its base, and the nodes of its head (several after an increase). */
  readonly base: readonly number[]
  readonly heads: readonly (readonly number[])[]
  /** For each line of the fabric, and one more for the heads on the needle: its nodes from the left. */
  readonly lines: readonly (readonly number[])[]
  readonly besides: readonly Beside[]
  readonly uprights: readonly Upright[]
  readonly cells: readonly MeshCell[]
}

interface Making {
  readonly fabric: Fabric
  nodes: number
  readonly base: number[]
  readonly heads: number[][]
  /** By loop: the highest node that it has so far. */
  readonly top: number[]
  readonly lines: number[][]
  readonly besides: Beside[]
  readonly uprights: Upright[]
  readonly cells: MeshCell[]
}

export function meshOf(fabric: Fabric): Mesh {
  const heads = fabric.loops.map((): number[] => [])
  const making: Making = { fabric, nodes: 0, base: [], heads, top: [], lines: [], besides: [], uprights: [], cells: [] }
  for (const [index, line] of fabric.lines.entries()) addLine(making, index, line)
  addHeads(making)
  return making
}

function addLine(making: Making, index: number, line: FabricLine): void {
  const { fabric, top } = making
  const slipped = new Set(line.slipped)
  const feet = line.met.map((id) => at(top, id))
  const known = making.nodes
  const nodes = line.loops.map((id) => {
    const loop = at(fabric.loops, id)
    if (loop.row === index - 1) return newBase(making, loop)
    return slipped.has(id) ? pass(making, id) : at(top, id)
  })
  for (const [i, right] of line.loops.entries()) {
    const left = line.loops[i - 1]
    if (left !== undefined) addBeside(making, left, right, slipped, at(nodes, i - 1) < known, at(nodes, i) < known)
  }
  making.lines.push(nodes)
  making.cells.push(...cellsBetween(feet, nodes, making.uprights, known))
}

const newNode = (making: Making): number => making.nodes++

function newBase(making: Making, loop: FabricLoop): number {
  const node = newNode(making)
  making.base[loop.id] = node
  making.top[loop.id] = node
  for (const parent of loop.parents) {
    if (making.top[parent] === undefined) newHeld(making, parent)
    const kind = loop.kind === 'below' ? 'below' : uprightKind(making, parent)
    making.uprights.push({ loop: parent, foot: at(making.top, parent), top: node, kind })
    if (kind !== 'below') at(making.heads, parent).push(node)
  }
  return node
}

/** A loop of another piece, which waits on a holder. */
function newHeld(making: Making, id: FabricLoopId): void {
  const node = newNode(making)
  making.base[id] = node
  making.top[id] = node
}

function uprightKind({ fabric }: Making, id: FabricLoopId): Upright['kind'] {
  const { kind, row } = at(fabric.loops, id)
  if (kind === 'chain' || kind === 'over') return kind
  return row === -1 && !at(fabric.lines, 0).loops.includes(id) ? 'held' : 'plain'
}

/** A slipped loop passes a row. */
function pass(making: Making, id: FabricLoopId): number {
  const node = newNode(making)
  making.uprights.push({ loop: id, foot: at(making.top, id), top: node, kind: 'slipped' })
  making.top[id] = node
  return node
}

function addBeside(
  making: Making, left: FabricLoopId, right: FabricLoopId, slipped: ReadonlySet<FabricLoopId>, leftOld: boolean, rightOld: boolean,
): void {
  if (leftOld && rightOld) return
  const [a, b] = [at(making.fabric.loops, left), at(making.fabric.loops, right)]
  // A chain loop and the next lie along the edge; the chain loop itself holds them together.
  if (a.parents.includes(right) || b.parents.includes(left)) return
  const ends = { left: at(making.top, left), right: at(making.top, right) }
  const kind = leftOld || rightOld ? 'step' : slipped.has(left) || slipped.has(right) ? 'float' : besideKind(a, b)
  making.besides.push({ ...ends, kind })
}

function besideKind(a: FabricLoop, b: FabricLoop): Beside['kind'] {
  const siblings = a.parents.some((parent) => b.parents.includes(parent)) || inIncrease(a, b) || inIncrease(b, a)
  if (siblings) return 'siblings'
  if (a.kind === 'over' || b.kind === 'over') return 'over'
  return a.kind === 'strand' || b.kind === 'strand' ? 'strand' : 'plain'
}

/** Laid over the needle between two loops drawn through one parent. */
const inIncrease = (a: FabricLoop, b: FabricLoop): boolean =>
  a.kind === 'over' && a.stitch === b.stitch && stitch(a.stitch).takes > 0

/** Heads of their own for loops that nothing was drawn through; those on the needle lie side by side. */
function addHeads(making: Making): void {
  const { fabric, heads, top } = making
  const last = at(fabric.lines, fabric.lines.length - 1).loops.filter((id) => at(fabric.loops, id).live)
  const feet = last.map((id) => at(top, id))
  const known = making.nodes
  const nodes = last.map((id) => newHead(making, id))
  for (const [i, right] of nodes.entries()) if (i > 0) making.besides.push({ left: at(nodes, i - 1), right, kind: 'plain' })
  making.lines.push(nodes)
  making.cells.push(...cellsBetween(feet, nodes, making.uprights, known))
  for (const { id } of fabric.loops) {
    if (making.base[id] === undefined) newHeld(making, id)
    if (at(heads, id).length === 0) newHead(making, id)
  }
}

function newHead(making: Making, id: FabricLoopId): number {
  const node = newNode(making)
  making.uprights.push({ loop: id, foot: at(making.top, id), top: node, kind: uprightKind(making, id) })
  at(making.heads, id).push(node)
  return node
}
