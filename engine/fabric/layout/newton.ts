import { solve, workspaceOf } from './conjugate.ts'
import { energyOf } from './energy.ts'
import { fillHessian } from './hessian.ts'
import { matrixOf } from './matrix.ts'
import type { Network } from './network.ts'

export interface Relaxed {
  /** Largest force on a node when the solver stopped. */
  readonly residual: number
  /** Newton steps, and conjugate gradient steps within them. */
  readonly steps: number
  readonly inner: number
}

export interface RelaxOptions {
  /** Stop when no force is larger. */
  readonly tolerance: number
  /** Stop after so many steps. */
  readonly steps: number
}

/** While forces are larger than this, curvature that may be negative is left out. */
const near = 0.1
/** A step is taken when the energy falls by this share of what its slope promises. */
const promise = 1e-4
const mostInner = 2000
/** How far a node goes at most down from a saddle, before the energy is looked at. */
const reach = 0.25

/**
 * Moves the nodes to where the network's energy is least nearby, by Newton's method. `places`: x and y by turns.
 *
 * Far off, curvature is cut down to what is positive, so that every step goes downhill; close by, where the energy is
 * a bowl, the true curvature is used and a few steps are enough. Should it still be a saddle, the solver goes off to the side.
 */
export function relax(network: Network, places: Float64Array, { tolerance, steps: most }: RelaxOptions): Relaxed {
  const curvature = matrixOf(network)
  const room = workspaceOf(network.nodes)
  const size = places.length
  const [gradient, right, move, tried] = [0, 0, 0, 0].map(() => new Float64Array(size)) as Four<Float64Array>
  let energy = energyOf(network, places, gradient)
  let residual = largestForce(gradient)
  let [steps, inner] = [0, 0]
  let cautious = false
  for (; residual > tolerance && steps < most; steps++) {
    for (let i = 0; i < size; i++) right[i] = -(gradient[i] as number)
    const options = { tolerance: forcing(residual, tolerance), most: mostInner, reach }
    const step = (exact: number): number => {
      fillHessian(network, places, curvature, exact)
      inner += solve(curvature.matrix, right, move, room, options).steps
      if (exact===0 && globalThis.NEG) globalThis.NEGC=(globalThis.NEGC??0)+1
 return dot(move, gradient)
    }
    let slope = residual < near && !cautious ? step(1) : step(0)
    if (slope >= 0) slope = step(0)
    let scale = 2
    let next: number
    do {
      scale /= 2
      for (let i = 0; i < size; i++) tried[i] = (places[i] as number) + scale * (move[i] as number)
      next = energyOf(network, tried, gradient)
    } while (next > energy + promise * scale * slope && scale > 1e-6)
    cautious = scale < 0.2
    places.set(tried)
    energy = next
    residual = largestForce(gradient)
  }
  return { residual, steps, inner }
}

type Four<T> = [T, T, T, T]

/** How far the linear system is solved: roughly at first, better when close by, and no further than the goal asks. */
const forcing = (residual: number, tolerance: number): number =>
  Math.max(Math.min(0.1, residual), Math.min(0.1, (0.2 * tolerance) / residual))

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number)
  return sum
}

export function largestForce(gradient: Float64Array): number {
  let most = 0
  for (let i = 0; i < gradient.length; i += 2) {
    const x = gradient[i] as number
    const y = gradient[i + 1] as number
    most = Math.max(most, x * x + y * y)
  }
  return Math.sqrt(most)
}
