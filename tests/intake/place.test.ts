import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mostRepeats, parseHabits, parsePlace } from '../../engine/intake/index.ts'

const hold = fc.constantFrom('English' as const, 'Continental' as const)
const index = fc.integer({ min: 0, max: 19_999 })
const place = fc.record({ repeats: fc.integer({ min: 1, max: mostRepeats }), row: index, step: index, hold })
const good = { repeats: 2, row: 4, step: 11, hold: 'English' }

describe('a stored place', () => {
  it('comes back as it was stored', () => {
    fc.assert(
      fc.property(place, (stored) => {
        expect(parsePlace(JSON.stringify(stored))).toEqual(stored)
      }),
    )
  })

  it('is ignored without an error when it is anything else', () => {
    const odd = fc.oneof(
      fc.string(),
      fc.json(),
      fc.anything(),
      fc.object().map((value) => JSON.stringify(value)),
    )
    fc.assert(
      fc.property(odd, (stored) => {
        expect(parsePlace(stored)).toBeNull()
      }),
      { numRuns: 1000 },
    )
  })

  it('is ignored when one part of it is odd', () => {
    const part = fc.constantFrom('repeats', 'row', 'step', 'hold')
    const odd = fc.oneof(
      fc.integer({ max: -1 }),
      fc.integer({ min: 20_000 }),
      fc.double({ noInteger: true }),
      fc.string().filter((text) => text !== 'English' && text !== 'Continental'),
      fc.constantFrom(null, true, [], {}, '1', [2], undefined),
    )
    fc.assert(
      fc.property(place, part, odd, (stored, name, value) => {
        expect(parsePlace(JSON.stringify({ ...stored, [name]: value }))).toBeNull()
      }),
    )
  })

  it.each([
    ['no repeat at all', { ...good, repeats: 0 }],
    ['more repeats than can be shown', { ...good, repeats: mostRepeats + 1 }],
    ['half a stitch', { ...good, step: 1.5 }],
    ['a part too many', { ...good, colour: 'red' }],
    ['a part too few', { repeats: 2, row: 4, step: 11 }],
    ['a list', [good]],
    ['a number in quotes', { ...good, row: '4' }],
    ['another way of holding the yarn', { ...good, hold: 'english' }],
  ])('is ignored with %s', (_, stored) => {
    expect(parsePlace(JSON.stringify(good))).toEqual(good)
    expect(parsePlace(JSON.stringify(stored))).toBeNull()
  })

  it('is ignored when it is far longer than a place can be', () => {
    expect(parsePlace(`${' '.repeat(400)}${JSON.stringify(good)}`)).toEqual(good)
    expect(parsePlace(`${' '.repeat(10_000)}${JSON.stringify(good)}`)).toBeNull()
  })

  it('gives nothing that the text slipped in behind the names', () => {
    expect(parsePlace(JSON.stringify(good).replace('{', '{"__proto__":{"row":1},'))).toBeNull()
  })
})

describe('stored habits', () => {
  it('come back as they were stored', () => {
    fc.assert(
      fc.property(fc.record({ hold, slower: fc.boolean() }), (stored) => {
        expect(parseHabits(JSON.stringify(stored))).toEqual(stored)
      }),
    )
  })

  it('are ignored without an error when they are anything else', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.anything()), (stored) => {
        expect(parseHabits(stored)).toBeNull()
      }),
    )
    expect(parseHabits(JSON.stringify({ hold: 'English', slower: 1 }))).toBeNull()
  })
})
