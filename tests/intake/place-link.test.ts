import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mostRepeats, parsePlaceHash, placeHash } from '../../engine/intake/index.ts'

describe('a link to a stitch of a lesson', () => {
  it('leads back to the place that it was made for', () => {
    const index = fc.integer({ min: 0, max: 19_999 })
    const place = fc.record({ row: index, step: index, repeats: fc.integer({ min: 1, max: mostRepeats }) })
    fc.assert(
      fc.property(place, (wanted) => {
        expect(parsePlaceHash(placeHash(wanted))).toEqual(wanted)
      }),
    )
  })

  it('is written so that it can be read and shared', () => {
    expect(placeHash({ row: 2, step: 5, repeats: 3 })).toBe('#row=2&step=5&repeats=3')
    expect(parsePlaceHash('#repeats=3&row=2&step=5')).toEqual({ row: 2, step: 5, repeats: 3 })
  })

  it.each([
    ['a row alone', '#row=2', { row: 2, step: null, repeats: null }],
    ['half a stitch', '#row=2&step=1.5&repeats=3', { row: 2, step: null, repeats: 3 }],
    ['fewer than no stitches', '#row=2&step=-1', { row: 2, step: null, repeats: null }],
    ['more repeats than can be shown', '#row=2&step=0&repeats=7', { row: 2, step: 0, repeats: null }],
    ['no repeat', '#row=2&step=0&repeats=0', { row: 2, step: 0, repeats: null }],
    ['words for numbers', '#row=2&step=two&repeats=0x2', { row: 2, step: null, repeats: null }],
    ['other parts', '#row=2&colour=red', { row: 2, step: null, repeats: null }],
  ])('with %s keeps what makes sense', (_, hash, place) => {
    expect(parsePlaceHash(hash)).toEqual(place)
  })

  it.each([
    '',
    '#',
    '#step',
    '#words',
    '#step=4',
    '#row=',
    '#row=x',
    '#row=-1',
    '#row=99999',
    '#row=1e3',
    '#narrow=2',
  ])('is none: %s', (hash) => {
    expect(parsePlaceHash(hash)).toBeNull()
  })

  it('never fails on what anyone writes there', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.anything()), (hash) => {
        const place = parsePlaceHash(hash)
        expect(place === null || Number.isInteger(place.row)).toBe(true)
      }),
      { numRuns: 500 },
    )
    expect(parsePlaceHash(`#row=1&${'x'.repeat(1000)}`)).toBeNull()
  })
})
