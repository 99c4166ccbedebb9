import { describe, expect, it } from 'vitest'
import {
  blendLayouts,
  type Fabric,
  type FabricLayout,
  type FabricState,
  fabricOf,
  type LayoutOptions,
  layOutFabric,
} from '../../engine/fabric/index.ts'
import { networkOf } from '../../engine/fabric/layout/build.ts'
import { meshOf } from '../../engine/fabric/layout/mesh-of.ts'
import { relax } from '../../engine/fabric/layout/newton.ts'
import { type Settled, settle } from '../../engine/fabric/layout/settle.ts'
import { gridPlaces } from '../../engine/fabric/layout/start.ts'
import { tensions } from '../../engine/fabric/layout/tension.ts'
import {
  areas,
  atLeastRows,
  fabricFor,
  leastArea,
  library,
  libraryPattern,
  randomLace,
  workedPattern,
} from './support.ts'

const atRest: readonly FabricState[] = ['free', 'unblocked', 'blocked']
const states: readonly FabricState[] = ['pinned', ...atRest]

const libraryFabric = (file: string, repeats: number): Fabric =>
  fabricOf(workedPattern(atLeastRows(libraryPattern(file), 12), repeats))

const laceOf = (seed: number): Fabric => {
  const { castOn, rows } = randomLace(seed)
  return fabricFor(castOn, rows)
}

const bytes = ({ baseX, baseY, headX, headY }: FabricLayout): string =>
  [baseX, baseY, headX, headY].map((list) => Buffer.from(list.buffer).toString('base64')).join()

describe.each(library)('%s', (file) => {
  it.each([2, 3])(
    'has no inverted cell in any state, nor on the way from one to another (%i repeats)',
    (repeats) => {
      const fabric = libraryFabric(file, repeats)
      const settled = new Map<FabricState, Settled>()
      for (const state of states) {
        const found = settle(fabric, { state })
        settled.set(state, found)
        expect(leastArea(found.mesh, found.places), state).toBeGreaterThan(0)
        if (state !== 'pinned') expect(found.residual, state).toBeLessThanOrEqual(1e-4)
      }
      for (const [from, a] of settled) {
        for (const [to, b] of settled) {
          for (const t of [0, 0.25, 0.5, 0.75, 1]) {
            const places = a.places.map((value, i) => (1 - t) * value + t * (b.places[i] ?? Number.NaN))
            expect(leastArea(a.mesh, places), `${from} to ${to} at ${t}`).toBeGreaterThan(0)
          }
        }
      }
    },
  )
})

describe('random laces', () => {
  const seeds = Array.from({ length: 200 }, (_, i) => i)

  it('come to rest without an inverted cell', { timeout: 60_000 }, () => {
    let triangles = 0
    const wrong: string[] = []
    for (const seed of seeds) {
      const fabric = laceOf(seed)
      for (const state of atRest) {
        const { mesh, places, residual } = settle(fabric, { state, seed })
        const inverted = [...areas(mesh, places)].filter((area) => !(area > 0)).length
        triangles += [...areas(mesh, places)].length
        if (inverted > 0 || !(residual <= 1e-4))
          wrong.push(`${seed} ${state}: ${inverted} inverted, ${residual}`)
      }
    }
    expect(wrong).toEqual([])
    // Four triangles a stitch: some 150 thousand cells.
    expect(triangles).toBeGreaterThan(500_000)
  })

  it('would have many without the areas that resist', () => {
    let inverted = 0
    for (const seed of seeds.slice(0, 30)) {
      const mesh = meshOf(laceOf(seed))
      const network = networkOf(mesh, tensions.unblocked, seed)
      const places = gridPlaces(mesh, tensions.unblocked)
      relax({ ...network, areas: { ...network.areas, stiffness: 0 } }, places, {
        tolerance: 1e-4,
        steps: 100,
      })
      inverted += [...areas(mesh, places)].filter((area) => area < 0).length
    }
    expect(inverted).toBeGreaterThan(30)
  })

  it('have decreases, yarn overs in ones and twos, purls, and lace on both sides', () => {
    const text = seeds.flatMap((seed) => randomLace(seed).rows).join(', ')
    for (const stitch of [
      'k2tog',
      'ssk',
      'sk2p',
      's2kp',
      'k3tog',
      'yo,',
      'yo twice',
      'p1',
      'p2tog',
      'ssp',
      'p3tog',
    ]) {
      expect(text).toContain(stitch)
    }
    expect(new Set(seeds.map((seed) => randomLace(seed).rows.join())).size).toBe(seeds.length)
  })
})

