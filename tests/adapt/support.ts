import type { Adaptation, Adapted, Refusal } from '../../engine/adapt/index.ts'
import { modulo, seededRandom } from '../../engine/base/index.ts'
import { prove } from '../../engine/counts/index.ts'
import { type Fabric, fabricOf } from '../../engine/fabric/index.ts'
import { work } from '../../engine/needles/index.ts'
import { printRow, readRow } from '../../engine/notation/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { workedAgain } from '../../engine/pattern/index.ts'
import { workedPattern } from '../fabric/support.ts'
import { withoutSpans } from '../notation/arbitrary-row.ts'
import { check } from '../support.ts'

/** A sound pattern from its rows; fails the test where it is not sound. */
export function pattern(castOn: string, rows: readonly string[], more = ''): Pattern {
  const { pattern: read, sound, issues } = check(castOn, rows, more)
  if (!read || !sound) throw new Error(`not sound: ${JSON.stringify(issues)}`)
  return read
}

export function done(adaptation: Adaptation): Adapted {
  if (!adaptation.ok) throw new Error(`refused: ${adaptation.refusal.sentence}`)
  return adaptation
}

export function refused(adaptation: Adaptation): Refusal {
  if (adaptation.ok) throw new Error('not refused')
  return adaptation.refusal
}

export const printed = ({ rows }: Pattern): string[] => rows.map(({ items }) => printRow(items))

/** What every adapted pattern must hold; empty where it does. An oracle apart from the engine's own last check. */
export function faults(adapted: Pattern): string[] {
  const proof = prove(adapted)
  const found = proof.issues.filter(({ severity }) => severity === 'error').map(({ code }) => code as string)
  for (const n of 'fixed' in adapted.castOn ? [1] : [1, 2, 3, 4, 5])
    if (work(adapted, n).worked === null) found.push(`cannot be worked over ${n} repeats`)
  for (const { items, number } of [...adapted.setUp, ...adapted.rows]) {
    const { items: read, issues } = readRow(printRow(items), adapted)
    if (issues.length > 0 || JSON.stringify(withoutSpans(read)) !== JSON.stringify(withoutSpans(items)))
      found.push(`row ${number} does not read back`)
  }
  return found
}

/** One loop as its neighbours in the fabric see it. `from`: the loops that it is drawn through, by row and place from the right. */
interface Seen {
  readonly look: string
  readonly from: readonly (readonly [row: number, x: number])[]
}

/** Each row's line of loops from right to left. */
function seenRows(fabric: Fabric): Seen[][] {
  const places = new Map<number, readonly [number, number]>()
  return fabric.lines.map(({ loops }, row) => {
    const line = loops.toReversed()
    const seen = line.map((id): Seen => {
      const loop = fabric.loops[id]
      if (!loop) throw new Error('no such loop')
      const old = places.get(id)
      if (old !== undefined) return { look: 'slipped', from: [old] }
      const hasFace = loop.kind !== 'over' && loop.kind !== 'cast on'
      const look = `${loop.kind} ${hasFace ? loop.face : ''} ${loop.twisted.join()}`
      return { look, from: loop.parents.map((parent) => places.get(parent) as [number, number]) }
    })
    for (const [x, id] of line.entries()) places.set(id, [row, x])
    return seen
  })
}

const repeatsSeen = 8
const timesSeen = 2

/**
 * Whether two patterns make the same fabric inside the repeat: loop for loop, parents in their order, over two times
 * their rows. The sides of a flat piece are left out, and the fabrics may lie beside each other by whole stitches.
 */
export function sameInside(a: Pattern, b: Pattern): boolean {
  const rows = (one: Pattern): Seen[][] =>
    seenRows(fabricOf(workedPattern(workedAgain({ ...one, setUp: [] }, timesSeen), repeatsSeen)))
  const [one, other] = [rows(a), rows(b)]
  if (one.length !== other.length) return false
  const width = (one[0]?.length ?? 0) / repeatsSeen
  for (let shift = 0; shift <= width; shift++) if (goesOn(one, other, 1, [shift])) return true
  return false
}

