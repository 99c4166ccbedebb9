import { at } from './at.ts'
import type { MeshCell } from './cells.ts'
import type { Beside, Mesh, Upright } from './mesh.ts'
import type { Springs } from './network.ts'
import type { Tension } from './tension.ts'

const diagonalStiffness = 0.25
/** How much of the way aside a loop that crosses others has to spare: crossings draw the fabric in. */
const reach = 0.85

/** Springs along the rows, up the loops and across the cells of a mesh. */
export function springsOf(mesh: Mesh, tension: Tension): Springs {
  const list = new SpringList(mesh.besides.length + mesh.uprights.length + 2 * mesh.cells.length)
  for (const beside of mesh.besides) {
    const { length, stiffness } = besideSpring(beside, tension)
    list.add(beside.left, beside.right, length, stiffness)
  }
  const tops = new Uint8Array(mesh.nodes)
  for (const { foot } of mesh.uprights) tops[foot] = at(tops, foot) + 1
  for (const upright of mesh.uprights) {
    const { length, stiffness } = uprightSpring(upright, tension)
    list.add(upright.foot, upright.top, length, stiffness / at(tops, upright.foot))
  }
  const rows = new Rows(mesh, tension)
  for (const cell of mesh.cells) addDiagonals(list, cell, tension, rows)
  return list.springs()
}

/** Springs in typed arrays that are filled one by one. */
class SpringList {
  private readonly all: Springs
  private count = 0

  constructor(most: number) {
    this.all = {
      a: new Int32Array(most), b: new Int32Array(most), length: new Float64Array(most), stiffness: new Float64Array(most),
    }
  }

  add(a: number, b: number, length: number, stiffness: number): void {
    const i = this.count++
    this.all.a[i] = a
    this.all.b[i] = b
    this.all.length[i] = length
    this.all.stiffness[i] = stiffness
  }

  springs(): Springs {
    const { a, b, length, stiffness } = this.all
    const end = this.count
    return { a: a.slice(0, end), b: b.slice(0, end), length: length.slice(0, end), stiffness: stiffness.slice(0, end) }
  }
}

type Pull = { readonly length: number; readonly stiffness: number }

function besideSpring({ kind }: Beside, { width, height, over, overStiffness }: Tension): Pull {
  switch (kind) {
    case 'over':
      return { length: over, stiffness: overStiffness }
    case 'strand':
      return { length: 0.8 * width, stiffness: 0.6 }
    case 'siblings':
      return { length: 0.6 * width, stiffness: 1 }
    case 'float':
      return { length: width, stiffness: 0.5 }
    case 'held':
      // One is joined in two rows, as a rule.
      return { length: 2 * height, stiffness: 0.2 }
    case 'step':
      return { length: width, stiffness: 0.3 }
    case 'plain':
      return { length: width, stiffness: 1 }
  }
}

function uprightSpring({ kind, aside }: Readonly<Upright>, { width, height }: Tension): Pull {
  switch (kind) {
    case 'over':
      return { length: height, stiffness: 0.5 }
    case 'slipped':
      return { length: 0.85 * height, stiffness: 0.8 }
    case 'below':
      return { length: 1.8 * height, stiffness: 0.3 }
    case 'chain':
      return { length: 0.95 * width, stiffness: 1 }
    case 'held':
      return { length: height, stiffness: 0.5 }
    case 'plain':
      return { length: Math.hypot(height, reach * aside * width), stiffness: 1 }
  }
}

/** What lies between neighbours, found by its left node. */
class Rows {
  /** By node, the last of the besides that it is the left end of; by beside, the one before. */
  private readonly last: Int32Array
  private readonly before: Int32Array
  private readonly mesh: Mesh
  private readonly tension: Tension

  constructor(mesh: Mesh, tension: Tension) {
    this.mesh = mesh
    this.tension = tension
    this.last = new Int32Array(mesh.nodes).fill(-1)
    this.before = new Int32Array(mesh.besides.length)
    for (const [i, { left }] of mesh.besides.entries()) {
      this.before[i] = at(this.last, left)
      this.last[left] = i
    }
  }

  private between(left: number, right: number): Beside | null {
    for (let i = at(this.last, left); i >= 0; i = at(this.before, i)) {
      const beside = at(this.mesh.besides, i)
      if (beside.right === right) return beside
    }
    return null
  }

  /** How far it is at rest from one node to its neighbour; a plain stitch where they are joined by nothing. */
  length(left: number, right: number): number {
    const beside = this.between(left, right)
    return beside === null ? this.tension.width : besideSpring(beside, this.tension).length
  }

  isOpen(left: number, right: number): boolean {
    return this.between(left, right)?.kind === 'over'
  }
}

/** They keep rows square to columns; where a row has more to hold than the one below, they push it into a wave. */
function addDiagonals(list: SpringList, { kind, nodes, over }: MeshCell, { height }: Tension, rows: Rows): void {
  const [a, b, c, d] = [at(nodes, 0), at(nodes, 1), at(nodes, 2), nodes[3] ?? -1]
  const addPair = (p: number, q: number, r: number, s: number, mean: number, isOpen: boolean): void => {
    const length = Math.hypot(mean, height)
    const stiffness = isOpen ? diagonalStiffness / 2 : diagonalStiffness
    list.add(p, q, length, stiffness)
    list.add(r, s, length, stiffness)
  }
  if (kind === 'step') return
  // One end of such a cell has no width: its sides are its diagonals.
  if (kind === 'gather') return addPair(a, c, b, c, rows.length(a, b) / 2, rows.isOpen(a, b))
  if (kind === 'spread') return addPair(a, b, a, c, rows.length(c, b) / 2, rows.isOpen(c, b))
  let [upper, isOpen, left] = [0, rows.isOpen(a, b), d]
  for (let i = 0; i <= over.length; i++) {
    const right = over[i] ?? c
    upper += rows.length(left, right)
    isOpen ||= rows.isOpen(left, right)
    left = right
  }
  addPair(a, c, b, d, (rows.length(a, b) + upper) / 2, isOpen)
}
