/** Every stitch of the catalogue can be drawn, and lies as its loops say: in the middle of a small plain swatch. */
import { describe, expect, it } from 'vitest'
import { swatchOf } from '../../engine/drawing/close-up-swatch.ts'
import { layOutFabric, otherSide, type Yarn, yarnOf } from '../../engine/fabric/index.ts'
import { catalogue } from '../../engine/stitches/index.ts'
import { verdictOn } from './yarn-support.ts'

const yarns = new Map<string, Yarn>()
const yarnFor = (id: string): Yarn => {
  const { fabric } = swatchOf(id)
  const yarn = yarns.get(id) ?? yarnOf(fabric, layOutFabric(fabric, { state: 'free' }))
  yarns.set(id, yarn)
  return yarn
}

it('the catalogue is what it was taken for', () => {
  expect(catalogue.length).toBeGreaterThanOrEqual(117)
})

describe.each(catalogue.map(({ id }) => id))('%s', (id) => {
  it('is drawn in whole curves that run on from one to the next', () => {
    const { pieces } = yarnFor(id)
    for (const [i, { curve, strand }] of pieces.entries()) {
      expect(curve.every(Number.isFinite)).toBe(true)
      const next = pieces[i + 1]
      if (next?.strand === strand) expect(next.curve.slice(0, 2)).toEqual(curve.slice(-2))
    }
  })

  it('crosses as the loops say, on both sides', () => {
    for (const yarn of [yarnFor(id), otherSide(yarnFor(id))]) {
      const { checked, wrong } = verdictOn(yarn)
      expect(checked).toBeGreaterThan(60)
      expect(wrong).toEqual([])
    }
  })

  it('has the loops that the catalogue says it makes and takes', () => {
    const { made, taken, stitch, fabric } = swatchOf(id)
    const fresh = stitch.effect.made.filter(({ slipped }) => slipped === null).length
    if (fresh > 0) expect(made).toHaveLength(stitch.makes)
    // A lifted increase takes none from the needle, but has a loop under it.
    const under = fabric.loops.some((loop) => made.includes(loop.id) && loop.kind === 'below') ? 1 : 0
    const times = stitch.family === 'bind off' ? 3 : 1
    expect(taken).toHaveLength((stitch.takes + stitch.effect.held) * times + under)
  })
})

describe('special stitches', () => {
  const partsOf = (id: string): Set<string> => new Set(yarnFor(id).pieces.map(({ part }) => part))

  it('have their own pieces of yarn', () => {
    expect(partsOf('m1l')).toContain('strand')
    expect(partsOf('yo k2 pyo')).toContain('belt')
    expect(partsOf('sl')).toContain('float')
    expect(partsOf('k')).toEqual(new Set(['edge', 'tail', 'leg', 'head', 'sinker']))
    expect(yarnFor('bead').beads).toHaveLength(1)
    expect(yarnFor('k').beads).toEqual([])
  })

  it('a belt passes in front of the loops that it holds, and back behind them', () => {
    const { pieces, fabric } = yarnFor('yo k2 pyo')
    const held = fabric.loops.filter(({ stitch }) => stitch === 'yo k2 pyo').map(({ id }) => id)
    const body = pieces
      .filter(({ loop, part }) => held.includes(loop) && (part === 'leg' || part === 'head'))
      .map(({ depth }) => depth)
    const belt = pieces.filter(({ part }) => part === 'belt').map(({ depth }) => depth)
    expect(Math.max(...belt)).toBeGreaterThan(Math.max(...body))
    expect(Math.min(...belt)).toBeLessThan(Math.min(...body))
  })

  it('the mirrored lifted strands are twisted opposite ways', () => {
    const frontLean = (id: string): number => {
      const strand = yarnFor(id).pieces.filter(({ part }) => part === 'strand')
      const [, a, , b] = strand
      const front = (a?.depth ?? 0) > (b?.depth ?? 0) ? a : b
      const [start, end] = [front?.curve.slice(0, 2) ?? [], front?.curve.slice(-2) ?? []]
      const up = (end[1] ?? 0) > (start[1] ?? 0)
      return Math.sign(((end[0] ?? 0) - (start[0] ?? 0)) * (up ? 1 : -1))
    }
    // Common practice, no source: m1l leans left, m1r leans right.
    expect(frontLean('m1l')).toBe(-1)
    expect(frontLean('m1r')).toBe(1)
  })
})
