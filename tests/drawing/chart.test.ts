import { describe, expect, it } from 'vitest'
import {
  chartDrawing,
  type Drawing,
  keyDrawing,
  type Node,
  nodesOf,
  toSvg,
} from '../../engine/drawing/index.ts'
import { noStitch, symbolOf } from '../../engine/stitches/index.ts'
import { chartFor, fan, patternText, reedBed } from '../chart/support.ts'

const byKey = (drawing: Drawing): Map<string, Node> =>
  new Map(
    [...nodesOf(drawing.nodes)].flatMap((node) =>
      node.key === undefined ? [] : [[node.key, node] as const],
    ),
  )

const texts = (drawing: Drawing, className: string) =>
  [...nodesOf(drawing.nodes)].flatMap((node) =>
    node.kind === 'text' && node.className === className ? [node] : [],
  )

const classed = (drawing: Drawing, className: string): Node[] =>
  [...nodesOf(drawing.nodes)].filter((node) => node.className === className)

describe('a chart drawn', () => {
  const chart = chartFor(reedBed)
  const drawing = chartDrawing(chart)

  it('has one keyed group a step, with its row and step', () => {
    const keys = byKey(drawing)
    for (const row of [0, 1]) {
      for (let step = 0; step < 7; step++) {
        expect(keys.get(`cell-${row}-${step}`)).toMatchObject({
          data: { row: String(row), step: String(step) },
        })
      }
    }
    expect(keys.has('cell-0-7')).toBe(false)
  })

  it('lays row 1 at the bottom, its first stitch at the right', () => {
    const keys = byKey(drawing)
    const place = (key: string): number[] => {
      const node = keys.get(key)
      return node?.kind === 'group' ? [node.x ?? 0, node.y ?? 0] : []
    }
    expect(place('row-0')[1]).toBeGreaterThan(place('row-1')[1] ?? Number.NaN)
    expect(place('cell-0-0')[0]).toBe((place('cell-0-6')[0] ?? Number.NaN) + 6 * 24)
    expect(place('cell-1-0')[0]).toBe(place('cell-0-6')[0])
  })

  it('puts the number where the row starts and the count, smaller, where it ends', () => {
    const [first, second] = texts(drawing, 'row-number')
    expect(first).toMatchObject({ text: '1', anchor: 'start' })
    expect(second).toMatchObject({ text: '2', anchor: 'end' })
    expect(second?.x).toBeLessThan(first?.x ?? Number.NaN)
    const counts = texts(drawing, 'row-count')
    expect(counts.map(({ text, anchor }) => [text, anchor])).toEqual([
      ['7 sts', 'end'],
      ['7 sts', 'start'],
    ])
    expect(counts[0]?.size).toBeLessThan(first?.size ?? Number.NaN)
  })

  it('keeps all writing inside the picture', () => {
    for (const chartText of [
      reedBed,
      fan,
      `${patternText('castOn: 120', 'knit', 'purl')}setUp: [purl, knit]\n`,
    ]) {
      const wide = chartDrawing(chartFor(chartText), { cell: 10 })
      for (const node of [...texts(wide, 'row-number'), ...texts(wide, 'row-count')]) {
        const length = node.text.length * node.size * 0.6
        expect(node.anchor === 'end' ? node.x - length : node.x).toBeGreaterThanOrEqual(0)
        expect(node.anchor === 'end' ? node.x : node.x + length).toBeLessThanOrEqual(wide.width)
      }
    }
  })

  it('numbers every round at the right', () => {
    const round = chartDrawing(chartFor(patternText('castOn: 4\nworked: round', 'knit', 'purl', 'knit')))
    expect(texts(round, 'row-number').map(({ anchor }) => anchor)).toEqual(['start', 'start', 'start'])
  })

  it('outlines each repeat, with the corners of its jogs', () => {
    const jogged = chartDrawing(
      chartFor(
        patternText(
          'castOn: { multiple: 4, plus: 3 }',
          'k1, *yo, ssk, k2; rep from * to last 2 sts, k2',
          'purl',
          'k3, *yo, ssk, k2; rep from * to end',
          'purl',
        ),
        2,
      ),
    )
    const outlines = classed(jogged, 'repeat-outline')
    expect(outlines).toHaveLength(2)
    // Four corners of a box, and two more on either side for the one jog; then the path closes.
    for (const node of outlines)
      expect(node.kind === 'path' && node.d.map(([letter]) => letter).join('')).toBe('MLLLLLLLZ')
    expect(classed(drawing, 'repeat-outline')).toHaveLength(1)
    expect(classed(drawing, 'edge-line')).toHaveLength(0)
  })

  it('draws edge lines and markers where there are any', () => {
    const text = patternText(
      'castOn: { multiple: 2, plus: 0 }\nedges: { before: k1, after: k1 }',
      '*yo, k2tog; rep from * to end',
      'purl',
    )
    expect(classed(chartDrawing(chartFor(text)), 'edge-line')).toHaveLength(2)
    const marked = chartDrawing(chartFor(patternText('castOn: 5', 'k2, pm, k3', 'p3, sm, p2')))
    expect(classed(marked, 'marker')).toHaveLength(2)
  })

  it('marks cells without a stitch by a shape, not only by a tint', () => {
    const cells = classed(chartDrawing(chartFor(fan)), 'cell no-stitch')
    expect(cells).toHaveLength(2 + 4 + 6 + 6)
    for (const cell of cells) {
      expect(cell.kind === 'group' && cell.children.map((node) => node.className)).toEqual([
        'shade',
        'hatch',
        'ground',
      ])
    }
  })

  it('draws a wide stitch over all its cells', () => {
    const crossed = chartDrawing(chartFor(patternText('castOn: 4\ngrowing: true', '2/2 RC')), { cell: 10 })
    const cell = byKey(crossed).get('cell-0-0')
    expect(cell?.kind === 'group' && cell.children[0]).toMatchObject({ kind: 'rect', width: 40, height: 10 })
  })

  it('can be sized in millimetres', () => {
    const small = chartDrawing(chart, { cell: 4, unit: 'mm' })
    expect(small.height).toBe(2 * 4 + 2)
    expect(toSvg(small, { standalone: true })).toContain('height="10mm"')
  })
})

