import { solve, type Workspace, workspaceOf } from './conjugate.ts'
import { energyOf } from './energy.ts'
import { fillHessian } from './hessian.ts'
import { type Matrix, matrixOf, type Slots } from './matrix.ts'
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
const near = 0.3
/** How roughly the linear system may be solved, and in how many steps at most. */
const loosest = 0.2
const mostInner = 2000
/** How far a node goes at most down from a saddle, in stitch widths, before the energy is looked at. */
const reach = 0.25
/** A step is taken when the energy falls by this share of what its slope promises. */
const promise = 1e-4
const shortest = 1e-6

interface Solver {
  readonly network: Network
  readonly places: Float64Array
  readonly curvature: { readonly matrix: Matrix; readonly slots: Slots }
  readonly room: Workspace
  readonly gradient: Float64Array
  readonly downhill: Float64Array
  readonly move: Float64Array
  readonly tried: Float64Array
  energy: number
  inner: number
}

/**
 * Moves the nodes to where the network's energy is least nearby, by Newton's method. `places`: x and y by turns.
 *
 * Far off, curvature is cut down to what is positive, so that every step goes downhill; close by, where the energy is
 * a bowl, the true curvature is used and a few steps are enough. Should it still be a saddle, the solver goes off to
 * the side.
 */
export function relax(
  network: Network,
  places: Float64Array,
  { tolerance, steps: most }: RelaxOptions,
): Relaxed {
  const room = (): Float64Array => new Float64Array(places.length)
  const solver: Solver = {
    network,
    places,
    curvature: matrixOf(network),
    room: workspaceOf(network.nodes),
    gradient: room(),
    downhill: room(),
    move: room(),
    tried: room(),
    energy: 0,
    inner: 0,
  }
  solver.energy = energyOf(network, places, solver.gradient)
  let residual = largestForce(solver.gradient)
  let steps = 0
  let scale = 1
  for (; residual > tolerance && steps < most; steps++) {
    const slope = aim(solver, forcing(residual, tolerance), residual < near && scale > 0.2)
    scale = go(solver, slope)
    residual = largestForce(solver.gradient)
  }
  return { residual, steps, inner: solver.inner }
}

/** How far the linear system is solved: roughly at first, better when close by, and no further than the goal asks. */
const forcing = (residual: number, tolerance: number): number =>
  Math.min(loosest, Math.max(residual, (0.5 * tolerance) / residual))

/** Finds where to move; gives the slope that way, which is negative. */
function aim(solver: Solver, tolerance: number, exact: boolean): number {
  const { downhill, gradient } = solver
  for (let i = 0; i < downhill.length; i++) downhill[i] = -(gradient[i] as number)
  const slope = exact ? slopeBy(solver, tolerance, 1) : 0
  return slope < 0 ? slope : slopeBy(solver, tolerance, 0)
}

/** Solves for the move, by the bold factor if that will do. */
function slopeBy(solver: Solver, tolerance: number, exact: 0 | 1): number {
  const { network, places, curvature, room, gradient, downhill, move } = solver
  fillHessian(network, places, curvature, exact)
  for (const plain of [false, true]) {
    const { steps, end } = solve(curvature.matrix, downhill, move, room, {
      tolerance,
      most: mostInner,
      reach,
      plain,
    })
    solver.inner += steps
    if (end === 'solved' || (end === 'saddle' && exact === 1)) break
  }
  let slope = 0
  for (let i = 0; i < move.length; i++) slope += (move[i] as number) * (gradient[i] as number)
  return slope
}

/** Moves as far as the energy falls, all the way or a half, a quarter … of it; gives how far. */
function go(solver: Solver, slope: number): number {
  const { network, places, gradient, move, tried } = solver
  for (let scale = 1; ; scale /= 2) {
    for (let i = 0; i < tried.length; i++) tried[i] = (places[i] as number) + scale * (move[i] as number)
    const energy = energyOf(network, tried, gradient)
    if (energy > solver.energy + promise * scale * slope && scale > shortest) continue
    places.set(tried)
    solver.energy = energy
    return scale
  }
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
