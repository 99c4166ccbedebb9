import { forceSimulation, type SimulationNodeDatum } from 'd3-force'
import { energyOf } from '../../engine/fabric/layout/energy.ts'
import { largestForce } from '../../engine/fabric/layout/newton.ts'
import type { Problem } from './lace.ts'

export interface PeerSettings {
  /** Share of its speed that a node loses in a tick. */
  readonly velocityDecay: number
  /** Speed that a force of 1 gives in a tick. */
  readonly push: number
}

export interface PeerRun {
  readonly ticks: number
  /** The first tick after which no force was larger, for each tolerance. */
  readonly milliseconds: readonly number[]
  readonly places: Float64Array
}

/**
 * Relaxes the same network with d3-force: its simulation moves the nodes, one force of ours gives them the gradient of the
 * same energy. It never cools, since it would stop before it is done. Runs until it is down to the last tolerance.
 */
export function relaxWithPeer(
  { network, grid }: Problem,
  settings: PeerSettings,
  tolerances: readonly number[],
  most: number,
): PeerRun {
  const nodes: SimulationNodeDatum[] = Array.from({ length: network.nodes }, (_, i) => ({
    x: grid[2 * i] ?? 0,
    y: grid[2 * i + 1] ?? 0,
    vx: 0,
    vy: 0,
  }))
  const places = new Float64Array(grid.length)
  const gradient = new Float64Array(grid.length)
  let residual = Number.POSITIVE_INFINITY
  const pull = (): void => {
    for (let i = 0; i < nodes.length; i++) {
      const node = nodes[i] as Required<SimulationNodeDatum>
      places[2 * i] = node.x
      places[2 * i + 1] = node.y
    }
    energyOf(network, places, gradient)
    residual = largestForce(gradient)
    for (let i = 0; i < nodes.length; i++) {
      const node = nodes[i] as Required<SimulationNodeDatum>
      node.vx -= settings.push * (gradient[2 * i] as number)
      node.vy -= settings.push * (gradient[2 * i + 1] as number)
    }
  }
  const start = performance.now()
  const simulation = forceSimulation(nodes)
    .alphaDecay(0)
    .velocityDecay(settings.velocityDecay)
    .force('energy', pull)
    .stop()
  const milliseconds: number[] = []
  let ticks = 0
  while (milliseconds.length < tolerances.length && ticks < most) {
    simulation.tick()
    ticks++
    while (residual <= (tolerances[milliseconds.length] ?? -1)) milliseconds.push(performance.now() - start)
  }
  while (milliseconds.length < tolerances.length) milliseconds.push(Number.POSITIVE_INFINITY)
  return { ticks, milliseconds, places }
}
