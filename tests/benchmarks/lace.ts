import { type Fabric, fabricOf } from '../../engine/fabric/index.ts'
import { networkOf } from '../../engine/fabric/layout/build.ts'
import { meshOf } from '../../engine/fabric/layout/mesh-of.ts'
import type { Network } from '../../engine/fabric/layout/network.ts'
import { gridPlaces } from '../../engine/fabric/layout/start.ts'
import { tensions } from '../../engine/fabric/layout/tension.ts'
import { readPattern } from '../../engine/intake/index.ts'
import { work } from '../../engine/needles/index.ts'

/** Eight stitches that lean together over four right-side rows, set beside one another; the rest is plain. */
const repeat = [
  'yo, k2, s2kp, k2, yo, k1',
  'k1, yo, k1, s2kp, k1, yo, k2',
  'k2, yo, s2kp, yo, k3',
  'yo, ssk, k3, k2tog, yo, k1',
] as const

/** A lace of so many loops a row and so many rows. */
export function laceOf(loops: number, rows: number): Fabric {
  const spare = loops % 8
  const [right, left] = [Math.floor(spare / 2), Math.ceil(spare / 2)]
  const plain = (count: number): string => (count === 0 ? '' : `k${count}`)
  const lace = (row: number): string =>
    [
      plain(right),
      `*${repeat[row % 4]}; rep from * to ${left === 0 ? 'end' : `last ${left} st`}`,
      plain(left),
    ]
      .filter((part) => part !== '')
      .join(', ')
  const all = Array.from({ length: rows }, (_, i) => (i % 2 === 0 ? lace(i / 2) : 'purl'))
  const text = `title: Bench\ncastOn: ${loops}\nrows:\n${all.map((row) => `  - '${row}'\n`).join('')}`
  const { pattern, issues } = readPattern({ name: 'bench.yaml', text })
  if (!pattern) throw new Error(JSON.stringify(issues))
  const { worked, issues: more } = work(pattern, 1)
  if (!worked) throw new Error(JSON.stringify(more))
  return fabricOf(worked)
}

export interface Problem {
  readonly network: Network
  /** The plain grid that both solvers start from. */
  readonly grid: Float64Array
}

export function problemOf(loops: number, rows: number): Problem {
  const mesh = meshOf(laceOf(loops, rows))
  return { network: networkOf(mesh, tensions.free, 1), grid: gridPlaces(mesh, tensions.free) }
}
