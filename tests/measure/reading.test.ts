import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  emptyMeasures,
  inUnitOf,
  type MeasureField,
  type MeasureTexts,
  parseMeasures,
  readMeasures,
} from '../../engine/intake/measures.ts'
import { measuresOf } from '../../engine/measure/index.ts'
import { titled } from './support.ts'

const typed = (texts: Partial<MeasureTexts>): MeasureTexts => ({ ...emptyMeasures, ...texts })
const read = (texts: Partial<MeasureTexts>) => readMeasures(typed(texts))
const unclearIn = (texts: Partial<MeasureTexts>) => read(texts).unclear.map(({ field }) => field)

describe('numbers as knitters write them', () => {
  it.each([
    ['45', 450],
    ['45,5', 455],
    ['45.5 cm', 455],
    ['455mm', 455],
    [' 18 in ', 457.2],
    ['18"', 457.2],
    ['17½ in', 444.5],
    ['17 1/2 inches', 444.5],
    ['４５', 450],
    ['1.2 m', 1200],
  ])('%s is a width', (text, millimetres) => {
    const { wishes, unclear } = read({ width: text })
    expect(unclear).toEqual([])
    expect(wishes.width).toBeCloseTo(millimetres, 6)
  })

  it.each(['abc', '4x5', '-3', '45 furlongs', '0', '99999', '1/0', '5 5', '1,200', '..', '45 cm cm', '<b>'])(
    '%s is told beside its field, and the rest still counts',
    (text) => {
      const { wishes, unclear } = read({ width: text, repeats: '5' })
      expect(unclear.map(({ field }) => field)).toEqual(['width'])
      expect(unclear[0]?.words.length).toBeGreaterThan(15)
      expect(wishes.width).toBeNull()
      expect(wishes.repeats).toBe(5)
    },
  )

  it('inches mean inches, and yards yards', () => {
    const { wishes } = read({
      unit: 'in',
      width: '18',
      over: '4',
      beforeStitches: '20',
      ballLength: '175',
      ballGrams: '1¾ oz',
    })
    expect(wishes.width).toBeCloseTo(457.2, 6)
    expect(wishes.swatch.before?.over).toBeCloseTo(101.6, 6)
    expect(wishes.ball.length).toBeCloseTo(175 * 914.4, 6)
    expect(wishes.ball.grams).toBeCloseTo(49.61, 2)
  })

  it('a half repeat cannot be cast on', () => {
    expect(unclearIn({ repeats: '2.5' })).toEqual(['repeats'])
  })

  it('says what a field lacks beside it', () => {
    expect(unclearIn({ beforeRows: '28' })).toEqual(['beforeStitches'])
    expect(unclearIn({ swatchGrams: '9' })).toEqual(['swatchStitches', 'swatchRows'])
    expect(unclearIn({ swatchGrams: '9', swatchStitches: '31', swatchRows: '40' })).toEqual([])
  })

  it('nothing typed is nothing told', () => {
    const { wishes, unclear } = read({})
    expect(unclear).toEqual([])
    expect([wishes.width, wishes.swatch.before, wishes.weighed, wishes.measuredYarn]).toEqual([
      null,
      null,
      null,
      null,
    ])
  })

  it('whatever is typed, the page has an answer', () => {
    const text = fc.oneof(
      fc.string({ maxLength: 30 }),
      fc.double({ noNaN: true }).map(String),
      fc.nat().map(String),
    )
    const form = fc.record(
      Object.fromEntries(Object.keys(emptyMeasures).map((field) => [field, text])) as Record<
        MeasureField,
        typeof text
      >,
    )
    const pattern = titled('Mini Horseshoe')
    fc.assert(
      fc.property(form, (texts) => {
        const { wishes, unclear } = readMeasures(texts)
        for (const { field } of unclear) expect(Object.keys(emptyMeasures)).toContain(field)
        const { across } = measuresOf(pattern, wishes)
        if (across) expect((across.chosen.castOn - 1 - wishes.added) % 6).toBe(0)
      }),
    )
  })
})

describe('the other unit', () => {
  it('there and back nothing is lost', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 4000 }),
        fc.integer({ min: 100, max: 30_000 }),
        (tenths, yarn) => {
          const texts = typed({
            width: String(tenths / 10),
            ballLength: String(yarn / 10),
            beforeStitches: '22',
          })
          expect(inUnitOf(inUnitOf(texts, 'in'), 'cm')).toEqual(texts)
        },
      ),
    )
  })

  it('means the same length', () => {
    const texts = typed({ width: '45', over: '10', beforeStitches: '22', ballLength: '175' })
    const [cm, inches] = [readMeasures(texts).wishes, readMeasures(inUnitOf(texts, 'in')).wishes]
    expect(inches.width).toBeCloseTo(cm.width ?? 0, 0)
    expect(inches.swatch.before?.over).toBeCloseTo(100, 0)
    expect((inches.ball.length ?? 0) / (cm.ball.length ?? 1)).toBeCloseTo(1, 3)
  })

  it('leaves alone what has a unit of its own or is no number', () => {
    const { width, length } = inUnitOf(typed({ width: '45 cm', length: 'long' }), 'in')
    expect([width, length]).toEqual(['45 cm', 'long'])
  })

  it('counts a gauge over four inches where none was told yet', () => {
    expect(inUnitOf(typed({}), 'in').over).toBe('4')
    expect(inUnitOf(typed({ beforeStitches: '22' }), 'in').over).toBe('3.94')
  })
})

describe('what was stored', () => {
  it('comes back as it was typed, slips and all', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), fc.string({ maxLength: 40 }), (width, pace) => {
        const texts = typed({ width, pace })
        expect(parseMeasures(JSON.stringify(texts))).toEqual(texts)
      }),
    )
  })

  it.each([null, 5, '', 'x', '[]', 'null', '3', `"${'x'.repeat(5000)}"`])('%s is nothing', (stored) => {
    expect(parseMeasures(stored)).toBeNull()
  })

  it('takes no field that the form has not, and no value that is no text', () => {
    const stored = JSON.stringify({ width: '45', length: 12, other: 'x', pace: 'y'.repeat(41) })
    expect(parseMeasures(stored)).toEqual(typed({ width: '45' }))
    expect(parseMeasures('{"__proto__":{"width":"45"}}')).toEqual(typed({}))
  })
})
