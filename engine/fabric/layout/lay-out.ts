import type { Fabric, FabricLayout, FabricLoopId, FabricState } from '../fabric.ts'
import { alignTo } from './align.ts'
import { at } from './at.ts'
import { blockingPins } from './blocking.ts'
import { networkOf } from './build.ts'
import { energyOf } from './energy.ts'
import { type Mesh, meshOf } from './mesh.ts'
import type { Network } from './network.ts'
import { largestForce, relax } from './newton.ts'
import { gridPlaces, placesFrom } from './start.ts'
import { type Tension, tensions } from './tension.ts'

/** A loop's head held at a place, as by a needle. */
export interface Pin {
  readonly loop: FabricLoopId
  readonly x: number
  readonly y: number
}

export interface LayoutOptions {
  readonly state: FabricState
  /** Chooses the uneven tension of an unblocked piece. */
  readonly seed?: number
  /** Places to start from: a layout of this piece, or of more or less of it. */
  readonly start?: FabricLayout
  /** So many courses, from the cast-on up, stay where they start. */
  readonly pinnedRows?: number
  readonly pins?: readonly Pin[]
}

/** No force on a node is larger when the solver stops, in spring units: places are then right to a hundredth of a stitch. */
const settled = 1e-4
const mostSteps = 60

/**
 * Lays a fabric out: where each loop lies when the piece rests in the given state. The same input gives the same bytes.
 * Without pins the piece lies square: turned and shifted to lie over its own plain grid.
 */
export function layOutFabric(fabric: Fabric, options: LayoutOptions): FabricLayout {
  const { state, start, seed = 1 } = options
  const mesh = meshOf(fabric)
  const tension = tensions[state]
  const network = networkOf(mesh, tension, seed)
  const places = start ? placesFrom(mesh, fabric, start, tension) : gridPlaces(mesh, tension)
  hold(mesh, fabric, network, places, options)
  if (state === 'pinned') return layoutOf(mesh, state, places, forceIn(network, places))
  const residual = atRest(mesh, network, tension, places, state === 'blocked')
  return layoutOf(mesh, state, places, residual)
}

function atRest(mesh: Mesh, network: Network, tension: Tension, places: Float64Array, blocked: boolean): number {
  const options = { tolerance: settled, steps: mostSteps }
  const { residual } = relax(network, places, blocked ? { ...options, tolerance: 100 * settled } : options)
  if (!network.held.includes(1)) alignTo(places, gridPlaces(mesh, tension))
  if (!blocked) return residual
  return relax({ ...network, anchors: blockingPins(mesh, places) }, places, options).residual
}

/** Marks what stays put, and puts it there. */
function hold(mesh: Mesh, fabric: Fabric, network: Network, places: Float64Array, { pinnedRows = 0, pins = [] }: LayoutOptions): void {
  for (const line of mesh.lines.slice(0, pinnedRows)) for (const node of line) network.held[node] = 1
  for (const { loop, x, y } of pins) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) throw new Error(`layout: the pin of loop ${loop} has no place`)
    at(fabric.loops, loop)
    for (const node of at(mesh.heads, loop)) {
      network.held[node] = 1
      places[2 * node] = x
      places[2 * node + 1] = y
    }
  }
}

function forceIn(network: Network, places: Float64Array): number {
  const gradient = new Float64Array(places.length)
  energyOf(network, places, gradient)
  return largestForce(gradient)
}

function layoutOf(mesh: Mesh, state: FabricState, places: Float64Array, residual: number): FabricLayout {
  const mean = (nodes: readonly number[], e: 0 | 1): number =>
    nodes.reduce((sum, node) => sum + at(places, 2 * node + e), 0) / nodes.length
  return {
    state,
    baseX: Float64Array.from(mesh.base, (node) => at(places, 2 * node)),
    baseY: Float64Array.from(mesh.base, (node) => at(places, 2 * node + 1)),
    headX: Float64Array.from(mesh.heads, (nodes) => mean(nodes, 0)),
    headY: Float64Array.from(mesh.heads, (nodes) => mean(nodes, 1)),
    residual,
  }
}
