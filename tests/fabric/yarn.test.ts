/**
 * The yarn crosses itself as the loops say. Every crossing of the drawn curves, between a loop and the loop that it is
 * drawn through and between the loops of one decrease, is held against the loop graph: over every pattern of the
 * library and over laces that nobody thought up. The order told by the graph is worked out here anew (common practice,
 * no source: a knit stitch comes out over the head of the old loop and its feet lie behind it, a purl the other way).
 */
import { describe, expect, it } from 'vitest'
import {
  type FabricState,
  fabricOf,
  layOutFabric,
  otherSide,
  type Yarn,
  yarnOf,
} from '../../engine/fabric/index.ts'
import type { WorkedPattern } from '../../engine/needles/index.ts'
import {
  crossingsOf,
  orderToldBy,
  patternFiles,
  randomLace,
  verdictOn,
  workedFile,
  workedRows,
} from './yarn-support.ts'

const yarnFor = (worked: WorkedPattern, state: FabricState = 'free'): Yarn => {
  const fabric = fabricOf(worked)
  return yarnOf(fabric, layOutFabric(fabric, { state }))
}

it('there are patterns to draw', () => {
  expect(patternFiles.length).toBeGreaterThan(20)
})

describe.each(patternFiles)('%s', (file) => {
  it.each(['free', 'blocked'] as const)(
    '%s: every crossing lies as the loops say, on both sides',
    (state) => {
      const yarn = yarnFor(workedFile(file, 2), state)
      for (const seen of [yarn, otherSide(yarn)]) {
        const { checked, wrong } = verdictOn(seen)
        expect(checked).toBeGreaterThan(4 * yarn.fabric.loops.length * 0.7)
        expect(wrong).toEqual([])
      }
    },
  )
})

describe('laces that nobody thought up', () => {
  it.each(Array.from({ length: 120 }, (_, i) => i + 1))(
    'number %i: every crossing lies as the loops say',
    (seed) => {
      const yarn = yarnFor(randomLace(seed))
      for (const seen of [yarn, otherSide(yarn)]) {
        const { checked, wrong } = verdictOn(seen)
        expect(checked).toBeGreaterThan(100)
        expect(wrong).toEqual([])
      }
    },
  )
})

it('gathered again right away with their neighbours, loops made in one loop hardly ever lie another way', () => {
  // Knit-like and purl-like siblings pull at each other there; no order of whole pieces pleases all their neighbours.
  const verdicts = Array.from({ length: 60 }, (_, i) => verdictOn(yarnFor(randomLace(i + 1, false))))
  const checked = verdicts.reduce((sum, verdict) => sum + verdict.checked, 0)
  const wrong = verdicts.reduce((sum, verdict) => sum + verdict.wrong.length, 0)
  expect(checked).toBeGreaterThan(10_000)
  expect(wrong / checked).toBeLessThan(1 / 2000)
})

describe('the check can fail', () => {
  const yarn = yarnFor(workedFile('horseshoe.yaml', 1))
  const told = crossingsOf(yarn).filter(({ a, b }) => orderToldBy(yarn.fabric, a, b) !== null)

  it('one depth turned round is found', () => {
    const { a } = told[Math.floor(told.length / 2)] ?? { a: null }
    const pieces = yarn.pieces.map((piece) =>
      piece === a ? { ...piece, depth: piece.depth < 1 ? 99 : -99 } : piece,
    )
    expect(verdictOn({ ...yarn, pieces }).wrong.length).toBeGreaterThan(0)
  })

  it('one tie is found', () => {
    const { a, b } = told[0] ?? { a: null, b: null }
    const pieces = yarn.pieces.map((piece) => (piece === a ? { ...piece, depth: b?.depth ?? 0 } : piece))
    expect(verdictOn({ ...yarn, pieces }).wrong.join()).toMatch(/tie/)
  })

  it('depths of the wrong side seen from the right are all wrong', () => {
    const { checked, wrong } = verdictOn({ ...otherSide(yarn), side: 'right' })
    expect(wrong).toHaveLength(checked)
  })
})

