import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fabricOf } from '../../engine/fabric/index.ts'
import {
  type Ball,
  ballsFor,
  bases,
  gramsByWeight,
  marginOf,
  measuresOf,
  plainLoops,
  type Tally,
  tallyOf,
  type Wishes,
} from '../../engine/measure/index.ts'
import { work } from '../../engine/needles/index.ts'
import { type Pattern, workedAgain } from '../../engine/pattern/index.ts'
import { estimatesIn, holds, known, library, patternOf, scarf, titled } from './support.ts'

const horseshoe = titled('Mini Horseshoe')
const piece = (repeats: number, through: number, added = 0) => ({ repeats, through, added })

/** Counted by working the whole piece. */
function workedTally(pattern: Pattern, repeats: number, through: number): Tally {
  const worked = known(work(workedAgain(pattern, through), repeats).worked)
  const { loops, lines } = fabricOf(worked)
  const many = (...kinds: string[]): number => loops.filter(({ kind }) => kinds.includes(kind)).length
  const live = loops.filter((loop) => loop.live).length
  return {
    castOn: many('cast on'),
    drawn: many('drawn', 'strand', 'below'),
    over: many('over'),
    slipped: lines.reduce((sum, { slipped }) => sum + slipped.length, 0),
    bound: many('chain') + live,
    worked: worked.rows.reduce((sum, { steps }) => sum + steps.length, 0) + live,
  }
}

describe('what the yarn does, counted loop by loop', () => {
  it('is what working the whole piece gives, for every pattern', () => {
    for (const pattern of library) {
      const n = 'fixed' in pattern.castOn ? 1 : 4
      expect(tallyOf(pattern, piece(n, 5)), pattern.title).toEqual(workedTally(pattern, n, 5))
    }
  })

  it('k1, yo, ssk, k1 over four stitches: a decrease draws one loop, a yarn over none', () => {
    const pattern = patternOf('4', ['k1, yo, ssk, k1', 'purl'])
    // Row 1: k, yo, ssk, k. Row 2: four purls. Then four are bound off.
    expect(tallyOf(pattern, piece(1, 1))).toEqual({
      castOn: 4,
      drawn: 7,
      over: 1,
      slipped: 0,
      bound: 4,
      worked: 12,
    })
  })

  it('a slipped stitch takes no loop of yarn', () => {
    const pattern = patternOf('4', ['sl1, k3', 'purl'])
    expect(tallyOf(pattern, piece(1, 1))).toMatchObject({ drawn: 7, slipped: 1, worked: 12 })
  })

  it('what is bound off within the rows is counted too', () => {
    const edging = known(tallyOf(titled('Slipway Edging'), piece(1, 3)))
    // Four in each row 8, and seven at the end.
    expect(edging.bound).toBe(3 * 4 + 7)
  })

  it('edge stitches are one loop a row each', () => {
    const [without, withSix] = [
      known(tallyOf(horseshoe, piece(3, 10))),
      known(tallyOf(horseshoe, piece(3, 10, 6))),
    ]
    expect(withSix.drawn - without.drawn).toBe(6 * 40)
    expect(withSix.castOn - without.castOn).toBe(6)
    expect(withSix.bound - without.bound).toBe(6)
  })

  it('grows with every repeat and every time through', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...library.filter(({ castOn }) => 'multiple' in castOn)),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 200 }),
        (pattern, n, v) => {
          const loops = (a: number, b: number) => plainLoops(known(tallyOf(pattern, piece(a, b))))
          const here = loops(n, v)
          for (const more of [loops(n + 1, v), loops(n, v + 1)])
            for (const key of ['least', 'value', 'most'] as const)
              expect(more[key]).toBeGreaterThan(here[key])
        },
      ),
    )
  })

  it('of a growing piece, too, is what working the whole piece gives', () => {
    const jib = titled('Jib Shawl')
    for (const through of [1, 2, 3, 4, 17])
      expect(tallyOf(jib, piece(1, through))).toEqual(workedTally(jib, 1, through))
  })

  it('nothing is said of a growing piece whose rows do not come out again', () => {
    const once = patternOf('3', ['k1, yo, k1, yo, k1'], 'growing: true\n')
    expect(tallyOf(once, piece(1, 1))).toMatchObject({ castOn: 3, drawn: 3, over: 2, bound: 5 })
    expect(tallyOf(once, piece(1, 2))).toBeNull()
  })
})

const withBall = (ball: Ball): Wishes => ({ ...scarf, ball })

