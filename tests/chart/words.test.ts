import { describe, expect, it } from 'vitest'
import { chartTable } from '../../engine/chart/index.ts'
import { chartFor, patternText, reedBed } from './support.ts'

describe('the chart as a table', () => {
  it('has rows in working order, runs taken together, and the count', () => {
    expect(chartTable(chartFor(reedBed, 2)).map((row) => row.text)).toEqual([
      'Row 1, right side, right to left: k1, yo, ssk, k1, k2tog, yo, k1, yo, ssk, k1, k2tog, yo, k1; 13 stitches',
      'Row 2, wrong side, left to right: p13; 13 stitches',
    ])
  })

  it('says how often a stitch comes that cannot carry a number', () => {
    const chart = chartFor(patternText('castOn: 8\ngrowing: true\nworked: round', 'k2tog, k2tog, ssk, ssk'))
    expect(chartTable(chart)).toMatchObject([
      {
        row: 'Round 1',
        direction: 'right side, right to left',
        stitches: 'k2tog twice, ssk twice',
        count: '4 stitches',
      },
    ])
  })

  it('leaves out cells where no stitch is', () => {
    const chart = chartFor(patternText('castOn: 4\ngrowing: true', 'knit', 'p1, p2tog, p1'))
    expect(chart.hasNone).toBe(true)
    expect(chartTable(chart).map((row) => row.stitches)).toEqual(['k4', 'p1, p2tog, p1'])
  })
})

describe('the key', () => {
  it('says what to work on either side', () => {
    const key = chartFor(reedBed).key.map(({ stitch, rightSide, wrongSide }) => [
      stitch,
      rightSide,
      wrongSide,
    ])
    expect(key).toEqual([
      ['k', 'knit', 'purl'],
      ['yo', 'yarn over', 'yarn over'],
      ['k2tog', 'knit two together', 'purl two together'],
      ['ssk', 'slip, slip, knit', 'slip, slip, purl'],
    ])
  })

  it('speaks of the right side alone where no row is worked on the wrong side', () => {
    const chart = chartFor(
      patternText('castOn: { multiple: 2, plus: 0 }\nworked: round', '*yo, k2tog; rep from * to end'),
    )
    expect(chart.key.map((entry) => entry.wrongSide)).toEqual([null, null])
  })

  it('names what the wrong-side rows of this chart do work', () => {
    const chart = chartFor(patternText('castOn: 8\ngrowing: true\nfirstSide: WS', 'ssk, skp, p4'))
    expect(chart.key.find((entry) => entry.stitch === 'ssp')?.wrongSide).toBe(
      'slip, slip, knit; or slip one, knit one, pass the slipped stitch over',
    )
  })
})
