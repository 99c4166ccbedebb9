import { globSync, readFileSync } from 'node:fs'
import { seededRandom } from '../../engine/base/index.ts'
import type { Fabric, FabricLoop, FabricLoopId, Yarn, YarnPiece } from '../../engine/fabric/index.ts'
import { readPattern } from '../../engine/intake/index.ts'
import { type WorkedPattern, work } from '../../engine/needles/index.ts'
import type { Item, Pattern, Row } from '../../engine/pattern/index.ts'
import { stitch } from '../../engine/stitches/index.ts'

const folder = new URL('../../content/patterns/', import.meta.url)
export const patternFiles = globSync('*.yaml', { cwd: folder }).sort()

/** A pattern of the library, worked. */
export function workedFile(file: string, repeats: number): WorkedPattern {
  const { pattern } = readPattern({ name: file, text: readFileSync(new URL(file, folder), 'utf8') })
  const worked = pattern && work(pattern, repeats).worked
  if (!worked) throw new Error(`${file} cannot be worked`)
  return worked
}

const span = { start: 0, end: 0 }

/** Rows of stitches as a pattern; each row is right-side first. */
export function workedRows(
  castOn: number,
  rows: readonly (readonly string[])[],
  more: Partial<Pattern> = {},
): WorkedPattern {
  const made = rows.map(
    (stitches, i): Row => ({
      number: i + 1,
      side: i % 2 === 0 ? 'RS' : 'WS',
      items: stitches.map((id): Item => ({ kind: 'stitch', stitch: id, times: 1, span })),
      text: '',
      span,
    }),
  )
  const pattern: Pattern = {
    title: 'Swatch',
    castOn: { fixed: castOn },
    worked: 'flat',
    firstSide: 'RS',
    setUp: [],
    rows: made,
    growing: true,
    edges: { before: [], after: [] },
    doubleYarnOver: 'two',
    bindOffLeaves: 'extra',
    held: 0,
    draft: false,
    about: { also: [], notToConfuseWith: [], teaches: [], corrections: [] },
    ...more,
  }
  const { worked, issues } = work(pattern, 1)
  if (worked === null) throw new Error(`cannot be worked: ${JSON.stringify(issues)}`)
  return worked
}

const plain = ['k', 'k', 'k', 'p', 'p', 'k tbl', 'p tbl', 'sl']
const overs = ['yo', 'yo', 'yo2', 'm1l', 'm1rp', 'kfb', 'pfb', '(k1, yo, k1) in 1']
const decreases = [
  'k2tog',
  'ssk',
  'p2tog',
  'ssp',
  'k2tog tbl',
  'p2tog tbl',
  'k3tog',
  'sssk',
  'p3tog',
  'sk2p',
  's2kp',
  'p2sp',
  's2pp',
  'sk3p',
]

/** One row of a random lace: its stitches, and for each loop that it makes whether it was made with others in one loop. */
interface RandomRow {
  readonly stitches: string[]
  readonly siblings: boolean[]
}

/**
 * A valid lace that nobody thought up: any stitch may stand over any other, on either side. About a third of the stitches
 * are no plain ones, and the width is drawn back to where it began. `tame`: loops made in one loop are not gathered
 * with others right away.
 */
export function randomLace(seed: number, tame = true): WorkedPattern {
  const random = seededRandom(seed)
  const pick = (from: readonly string[]): string => from[Math.floor(random() * from.length)] ?? 'k'
  const castOn = 8 + Math.floor(random() * 6)
  let fresh: readonly boolean[] = Array.from({ length: castOn }, () => false)
  const rows = Array.from({ length: 8 }, () => {
    const row: RandomRow = { stitches: [], siblings: [] }
    // The row runs back over the one before.
    const ahead = fresh.toReversed()
    let grown = fresh.length - castOn
    for (let at = 0; at < ahead.length; ) {
      const chance = random()
      const id = pick(chance < 0.66 ? plain : chance < 0.83 - 0.04 * grown ? overs : decreases)
      const { takes, makes } = stitch(id)
      const taken = ahead.slice(at, at + takes)
      if (taken.length < takes || (tame && takes > 1 && taken.includes(true))) continue
      row.stitches.push(id)
      row.siblings.push(...Array.from({ length: makes }, () => takes > 0 && makes > takes))
      at += takes
      grown += makes - takes
    }
    fresh = row.siblings
    return row.stitches
  })
  return workedRows(castOn, rows)
}

export interface Crossing {
  readonly a: YarnPiece
  readonly b: YarnPiece
  readonly at: readonly [number, number]
}

interface Stretch {
  readonly piece: YarnPiece
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
}

const stretchesIn = 10

/** A piece's curve as short straight stretches. */
function stretchesOf(piece: YarnPiece): Stretch[] {
  const { curve } = piece
  const result: Stretch[] = []
  for (let i = 0; i + 7 < curve.length; i += 6) {
    const at = (t: number): readonly [number, number] =>
      [0, 1].map((k) => {
        const [a = 0, b = 0, c = 0, d = 0] = [0, 2, 4, 6].map((j) => curve[i + j + k])
        const s = 1 - t
        return a * s * s * s + 3 * b * s * s * t + 3 * c * s * t * t + d * t * t * t
      }) as [number, number]
    for (let n = 0; n < stretchesIn; n++)
      result.push({ piece, from: at(n / stretchesIn), to: at((n + 1) / stretchesIn) })
  }
  return result
}

