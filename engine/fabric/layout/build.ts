import { seededRandom } from '../../base/index.ts'
import { areasOf, bendsOf } from './areas.ts'
import { at } from './at.ts'
import type { Mesh } from './mesh.ts'
import type { Network, Springs } from './network.ts'
import { springsOf } from './springs.ts'
import type { Tension } from './tension.ts'

/** The network of a mesh under a tension. `seed` chooses the unevenness, where there is any. */
export function networkOf(mesh: Mesh, tension: Tension, seed: number): Network {
  const springs = springsOf(mesh, tension)
  if (tension.noise > 0) makeUneven(springs, tension.noise, seed)
  const none = new Float64Array(0)
  return checked({
    nodes: mesh.nodes,
    springs,
    bends: bendsOf(mesh),
    areas: areasOf(mesh, tension),
    anchors: { node: new Int32Array(0), normalX: none, normalY: none, offset: none, stiffness: none },
    held: new Uint8Array(mesh.nodes),
  })
}

function makeUneven({ length }: Springs, noise: number, seed: number): void {
  const random = seededRandom(seed)
  for (let i = 0; i < length.length; i++) length[i] = at(length, i) * (1 + noise * (2 * random() - 1))
}

/** The solver's inner loops do not look whether a node is there, so it is looked here. Throws on a stray index or length. */
export function checked(network: Network): Network {
  const { nodes, springs, bends, areas } = network
  for (const list of [springs.a, springs.b, bends.a, bends.b, bends.c, areas.a, areas.b, areas.c]) {
    for (const node of list)
      if (!(node >= 0 && node < nodes)) throw new Error(`layout: a part acts on node ${node} of ${nodes}`)
  }
  for (const list of [springs.length, springs.stiffness, bends.stiffness]) {
    for (const value of list)
      if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
        throw new Error(`layout: a part has the value ${value}`)
  }
  return network
}
