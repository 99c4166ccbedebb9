import { describe, expect, it } from 'vitest'
import {
  type Fabric,
  type FabricLayout,
  type FabricState,
  fabricOf,
  layOutFabric,
} from '../../engine/fabric/index.ts'
import { at } from '../../engine/fabric/layout/at.ts'
import { settle } from '../../engine/fabric/layout/settle.ts'
import { atLeastRows, fabricFor, libraryPattern, workedPattern } from './support.ts'

const libraryFabric = (file: string, repeats: number, rows = 12): Fabric =>
  fabricOf(workedPattern(atLeastRows(libraryPattern(file), rows), repeats))

/** The cast-on edge from the left: how high each loop's base lies. */
const edge = (fabric: Fabric, { baseY }: FabricLayout): number[] =>
  (fabric.lines[0]?.loops ?? []).map((id) => at(baseY, id))

const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values)

/** Places of loops from the left that lie lower than both neighbours. */
const lowest = (heights: readonly number[]): number[] =>
  heights.flatMap((y, i) => (i > 0 && y < at(heights, i - 1) && y < (heights[i + 1] ?? -9) ? [i] : []))

describe('a scalloped edge', () => {
  it('is straight in plain knitting', () => {
    const plain = fabricFor(19, ['knit', 'purl'], 6)
    for (const state of ['free', 'blocked'] as const)
      expect(span(edge(plain, layOutFabric(plain, { state })))).toBeLessThan(1e-3)
  })

  it('hangs down at the double decreases of a razor shell', () => {
    const fabric = libraryFabric('razor-shell.yaml', 3)
    const heights = edge(fabric, layOutFabric(fabric, { state: 'free' }))
    expect(span(heights)).toBeGreaterThan(0.4)
    // k1, (yo, k1, sk2p, k1, yo, k1) three times: the decrease takes the third to fifth loop of each six.
    expect(lowest(heights)).toEqual([3, 9, 15])
  })

  it('waves once a repeat over a fan of 18 stitches, and as much at the top', () => {
    const fabric = libraryFabric('old-shale.yaml', 2)
    const layout = layOutFabric(fabric, { state: 'free' })
    const heights = edge(fabric, layout)
    expect(span(heights)).toBeGreaterThan(2)
    // Six yarn overs in the middle of each 18 lift the edge; between the repeats it hangs.
    const [first, between, second] = [at(heights, 8), at(heights, 17), at(heights, 26)]
    expect(Math.min(first, second)).toBeGreaterThan(between + 2)
    const top = (fabric.lines.at(-1)?.loops ?? []).map((id) => at(layout.headY, id))
    expect(span(top)).toBeGreaterThan(2)
  })

  it('is drawn out at its points by blocking', () => {
    const fabric = libraryFabric('horseshoe.yaml', 2)
    const [free, blocked] = (['free', 'blocked'] as const).map((state) =>
      edge(fabric, layOutFabric(fabric, { state })),
    )
    expect(lowest(free ?? [])).toEqual([5, 15])
    expect(span(blocked ?? [])).toBeGreaterThan(span(free ?? []) + 0.3)
  })
})

/** The mean area of the cells that have one of these nodes at a corner or in their upper side, and of all the others. */
function cellAreas(fabric: Fabric, state: FabricState): { over: number; plain: number } {
  const { mesh, places } = settle(fabric, { state })
  const overs = new Set(fabric.loops.filter(({ kind }) => kind === 'over').map(({ id }) => mesh.base[id]))
  const sums = { over: [0, 0], plain: [0, 0] }
  for (const { nodes, over } of mesh.cells) {
    let area = 0
    for (const [i, node] of nodes.entries()) {
      const next = at(nodes, (i + 1) % nodes.length)
      area +=
        (at(places, 2 * node) * at(places, 2 * next + 1) - at(places, 2 * next) * at(places, 2 * node + 1)) /
        2
    }
    const sum = sums[[...nodes, ...over].some((node) => overs.has(node)) ? 'over' : 'plain']
    sum[0] = (sum[0] ?? 0) + area
    sum[1] = (sum[1] ?? 0) + 1
  }
  const mean = ([sum = 0, count = 0]: readonly number[]): number => sum / count
  return { over: mean(sums.over), plain: mean(sums.plain) }
}

