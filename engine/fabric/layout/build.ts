import { seededRandom } from '../../base/index.ts'
import { at } from './at.ts'
import type { MeshCell } from './cells.ts'
import type { Beside, Mesh, Upright } from './mesh.ts'
import type { Areas, Bends, Network, Springs } from './network.ts'
import type { Tension } from './tension.ts'

const diagonalStiffness = 0.25
const bendAlong = 0.06
const bendUp = 0.03
/** A triangle resists below this share of a plain stitch's area, and so strongly. */
const leastArea = 0.15
const areaStiffness = 30

/** The network of a mesh under a tension. `seed` chooses the unevenness, where there is any. */
export function networkOf(mesh: Mesh, tension: Tension, seed: number): Network {
  const springs = springsOf(mesh, tension)
  if (tension.noise > 0) {
    const random = seededRandom(seed)
    for (let i = 0; i < springs.length.length; i++) {
      springs.length[i] = at(springs.length, i) * (1 + tension.noise * (2 * random() - 1))
    }
  }
  return {
    nodes: mesh.nodes,
    springs,
    bends: bendsOf(mesh),
    areas: areasOf(mesh, leastArea * tension.width * tension.height),
    anchors: {
      node: new Int32Array(0), normalX: new Float64Array(0), normalY: new Float64Array(0),
      offset: new Float64Array(0), stiffness: new Float64Array(0),
    },
    held: new Uint8Array(mesh.nodes),
  }
}

interface Spring {
  readonly a: number
  readonly b: number
  readonly length: number
  readonly stiffness: number
}

function springsOf(mesh: Mesh, tension: Tension): Springs {
  const besides = mesh.besides.map((beside) => ({ a: beside.left, b: beside.right, ...besideSpring(beside, tension) }))
  const lengthBetween = new Map(besides.map(({ a, b, length }) => [pair(mesh, a, b), length]))
  const overs = new Set(mesh.besides.filter(({ kind }) => kind === 'over').map(({ left, right }) => pair(mesh, left, right)))
  const tops = Map.groupBy(mesh.uprights, ({ foot }) => foot)
  const uprights = mesh.uprights.map((upright) => {
    const { length, stiffness } = uprightSpring(upright, tension)
    return { a: upright.foot, b: upright.top, length, stiffness: stiffness / (tops.get(upright.foot)?.length ?? 1) }
  })
  const diagonals = mesh.cells.flatMap((cell) => {
    const run = (...nodes: number[]): number =>
      nodes.slice(1).reduce((sum, node, i) => sum + (lengthBetween.get(pair(mesh, at(nodes, i), node)) ?? tension.width), 0)
    const open = (...nodes: number[]): boolean => nodes.slice(1).some((node, i) => overs.has(pair(mesh, at(nodes, i), node)))
    return diagonalsOf(cell, tension, run, open)
  })
  return packed([...besides, ...uprights, ...diagonals])
}

const pair = ({ nodes }: Mesh, a: number, b: number): number => Math.min(a, b) * nodes + Math.max(a, b)

function packed(list: readonly Spring[]): Springs {
  return {
    a: Int32Array.from(list, ({ a }) => a),
    b: Int32Array.from(list, ({ b }) => b),
    length: Float64Array.from(list, ({ length }) => length),
    stiffness: Float64Array.from(list, ({ stiffness }) => stiffness),
  }
}

type Pull = Pick<Spring, 'length' | 'stiffness'>

function besideSpring({ kind }: Beside, { width, over, overStiffness }: Tension): Pull {
  switch (kind) {
    case 'over':
      return { length: over, stiffness: overStiffness }
    case 'strand':
      return { length: 0.8 * width, stiffness: 0.6 }
    case 'siblings':
      return { length: 0.6 * width, stiffness: 1 }
    case 'float':
      return { length: width, stiffness: 0.5 }
    case 'step':
      return { length: width, stiffness: 0.3 }
    case 'plain':
      return { length: width, stiffness: 1 }
  }
}

function uprightSpring({ kind }: Upright, { width, height }: Tension): Pull {
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
      return { length: height, stiffness: 1 }
  }
}

type Along<T> = (...nodes: number[]) => T

/** They keep rows square to columns; where a row has more to hold than the one below, they push it into a wave. */
function diagonalsOf({ kind, nodes, over }: MeshCell, { height }: Tension, run: Along<number>, open: Along<boolean>): Spring[] {
  const [a, b, c, d] = [at(nodes, 0), at(nodes, 1), at(nodes, 2), nodes[3]]
  const across = (p: number, q: number, r: number, s: number, mean: number, isOpen: boolean): Spring[] => {
    const pull = { length: Math.hypot(mean, height), stiffness: isOpen ? diagonalStiffness / 2 : diagonalStiffness }
    return [
      { a: p, b: q, ...pull },
      { a: r, b: s, ...pull },
    ]
  }
  if (kind === 'step') return []
  // One end of such a cell has no width: its sides are its diagonals.
  if (kind === 'gather') return across(a, c, b, c, run(a, b) / 2, open(a, b))
  if (kind === 'spread') return across(a, b, a, c, run(c, b) / 2, open(c, b))
  const upper = [d ?? a, ...over, c]
  return across(a, c, b, d ?? a, (run(a, b) + run(...upper)) / 2, open(a, b) || open(...upper))
}

function bendsOf(mesh: Mesh): Bends {
  const list: { a: number; b: number; c: number; stiffness: number }[] = []
  const rightOf = new Map(mesh.besides.filter(({ kind }) => kind !== 'step').map(({ left, right }) => [left, right]))
  for (const [a, b] of rightOf) {
    const c = rightOf.get(b)
    if (c !== undefined) list.push({ a, b, c, stiffness: bendAlong })
  }
  const plain = mesh.uprights.filter(({ kind }) => kind !== 'chain' && kind !== 'held' && kind !== 'below')
  const under = Map.groupBy(plain, ({ top }) => top)
  const above = Map.groupBy(plain, ({ foot }) => foot)
  for (const [node, lower] of under) {
    const upper = above.get(node) ?? []
    for (const { foot: a } of lower) {
      for (const { top: c } of upper) list.push({ a, b: node, c, stiffness: bendUp / (lower.length * upper.length) })
    }
  }
  return {
    a: Int32Array.from(list, ({ a }) => a),
    b: Int32Array.from(list, ({ b }) => b),
    c: Int32Array.from(list, ({ c }) => c),
    stiffness: Float64Array.from(list, ({ stiffness }) => stiffness),
  }
}

/** All corners of each cell, so that it stays convex, and each loop laid over the needle above what lies under it. */
function areasOf({ cells }: Mesh, least: number): Areas {
  const corners = cells.flatMap(trianglesOf)
  return {
    a: Int32Array.from(corners, ([a]) => a),
    b: Int32Array.from(corners, ([, b]) => b),
    c: Int32Array.from(corners, ([, , c]) => c),
    least,
    stiffness: areaStiffness,
  }
}

export function trianglesOf({ nodes, over }: MeshCell): [number, number, number][] {
  const [a, b, c, d] = nodes as [number, number, number, number | undefined]
  if (d === undefined) return [[a, b, c]]
  return [[a, b, c], [b, c, d], [c, d, a], [d, a, b], ...over.map((node): [number, number, number] => [a, b, node])]
}
