import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { castOnCount, edgeTotals } from '../../engine/counts/index.ts'
import {
  castOnFor,
  measuresOf,
  mostRepeatsAcross,
  repeatsForWidth,
  rowHeight,
  rowsFor,
  type Swatch,
  stitchesAfter,
  stitchWidth,
  timesForLength,
  widestRow,
} from '../../engine/measure/index.ts'
import { work } from '../../engine/needles/index.ts'
import { workedAgain } from '../../engine/pattern/index.ts'
import { known, library, nothing, patternOf, scarf, titled } from './support.ts'

const inRepeats = library.filter((pattern) => 'multiple' in pattern.castOn)
const anyPattern = fc.constantFrom(...inRepeats)
const millimetres = (most: number) => fc.double({ min: 10, max: most, noNaN: true })
const stitch = fc.double({ min: 1, max: 20, noNaN: true })
const added = fc.integer({ min: 0, max: 12 })

describe('repeats for a wanted width', () => {
  it('a scarf 30 cm wide at 18 stitches in 10 cm: 54 stitches, so 9 repeats of 6 and 1 more', () => {
    const { across } = measuresOf(titled('Mini Horseshoe'), scarf)
    expect(across?.chosen).toMatchObject({ repeats: 9, castOn: 55 })
    expect(across?.choices.map(({ castOn }) => castOn)).toEqual([49, 55, 61])
    expect(across?.chosen.width.after?.value).toBeCloseTo((55 / 18) * 100, 6)
    expect(across?.chosen.width.before?.value).toBeCloseTo(250, 6)
  })

  it('the same scarf unblocked needs more repeats', () => {
    const { across } = measuresOf(titled('Mini Horseshoe'), { ...scarf, blocked: false })
    expect(across?.chosen.repeats).toBe(11)
  })

  it('is multiple times repeats, what the rule adds, and the edges, and can be cast on', () => {
    fc.assert(
      fc.property(anyPattern, stitch, millimetres(3000), added, (pattern, width, wanted, edges) => {
        const n = repeatsForWidth(pattern, width, wanted, edges)
        const { perRepeat, plus } = castOnCount(pattern.castOn)
        expect(n).toBeGreaterThanOrEqual(1)
        expect(castOnFor(pattern, n, edges)).toBe(perRepeat * n + plus + edgeTotals(pattern).takes + edges)
      }),
    )
    for (const pattern of library) {
      const n = 'fixed' in pattern.castOn ? 1 : 3
      expect(work(pattern, n).worked?.castOn, pattern.title).toBe(castOnFor(pattern, n))
    }
  })

  it('no other number of repeats comes nearer', () => {
    fc.assert(
      fc.property(anyPattern, stitch, millimetres(3000), added, (pattern, width, wanted, edges) => {
        const off = (n: number): number => Math.abs(castOnFor(pattern, n, edges) * width - wanted)
        const n = repeatsForWidth(pattern, width, wanted, edges)
        for (let other = 1; other <= n + 3; other++)
          expect(off(n)).toBeLessThanOrEqual(off(other) + 1e-9 * wanted)
      }),
    )
  })

  it('a larger width never has fewer repeats, a wider stitch never more', () => {
    fc.assert(
      fc.property(anyPattern, stitch, millimetres(2000), millimetres(2000), (pattern, width, one, more) => {
        const n = repeatsForWidth(pattern, width, one)
        expect(repeatsForWidth(pattern, width, one + more)).toBeGreaterThanOrEqual(n)
        expect(repeatsForWidth(pattern, width * 1.1, one)).toBeLessThanOrEqual(n)
      }),
    )
  })

  it('never asks for more than the engine can work', () => {
    for (const pattern of inRepeats) {
      const most = mostRepeatsAcross(pattern)
      expect(repeatsForWidth(pattern, 0.001, 1_000_000)).toBe(most)
      expect(castOnFor(pattern, most)).toBeLessThanOrEqual(20_000)
      expect(castOnFor(pattern, most + 1)).toBeGreaterThan(20_000)
    }
  })

  it('what was decided goes before the wanted width', () => {
    const { across } = measuresOf(titled('Mini Horseshoe'), { ...scarf, repeats: 4 })
    expect(across?.chosen).toMatchObject({ repeats: 4, castOn: 25 })
  })

  it('a piece with one width says so and has no choice', () => {
    const { across, notices } = measuresOf(titled('Slipway Edging'), scarf)
    expect(across?.choices.map(({ castOn }) => castOn)).toEqual([7])
    expect(notices).toContain('oneWidth')
  })
})

