import { describe, expect, it } from 'vitest'
import { benchBefore, benchCastOn, type Deed, workDeeds } from '../../engine/needles/index.ts'
import { fromLibrary } from './support.ts'

const knit = (stitch: string): Deed => ({
  do: 'stitch',
  stitch,
  span: { start: 0, end: 0 },
  repeat: null,
  position: null,
  part: 'row',
})
const row = { number: 1, side: 'RS' } as const
const flat = { worked: 'flat' } as const

describe('a row worked from deeds', () => {
  it('that are the words of the row is the row', () => {
    for (const slug of ['horseshoe', 'dillmont-lace-397', 'portholes', 'slipway-edging']) {
      const worked = fromLibrary(slug, 2)
      for (const [index, right] of worked.rows.entries()) {
        const bench = benchBefore(worked, index)
        const deeds = right.steps.map(
          (step): Deed => ({ ...knit(step.stitch), ...step, do: 'stitch' }) as Deed,
        )
        const done = workDeeds(bench, worked.pattern, right, index, deeds)
        expect(done.undone).toBe(0)
        expect(done.row).toEqual({ ...right, markers: [] })
        expect(bench.loops).toEqual(worked.loops.slice(0, bench.loops.length))
      }
    }
  })

  it('a loop that falls is on no needle, and the steps still tell it', () => {
    const bench = benchCastOn(3)
    const { row: done, fallen } = workDeeds(bench, flat, row, 0, [knit('k'), { do: 'fall' }, knit('k')])
    expect(fallen).toEqual([1])
    expect(done.after).toHaveLength(2)
    expect(done.steps.flatMap((step) => step.taken)).toEqual([0, 1, 2])
    expect(done.steps.at(-1)).toMatchObject({ left: 0, right: 2, total: 2 })
  })

  it('a loop that falls first goes with the first stitch', () => {
    const { row: done } = workDeeds(benchCastOn(2), flat, row, 0, [{ do: 'fall' }, knit('k')])
    expect(done.steps[0]?.taken).toEqual([1, 0])
  })

  it('a yarn over lifted over two stitches lies round both and is no stitch any more', () => {
    const bench = benchCastOn(2)
    const { row: done, belts } = workDeeds(bench, flat, row, 0, [
      knit('yo'),
      knit('sl kwise'),
      knit('k'),
      { do: 'lift', over: 2 },
    ])
    expect(done.after).toHaveLength(2)
    expect(belts).toEqual([{ belt: 2, round: done.after }])
    expect(done.steps.map((step) => step.stitch)).toEqual(['sl kwise', 'k'])
    expect(done.steps.at(-1)).toMatchObject({ step: 2, left: 0, right: 2, total: 2 })
    expect(bench.loops.at(-1)).toMatchObject({ stitch: 'k', step: 1 })
  })

  it('what cannot be done is told and leaves nothing', () => {
    const { row: done, undone } = workDeeds(benchCastOn(1), flat, row, 0, [
      knit('k2tog'),
      knit('k'),
      { do: 'fall' },
      { do: 'lift', over: 4 },
    ])
    expect(undone).toBe(3)
    expect(done.after).toHaveLength(1)
  })
})
