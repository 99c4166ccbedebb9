import { at } from './at.ts'
import type { Beside, Mesh, MeshCell } from './mesh.ts'
import type { Springs } from './network.ts'
import { besideSpring, uprightSpring } from './rests.ts'
import type { Tension } from './tension.ts'

const diagonalStiffness = 0.25

/** Springs along the rows, up the loops and across the cells of a mesh. */
export function springsOf(mesh: Mesh, tension: Tension): Springs {
  const list = emptySprings(mesh.besides.length + mesh.uprights.length + 2 * mesh.cells.length)
  for (const beside of mesh.besides) {
    const { length, stiffness } = besideSpring(beside, tension)
    add(list, beside.left, beside.right, length, stiffness)
  }
  const tops = new Uint8Array(mesh.nodes)
  for (const { foot } of mesh.uprights) tops[foot] = at(tops, foot) + 1
  for (const upright of mesh.uprights) {
    const { length, stiffness } = uprightSpring(upright, tension)
    add(list, upright.foot, upright.top, length, stiffness / at(tops, upright.foot))
  }
  const rows = rowsOf(mesh, tension)
  for (const cell of mesh.cells) addDiagonals(list, cell, tension, rows)
  return filled(list)
}

/** Springs in typed arrays that are filled one by one. */
interface SpringList extends Springs {
  count: number
}

const emptySprings = (most: number): SpringList => ({
  a: new Int32Array(most),
  b: new Int32Array(most),
  length: new Float64Array(most),
  stiffness: new Float64Array(most),
  count: 0,
})

function add(list: SpringList, a: number, b: number, length: number, stiffness: number): void {
  const i = list.count++
  list.a[i] = a
  list.b[i] = b
  list.length[i] = length
  list.stiffness[i] = stiffness
}

const filled = ({ a, b, length, stiffness, count }: SpringList): Springs => ({
  a: a.slice(0, count),
  b: b.slice(0, count),
  length: length.slice(0, count),
  stiffness: stiffness.slice(0, count),
})

/** What lies between neighbours, found by its left node. */
interface Rows {
  readonly mesh: Mesh
  readonly tension: Tension
  /** By node, the last of the besides that it is the left end of; by beside, the one before. */
  readonly last: Int32Array
  readonly before: Int32Array
}

function rowsOf(mesh: Mesh, tension: Tension): Rows {
  const last = new Int32Array(mesh.nodes).fill(-1)
  const before = new Int32Array(mesh.besides.length)
  for (const [i, { left }] of mesh.besides.entries()) {
    before[i] = at(last, left)
    last[left] = i
  }
  return { mesh, tension, last, before }
}

function between({ mesh, last, before }: Rows, left: number, right: number): Beside | null {
  for (let i = at(last, left); i >= 0; i = at(before, i)) {
    const beside = at(mesh.besides, i)
    if (beside.right === right) return beside
  }
  return null
}

/** How far it is at rest from one node to its neighbour; a plain stitch where they are joined by nothing. */
function restBetween(rows: Rows, left: number, right: number): number {
  const beside = between(rows, left, right)
  return beside === null ? rows.tension.width : besideSpring(beside, rows.tension).length
}

const isOpen = (rows: Rows, left: number, right: number): boolean =>
  between(rows, left, right)?.kind === 'over'

/** They keep rows square to columns; where a row has more to hold than the one below, they push it into a wave. */
function addDiagonals(
  list: SpringList,
  { kind, nodes, over }: MeshCell,
  { height }: Tension,
  rows: Rows,
): void {
  const [a, b, c, d] = [at(nodes, 0), at(nodes, 1), at(nodes, 2), nodes[3] ?? -1]
  const addPair = (p: number, q: number, r: number, s: number, mean: number, open: boolean): void => {
    const length = Math.sqrt(mean * mean + height * height)
    const stiffness = open ? diagonalStiffness / 2 : diagonalStiffness
    add(list, p, q, length, stiffness)
    add(list, r, s, length, stiffness)
  }
  if (kind === 'step') return
  // One end of such a cell has no width: its sides are its diagonals.
  if (kind === 'gather') return addPair(a, c, b, c, restBetween(rows, a, b) / 2, isOpen(rows, a, b))
  if (kind === 'spread') return addPair(a, b, a, c, restBetween(rows, c, b) / 2, isOpen(rows, c, b))
  let upper = 0
  let open = isOpen(rows, a, b)
  let left = d
  for (let i = 0; i <= over.length; i++) {
    const right = over[i] ?? c
    upper += restBetween(rows, left, right)
    open ||= isOpen(rows, left, right)
    left = right
  }
  addPair(a, c, b, d, (restBetween(rows, a, b) + upper) / 2, open)
}
