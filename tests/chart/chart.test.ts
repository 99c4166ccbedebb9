import { describe, expect, it } from 'vitest'
import { type Chart, chartOf, chartTable } from '../../engine/chart/index.ts'
import { chartFor, fan, patternText, pictures, reedBed, workedText } from './support.ts'

const noneIn = (chart: Chart): number[] =>
  chart.rows.map((row) => row.cells.filter((cell) => cell.kind === 'none').length)

describe('a repeat of 6 plus 1, worked flat', () => {
  const chart = chartFor(reedBed)

  it('has the right-side row as it lies, from the right', () => {
    expect(pictures(chart)).toEqual(['.......', '.o/.\\o.'])
    expect(chart.rows[0]?.cells.map((cell) => cell.column)).toEqual([0, 1, 2, 3, 4, 5, 6])
  })

  it('shows wrong-side purls as blank and keeps what the hands worked', () => {
    const purls = chart.rows[1]?.cells ?? []
    expect(purls).toHaveLength(7)
    for (const cell of purls) expect(cell).toMatchObject({ stitch: 'k', worked: 'p' })
  })

  it('has the first step of a right-side row at the right, of a wrong-side row at the left', () => {
    const steps = chart.rows.map((row) => row.cells.map((cell) => (cell.kind === 'stitch' ? cell.step : -1)))
    expect(steps).toEqual([
      [0, 1, 2, 3, 4, 5, 6],
      [6, 5, 4, 3, 2, 1, 0],
    ])
    expect(chart.rows.map((row) => row.label)).toEqual(['right', 'left'])
  })

  it('boxes the repeat in both rows, leaves out the balancing stitch, and has no edges', () => {
    expect(chart.repeats).toBe(1)
    for (const row of chart.rows) {
      expect(row.bounds).toEqual([1, 7])
      expect(row.edges).toEqual({ right: 0, left: 7 })
    }
    const zones = chart.rows[1]?.cells.map((cell) => (cell.kind === 'stitch' ? cell.zone : ''))
    expect(zones).toEqual(['right', ...Array(6).fill('repeat 1')])
  })

  it('counts before and after each row', () => {
    expect(chartFor(reedBed, 3).rows.map((row) => [row.countBefore, row.countAfter])).toEqual([
      [19, 19],
      [19, 19],
    ])
  })
})

describe('wrong-side looks', () => {
  it('a wrong-side knit is the purl sign, a wrong-side decrease its right-side twin', () => {
    const chart = chartFor(patternText('castOn: 6\ngrowing: true\nfirstSide: WS', 'k2, p2tog, ssp'))
    expect(pictures(chart)).toEqual(['--/\\'])
  })

  it('every round starts at the right and shows stitches as they are worked', () => {
    const chart = chartFor(
      patternText(
        'castOn: { multiple: 4, plus: 0 }\nworked: round',
        '*yo, ssk, k2; rep from * to end',
        'purl',
      ),
      2,
    )
    expect(pictures(chart)).toEqual(['--------', '..\\o..\\o'])
    expect(chart.rows.map((row) => row.label)).toEqual(['right', 'right'])
  })
})

describe('a fan whose count goes 9, 15, 15, 13, 11, 9, 9', () => {
  const chart = chartFor(fan, 2)

  it('is as wide as its widest row and pads the others', () => {
    expect(chart.columns).toBe(30)
    expect(noneIn(chart)).toEqual([0, 0, 4, 8, 12, 12])
  })

  it('has as many cells with stitches as the count after each row', () => {
    expect(chart.rows.map((row) => row.countAfter)).toEqual([30, 30, 26, 22, 18, 18])
    for (const row of chart.rows) {
      expect(row.cells.filter((cell) => cell.kind === 'stitch')).toHaveLength(row.countAfter)
    }
  })

  it('narrows from both sides, so that the decreases slant in one line and plain stitches stand over each other', () => {
    expect(pictures(chartFor(fan))).toEqual([
      'xxx.........xxx',
      'xxx/.......\\xxx',
      'xx/.........\\xx',
      'x/...........\\x',
      '...............',
      '..o.o.o.o.o.o..',
    ])
  })

  it('shows each repeat like the others', () => {
    for (const row of pictures(chart)) expect(row.slice(0, 15)).toBe(row.slice(15))
    for (const row of chart.rows) expect(row.bounds).toEqual([0, 15, 30])
  })
})

