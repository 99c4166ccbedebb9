import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseProgress } from '../../engine/intake/index.ts'

const rows = 4
const counts = fc.array(fc.integer({ min: 0, max: 999 }), { minLength: rows, maxLength: rows })
const lifeline = fc.record({ row: fc.integer({ min: 0, max: rows - 1 }), done: counts })
const progress = fc.record({
  done: counts,
  passed: fc.integer({ min: 0, max: 5000 }),
  lifeline: fc.option(lifeline),
})
const good = { done: [2, 2, 1, 1], passed: 3, lifeline: { row: 1, done: [1, 1, 0, 0] } }

describe('stored ticks and lifeline', () => {
  it('come back as they were stored', () => {
    fc.assert(
      fc.property(progress, (stored) => {
        expect(parseProgress(JSON.stringify(stored), rows)).toEqual(stored)
      }),
    )
  })

  it('are ignored without an error when they are anything else', () => {
    const odd = fc.oneof(
      fc.string(),
      fc.json(),
      fc.anything(),
      fc.object().map((value) => JSON.stringify(value)),
    )
    fc.assert(
      fc.property(odd, (stored) => {
        expect(parseProgress(stored, rows)).toBeNull()
      }),
      { numRuns: 1000 },
    )
  })

  it.each([
    ['too few rows', { ...good, done: [1, 1, 1] }],
    ['too many rows', { ...good, done: [1, 1, 1, 1, 1] }],
    ['a tick and a half', { ...good, done: [1.5, 0, 0, 0] }],
    ['fewer than no ticks', { ...good, done: [-1, 0, 0, 0] }],
    ['more ticks than anyone knits', { ...good, done: [1e6, 0, 0, 0] }],
    ['a lifeline in no row', { ...good, lifeline: { row: 4, done: [0, 0, 0, 0] } }],
    ['a lifeline that remembers too little', { ...good, lifeline: { row: 0, done: [] } }],
    ['a lifeline with a part too many', { ...good, lifeline: { ...good.lifeline, colour: 'red' } }],
    ['a lifeline that is only a number', { ...good, lifeline: 1 }],
    ['no lifeline at all, not even none', { done: good.done, passed: 0 }],
    ['a part too many', { ...good, colour: 'red' }],
    ['steps that were never taken', { ...good, passed: -1 }],
  ])('are ignored with %s', (_, stored) => {
    expect(parseProgress(JSON.stringify(good), rows)).toEqual(good)
    expect(parseProgress(JSON.stringify(stored), rows)).toBeNull()
  })

  it('are ignored when they are far longer than they can be', () => {
    expect(parseProgress(`${' '.repeat(1000)}${JSON.stringify(good)}`, rows)).toEqual(good)
    expect(parseProgress(`${' '.repeat(50_000)}${JSON.stringify(good)}`, rows)).toBeNull()
  })
})