describe('a layout', () => {
  const fabric = libraryFabric('horseshoe.yaml', 2)

  it.each(states)('gives the same bytes for the same input (%s)', (state) => {
    const once = layOutFabric(fabric, { state, seed: 7 })
    expect(bytes(layOutFabric(libraryFabric('horseshoe.yaml', 2), { state, seed: 7 }))).toBe(bytes(once))
  })

  it('is uneven by its seed where it is unblocked, and nowhere else', () => {
    for (const state of states) {
      const [a, b] = [1, 2].map((seed) => bytes(layOutFabric(fabric, { state, seed })))
      expect(a === b, state).toBe(state !== 'unblocked')
    }
  })

  it('has the head of each loop at the base of its child, and between its children after an increase', () => {
    const increase = fabricFor(5, ['k2, (k1, yo, k1) in next st, k2', 'purl'], 1, 'growing: true\n')
    const layout = layOutFabric(increase, { state: 'free' })
    const [first, last] = increase.loops[2]?.children ?? []
    const mean = ((layout.baseX[first ?? -1] ?? 0) + (layout.baseX[last ?? -1] ?? 0)) / 2
    expect(layout.headX[2]).toBeCloseTo(mean, 12)
    expect(Math.abs((layout.baseX[first ?? -1] ?? 0) - (layout.baseX[last ?? -1] ?? 0))).toBeGreaterThan(0.3)
    for (const { id, children } of increase.loops) {
      if (children.length !== 1) continue
      expect(layout.headX[id]).toBe(layout.baseX[children[0] ?? -1])
      expect(layout.headY[id]).toBe(layout.baseY[children[0] ?? -1])
    }
  })

  it('pinned is a plain grid: rows level, stitches one apart', () => {
    const { baseX, baseY } = layOutFabric(fabric, { state: 'pinned' })
    for (const line of fabric.lines) {
      for (const [i, id] of line.loops.entries()) {
        const before = line.loops[i - 1]
        if (before === undefined) continue
        expect((baseX[id] ?? 0) - (baseX[before] ?? 0)).toBeCloseTo(1, 12)
        expect(baseY[id]).toBe(baseY[before])
      }
    }
  })

  it('leaves plain knitting as it is: a grid at rest', () => {
    const plain = fabricFor(9, ['knit', 'purl'], 4)
    const [grid, free] = [layOutFabric(plain, { state: 'pinned' }), layOutFabric(plain, { state: 'free' })]
    for (const [id, x] of free.baseX.entries()) {
      expect(x).toBeCloseTo(grid.baseX[id] ?? Number.NaN, 6)
      expect(free.baseY[id]).toBeCloseTo(grid.baseY[id] ?? Number.NaN, 6)
    }
  })

  it('blends: the ends are the layouts themselves, between them each loop goes straight', () => {
    const [a, b] = [layOutFabric(fabric, { state: 'free' }), layOutFabric(fabric, { state: 'blocked' })]
    expect(bytes(blendLayouts(a, b, 0))).toBe(bytes(a))
    expect(bytes(blendLayouts(a, b, 1))).toBe(bytes(b))
    const half = blendLayouts(a, b, 0.5)
    expect(half.headY[40]).toBeCloseTo(((a.headY[40] ?? 0) + (b.headY[40] ?? 0)) / 2, 12)
    expect([half.state, blendLayouts(a, b, 0.4).state]).toEqual(['blocked', 'free'])
    const other = layOutFabric(libraryFabric('vine.yaml', 1), { state: 'free' })
    expect(() => blendLayouts(a, other, 0.5)).toThrow('one fabric')
  })
})