describe('cells over their loops', () => {
  it('a growing piece leaves room below its yarn overs', () => {
    const chart = chartFor(
      patternText('castOn: 3\ngrowing: true', 'k1, yo, k1, yo, k1', 'purl', 'k1, yo, k3, yo, k1', 'purl'),
    )
    expect(pictures(chart)).toEqual(['.......', '.o...o.', '.x...x.', '.xo.ox.'])
  })

  it('a double decrease stands over the middle of its three', () => {
    const chart = chartFor(patternText('castOn: 7\ngrowing: true', 'knit', 'purl', 'k2, s2kp, k2'))
    expect(pictures(chart)[0]).toBe('..x^x..')
  })

  it('a zone that changes while the whole row does not is left without empty cells', () => {
    const chart = chartFor(
      patternText('castOn: { multiple: 4, plus: 3 }', 'k2tog, *k4; rep from * to last st, yo, k1', 'purl'),
      2,
    )
    expect(chart.hasNone).toBe(false)
    expect(chart.columns).toBe(11)
  })
})

describe('outlines', () => {
  it('jog where a repeat begins with another stitch', () => {
    const chart = chartFor(
      patternText(
        'castOn: { multiple: 4, plus: 3 }',
        'k1, *yo, ssk, k2; rep from * to last 2 sts, k2',
        'purl',
        'k3, *yo, ssk, k2; rep from * to end',
        'purl',
      ),
      2,
    )
    expect(chart.rows.map((row) => row.bounds)).toEqual([
      [1, 5, 9],
      [1, 5, 9],
      [3, 7, 11],
      [3, 7, 11],
    ])
    expect(chart.hasNone).toBe(false)
  })

  it('tell edge stitches apart, whichever side of the edge a row begins with', () => {
    const text = patternText(
      'castOn: { multiple: 2, plus: 0 }\nedges: { before: k3, after: k1 }',
      '*yo, k2tog; rep from * to end',
      'purl',
    )
    const chart = chartFor(text, 2)
    for (const row of chart.rows) expect(row.edges).toEqual({ right: 3, left: 7 })
    expect(pictures(chart)).toEqual(['-....---', './o/o...'])
  })

  it('take the repeats that most rows have when a row repeats less', () => {
    const chart = chartFor(
      patternText(
        'castOn: { multiple: 6, plus: 0 }',
        '*yo, k2tog, k4; rep from * to end',
        'purl',
        '*yo, k2tog; rep from * to end',
        'purl',
        '*k3, yo, k2tog, k1; rep from * to end',
        'purl',
      ),
      2,
    )
    expect(chart.repeats).toBe(2)
    for (const row of chart.rows) expect(row.bounds).toEqual([0, 6, 12])
  })
})

describe('markers, set-up rows, turned rows', () => {
  it('places a marker between the cells that it hangs between, on either side', () => {
    const chart = chartFor(patternText('castOn: 5', 'k2, pm, k3', 'p3, sm, p2', 'k2, rm, k3'))
    expect(chart.rows.map((row) => row.markers)).toEqual([[2], [2], []])
  })

  it('sets set-up rows below row 1', () => {
    const chart = chartFor(`${patternText('castOn: 4', 'knit', 'purl')}setUp:\n  - purl\n`)
    expect(chart.rows.map((row) => row.number)).toEqual([0, 1, 2])
    expect(chartTable(chart)[0]?.row).toBe('Set-up row 1')
  })

  it('shows the loops that a turn leaves on either needle', () => {
    const chart = chartFor(patternText('castOn: 6\ngrowing: true', 'k4, turn', 'p4', 'knit', 'purl'))
    expect(pictures(chart)).toEqual(['......', '......', '~~....', '~~....'])
    for (const row of chart.rows) expect(row.countAfter).toBe(6)
  })
})

it('working the same pattern again gives the same chart', () => {
  expect(chartOf(workedText(fan, 3))).toEqual(chartOf(workedText(fan, 3)))
})
