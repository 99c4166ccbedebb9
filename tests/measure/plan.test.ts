import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { prove } from '../../engine/counts/index.ts'
import { checkPattern } from '../../engine/intake/index.ts'
import { swatchCard } from '../../engine/lesson/index.ts'
import {
  hoursFor,
  lifelinePlan,
  lifelineRows,
  lifelinesIn,
  measuresOf,
  rowsFor,
  tallyOf,
} from '../../engine/measure/index.ts'
import { known, library, patternOf, scarf, titled } from './support.ts'

describe('hours at a pace', () => {
  it('1200 stitches at 20 a minute are an hour, a quarter either way', () => {
    const { knitting, sittings } = hoursFor(1200, 20)
    expect(knitting.value).toBe(60)
    expect([knitting.least, knitting.most]).toEqual([48, 80])
    expect(sittings).toBe(2)
  })

  it('rest is 5 to 10 minutes after every 30 to 45', () => {
    const { withRests } = hoursFor(1200, 20)
    expect([withRests.least, withRests.value, withRests.most]).toEqual([48 + 5, 60 + 10, 80 + 20])
    expect(withRests.rests.some(({ fact }) => fact.includes('5 to 10 minutes'))).toBe(true)
  })

  it('a faster hand never takes longer, more stitches never less', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200_000 }),
        fc.integer({ min: 1, max: 20_000 }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (stitches, more, pace) => {
          const here = hoursFor(stitches, pace).withRests
          expect(hoursFor(stitches, pace * 1.2).withRests.value).toBeLessThanOrEqual(here.value)
          expect(hoursFor(stitches + more, pace).withRests.value).toBeGreaterThanOrEqual(here.value)
        },
      ),
    )
  })

  it('counts every stitch that the hands work, cast-on and bind-off too', () => {
    const { stitches, hours, across, up } = measuresOf(titled('Mini Horseshoe'), scarf)
    const [{ repeats, castOn }, { through }] = [known(across).chosen, known(up).chosen]
    const tally = known(tallyOf(titled('Mini Horseshoe'), { repeats, through, added: 0 }))
    expect(stitches).toBe(castOn + tally.worked)
    expect(hours?.knitting.value).toBeCloseTo(known(stitches) / 20, 9)
  })
})

describe('lifelines', () => {
  it('the plan has the rows that the swatch card has, where it has any', () => {
    const marked = library.filter((pattern) => {
      const card = swatchCard(pattern, prove(pattern))
      const onCard = card.sheets.flatMap(({ rows }) => rows).filter(({ lifeline }) => lifeline)
      const labels = onCard.map(({ label }) => label.replace('R', ''))
      if (labels.length > 0) expect(labels, pattern.title).toEqual(lifelineRows(pattern).map(String))
      return labels.length > 0
    })
    expect(marked.length).toBeGreaterThan(10)
  })

  it('a purl row between two garter edges is plain, a row of holes is not', () => {
    expect(lifelinePlan(titled('Jib Shawl'))).toMatchObject({ rows: [4], plain: true })
    const holes = patternOf('{ multiple: 2, plus: 0 }', ['*yo, k2tog; rep from * to end'])
    expect(lifelinePlan(holes)).toMatchObject({ rows: [1], every: 10, plain: false })
  })

  it('are about ten rows apart, never more than the pattern is long where that is longer', () => {
    for (const pattern of library) {
      const { rows, every } = lifelinePlan(pattern)
      const apart = Math.max(...rows.map((row, i) => row - (rows[i - 1] ?? 0)))
      const turn = pattern.rows.length - (rows.at(-1) ?? 0) + (rows[0] ?? 0)
      const gap = rows.length > 1 ? Math.max(apart, turn) : every * pattern.rows.length
      expect(gap, pattern.title).toBeLessThanOrEqual(Math.max(18, pattern.rows.length))
      if (pattern.rows.length <= 10) expect(gap, pattern.title).toBeGreaterThan(5)
    }
  })

  it('after row 4 of every second time through, in a pattern of four rows', () => {
    const plan = lifelinePlan(titled('Mini Horseshoe'))
    expect(plan).toMatchObject({ rows: [4], every: 2, plain: true })
    expect(lifelinesIn(plan, 96)).toBe(47)
    expect(measuresOf(titled('Mini Horseshoe'), scarf).lifelines.first).toEqual([8, 16, 24, 32])
  })

  it('says where no row is plain', () => {
    const plan = lifelinePlan(titled('Shetland Bead'))
    expect(plan.plain).toBe(false)
    expect(plan.rows).toEqual([titled('Shetland Bead').rows.length])
  })

  it('none goes in after the last row of a piece, and none in a short one', () => {
    for (const pattern of library) {
      const plan = lifelinePlan(pattern)
      expect(lifelinesIn(plan, 1)).toBe(0)
      const { lifelines } = measuresOf(pattern, { ...scarf, repeats: 2, through: 9 })
      for (const row of lifelines.first) expect(row).toBeLessThan(rowsFor(pattern, 9))
      expect(lifelines.first.length).toBe(Math.min(4, known(lifelines.many)))
    }
  })
})

describe('needles and categories in the plan', () => {
  it('4.5 mm are told in three numberings', () => {
    expect(measuresOf(titled('Mini Horseshoe'), scarf).needles).toMatchObject([{ mm: 4.5, us: '7', uk: '7' }])
  })

  it('categories are told of a stocking-stitch gauge alone', () => {
    expect(measuresOf(titled('Mini Horseshoe'), scarf).categories).toEqual([])
    const plain = { ...scarf, swatch: { ...scarf.swatch, of: 'stocking stitch' as const } }
    expect(measuresOf(titled('Mini Horseshoe'), plain).categories.map(({ name }) => name)).toEqual(['Light'])
  })
})

it('every pattern here is proved', () => {
  expect(library.length).toBeGreaterThan(20)
  expect(checkPattern({ name: 'x', text: 'title: X\ncastOn: 3\nrows: [k4]' }).sound).toBe(false)
})