describe.each(['reed-bed.yaml', 'horseshoe.yaml', 'portholes.yaml', 'old-shale.yaml'])(
  'the eyelets of %s',
  (file) => {
    it('open when the piece is pinned out, more than the ground does', () => {
      const fabric = libraryFabric(file, 2)
      const [before, after] = [cellAreas(fabric, 'unblocked'), cellAreas(fabric, 'blocked')]
      expect(after.over).toBeGreaterThan(1.6 * before.over)
      expect(after.over / before.over).toBeGreaterThan(1.05 * (after.plain / before.plain))
    })
  },
)

describe('columns', () => {
  it('tilt towards the double decrease that they run into', () => {
    const fabric = fabricFor(25, ['k1, *yo, k4, s2kp, k4, yo, k1; rep from * to end', 'purl'], 6)
    const { baseX, headX } = layOutFabric(fabric, { state: 'free' })
    const right: number[] = []
    const left: number[] = []
    // Loops of the right-side rows but the first and the last: the row runs from the right, twelve stitches a repeat.
    for (const course of fabric.courses.slice(3, -2).filter((_, i) => i % 2 === 0)) {
      for (const [i, id] of course.entries()) {
        const place = (i - 1) % 12
        const tilt = at(headX, id) - at(baseX, id)
        if (i > 0 && place >= 2 && place <= 4) right.push(tilt)
        if (i > 0 && place >= 6 && place <= 8) left.push(tilt)
      }
    }
    expect(right.length).toBeGreaterThan(20)
    expect(right.every((tilt) => tilt < -0.02)).toBe(true)
    expect(left.every((tilt) => tilt > 0.02)).toBe(true)
    const grid = layOutFabric(fabric, { state: 'pinned' })
    expect(
      at(grid.headX, at(fabric.courses[3] ?? [], 3)) - at(grid.baseX, at(fabric.courses[3] ?? [], 3)),
    ).toBe(0)
  })

  it('crossed change places and draw the fabric in', () => {
    const fabric = fabricFor(12, ['k4, 2/2 RC, k4', 'purl', 'knit', 'purl'], 2)
    const { baseX, headX } = layOutFabric(fabric, { state: 'free' })
    const [first, second, third, fourth] = [4, 5, 6, 7].map((id) => at(headX, id) - at(baseX, id))
    for (const moved of [first, second]) expect(moved).toBeLessThan(-1.3)
    for (const moved of [third, fourth]) expect(moved).toBeGreaterThan(1.3)
    const width = (course: number): number => span((fabric.courses[course] ?? []).map((id) => at(baseX, id)))
    expect(width(1)).toBeLessThan(11)
  })

  it('that are slipped draw up their rows', () => {
    const rows = (middle: string) => [
      `k4, ${middle}, k4`,
      `p4, ${middle === 'k1' ? 'p1' : middle}, p4`,
      'knit',
      'purl',
    ]
    const height = (fabric: Fabric): number => {
      const { baseY } = layOutFabric(fabric, { state: 'free' })
      const middle = (course: number): number => at(baseY, fabric.courses[course]?.[4] ?? -1)
      return middle(3) - middle(0)
    }
    expect(height(fabricFor(9, rows('sl1'), 1))).toBeLessThan(height(fabricFor(9, rows('k1'), 1)) - 0.1)
  })
})

