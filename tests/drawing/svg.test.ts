import { describe, expect, it } from 'vitest'
import { type Drawing, type Node, nodesOf } from '../../engine/drawing/display.ts'
import { pathData, toSvg } from '../../engine/drawing/svg.ts'

const drawing = (nodes: readonly Node[], more: Partial<Drawing> = {}): Drawing => ({
  width: 20,
  height: 10.5,
  unit: 'px',
  title: 'A hole',
  description: 'One yarn over.',
  nodes,
  ...more,
})

const hole: Node = { kind: 'circle', x: 10, y: 5, radius: 3, stroke: 'currentColor', fill: 'none' }

describe('the frame', () => {
  it('has size, viewBox, role and an accessible name and description', () => {
    const svg = toSvg(drawing([hole]), { idPrefix: 'c1' })
    expect(svg).toContain('viewBox="0 0 20 10.5"')
    expect(svg).toContain('role="img" aria-labelledby="c1-title c1-desc"')
    expect(svg).toContain('<title id="c1-title">A hole</title>')
    expect(svg).toContain('<desc id="c1-desc">One yarn over.</desc>')
    expect(svg).not.toContain('xmlns')
  })

  it('points only to the title when there is no description', () => {
    const svg = toSvg(drawing([hole], { description: '' }))
    expect(svg).toContain('aria-labelledby="drawing-title"')
    expect(svg).not.toContain('<desc')
  })

  it('standing alone has the namespace, and millimetres when they are its unit', () => {
    const svg = toSvg(drawing([hole], { unit: 'mm' }), { standalone: true })
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="20mm" height="10\.5mm" /)
    expect(svg).not.toMatch(/style/)
  })
})

describe('nodes', () => {
  it('carry key, class, data and paint as attributes', () => {
    const svg = toSvg(
      drawing([
        {
          kind: 'group',
          key: 'cell-0-1',
          className: 'cell',
          data: { row: '0', stepInRow: '1' },
          x: 4,
          y: 0,
          rotate: 90,
          children: [hole, { kind: 'line', x1: 0, y1: 0, x2: 1, y2: 1, dash: [1, 2], cap: 'round' }],
        },
      ]),
    )
    expect(svg).toContain(
      '<g transform="translate(4 0) rotate(90)" class="cell" data-key="cell-0-1" data-row="0" data-step-in-row="1">',
    )
    expect(svg).toContain('<circle cx="10" cy="5" r="3" fill="none" stroke="currentColor"/>')
    expect(svg).toContain('<line x1="0" y1="0" x2="1" y2="1" stroke-linecap="round" stroke-dasharray="1 2"/>')
  })

  it('round numbers to three decimals without trailing zeros or a negative zero', () => {
    const svg = toSvg(
      drawing([
        {
          kind: 'polyline',
          points: [
            [1 / 3, -0.00001],
            [2.5000001, 1e-9],
          ],
        },
      ]),
    )
    expect(svg).toContain('points="0.333,0 2.5,0"')
    expect(pathData([['M', 0.1 + 0.2, 1], ['C', 1, 2, 3, 4, 5, 6.00049], ['Z']])).toBe('M0.3 1C1 2 3 4 5 6Z')
  })

  it('refuse a number that is none', () => {
    expect(() => toSvg(drawing([{ ...hole, x: Number.NaN }]))).toThrow(RangeError)
  })

  it('are all visited, groups before their children', () => {
    const group: Node = { kind: 'group', children: [hole, { kind: 'group', children: [hole] }] }
    expect([...nodesOf([group, hole])].map((node) => node.kind)).toEqual([
      'group',
      'circle',
      'group',
      'circle',
      'circle',
    ])
  })
})

describe('hostile text', () => {
  const hostile = `"><script>alert(1)</script>&amp;']]>\u0000\u0007\u001b\u009f\ud800x\udc00\ufffe\n\t😀`
  const svg = toSvg(
    drawing(
      [
        {
          kind: 'text',
          text: hostile,
          x: 0,
          y: 0,
          size: 3,
          anchor: 'middle',
          key: hostile,
          className: hostile,
          data: { [hostile]: hostile },
        },
      ],
      {
        title: hostile,
        description: hostile,
      },
    ),
    { idPrefix: hostile, standalone: true },
  )

  it('cannot open a tag, close an attribute or end a section', () => {
    expect(svg).not.toContain('<script')
    expect(svg).not.toContain(']]>')
    expect(svg.match(/<[a-z/]+/g)).toEqual([
      '<svg',
      '<title',
      '</title',
      '<desc',
      '</desc',
      '<text',
      '</text',
      '</svg',
    ])
    expect(svg).toContain('&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;&amp;amp;&#39;]]&gt;x&#10;&#9;😀')
  })

  it('loses characters that XML does not allow and halves of surrogate pairs', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
    expect(svg).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/)
    expect(svg.isWellFormed()).toBe(true)
  })

  it('stays inside ids and names of data attributes', () => {
    const id = /<title id="([^"]*)"/.exec(svg)?.[1] ?? ''
    expect(id).toMatch(/^[\w-]+-title$/)
    expect(svg).toMatch(/ data-scriptalert1scriptampx="/)
  })

  it('gives the same attribute only once', () => {
    const twice = toSvg(drawing([{ ...hole, data: { rowStep: '1', 'row-step': '2' } }]))
    expect(twice.match(/data-row-step=/g)).toHaveLength(1)
  })
})

it('the same drawing gives the same bytes', () => {
  expect(toSvg(drawing([hole]))).toBe(toSvg(drawing([{ ...hole }])))
})