describe('as SVG', () => {
  it('drawing twice gives the same bytes', () => {
    const draw = () => toSvg(chartDrawing(chartFor(fan, 2)), { standalone: true })
    expect(draw()).toBe(draw())
  })

  it('has an accessible name and says how to read it', () => {
    const svg = toSvg(chartDrawing(chartFor(reedBed)))
    expect(svg).toContain('>Chart of Test</title>')
    expect(svg).toContain(
      '>2 rows and 7 columns, seen from the right side. Begins at the bottom with row 1. Right-side rows run from right to left, wrong-side rows from left to right.</desc>',
    )
  })

  it('keeps a hostile title in its place, and carries no style', () => {
    const text = patternText('castOn: 4', 'knit').replace(
      'title: Test',
      `title: '</title><script>alert("1")</script>&'`,
    )
    const svg = toSvg(chartDrawing(chartFor(text)), { standalone: true })
    expect(svg).toContain(
      '<title id="drawing-title">Chart of &lt;/title&gt;&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&amp;</title>',
    )
    expect(svg).not.toMatch(/<script|style=|<style/)
  })

  it('opens and closes its elements in order', () => {
    const svg = toSvg(chartDrawing(chartFor(fan)))
    const open: string[] = []
    for (const [, closing, name, selfClosing] of svg.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
      if (closing) expect(open.pop()).toBe(name)
      else if (!selfClosing) open.push(name ?? '')
    }
    expect(open).toEqual([])
  })

  it.each([
    ['reed-bed', reedBed, 2],
    ['fan', fan, 1],
  ] as const)('%s looks as in the stored picture', async (name, text, repeats) => {
    await expect(toSvg(chartDrawing(chartFor(text, repeats)), { standalone: true })).toMatchFileSnapshot(
      `pictures/${name}.svg`,
    )
  })
})

describe('a symbol for the key', () => {
  it('is as wide as its cells and named after the stitch', () => {
    const key = keyDrawing(symbolOf('2/2 RC'), { cell: 10 })
    expect(key.title).toBe('two over two, crossed to the right')
    expect(key.width - key.height).toBeCloseTo(30)
  })

  it('exists for cells without a stitch', () => {
    expect(toSvg(keyDrawing(noStitch))).toContain('class="hatch"')
  })
})