describe('a row at the needles', () => {
  const worked = workedPattern(atLeastRows(libraryPattern('reed-bed.yaml'), 12), 2)
  const rest = layOutFabric(fabricOf(worked), { state: 'free' })
  const moment = fabricOf(worked, { row: 8, steps: 5 })
  const live = moment.lines.at(-1)?.loops ?? []
  const needle = (live: readonly number[]) => live.map((loop, i) => ({ loop, x: 1.1 * i - 0.5, y: 9 }))

  it('has the heads of its loops where the needles hold them, and the rows below where they were', () => {
    const pins = needle(live)
    expect(pins).toHaveLength(12)
    const options: LayoutOptions = { state: 'free', start: rest, pinnedRows: 6, pins }
    const { mesh, places, residual } = settle(moment, options)
    const layout = layOutFabric(moment, options)
    for (const { loop, x, y } of pins) expect([layout.headX[loop], layout.headY[loop]]).toEqual([x, y])
    for (const { id, row } of moment.loops) {
      if (row >= 5) continue
      expect([layout.baseX[id], layout.baseY[id]]).toEqual([rest.baseX[id], rest.baseY[id]])
    }
    expect(residual).toBeLessThanOrEqual(1e-4)
    expect(leastArea(mesh, places)).toBeGreaterThan(0)
    const moved = moment.loops.filter(({ id, row }) => row === 6 && layout.baseY[id] !== rest.baseY[id])
    expect(moved.length).toBeGreaterThan(8)
  })

  it('starts where the last frame ended, so that a frame that changes nothing stays', () => {
    const pins = needle(live)
    const frame = layOutFabric(moment, { state: 'free', start: rest, pinnedRows: 6, pins })
    const again = layOutFabric(moment, { state: 'free', start: frame, pinnedRows: 6, pins })
    expect(bytes(again)).toBe(bytes(frame))
  })

  it('takes up loops that the frame before did not have', () => {
    const before = fabricOf(worked, { row: 8, steps: 4 })
    const frame = layOutFabric(before, { state: 'free', start: rest, pinnedRows: 6 })
    const next = settle(moment, { state: 'free', start: frame, pinnedRows: 6, pins: needle(live) })
    expect(next.residual).toBeLessThanOrEqual(1e-4)
    expect(leastArea(next.mesh, next.places)).toBeGreaterThan(0)
  })

  it('keeps loops that are slipped up the rows between their ends', () => {
    const rows = ['k2, sl1, k3, sl1, k2', 'p2, sl1, p3, sl1, p2', 'knit', 'purl']
    const fabric = fabricFor(9, rows, 2)
    const whole = layOutFabric(fabric, { state: 'free' })
    const { mesh, places } = settle(fabric, { state: 'free', start: whole, pinnedRows: 6 })
    const [part] = mesh.uprights.filter(({ kind }) => kind === 'slipped')
    const [low, height, high] = [whole.baseY[6], places[2 * (part?.top ?? -1) + 1], whole.headY[6]]
    expect(part?.loop).toBe(6)
    expect(height).toBeGreaterThan((low ?? 9) + 0.4)
    expect(height).toBeLessThan((high ?? 0) - 0.4)
  })

  it('refuses a pin for a loop that is not there, and one without a place', () => {
    expect(() => layOutFabric(moment, { state: 'free', pins: [{ loop: 9999, x: 0, y: 0 }] })).toThrow(
      'no entry 9999',
    )
    expect(() =>
      layOutFabric(moment, { state: 'free', pins: [{ loop: live[0] ?? -1, x: Number.NaN, y: 0 }] }),
    ).toThrow('no place')
  })
})
