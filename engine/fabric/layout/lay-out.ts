import type { Fabric, FabricLayout } from '../fabric.ts'
import { at } from './at.ts'
import { type LayoutOptions, settle } from './settle.ts'

/** Lays a fabric out: where each loop lies when the piece rests in the given state. The same input gives the same bytes. */
export function layOutFabric(fabric: Fabric, options: LayoutOptions): FabricLayout {
  const { mesh, places, residual } = settle(fabric, options)
  const mean = (nodes: readonly number[], e: 0 | 1): number =>
    nodes.reduce((sum, node) => sum + at(places, 2 * node + e), 0) / nodes.length
  return {
    state: options.state,
    baseX: Float64Array.from(mesh.base, (node) => at(places, 2 * node)),
    baseY: Float64Array.from(mesh.base, (node) => at(places, 2 * node + 1)),
    headX: Float64Array.from(mesh.heads, (nodes) => mean(nodes, 0)),
    headY: Float64Array.from(mesh.heads, (nodes) => mean(nodes, 1)),
    residual,
  }
}