describe('the yarn', () => {
  const laces = [
    ...patternFiles.map((file) => workedFile(file, 1)),
    ...[1, 2, 3, 4, 5].map((seed) => randomLace(seed)),
  ]

  it('runs on from piece to piece, and its two ends are cut once', () => {
    for (const worked of laces) {
      const { pieces } = yarnFor(worked)
      for (const [i, piece] of pieces.entries()) {
        const next = pieces[i + 1]
        if (next === undefined || next.strand !== piece.strand) continue
        expect(next.curve.slice(0, 2)).toEqual(piece.curve.slice(-2))
      }
      expect(pieces[0]?.ends).toBe('start')
      // Laid flat, the rounds of a piece in the round are cut at their start; all else is one strand.
      const strands = new Set(pieces.map(({ strand }) => strand)).size
      expect(strands).toBe(worked.pattern.worked === 'round' ? worked.rows.length + 1 : 1)
    }
  })

  it('has numbers only, and whole curves', () => {
    for (const worked of laces) {
      for (const { curve, depth } of yarnFor(worked).pieces) {
        expect(curve.every(Number.isFinite)).toBe(true)
        expect(curve.length % 6).toBe(2)
        expect(curve.length).toBeGreaterThan(2)
        expect(Number.isInteger(depth)).toBe(true)
      }
    }
  })

  it('is the same twice', () => {
    const worked = randomLace(7)
    expect(yarnFor(worked)).toEqual(yarnFor(worked))
  })

  it('seen from behind and from behind again, is itself', () => {
    const yarn = yarnFor(randomLace(3))
    const back = otherSide(yarn)
    expect(back.side).toBe('wrong')
    expect(back.pieces.map(({ depth }) => depth)).not.toEqual(yarn.pieces.map(({ depth }) => depth))
    expect(otherSide(back)).toEqual(yarn)
  })

  it('goes up and over every loop once', () => {
    for (const worked of laces) {
      const { pieces, fabric } = yarnFor(worked)
      const heads = pieces.filter(({ part }) => part === 'head').map(({ loop }) => loop)
      expect(heads.toSorted((a, b) => a - b)).toEqual(fabric.loops.map(({ id }) => id))
    }
  })
})

describe('what lies over what', () => {
  const depthOf = ({ pieces }: Yarn, loop: number, part: string): number[] =>
    pieces.filter((piece) => piece.loop === loop && piece.part === part).map(({ depth }) => depth)
  const swatch = (...row: string[]): { yarn: Yarn; at: (row: number, place: number) => number } => {
    const plain = (id: string, n: number): string[] => Array.from({ length: n }, () => id)
    const yarn = yarnFor(workedRows(6, [plain('k', 6), plain('p', 6), row]))
    return { yarn, at: (course, place) => yarn.fabric.courses[course]?.[place] ?? -1 }
  }

  it('a twisted loop has one leg over the other, and it leans left where the back leg was entered', () => {
    // Common practice, no source: seen from the front, the right strand of a stitch knitted through the back lies on top.
    const { yarn, at } = swatch('k', 'k tbl', 'k', 'k', 'k', 'k')
    const twisted = yarn.fabric.loops[at(3, 1)]?.parents[0] ?? -1
    const legs = yarn.pieces.filter(({ loop, part }) => loop === twisted && part === 'leg')
    expect(legs).toHaveLength(2)
    expect(legs[0]?.depth).not.toBe(legs[1]?.depth)
    const front = legs.toSorted((a, b) => b.depth - a.depth)[0]?.curve ?? []
    const ends = [front.slice(0, 2), front.slice(-2)].toSorted((a, b) => (a[1] ?? 0) - (b[1] ?? 0))
    expect(ends[1]?.[0]).toBeLessThan(ends[0]?.[0] ?? 0)
  })

  it('slipped with the yarn in front, a loop has it over its legs; otherwise behind', () => {
    for (const [id, over] of [
      ['sl wyif', true],
      ['sl wyib', false],
      ['sl', false],
    ] as const) {
      const { yarn, at } = swatch('k', 'k', id, 'k', 'k', 'k')
      // The row before ran the other way.
      const slipped = at(2, 3)
      const floats = yarn.pieces.filter(({ part }) => part === 'float').map(({ depth }) => depth)
      expect(floats.length).toBeGreaterThan(0)
      const legs = [...depthOf(yarn, slipped, 'leg'), ...depthOf(yarn, slipped, 'head')]
      if (over) expect(Math.min(...floats)).toBeGreaterThan(Math.max(...legs))
      else expect(Math.max(...floats)).toBeLessThan(Math.min(...legs))
    }
  })

  it('in a crossing the loops in front lie over those behind', () => {
    for (const [id, front] of [
      ['1/1 RC', 0],
      ['1/1 LC', 1],
    ] as const) {
      const { yarn, at } = swatch('k', 'k', id, 'k', 'k')
      const [first, second] = [at(3, 2), at(3, 3)].map((made) => yarn.fabric.loops[made]?.parents[0] ?? -1)
      const [a, b] = [first, second].map((loop) => depthOf(yarn, loop ?? -1, 'head')[0] ?? Number.NaN)
      expect(Math.sign((a ?? 0) - (b ?? 0))).toBe(front === 0 ? 1 : -1)
    }
  })

  it('of sk2p the slipped loop lies on top, of a centred double decrease the middle one', () => {
    for (const [id, stack] of [
      ['sk2p', [0, 2, 1]],
      ['s2kp', [1, 0, 2]],
      ['k3tog', [2, 1, 0]],
    ] as const) {
      const { yarn, at } = swatch('k', 'k', id, 'k')
      // Taken from the right: the loops of the purl row from its last but two back.
      const heads = stack.map((n) => depthOf(yarn, at(2, 3 - n), 'head')[0] ?? Number.NaN)
      expect(heads).toEqual(heads.toSorted((a, b) => b - a))
      expect(new Set(heads).size).toBe(3)
    }
  })
})