describe('a blocked piece', () => {
  const fabric = libraryFabric('horseshoe.yaml', 2)
  const [free, blocked] = (['free', 'blocked'] as const).map((state) => layOutFabric(fabric, { state })) as [
    FabricLayout,
    FabricLayout,
  ]
  const sideOf = (layout: FabricLayout, end: 0 | -1): number[] =>
    fabric.lines.map(({ loops }) => at(layout.baseX, loops.at(end) ?? -1))

  it('has straight upright sides', () => {
    for (const end of [0, -1] as const) {
      expect(span(sideOf(free, end))).toBeGreaterThan(0.5)
      expect(span(sideOf(blocked, end))).toBeLessThan(0.25)
    }
  })

  it('is wider and taller', () => {
    const height = ({ baseY }: FabricLayout): number =>
      at(baseY, at(fabric.lines.at(-1)?.loops ?? [], 10)) - at(baseY, 10)
    expect(span([...blocked.baseX]) / span([...free.baseX])).toBeGreaterThan(1.1)
    expect(height(blocked) / height(free)).toBeGreaterThan(1.07)
  })

  it('has a slanting edge straight where it grows, and the points of an edging drawn out', () => {
    const shawl = fabricOf(workedPattern(atLeastRows(libraryPattern('jib-shawl.yaml'), 16), 1))
    const side = (layout: FabricLayout): number => {
      const nodes = shawl.lines.slice(1).map(({ loops }) => loops[0] ?? -1)
      const [bottom, top] = [at(nodes, 0), at(nodes, nodes.length - 1)]
      const [dx, dy] = [
        at(layout.baseX, top) - at(layout.baseX, bottom),
        at(layout.baseY, top) - at(layout.baseY, bottom),
      ]
      expect(dx).toBeLessThan(-3)
      const off = nodes.map(
        (id) =>
          ((at(layout.baseX, id) - at(layout.baseX, bottom)) * dy -
            (at(layout.baseY, id) - at(layout.baseY, bottom)) * dx) /
          Math.hypot(dx, dy),
      )
      return span(off)
    }
    expect(side(layOutFabric(shawl, { state: 'blocked' }))).toBeLessThan(0.3)
    expect(side(layOutFabric(shawl, { state: 'free' }))).toBeGreaterThan(0.3)
    const edging = libraryFabric('dillmont-lace-397.yaml', 1, 32)
    const reach = (state: FabricState): number => {
      const { baseX } = layOutFabric(edging, { state })
      const right = edging.lines.map(({ loops }) => at(baseX, loops.at(-1) ?? -1))
      return span(right)
    }
    expect(reach('blocked')).toBeGreaterThan(reach('free') + 0.3)
  })
})

describe('a mirrored pattern', () => {
  const twins: Readonly<Record<string, string>> = { k2tog: 'ssk', ssk: 'k2tog', sk2p: 'k3tog', k3tog: 'sk2p' }
  const mirrored = (row: string): string =>
    row
      .split(', ')
      .reverse()
      .map((stitch) => twins[stitch] ?? stitch)
      .join(', ')

  it.each(['free', 'blocked'] as const)('gives the mirrored layout (%s)', (state) => {
    const rows = [
      'k2, yo, ssk, k1, k2tog, yo, k6, yo, k1, sk2p, k1, yo, k3',
      'purl',
      'k4, ssk, yo, k6, yo, ssk, k2, yo, k2tog, k3',
      'purl',
    ]
    const times = 3
    const [one, other] = [fabricFor(21, rows, times), fabricFor(21, rows.map(mirrored), times)]
    const [a, b] = [one, other].map((fabric) => layOutFabric(fabric, { state }))
    if (a === undefined || b === undefined) throw new Error('no layout')
    const differences: number[] = []
    const middle = (layout: FabricLayout): number =>
      layout.baseX.reduce((sum, x) => sum + x, 0) / layout.baseX.length
    const [ma, mb] = [middle(a), middle(b)]
    for (const [i, { loops }] of one.lines.entries()) {
      const mirror = other.lines[i]?.loops.toReversed() ?? []
      for (const [k, id] of loops.entries()) {
        const twin = at(mirror, k)
        differences.push(
          Math.abs(at(a.baseX, id) - ma + at(b.baseX, twin) - mb),
          Math.abs(at(a.baseY, id) - at(b.baseY, twin)),
        )
      }
    }
    expect(differences.length).toBeGreaterThan(500)
    expect(Math.max(...differences)).toBeLessThan(0.01)
    // The lace itself is lopsided: laid over itself it would not pass.
    const lopsided = one.lines.flatMap(({ loops }) =>
      loops.map((id, k) =>
        Math.abs(at(a.baseX, id) - ma + at(a.baseX, at(loops, loops.length - 1 - k)) - ma),
      ),
    )
    expect(Math.max(...lopsided)).toBeGreaterThan(0.2)
  })
})
