import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  lifelineWords,
  nothingDone,
  type Progress,
  rippedToLifeline,
  rowAfterIn,
  rowsSinceWords,
  ticked,
  tickedSinceLifeline,
  timeWords,
  wentBackOver,
  wentElsewhere,
  wentPast,
  withLifeline,
  withoutLifeline,
} from '../../engine/lesson/index.ts'
import { worked } from '../support.ts'

const leaf = worked('{ multiple: 6, plus: 1 }', [
  'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
  'purl',
  'k1, *k1, yo, sk2p, yo, k2; rep from * to end',
  'purl',
])
const withSetUp = worked('2', ['k2', 'purl'], 1, 'setUp:\n  - knit\n  - purl\n')

/** Works on through so many rows, as the pattern goes on again after its last. */
function workOn(
  progress: Progress,
  from: number,
  rows: number,
  piece = leaf,
): { done: Progress; at: number } {
  let [done, at] = [progress, from]
  for (let i = 0; i < rows; i++) {
    done = wentPast(done, at)
    at = rowAfterIn(piece, at)
  }
  return { done, at }
}

describe('ticks', () => {
  it('a row is ticked when its last stitch is passed, and the pattern’s second turn is the 2nd time', () => {
    const fresh = nothingDone(leaf)
    expect(timeWords(leaf, fresh, 2)).toBe('Row 3, 1st time')
    const { done, at } = workOn(fresh, 0, 6)
    expect(done.done).toEqual([2, 2, 1, 1])
    expect(timeWords(leaf, done, at)).toBe('Row 3, 2nd time')
  })

  it.each([
    [1, '2nd'],
    [2, '3rd'],
    [3, '4th'],
    [10, '11th'],
    [11, '12th'],
    [12, '13th'],
    [20, '21st'],
    [110, '111th'],
  ])('after %d ticks it is the %s time', (times, word) => {
    expect(timeWords(leaf, { ...nothingDone(leaf), done: [times, 0, 0, 0] }, 0)).toBe(`Row 1, ${word} time`)
  })

  it('set-up rows come once: the pattern goes on from row 1', () => {
    expect(rowAfterIn(withSetUp, 3)).toBe(2)
    const { done } = workOn(nothingDone(withSetUp), 0, 6, withSetUp)
    expect(done.done).toEqual([1, 1, 2, 2])
  })

  it('stitch by stitch back over a row’s end takes its tick away, so that working it again counts it once', () => {
    const { done } = workOn(nothingDone(leaf), 0, 2)
    const back = wentBackOver(done, 1)
    expect(back.done).toEqual([1, 0, 0, 0])
    expect(wentPast(back, 1).done).toEqual([1, 1, 0, 0])
  })

  it('who jumps elsewhere keeps all ticks, also when she steps back from there', () => {
    const { done } = workOn(nothingDone(leaf), 0, 4)
    const there = wentElsewhere(done)
    expect(there.done).toEqual(done.done)
    expect(wentBackOver(there, 1).done).toEqual([1, 1, 1, 1])
  })

  it('can be put and taken away by hand, never below none', () => {
    const one = ticked(nothingDone(leaf), 2, 1)
    expect(one.done).toEqual([0, 0, 1, 0])
    expect(ticked(ticked(one, 2, -1), 2, -1).done).toEqual([0, 0, 0, 0])
  })
})

describe('a lifeline', () => {
  it('is put in the row that is just finished, and ripping back to it keeps the ticks of all that was done since', () => {
    const { done, at } = workOn(nothingDone(leaf), 0, 1)
    const lined = withLifeline(done, leaf, at, at)
    expect(lifelineWords(leaf, lined.lifeline ?? { row: 0, done: [] })).toBe('Lifeline in row 2')
    const later = workOn(lined, at, 3).done
    expect(later.done).toEqual([1, 1, 1, 1])
    const since = tickedSinceLifeline(later)
    expect(rowsSinceWords(leaf, since)).toBe('rows 3 to 4')
    expect(wentElsewhere(later).done).toEqual([1, 1, 1, 1])
    expect(rippedToLifeline(later).done).toEqual([1, 1, 0, 0])
  })

  it('can be put in a row done before, in the same turn or in the one before', () => {
    const { done, at } = workOn(nothingDone(leaf), 0, 6)
    expect(at).toBe(2)
    expect(withLifeline(done, leaf, 0, at).lifeline?.done).toEqual([2, 1, 1, 1])
    expect(withLifeline(done, leaf, 3, at).lifeline?.done).toEqual([1, 1, 1, 1])
    const since = tickedSinceLifeline(withLifeline(done, leaf, 3, at))
    expect(rowsSinceWords(leaf, since)).toBe('rows 1 to 2')
  })

  it('says which time its row was done', () => {
    const { done, at } = workOn(nothingDone(leaf), 0, 5)
    const { lifeline } = withLifeline(done, leaf, at, at)
    expect(lifeline && lifelineWords(leaf, lifeline)).toBe('Lifeline in row 2, 2nd time')
    expect(withoutLifeline({ ...done, lifeline }).lifeline).toBeNull()
  })

  it('rows done more than once since are counted, not named', () => {
    const { done, at } = workOn(nothingDone(leaf), 0, 1)
    const later = workOn(withLifeline(done, leaf, at, at), at, 8).done
    expect(rowsSinceWords(leaf, tickedSinceLifeline(later))).toBe('the 7 rows since then')
  })

  it('to rip and untick is as if the rows since had never been worked', () => {
    const rows = fc.integer({ min: 0, max: 12 })
    fc.assert(
      fc.property(rows, rows, (before, after) => {
        const { done, at } = workOn(nothingDone(leaf), 0, before)
        const lined = withLifeline(done, leaf, at, at)
        const later = workOn(lined, at, after + 1).done
        expect(rippedToLifeline(later).done).toEqual(wentPast(done, at).done)
      }),
    )
  })
})