/** Every place where the yarn of one loop crosses that of another. */
export function crossingsOf({ pieces }: Yarn): Crossing[] {
  const cell = 0.5
  const grid = new Map<string, Stretch[]>()
  const found: Crossing[] = []
  for (const stretch of pieces.flatMap(stretchesOf)) {
    const [xs, ys] = [
      [stretch.from[0], stretch.to[0]],
      [stretch.from[1], stretch.to[1]],
    ]
    const met = new Set<Stretch>()
    for (let x = Math.floor(Math.min(...xs) / cell); x <= Math.floor(Math.max(...xs) / cell); x++) {
      for (let y = Math.floor(Math.min(...ys) / cell); y <= Math.floor(Math.max(...ys) / cell); y++) {
        const key = `${x},${y}`
        const here = grid.get(key) ?? []
        for (const other of here) if (other.piece.loop !== stretch.piece.loop) met.add(other)
        grid.set(key, [...here, stretch])
      }
    }
    for (const other of met) {
      const at = meeting(stretch, other)
      if (at !== null) found.push({ a: stretch.piece, b: other.piece, at })
    }
  }
  return found
}

function meeting(p: Stretch, q: Stretch): readonly [number, number] | null {
  const [ax, ay] = [p.to[0] - p.from[0], p.to[1] - p.from[1]]
  const [bx, by] = [q.to[0] - q.from[0], q.to[1] - q.from[1]]
  const across = ax * by - ay * bx
  if (Math.abs(across) < 1e-12) return null
  const [cx, cy] = [q.from[0] - p.from[0], q.from[1] - p.from[1]]
  const [s, t] = [(cx * by - cy * bx) / across, (cx * ay - cy * ax) / across]
  return s >= 0 && s < 1 && t >= 0 && t < 1 ? [p.from[0] + s * ax, p.from[1] + s * ay] : null
}

/**
 * Which of two pieces the loop graph puts nearer to the eye, seen from the right side: 1 for a, -1 for b, null where it
 * has nothing to say. Told from parents and faces, apart from what the engine makes of them.
 */
export function orderToldBy(fabric: Fabric, a: YarnPiece, b: YarnPiece): 1 | -1 | null {
  return childOver(fabric, a, b) ?? flipped(childOver(fabric, b, a)) ?? inOneStack(fabric, a, b)
}

const flipped = (order: 1 | -1 | null): 1 | -1 | null => (order === null ? null : order === 1 ? -1 : 1)
const isBody = ({ part }: YarnPiece): boolean => part === 'leg' || part === 'head'

/** A knit comes out over its parent and its feet lie behind; a purl the other way round. */
function childOver({ loops }: Fabric, child: YarnPiece, parent: YarnPiece): 1 | -1 | null {
  const loop = loops[child.loop]
  if (!loop?.parents.includes(parent.loop) || !isBody(parent)) return null
  const over = (loop.face === 'knit') !== liesUnderBar(loops, loop, parent.loop)
  if (child.part === 'leg') return over ? 1 : -1
  return child.part === 'sinker' ? (over ? -1 : 1) : null
}

/** The second loop of a knit into front and back has the old loop as a bar across its feet. */
function liesUnderBar(loops: readonly FabricLoop[], loop: FabricLoop, parent: FabricLoopId): boolean {
  const shut = (one: FabricLoop): boolean => one.twisted[one.parents.indexOf(parent)] === true
  const eldest = loops[loops[parent]?.children[0] ?? -1]
  return shut(loop) && eldest !== undefined && eldest.id !== loop.id && !shut(eldest)
}

/** Parents of one decrease keep their order from front to back. */
function inOneStack({ loops }: Fabric, a: YarnPiece, b: YarnPiece): 1 | -1 | null {
  if (!isBody(a) || !isBody(b)) return null
  const child = loops.find(({ parents }) => parents.includes(a.loop) && parents.includes(b.loop))
  return child === undefined ? null : child.parents.indexOf(a.loop) < child.parents.indexOf(b.loop) ? 1 : -1
}

export interface Verdict {
  readonly checked: number
  readonly wrong: readonly string[]
}

/** Every crossing that the loop graph has a word on, with those that lie the other way or in one depth. */
export function verdictOn(yarn: Yarn): Verdict {
  const sign = yarn.side === 'right' ? 1 : -1
  let checked = 0
  const wrong: string[] = []
  for (const { a, b, at } of crossingsOf(yarn)) {
    const told = orderToldBy(yarn.fabric, a, b)
    if (told === null) continue
    checked += 1
    const drawn = Math.sign(a.depth - b.depth) * sign
    if (drawn !== told)
      wrong.push(
        `${a.part} of ${a.loop} and ${b.part} of ${b.loop} at ${at.map((n) => n.toFixed(2)).join(', ')}: ${drawn === 0 ? 'tie' : 'wrong'}`,
      )
  }
  return { checked, wrong }
}
