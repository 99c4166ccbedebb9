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
  /** For each tolerance, when no force was larger for the first time; Infinity where that never was. */
  readonly milliseconds: readonly number[]
  readonly energy: number
}

/** A node once d3-force has filled it in. */
type Node = { readonly x: number; readonly y: number; vx: number; vy: number }

/**
 * Relaxes the same network with d3-force: its simulation moves the nodes, one force of ours gives them the gradient of
 * the same energy. It starts from the same grid and never cools, since it would stop before it is done. Runs until it is
 * down to the last tolerance, `most` ticks at most.
 */
export function relaxWithPeer(
  { network, grid }: Problem,
  { velocityDecay, push }: PeerSettings,
  tolerances: readonly number[],
  most: number,
): PeerRun {
  const nodes = Array.from(
    { length: network.nodes },
    (_, i): SimulationNodeDatum => ({ x: grid[2 * i] ?? 0, y: grid[2 * i + 1] ?? 0 }),
  )
  const places = new Float64Array(grid.length)
  const gradient = new Float64Array(grid.length)
  let energy = Number.POSITIVE_INFINITY
  const pull = (): void => {
    for (let i = 0; i < nodes.length; i++) {
      const node = nodes[i] as Node
      places[2 * i] = node.x
      places[2 * i + 1] = node.y
    }
    energy = energyOf(network, places, gradient)
    for (let i = 0; i < nodes.length; i++) {
      const node = nodes[i] as Node
      node.vx -= push * (gradient[2 * i] as number)
      node.vy -= push * (gradient[2 * i + 1] as number)
    }
  }
  const start = performance.now()
  const simulation = forceSimulation(nodes)
    .alphaDecay(0)
    .velocityDecay(velocityDecay)
    .force('energy', pull)
    .stop()
  const milliseconds: number[] = []
  let ticks = 0
  for (; milliseconds.length < tolerances.length && ticks < most; ticks++) {
    simulation.tick()
    const residual = largestForce(gradient)
    while (residual <= (tolerances[milliseconds.length] ?? -1)) milliseconds.push(performance.now() - start)
  }
  while (milliseconds.length < tolerances.length) milliseconds.push(Number.POSITIVE_INFINITY)
  return { ticks, milliseconds, energy }
}
