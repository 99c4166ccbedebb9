import type { Fabric, FabricLayout, FabricLoopId, FabricState } from '../fabric.ts'
import { alignTo } from './align.ts'
import { at } from './at.ts'
import { blockingPins } from './blocking.ts'
import { networkOf } from './build.ts'
import { energyOf } from './energy.ts'
import type { Mesh } from './mesh.ts'
import { meshOf } from './mesh-of.ts'
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

/** A fabric's nodes at rest. */
export interface Settled {
  readonly mesh: Mesh
  /** x and y by turns. */
  readonly places: Float64Array
  /** Largest force on a node, in spring units. */
  readonly residual: number
}

/** No force is larger when the solver stops: places are then right to about a hundredth of a stitch. */
export const settled = 1e-4
const mostSteps = 60

/**
 * Brings a fabric's nodes to rest in a state. Without pins the piece lies square: turned and shifted to lie over its own
 * plain grid.
 */
export function settle(fabric: Fabric, options: LayoutOptions): Settled {
  const { state, start, seed = 1 } = options
  const mesh = meshOf(fabric)
  const tension = tensions[state]
  const network = networkOf(mesh, tension, seed)
  const places = start ? placesFrom(mesh, fabric, start, tension) : gridPlaces(mesh, tension)
  hold(mesh, fabric, network, places, options)
  const residual =
    state === 'pinned'
      ? forceIn(network, places)
      : atRest(mesh, network, tension, places, state === 'blocked')
  return { mesh, places, residual }
}

/** Marks what stays put, and puts it there. */
function hold(
  mesh: Mesh,
  fabric: Fabric,
  network: Network,
  places: Float64Array,
  { pinnedRows = 0, pins = [] }: LayoutOptions,
): void {
  for (const line of mesh.lines.slice(0, pinnedRows)) for (const node of line) network.held[node] = 1
  for (const { loop, x, y } of pins) {
    if (!Number.isFinite(x) || !Number.isFinite(y))
      throw new Error(`layout: the pin of loop ${loop} has no place`)
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

/** Blocking pins go where the relaxed piece has its sides and points, so it is relaxed before and after. */
function atRest(
  mesh: Mesh,
  network: Network,
  tension: Tension,
  places: Float64Array,
  blocked: boolean,
): number {
  const options = { tolerance: settled, steps: mostSteps }
  const { residual } = relax(network, places, blocked ? { ...options, tolerance: 10 * settled } : options)
  const grid = gridPlaces(mesh, tension)
  if (!network.held.includes(1)) alignTo(places, grid)
  if (!blocked) return residual
  return relax({ ...network, anchors: blockingPins(mesh, places, grid) }, places, options).residual
}
