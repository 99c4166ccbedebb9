import type { FabricLoopId } from '../fabric.ts'
import { at } from './at.ts'
import { type MeshMaking, newNode } from './mesh.ts'
import { newHeld, uprightKind } from './mesh-lines.ts'

/**
 * Heads of their own for loops that nothing was drawn through: on the needle, on a holder, at the end of a bind-off.
 * Those side by side hold one another as in a row.
 */
export function addHeads(making: MeshMaking): void {
  const { fabric, heads } = making
  const last = fabric.lines.length - 1
  for (let index = last; index >= 0; index--) {
    const ending = at(fabric.lines, index).loops.map((id) => (at(heads, id).length === 0 ? id : null))
    for (const id of ending) if (id !== null) addHead(making, id)
    for (const [i, id] of ending.entries()) {
      const before = ending[i - 1] ?? null
      if (id !== null && before !== null) joinHeads(making, before, id)
    }
    const onNeedle = ending.filter((id) => id !== null).filter((id) => at(fabric.loops, id).live)
    if (index === last) making.lines.push(onNeedle.flatMap((id) => at(heads, id)))
  }
}

function addHead(making: MeshMaking, id: FabricLoopId): void {
  const node = newNode(making)
  making.uprights.push({
    loop: id,
    foot: at(making.top, id),
    top: node,
    kind: uprightKind(making, id),
    aside: 0,
  })
  at(making.heads, id).push(node)
}

function joinHeads(
  { fabric, top, heads, besides, cells }: MeshMaking,
  left: FabricLoopId,
  right: FabricLoopId,
): void {
  // A chain's last loop lies along the edge.
  if (at(fabric.loops, left).kind === 'chain' || at(fabric.loops, right).kind === 'chain') return
  const [a, b] = [at(at(heads, left), 0), at(at(heads, right), 0)]
  besides.push({ left: a, right: b, kind: 'plain' })
  cells.push({ kind: 'plain', nodes: [at(top, left), at(top, right), b, a], over: [] })
}

/** The waiting loops of another piece, side by side along the edge that they are joined to. */
export function addHeldPiece(making: MeshMaking): void {
  const { fabric, base, heads, besides, cells } = making
  const held = [...making.otherPiece]
  const joined = held
    .map((id) => fabric.loops[at(fabric.loops, id).children[0] ?? -1])
    .find((child) => child !== undefined)
  for (const id of held) {
    if (base[id] === undefined) newHeld(making, id)
    if (at(heads, id).length === 0) addHead(making, id)
  }
  // Joined at the end of a row, so they lie where it ends; seen with their heads up, the first is then the rightmost or leftmost.
  const onLeft = joined === undefined || at(fabric.rightToLeft, joined.row + 1)
  for (let i = 1; i < held.length; i++) {
    const [before, next] = [at(held, i - 1), at(held, i)]
    const [left, right] = onLeft ? [next, before] : [before, next]
    const bases = { left: at(base, left), right: at(base, right) }
    const waiting = at(fabric.loops, next).children.length === 0
    besides.push({ ...bases, kind: waiting ? 'float' : 'held' })
    if (!waiting) continue
    const [c, d] = [at(at(heads, right), 0), at(at(heads, left), 0)]
    cells.push({ kind: 'plain', nodes: [bases.left, bases.right, c, d], over: [] })
    besides.push({ left: d, right: c, kind: 'float' })
  }
}
