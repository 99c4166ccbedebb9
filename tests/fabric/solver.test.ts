import { globSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../engine/base/index.ts'
import { at } from '../../engine/fabric/layout/at.ts'
import { checked, networkOf } from '../../engine/fabric/layout/build.ts'
import { solve, workspaceOf } from '../../engine/fabric/layout/conjugate.ts'
import { energyOf } from '../../engine/fabric/layout/energy.ts'
import { fillHessian } from '../../engine/fabric/layout/hessian.ts'
import { type Matrix, matrixOf } from '../../engine/fabric/layout/matrix.ts'
import { meshOf } from '../../engine/fabric/layout/mesh-of.ts'
import type { Network } from '../../engine/fabric/layout/network.ts'
import { relax } from '../../engine/fabric/layout/newton.ts'
import { gridPlaces } from '../../engine/fabric/layout/start.ts'
import { tensions } from '../../engine/fabric/layout/tension.ts'
import { fabricFor } from './support.ts'

/** Every kind of part: decreases, yarn overs, an increase, a slipped loop, a crossing, a bind-off in mid-row. */
const everything = fabricFor(
  13,
  [
    'k2tog, yo, k1, (k1, yo, k1) in next st, k3, sl1, 1/1 RC, yo twice, s2kp',
    'purl',
    'k3, m1l, k4, rli, k8',
    'p4, bind off 4 sts, p8',
  ],
  1,
  'growing: true\n',
)

interface Case {
  readonly network: Network
  readonly places: Float64Array
}

/** A network in disorder, so that many areas are short and all forces are at work. */
function disorder(seed: number, away = 0.35): Case {
  const mesh = meshOf(everything)
  const random = seededRandom(seed)
  const places = gridPlaces(mesh, tensions.free).map((value) => value + away * (2 * random() - 1))
  const node = Int32Array.of(3, 8)
  const anchors = {
    node,
    normalX: Float64Array.of(1, 0.6),
    normalY: Float64Array.of(0, 0.8),
    offset: Float64Array.of(2, -1),
    stiffness: Float64Array.of(4, 3),
  }
  return { network: { ...networkOf(mesh, tensions.unblocked, seed), anchors }, places }
}

const gradientAt = ({ network }: Case, places: Float64Array): Float64Array => {
  const gradient = new Float64Array(places.length)
  energyOf(network, places, gradient)
  return gradient
}

/** The matrix as rows of numbers. */
function dense({ size, rowStart, column, values, diagonal }: Matrix): Float64Array[] {
  const rows = Array.from({ length: 2 * size }, () => new Float64Array(2 * size))
  const put = (i: number, j: number, value: number): void => {
    at(rows, i)[j] = value
    at(rows, j)[i] = value
  }
  for (let i = 0; i < size; i++) {
    put(2 * i, 2 * i, at(diagonal, 3 * i))
    put(2 * i, 2 * i + 1, at(diagonal, 3 * i + 1))
    put(2 * i + 1, 2 * i + 1, at(diagonal, 3 * i + 2))
    for (let k = at(rowStart, i); k < at(rowStart, i + 1); k++) {
      for (const [e, f] of [
        [0, 0],
        [0, 1],
        [1, 0],
        [1, 1],
      ] as const) {
        put(2 * i + e, 2 * at(column, k) + f, at(values, 4 * k + 2 * e + f))
      }
    }
  }
  return rows
}

const times = (rows: readonly Float64Array[], x: Float64Array): Float64Array =>
  Float64Array.from(rows, (row) => row.reduce((sum, value, i) => sum + value * at(x, i), 0))

const dot = (a: Float64Array, b: Float64Array): number =>
  a.reduce((sum, value, i) => sum + value * at(b, i), 0)

const largest = (list: Float64Array): number =>
  list.reduce((most, value) => Math.max(most, Math.abs(value)), 0)

describe('the energy', () => {
  it('has areas at work in disorder, and none in a plain grid', () => {
    const { network, places } = disorder(1)
    const without = { ...network, areas: { ...network.areas, stiffness: 0 } }
    const gradient = new Float64Array(places.length)
    expect(energyOf(network, places, gradient)).toBeGreaterThan(energyOf(without, places, gradient) + 1)
  })

  it.each([1, 2, 3])('has the gradient that finite differences give (seed %i)', (seed) => {
    const one = disorder(seed)
    const { network, places } = one
    const gradient = gradientAt(one, places)
    const step = 1e-6
    const scratch = new Float64Array(places.length)
    const differences = places.map((value, i) => {
      const moved = places.slice()
      moved[i] = value + step
      const up = energyOf(network, moved, scratch)
      moved[i] = value - step
      return (up - energyOf(network, moved, scratch)) / (2 * step)
    })
    expect(largest(gradient)).toBeGreaterThan(1)
    expect(largest(differences.map((value, i) => value - at(gradient, i)))).toBeLessThan(1e-6)
  })

  it('has no gradient at nodes that are held', () => {
    const one = disorder(1)
    one.network.held[5] = 1
    const gradient = gradientAt(one, one.places)
    expect([gradient[10], gradient[11]]).toEqual([0, 0])
    expect(gradient[12]).not.toBe(0)
  })
})

describe('the curvature', () => {
  it('is what finite differences of the gradient give, where it is asked for exactly', () => {
    const one = disorder(4, 0.15)
    const curvature = matrixOf(one.network)
    fillHessian(one.network, one.places, curvature, 1)
    const rows = dense(curvature.matrix)
    const step = 1e-6
    let worst = 0
    for (let i = 0; i < one.places.length; i++) {
      const moved = one.places.slice()
      moved[i] = at(one.places, i) + step
      const up = gradientAt(one, moved)
      moved[i] = at(one.places, i) - step
      const down = gradientAt(one, moved)
      for (let j = 0; j < up.length; j++) {
        const difference = (at(up, j) - at(down, j)) / (2 * step)
        worst = Math.max(worst, Math.abs(difference - at(at(rows, i), j)))
      }
    }
    // Blocks of up to 50 are kept in single precision.
    expect(worst).toBeLessThan(5e-5)
  })

  it('is positive where it is cut down, and is not in the same disorder where it is exact', () => {
    const one = disorder(5)
    const curvature = matrixOf(one.network)
    const random = seededRandom(9)
    const directions = Array.from({ length: 400 }, () => one.places.map(() => 2 * random() - 1))
    const least = (exact: number): number => {
      fillHessian(one.network, one.places, curvature, exact)
      const rows = dense(curvature.matrix)
      return Math.min(...directions.map((x) => dot(x, times(rows, x)) / dot(x, x)))
    }
    expect(least(0)).toBeGreaterThan(0)
    fillHessian(one.network, one.places, curvature, 1)
    const x = new Float64Array(one.places.length)
    const options = { tolerance: 1e-10, most: 500, reach: 0.25, plain: true }
    expect(solve(curvature.matrix, at(directions, 0), x, workspaceOf(one.network.nodes), options).end).toBe(
      'saddle',
    )
  })
})

describe('conjugate gradients', () => {
  it.each([false, true])('solve the system (plain factor: %s)', (plain) => {
    const one = disorder(6, 0.1)
    const curvature = matrixOf(one.network)
    fillHessian(one.network, one.places, curvature, 0)
    const right = gradientAt(one, one.places)
    const x = new Float64Array(right.length)
    const options = { tolerance: 1e-12, most: 1000, reach: 0.25, plain }
    const { steps, end } = solve(curvature.matrix, right, x, workspaceOf(one.network.nodes), options)
    expect(end).toBe('solved')
    expect(steps).toBeGreaterThan(5)
    const product = times(dense(curvature.matrix), x)
    expect(largest(product.map((value, i) => value - at(right, i))) / largest(right)).toBeLessThan(1e-8)
  })

  it('take fewer steps by the bold factor than by the plain one', () => {
    const mesh = meshOf(fabricFor(31, ['k1, *yo, k1, sk2p, k1, yo, k1; rep from * to end', 'purl'], 10))
    const network = networkOf(mesh, tensions.free, 1)
    const places = gridPlaces(mesh, tensions.free)
    relax(network, places, { tolerance: 1e-2, steps: 50 })
    const curvature = matrixOf(network)
    fillHessian(network, places, curvature, 1)
    const right = gradientAt({ network, places }, places)
    const steps = [false, true].map((plain) => {
      const options = { tolerance: 1e-3, most: 1000, reach: 0.25, plain }
      return solve(
        curvature.matrix,
        right,
        new Float64Array(right.length),
        workspaceOf(network.nodes),
        options,
      ).steps
    })
    expect(at(steps, 0)).toBeLessThan(0.7 * at(steps, 1))
  })

  it('leave held nodes where they are', () => {
    const one = disorder(7, 0.1)
    for (const node of [0, 5, 20]) one.network.held[node] = 1
    const before = one.places.slice()
    const { residual } = relax(one.network, one.places, { tolerance: 1e-4, steps: 100 })
    expect(residual).toBeLessThanOrEqual(1e-4)
    for (const node of [0, 5, 20]) {
      expect(one.places[2 * node]).toBe(before[2 * node])
      expect(one.places[2 * node + 1]).toBe(before[2 * node + 1])
    }
    expect(largest(one.places.map((value, i) => value - at(before, i)))).toBeGreaterThan(0.1)
  })
})

describe('Newton steps', () => {
  it.each([1, 2, 3, 4, 5])('come to rest from disorder (seed %i)', (seed) => {
    const { network, places } = disorder(seed)
    const before = energyOf(network, places, new Float64Array(places.length))
    const { residual, steps } = relax(network, places, { tolerance: 1e-8, steps: 100 })
    expect(residual).toBeLessThanOrEqual(1e-8)
    expect(steps).toBeLessThan(60)
    expect(energyOf(network, places, new Float64Array(places.length))).toBeLessThan(before)
  })
})

describe('an index that is not there', () => {
  it('is told and not drawn', () => {
    expect(() => at([1, 2], 2)).toThrow('no entry 2')
    expect(() => at(new Float64Array(2), -1)).toThrow('no entry -1')
    expect(at([1, 2], 1)).toBe(2)
  })

  it('is refused in a network', () => {
    const { network } = disorder(1)
    const { springs } = network
    expect(checked(network)).toBe(network)
    const stray = (b: number): Network => ({
      ...network,
      springs: { ...springs, b: Int32Array.from(springs.b).fill(b, 7, 8) },
    })
    expect(() => checked(stray(network.nodes))).toThrow(`node ${network.nodes}`)
    expect(() => checked(stray(-1))).toThrow('node -1')
    const length = Float64Array.from(springs.length).fill(Number.NaN, 3, 4)
    expect(() => checked({ ...network, springs: { ...springs, length } })).toThrow('NaN')
  })
})

describe('the same numbers everywhere', () => {
  it('need arithmetic and square roots alone: other functions may differ in the last digit from one engine to the next', () => {
    const folder = new URL('../../engine/fabric/layout/', import.meta.url)
    const files = globSync('*.ts', { cwd: folder })
    expect(files.length).toBeGreaterThan(15)
    const used = files.flatMap(
      (file) => readFileSync(new URL(file, folder), 'utf8').match(/Math\.\w+/g) ?? [],
    )
    expect(new Set(used)).toEqual(
      new Set(['Math.sqrt', 'Math.min', 'Math.max', 'Math.abs', 'Math.floor', 'Math.ceil', 'Math.sign']),
    )
  })
})