/** Whether row `row` and those after it agree, where loop x of row i in `one` is loop x + shifts[i] in `other`. */
function goesOn(one: Seen[][], other: Seen[][], row: number, shifts: readonly number[]): boolean {
  const line = one[row]
  if (line === undefined) return true
  const width = Math.ceil(line.length / repeatsSeen)
  for (let shift = -2 * width; shift <= 2 * width; shift++) {
    if (agree(one, other, row, [...shifts, shift]) && goesOn(one, other, row + 1, [...shifts, shift]))
      return true
  }
  return false
}

function agree(one: Seen[][], other: Seen[][], row: number, shifts: readonly number[]): boolean {
  const [mine, theirs] = [one[row] ?? [], other[row] ?? []]
  const [start, end] = [Math.floor(mine.length * 0.4), Math.floor(mine.length * 0.6)]
  return mine.slice(start, end).every((loop, i) => {
    const there = theirs[start + i + (shifts[row] ?? 0)]
    return (
      there !== undefined &&
      there.look === loop.look &&
      there.from.length === loop.from.length &&
      loop.from.every(([r, x], p) => {
        const [theirRow, theirX] = there.from[p] ?? [-1, -1]
        return theirRow === r && theirX === x + (shifts[r] ?? 0)
      })
    )
  })
}

const lace = {
  RS: { plain: ['k1', 'k1', 'k1', 'p1', 'k1 tbl'], one: ['k2tog', 'ssk'], two: ['sk2p', 's2kp', 'k3tog'] },
  WS: { plain: ['p1', 'p1', 'p1', 'k1'], one: ['p2tog', 'ssp'], two: ['p3tog'] },
} as const

/** A repeat of `width` stitches that gives back as many: decreases with as many yarn overs, never two side by side. */
function randomRepeat(random: () => number, width: number, side: 'RS' | 'WS'): string {
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T
  const row: string[] = []
  let owed = 0
  for (let left = width; left > 0; ) {
    const kind = left > 2 && random() < 0.25 ? 'two' : left > 1 && random() < 0.35 ? 'one' : 'plain'
    row.push(pick<string>(lace[side][kind]))
    const gone = { two: 2, one: 1, plain: 0 }[kind]
    left -= gone + 1
    owed += gone
  }
  for (let tries = 0; owed > 0 && tries < 60; tries++) {
    const place = Math.floor(random() * (row.length + 1))
    if (row[modulo(place - 1, row.length)] === 'yo' || row[place % row.length] === 'yo') continue
    row.splice(place, 0, 'yo')
    owed--
  }
  return owed > 0 ? `${side === 'RS' ? 'k' : 'p'}${width}` : row.join(', ')
}

/** A lace with a repeat of its own for each seed: with balancing stitches or without, with lace on one side or on both. */
export function randomRepeatLace(seed: number): Pattern {
  const random = seededRandom(seed)
  const width = 3 + Math.floor(random() * 8)
  const [before, after] = [Math.floor(random() * 3), Math.floor(random() * 3)]
  const bothSides = random() < 0.4
  const rows = Array.from({ length: 2 + 2 * Math.floor(random() * 3) }, (_, i) => {
    const side = i % 2 === 0 ? 'RS' : 'WS'
    if (side === 'WS' && !bothSides) return 'purl'
    const [first, last] = side === 'RS' ? [before, after] : [after, before]
    const plain = side === 'RS' ? 'k' : 'p'
    const begin = first > 0 ? `${plain}${first}, ` : ''
    const end = last > 0 ? ` to last ${last === 1 ? 'st' : `${last} sts`}, ${plain}${last}` : ' to end'
    return `${begin}*${randomRepeat(random, width, side)}; rep from *${end}`
  })
  return pattern(`{ multiple: ${width}, plus: ${before + after} }`, rows)
}
