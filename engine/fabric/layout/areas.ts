import { at } from './at.ts'
import type { Mesh, MeshCell } from './mesh.ts'
import type { Areas, Bends } from './network.ts'
import type { Tension } from './tension.ts'

const bendAlong = 0.06
const bendUp = 0.03
/** A triangle resists below this share of a plain stitch's area, and so strongly. */
const leastArea = 0.15
const areaStiffness = 30

/** Rows run on evenly, and so does each column through the loops that it is drawn through, all of them together. */
export function bendsOf(mesh: Mesh): Bends {
  const a: number[] = []
  const b: number[] = []
  const c: number[] = []
  const stiffness: number[] = []
  const add = (first: number, middle: number, last: number, k: number): void => {
    a.push(first)
    b.push(middle)
    c.push(last)
    stiffness.push(k)
  }
  const rightOf = new Int32Array(mesh.nodes).fill(-1)
  for (const { left, right, kind } of mesh.besides) if (kind !== 'step') rightOf[left] = right
  for (let node = 0; node < mesh.nodes; node++) {
    const next = at(rightOf, node)
    const last = next < 0 ? -1 : at(rightOf, next)
    if (last >= 0) add(node, next, last, bendAlong)
  }
  const plain = mesh.uprights.filter(({ kind }) => kind !== 'chain' && kind !== 'held' && kind !== 'below')
  const { feet, tops } = { feet: countBy(mesh.nodes, plain, 'top'), tops: countBy(mesh.nodes, plain, 'foot') }
  const standing = Map.groupBy(plain, ({ foot }) => foot)
  for (const { foot, top } of plain) {
    const share = bendUp / (at(feet, top) * Math.max(1, at(tops, top)))
    for (const upper of standing.get(top) ?? []) add(foot, top, upper.top, share)
  }
  return {
    a: Int32Array.from(a),
    b: Int32Array.from(b),
    c: Int32Array.from(c),
    stiffness: Float64Array.from(stiffness),
  }
}

function countBy(nodes: number, uprights: Mesh['uprights'], end: 'foot' | 'top'): Uint8Array {
  const count = new Uint8Array(nodes)
  for (const upright of uprights) count[upright[end]] = at(count, upright[end]) + 1
  return count
}

/** All corners of each cell, so that it stays convex, and each loop laid over the needle above what lies under it. */
export function areasOf({ cells }: Mesh, { width, height }: Tension): Areas {
  const corners: number[] = []
  for (const cell of cells) for (const triangle of trianglesOf(cell)) corners.push(...triangle)
  const corner = (k: number): Int32Array => {
    const list = new Int32Array(corners.length / 3)
    for (let i = 0; i < list.length; i++) list[i] = at(corners, 3 * i + k)
    return list
  }
  return {
    a: corner(0),
    b: corner(1),
    c: corner(2),
    least: leastArea * width * height,
    stiffness: areaStiffness,
  }
}

/** A cell's triangles that must not turn over, corners anticlockwise. */
export function trianglesOf({ nodes, over }: MeshCell): [number, number, number][] {
  const [a, b, c, d] = [at(nodes, 0), at(nodes, 1), at(nodes, 2), nodes[3]]
  if (d === undefined) return [[a, b, c]]
  return [
    [a, b, c],
    [b, c, d],
    [c, d, a],
    [d, a, b],
    ...over.map((node): [number, number, number] => [a, b, node]),
  ]
}
