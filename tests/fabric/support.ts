import { globSync, readFileSync } from 'node:fs'
import { seededRandom } from '../../engine/base/index.ts'
import { type Fabric, fabricOf } from '../../engine/fabric/index.ts'
import { trianglesOf } from '../../engine/fabric/layout/areas.ts'
import { at } from '../../engine/fabric/layout/at.ts'
import type { Mesh } from '../../engine/fabric/layout/mesh.ts'
import { readPattern } from '../../engine/intake/index.ts'
import { type WorkedPattern, work } from '../../engine/needles/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { fileOf } from '../support.ts'

const folder = new URL('../../content/patterns/', import.meta.url)

/** Every pattern of the library, by the name of its file. */
export const library: readonly string[] = globSync('*.yaml', { cwd: folder }).sort()

export function libraryPattern(file: string): Pattern {
  const { pattern, issues } = readPattern({ name: file, text: readFileSync(new URL(file, folder), 'utf8') })
  if (!pattern) throw new Error(`${file} is not read: ${JSON.stringify(issues)}`)
  return pattern
}

/** The pattern with its rows worked so many times over. */
export const repeatRows = (pattern: Pattern, times: number): Pattern => ({
  ...pattern,
  rows: Array.from({ length: times }, (_, i) =>
    pattern.rows.map((row) => ({ ...row, number: row.number + i * pattern.rows.length })),
  ).flat(),
})

/** As often as it takes for so many rows. */
export const atLeastRows = (pattern: Pattern, rows: number): Pattern =>
  repeatRows(pattern, Math.max(1, Math.ceil(rows / pattern.rows.length)))

export function workedPattern(pattern: Pattern, repeats: number): WorkedPattern {
  const { worked, issues } = work(pattern, repeats)
  if (!worked) throw new Error(`not worked: ${JSON.stringify(issues)}`)
  return worked
}

/** The fabric of a pattern file's rows over a fixed cast-on, `times` times over. */
export function fabricFor(castOn: number, rows: readonly string[], times = 1, more = ''): Fabric {
  const { pattern, issues } = readPattern({ name: 'test', text: fileOf(String(castOn), rows, more) })
  if (!pattern) throw new Error(`not read: ${JSON.stringify(issues)}`)
  return fabricOf(workedPattern(repeatRows(pattern, times), 1))
}

/** Twice the area of each triangle of the mesh that must stay the right way up; at most 0 where it is not. */
export function* areas(mesh: Mesh, places: Float64Array): Generator<number> {
  for (const cell of mesh.cells) {
    for (const [a, b, c] of trianglesOf(cell)) {
      const side = (node: number, e: 0 | 1): number => at(places, 2 * node + e) - at(places, 2 * a + e)
      yield side(b, 0) * side(c, 1) - side(c, 0) * side(b, 1)
    }
  }
}

export const leastArea = (mesh: Mesh, places: Float64Array): number =>
  [...areas(mesh, places)].reduce((least, area) => Math.min(least, area), Number.POSITIVE_INFINITY)

const rightSide = {
  1: ['k2tog', 'ssk'],
  2: ['sk2p', 's2kp', 'k3tog'],
  plain: ['k1', 'k1', 'k1', 'p1'],
} as const
const wrongSide = { 1: ['p2tog', 'ssp'], 2: ['p3tog'], plain: ['p1', 'p1', 'p1', 'k1'] } as const

/** A row over `count` loops that gives back as many: decreases, and the yarn overs that make up for them, anywhere. */
function randomRow(random: () => number, count: number, side: 'RS' | 'WS'): string {
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T
  const stitches = side === 'RS' ? rightSide : wrongSide
  const row: string[] = []
  let owed = 0
  for (let left = count; left > 0; ) {
    const gone = left > 3 && random() < 0.3 ? (random() < 0.6 ? 1 : 2) : 0
    row.push(gone === 0 ? pick(stitches.plain) : pick<string>(stitches[gone as 1 | 2]))
    left -= gone + 1
    owed += gone
  }
  while (owed > 0) {
    const place = 1 + Math.floor(random() * (row.length - 1))
    const beside = [row[place - 1], row[place]].some((one) => one?.startsWith('yo'))
    if (beside) {
      if (random() < 0.5) continue
    }
    const twice = owed > 1 && random() < 0.25
    row.splice(place, 0, twice ? 'yo twice' : 'yo')
    owed -= twice ? 2 : 1
  }
  return row.join(', ')
}

/** A lace of its own for each seed: some rest on the wrong side, some work lace on both. */
export function randomLace(seed: number): { readonly castOn: number; readonly rows: readonly string[] } {
  const random = seededRandom(seed)
  const castOn = 12 + Math.floor(random() * 20)
  const bothSides = random() < 0.35
  const length = 2 * (4 + Math.floor(random() * 5))
  const rows = Array.from({ length }, (_, i) =>
    i % 2 === 0 ? randomRow(random, castOn, 'RS') : bothSides ? randomRow(random, castOn, 'WS') : 'purl',
  )
  return { castOn, rows }
}
