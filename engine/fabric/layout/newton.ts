import { solve, workspaceOf } from './conjugate.ts'
import { energyOf } from './energy.ts'
import { fillHessian } from './hessian.ts'
import { matrixOf } from './matrix.ts'
import type { Network } from './network.ts'

export interface Relaxed {
  /** Largest force on a node when the solver stopped. */
  readonly residual: number
  readonly steps: number
  readonly inner: number
}

export interface RelaxOptions {
  /** Stop when no force is larger. */
  readonly tolerance: number
  readonly steps: number
  readonly trace?: (text: string) => void
}

/** Moves the nodes to where the network's energy is least nearby, by Newton's method. `places`: x and y by turns. */
export function relax(network: Network, places: Float64Array, options: RelaxOptions): Relaxed {
  const { matrix, slots } = matrixOf(network)
  const room = workspaceOf(network.nodes)
  const gradient = new Float64Array(places.length)
  const right = new Float64Array(places.length)
  const move = new Float64Array(places.length)
  const tried = new Float64Array(places.length)
  let energy = energyOf(network, places, gradient)
  let residual = largestForce(gradient)
  let [steps, inner] = [0, 0]
  let exact = 0
  while (residual > options.tolerance && steps < options.steps) {
    steps++
    fillHessian(network, places, { matrix, slots }, exact)
    for (let i = 0; i < right.length; i++) right[i] = -(gradient[i] as number)
    const solved = solve(matrix, right, move, room, forcing(residual), 2000)
    inner += solved.steps
    let slope = 0
    for (let i = 0; i < move.length; i++) slope += (move[i] as number) * (gradient[i] as number)
    let scale = 1
    let next = Number.POSITIVE_INFINITY
    for (let tries = 0; tries < 30; tries++) {
      for (let i = 0; i < tried.length; i++) tried[i] = (places[i] as number) + scale * (move[i] as number)
      next = energyOf(network, tried, gradient)
      if (next <= energy + 1e-4 * scale * slope) break
      scale /= 2
    }
    places.set(tried)
    energy = next
    const before = residual
    residual = largestForce(gradient)
    options.trace?.(`${steps} E ${energy.toFixed(6)} res ${residual.toExponential(2)} cg ${solved.steps} ${solved.negative ? 'NEG' : ''} scale ${scale} exact ${exact}`)
    exact = solved.negative ? 0 : residual < 0.1 ? 1 : 0; void before
  }
  return { residual, steps, inner }
}

const forcing = (r: number): number => Math.min(0.2, Math.max(1e-4, r))

export function largestForce(gradient: Float64Array): number {
  let most = 0
  for (let i = 0; i < gradient.length; i += 2) {
    const x = gradient[i] as number
    const y = gradient[i + 1] as number
    most = Math.max(most, x * x + y * y)
  }
  return Math.sqrt(most)
}