describe('yarn for a piece', () => {
  it('what was measured goes before what follows from the size of the stitches', () => {
    const measuredYarn = { stitches: 45, length: 914.4 }
    const { yarn } = measuresOf(horseshoe, { ...scarf, measuredYarn })
    expect(yarn.map(({ way }) => way).toSorted()).toEqual(['gauge', 'measured', 'weighed'])
    expect(yarn.at(-1)?.way).toBe('gauge')
    const [first, second] = yarn.map(({ length }) => marginOf(known(length)))
    expect(first).toBeLessThanOrEqual(known(second))
  })

  it('a swatch as large as the piece weighs what the piece weighs', () => {
    const { across, up } = measuresOf(horseshoe, scarf)
    const weighed = { grams: 140, stitches: known(across).chosen.castOn, rows: known(up).chosen.rows }
    const [first] = measuresOf(horseshoe, { ...scarf, weighed }).yarn
    expect(first?.grams?.value).toBeCloseTo(140, 9)
    expect(first?.length?.value).toBeCloseTo((140 / 50) * 120_000, 6)
  })

  it('half the swatch at half the weight says the same', () => {
    const grams = (weight: number, rows: number) =>
      gramsByWeight({ piece: 10_000, swatch: 30 * rows }, { grams: weight, stitches: 30, rows }, 'lace')
    expect(grams(10, 40).value).toBeCloseTo(grams(20, 80).value, 9)
    expect(marginOf(grams(10, 40))).toBeGreaterThan(marginOf(grams(20, 80)))
  })

  it('blocking adds no yarn: the wish to block changes only the size', () => {
    const fixed = { ...scarf, repeats: 9, through: 96 }
    const [blocked, not] = [measuresOf(horseshoe, fixed), measuresOf(horseshoe, { ...fixed, blocked: false })]
    expect(blocked.yarn).toEqual(not.yarn)
  })

  it('the gauge is taken before blocking, which opens the loops', () => {
    const only = (state: 'before' | 'after') => {
      const swatch = { ...scarf.swatch, [state === 'before' ? 'after' : 'before']: null }
      const fixed = { ...scarf, repeats: 9, through: 96, weighed: null, swatch }
      return known(measuresOf(horseshoe, fixed).yarn[0]?.length)
    }
    const both = known(
      measuresOf(horseshoe, { ...scarf, repeats: 9, through: 96, weighed: null }).yarn[0]?.length,
    )
    expect(only('before')).toEqual(both)
    expect(marginOf(only('after'))).toBeGreaterThan(marginOf(both))
  })

  it('a swatch that fits its gauge raises no doubt, a slip of the pen does', () => {
    expect(measuresOf(horseshoe, scarf).notices).not.toContain('waysDisagree')
    const slip = { ...scarf, weighed: { grams: 90, stitches: 31, rows: 40 } }
    expect(measuresOf(horseshoe, slip).notices).toContain('waysDisagree')
  })

  it('metres and grams of a ball changed about are noticed', () => {
    expect(measuresOf(horseshoe, scarf).notices).not.toContain('tooThick')
    expect(measuresOf(horseshoe, withBall({ length: 5000, grams: 120 })).notices).toContain('tooThick')
  })
})

describe('balls', () => {
  it('are whole, at least one, and never fewer to buy than the middle figure asks for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        (value, off, perBall) => {
          const need = {
            ...{ value, least: value * (1 - off), most: value * (1 + off) },
            ...{ roughness: 'rough' as const, rests: [], swatch: null },
          }
          const { middle, bought } = ballsFor(need, perBall)
          expect(Number.isInteger(middle) && Number.isInteger(bought)).toBe(true)
          expect(middle).toBeGreaterThanOrEqual(1)
          expect(middle * perBall).toBeGreaterThanOrEqual(value * (1 - 1e-9))
          expect(bought * perBall).toBeGreaterThanOrEqual(need.most * 1.1 * (1 - 1e-9))
          expect(bought).toBeGreaterThanOrEqual(middle)
        },
      ),
    )
  })

  it('for 560 yards in balls of 175 yards: 4, and as many with a tenth to spare', () => {
    const need = { value: 560, least: 560, most: 560, roughness: 'exact' as const, rests: [], swatch: null }
    expect(ballsFor(need, 175)).toMatchObject({ middle: 4, bought: 4 })
    expect(ballsFor(need, 150)).toMatchObject({ middle: 4, bought: 5 })
  })

  it('can be counted by weight where the band gives no length', () => {
    const { balls, yarn } = measuresOf(horseshoe, withBall({ length: null, grams: 50 }))
    expect(yarn[0]).toMatchObject({ way: 'weighed', length: null })
    expect(balls?.middle).toBe(Math.ceil(known(yarn[0]?.grams).value / 50))
    expect(measuresOf(horseshoe, withBall({ length: null, grams: null })).balls).toBeNull()
  })
})

describe('every estimate', () => {
  const all = library.flatMap((pattern) =>
    [
      scarf,
      { ...scarf, weighed: null, measuredYarn: { stitches: 45, length: 914.4 } },
      { ...scarf, swatch: { ...scarf.swatch, of: 'stocking stitch' as const, after: null } },
    ].flatMap((wishes) => estimatesIn(measuresOf(pattern, { ...wishes, repeats: 3, through: 5 }))),
  )

  it('has a positive value within a margin that is never negative', () => {
    expect(all.length).toBeGreaterThan(200)
    for (const figure of all) {
      expect(figure.least).toBeGreaterThan(0)
      expect(holds(figure, figure.value)).toBe(true)
      expect(Number.isFinite(figure.most)).toBe(true)
    }
  })

  it('says how rough it is by its margin, what it rests on, and what a swatch would settle', () => {
    const named = new Set<string>(Object.values(bases).map(({ fact }) => fact))
    for (const { rests, swatch, roughness, ...figure } of all) {
      const margin = marginOf(figure)
      const word = margin === 0 ? 'exact' : margin <= 0.05 ? 'close' : margin <= 0.2 ? 'rough' : 'guess'
      expect(roughness).toBe(word)
      expect(rests.length).toBeGreaterThan(0)
      expect(rests.every(({ fact }) => named.has(fact))).toBe(true)
      expect(new Set(rests).size).toBe(rests.length)
      expect(swatch).toMatch(/\w+ \w+/)
    }
  })

  it('names a source, or says that it has none, for every fact', () => {
    for (const { fact, source } of Object.values(bases)) {
      expect(fact.length).toBeGreaterThan(20)
      expect(source).toMatch(/no source|no published|published|memory|Proved|typed|Advice|model|examination/i)
    }
  })
})