describe('rows for a wanted length', () => {
  it('160 cm at 24 rows in 10 cm are 384 rows: 96 times through four', () => {
    const { up } = measuresOf(titled('Mini Horseshoe'), scarf)
    expect(up?.chosen).toMatchObject({ through: 96, rows: 384 })
    expect(up?.chosen.length.after?.value).toBeCloseTo(1600, 6)
    expect(up?.choices.map(({ rows }) => rows)).toEqual([380, 384, 388])
  })

  it('always whole times through, set-up rows once', () => {
    fc.assert(
      fc.property(fc.constantFrom(...library), stitch, millimetres(5000), (pattern, row, wanted) => {
        const through = timesForLength(pattern, row, wanted)
        const rows = rowsFor(pattern, through)
        expect(through).toBeGreaterThanOrEqual(1)
        expect((rows - pattern.setUp.length) % pattern.rows.length).toBe(0)
        const off = (n: number): number => Math.abs(rowsFor(pattern, n) * row - wanted)
        for (const other of [through - 1, through + 1])
          if (other >= 1 && through < 2000) expect(off(through)).toBeLessThanOrEqual(off(other) + 1e-6)
      }),
    )
  })

  it('as many rows as the worked piece has', () => {
    for (const pattern of library)
      expect(rowsFor(pattern, 3)).toBe(work(workedAgain(pattern, 3), 1).worked?.rows.length)
  })
})

describe('a piece that grows', () => {
  const jib = titled('Jib Shawl')

  it('ends on the stitches that working it leaves', () => {
    for (const through of [1, 2, 3, 4, 11]) {
      const last = work(workedAgain(jib, through), 1).worked?.rows.at(-1)
      expect(stitchesAfter(jib, 1, through)).toBe(last?.after.length)
    }
  })

  it('is worked until it is as wide as wanted', () => {
    const { up, endsOn, across, widest } = measuresOf(jib, { ...scarf, length: null, width: 1500 })
    // 5 after the set-up rows, 4 more every four rows; 150 cm at 18 in 10 cm are 270 stitches.
    expect(up?.chosen.through).toBe(66)
    expect(endsOn).toBe(269)
    expect(across?.chosen.castOn).toBe(3)
    expect(across?.chosen.width.after?.value).toBeCloseTo((269 / 18) * 100, 6)
    expect(widest).toBeNull()
  })

  it('lets the length decide where both are wanted, and says so', () => {
    const both = measuresOf(jib, { ...scarf, width: 1500, length: 500 })
    expect(both.up?.chosen.through).toBe(
      measuresOf(jib, { ...scarf, width: null, length: 500 }).up?.chosen.through,
    )
    expect(both.notices).toContain('lengthDecides')
  })

  it('is not pretended to be workable where it is not', () => {
    const once = patternOf('3', ['k1, yo, k1, yo, k1'], 'growing: true\n')
    expect(stitchesAfter(once, 1, 1)).toBe(5)
    expect(stitchesAfter(once, 1, 2)).toBeNull()
    const told = measuresOf(once, { ...scarf, through: 2 })
    expect(told.stitches).toBeNull()
    expect(told.notices).toContain('cannotGrow')
  })
})

