/** One stitch close up: every stitch of the catalogue, its loops told apart without colour, and its words. */
import { describe, expect, it } from 'vitest'
import { swatchOf } from '../../engine/drawing/close-up-swatch.ts'
import { closeUpDrawing, type Drawing, nodesOf, toSvg } from '../../engine/drawing/index.ts'
import { catalogue } from '../../engine/stitches/index.ts'

const textsIn = (drawing: Drawing): string[] =>
  [...nodesOf(drawing.nodes)].flatMap((node) => (node.kind === 'text' ? [node.text] : []))

describe.each(catalogue.map(({ id }) => id))('%s', (id) => {
  it.each(['right', 'wrong'] as const)('has a picture of its %s side', (side) => {
    const drawing = closeUpDrawing(id, { side })
    const svg = toSvg(drawing, { standalone: true })
    expect(svg).not.toMatch(/NaN|undefined|Infinity/)
    expect(svg).toMatch(/class="yarn-fill yarn-(new|parent-1)"/)
    expect(drawing.title).toContain(id)
    expect(drawing.title).toContain(`${side} side`)
    expect(drawing.description.length).toBeGreaterThan(20)
    expect(Math.min(drawing.width, drawing.height)).toBeGreaterThan(64)
  })

  it('numbers the loops that it takes', () => {
    const { taken, made } = swatchOf(id)
    const isSlip = taken.length === 1 && made[0] === taken[0]
    expect(textsIn(closeUpDrawing(id))).toEqual(isSlip ? [] : taken.map((_, i) => String(i + 1)))
  })
})

it('the numbers run from the left needle’s tip: on the right side the first stands on the right', () => {
  const places = [...nodesOf(closeUpDrawing('k3tog').nodes)].flatMap((node) =>
    node.kind === 'text' ? [node.x] : [],
  )
  expect(places).toEqual(places.toSorted((a, b) => b - a))
  const behind = [...nodesOf(closeUpDrawing('k3tog', { side: 'wrong' }).nodes)]
  const mirrored = behind.flatMap((node) => (node.kind === 'text' ? [node.x] : []))
  expect(mirrored).toEqual(mirrored.toSorted((a, b) => a - b))
})

describe('the words of a close-up', () => {
  it.each([
    // Front to back on the right side, from the two loops' order of entering (common practice, no source).
    ['k2tog', 'From front to back lie 2, 1.'],
    ['ssk', 'From front to back lie 1, 2.'],
    ['sk2p', 'From front to back lie 1, 3, 2.'],
    ['s2kp', 'From front to back lie 2, 1, 3.'],
    ['k', 'The new loop comes out over the head of its loop.'],
    ['p', 'The new loop goes back behind the head of its loop.'],
    ['yo', 'A yarn over hangs from no loop: a hole opens under it.'],
    ['k tbl', 'The old loop is twisted: its legs cross.'],
    ['m1l', 'running strand'],
    ['sl', 'The loop is slipped'],
  ])('%s: %s', (id, words) => {
    expect(closeUpDrawing(id).description).toContain(words)
  })

  it('tell the stack as it is seen', () => {
    expect(closeUpDrawing('k2tog', { side: 'wrong' }).description).toContain('From front to back lie 1, 2.')
    expect(closeUpDrawing('k', { side: 'wrong' }).description).toContain('goes back behind')
  })
})

it('there is none of a stitch that does not exist', () => {
  expect(() => closeUpDrawing('no such stitch')).toThrow(/no such stitch/)
})
