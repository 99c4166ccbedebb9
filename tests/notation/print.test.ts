import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { printRow, readRow } from '../../engine/notation/index.ts'
import { arbitraryRow, withoutSpans } from './arbitrary-row.ts'

const runs = Number(process.env.OPENWORK_RUNS ?? 300)

describe('a printed row', () => {
  it('reads back as the same row', () => {
    fc.assert(
      fc.property(arbitraryRow, (items) => {
        const written = printRow(items)
        const reading = readRow(written)
        expect(reading.issues, written).toEqual([])
        expect(withoutSpans(reading.items), written).toEqual(withoutSpans(items))
      }),
      { numRuns: runs },
    )
  })

  it('prints the same again after it was read', () => {
    fc.assert(
      fc.property(arbitraryRow, (items) => {
        const written = printRow(items)
        expect(printRow(readRow(written).items)).toBe(written)
      }),
      { numRuns: runs },
    )
  })

  it('chooses the British yarn over by its neighbours (source: tests/reference/abbreviations)', () => {
    const uk = (text: string) => printRow(readRow(text).items, { terms: 'uk' })
    expect(uk('k1, yo, k1')).toBe('k1, yfwd, k1')
    expect(uk('p1, yo, p1')).toBe('p1, yrn, p1')
    expect(uk('k1, yo, p1')).toBe('k1, yfrn, p1')
    expect(uk('p1, yo, k1')).toBe('p1, yon, k1')
    expect(uk('skp, sk2p')).toBe('skpo, sk2po')
    expect(uk('bind off 4 sts, k2')).toBe('cast off 4 sts, k2')
  })

  it('spells stitches out in full words for reading aloud', () => {
    const full = printRow(readRow('k1, *yo, ssk; rep from * to last 3 sts, k3').items, { words: 'full' })
    expect(full).toMatch(/^knit 1, \*yarn over, .*; repeat from \* to last 3 stitches, knit 3$/)
  })
})