describe('most stitches on the needles', () => {
  it('is what the longest row of the worked piece leaves', () => {
    for (const pattern of library.filter(({ growing }) => !growing)) {
      const n = 'fixed' in pattern.castOn ? 1 : 4
      const worked = known(work(pattern, n).worked)
      const counts = worked.rows.map(({ after, unworked }) => after.length + unworked.length)
      expect(widestRow(pattern, n).stitches, pattern.title).toBe(Math.max(worked.castOn, ...counts))
    }
  })

  it('Little Fountain lies on six for every four cast on', () => {
    expect(widestRow(titled('Little Fountain'), 10, 4)).toEqual({ row: 1, stitches: 65 })
  })
})

const lace = (before: Swatch['before'], after: Swatch['after']): Swatch => ({ of: 'lace', before, after })
const gauge = (stitches: number, rows: number | null) => ({ stitches, rows, over: 100 })

describe('the size of a stitch from a gauge', () => {
  it('20 stitches in 10 cm are 5 mm each, and a half stitch misread is told', () => {
    const width = known(stitchWidth(lace(gauge(20, 28), null), 'before'))
    expect(width.value).toBe(5)
    expect([width.least, width.most]).toEqual([100 / 20.5, 100 / 19.5])
    expect(width.roughness).toBe('close')
  })

  it('part stitches counted leave a smaller margin, a shorter stretch a larger one', () => {
    const margin = (stitches: number, over: number): number => {
      const { most, value } = known(stitchWidth(lace({ stitches, rows: null, over }, null), 'before'))
      return most / value
    }
    expect(margin(20.5, 100)).toBeLessThan(margin(20, 100))
    expect(margin(10, 50)).toBeGreaterThan(margin(20, 100))
  })

  it('lace before and after blocking, both measured, is not guessed at', () => {
    const both = lace(gauge(22, 28), gauge(18, 24))
    expect(known(stitchWidth(both, 'after')).value).toBeCloseTo(100 / 18, 9)
    expect(known(rowHeight(both, 'after')).value).toBeCloseTo(100 / 24, 9)
    expect(measuresOf(titled('Mini Horseshoe'), scarf).notices).not.toContain('growthGuessed')
  })

  it('worked out from the other state it is larger after blocking and rougher', () => {
    const before = lace(gauge(22, 28), null)
    const [wet, dry] = [known(stitchWidth(before, 'after')), known(stitchWidth(before, 'before'))]
    expect(wet.value).toBeGreaterThan(dry.value)
    expect(wet.roughness).toBe('rough')
    expect(wet.rests.some(({ fact }) => /grew by 9 to 63/.test(fact))).toBe(true)
    expect(measuresOf(titled('Mini Horseshoe'), { ...scarf, swatch: before }).notices).toContain(
      'growthGuessed',
    )
  })

  it('a stocking-stitch gauge is at best a guess for lace, and says so', () => {
    const plain: Swatch = { ...scarf.swatch, of: 'stocking stitch' }
    const width = known(stitchWidth(plain, 'after'))
    expect(width.roughness).toBe('guess')
    expect(width.swatch).toMatch(/lace itself/)
    expect(measuresOf(titled('Mini Horseshoe'), { ...scarf, swatch: plain }).notices).toContain('stocking')
  })

  it('rows that were not counted follow from the shape of a plain stitch, roughly', () => {
    const row = known(rowHeight(lace(gauge(20, null), null), 'before'))
    expect(row.value).toBeCloseTo(5 / (5.5 / 4.2), 9)
    expect(row.most / row.least).toBeGreaterThan(1.1)
    expect(row.swatch).toMatch(/rows and all/)
  })

  it('without a gauge there is no size, and nothing is made up', () => {
    const told = measuresOf(titled('Mini Horseshoe'), { ...nothing, width: 300, length: 1000 })
    expect([told.across, told.up, told.stitches, told.balls, told.hours]).toEqual([
      null,
      null,
      null,
      null,
      null,
    ])
    expect(told.yarn).toEqual([])
  })

  it('a number of repeats alone gives the cast-on', () => {
    const told = measuresOf(titled('Mini Horseshoe'), { ...nothing, repeats: 7, added: 6 })
    expect(told.across?.chosen).toEqual({ repeats: 7, castOn: 49, width: { before: null, after: null } })
  })
})
