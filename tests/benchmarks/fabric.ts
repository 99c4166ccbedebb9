/**
 * How fast a fabric comes to rest: the engine's solver beside d3-force, which is given the same energy, the same grid to
 * start from and the same force to come down to. Prints a table; `npm run bench`.
 *
 * d3-force runs with the settings that served it best of those tried at each size (velocity decay 0.01 to 0.4, push 0.1 to
 * 0.3); with its own velocity decay of 0.4 it takes several times as long. Medians of several runs, the two by turns, after
 * a first one each that is shown apart: there the code is not compiled yet.
 */
import { layOutFabric } from '../../engine/fabric/index.ts'
import { energyOf } from '../../engine/fabric/layout/energy.ts'
import { relax } from '../../engine/fabric/layout/newton.ts'
import { laceOf, type Problem, problemOf } from './lace.ts'
import { type PeerSettings, relaxWithPeer } from './peer.ts'

interface Size extends PeerSettings {
  readonly loops: number
  readonly rows: number
  readonly runs: number
  readonly mostTicks: number
  /** How much faster we want to be. */
  readonly goal: number | null
}

const sizes: readonly Size[] = [
  { loops: 17, rows: 12, velocityDecay: 0.15, push: 0.3, runs: 15, mostTicks: 5_000, goal: null },
  { loops: 41, rows: 24, velocityDecay: 0.05, push: 0.2, runs: 11, mostTicks: 5_000, goal: 1.5 },
  { loops: 200, rows: 200, velocityDecay: 0.03, push: 0.15, runs: 2, mostTicks: 12_000, goal: 10 },
]

/** Largest force left, in spring units. The engine stops at the second. */
const tolerances = [1e-3, 1e-4] as const

interface Times {
  readonly own: readonly number[]
  readonly peer: readonly number[]
}

function runOnce(problem: Problem, size: Size): Times {
  const energies: number[] = []
  const own = tolerances.map((tolerance) => {
    const places = problem.grid.slice()
    const start = performance.now()
    const { residual } = relax(problem.network, places, { tolerance, steps: 100 })
    const time = performance.now() - start
    if (residual > tolerance) throw new Error(`the engine stopped at a force of ${residual}`)
    energies.push(energyOf(problem.network, places, new Float64Array(places.length)))
    return time
  })
  const peer = relaxWithPeer(problem, size, tolerances, size.mostTicks)
  const [rough = 0, fine = 0] = energies
  // Both must have found as good a place of rest, or times would say nothing. A large piece has several, nearly alike.
  if (Math.abs(fine - peer.energy) > 0.005 * rough)
    throw new Error(`energies differ: ${fine} and ${peer.energy}`)
  return { own, peer: peer.milliseconds }
}

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b)
  return ((sorted[(sorted.length - 1) >> 1] ?? Number.NaN) + (sorted[sorted.length >> 1] ?? Number.NaN)) / 2
}

const milliseconds = (value: number): string =>
  Number.isFinite(value) ? value.toFixed(value < 100 ? 1 : 0) : 'never'

function timeOfWhole({ loops, rows }: Size): number {
  const times = Array.from({ length: 3 }, () => {
    const fabric = laceOf(loops, rows)
    const start = performance.now()
    layOutFabric(fabric, { state: 'free' })
    return performance.now() - start
  })
  return median(times)
}

const columns = [
  'loops',
  'force',
  'first: own',
  'd3-force',
  'median: own',
  'd3-force',
  'ratio',
  'goal',
  'whole layout',
]
const rows = sizes.flatMap((size) => {
  const problem = problemOf(size.loops, size.rows)
  const first = runOnce(problem, size)
  const later = Array.from({ length: size.runs }, () => runOnce(problem, size))
  const whole = milliseconds(timeOfWhole(size))
  return tolerances.map((tolerance, i) => {
    const [own, peer] = [
      median(later.map((times) => times.own[i] ?? 0)),
      median(later.map((times) => times.peer[i] ?? 0)),
    ]
    return [
      `${size.loops} x ${size.rows}`,
      tolerance.toExponential(0),
      milliseconds(first.own[i] ?? Number.NaN),
      milliseconds(first.peer[i] ?? Number.NaN),
      milliseconds(own),
      milliseconds(peer),
      `${(peer / own).toFixed(1)}x`,
      size.goal === null ? '' : `${size.goal}x`,
      i === tolerances.length - 1 ? whole : '',
    ]
  })
})

const widths = columns.map((title, i) => Math.max(title.length, ...rows.map((row) => row[i]?.length ?? 0)))
const line = (cells: readonly string[]): string =>
  cells.map((cell, i) => cell.padStart(widths[i] ?? 0)).join('  ')
console.log(`Coming to rest, milliseconds. Node ${process.version}`)
for (const row of [columns, ...rows]) console.log(line(row))
