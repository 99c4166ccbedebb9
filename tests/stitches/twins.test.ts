/** Twins: what gives the same look when worked on the wrong side, or in a mirror. */
import { describe, expect, it } from 'vitest'
import { catalogue, rightSideLook, stitch, twinsOf } from '../../engine/stitches/index.ts'
import { lookOf } from '../../engine/stitches/look.ts'

const here = (id: string) => lookOf(stitch(id).effect, { workedOn: 'RS', mirrored: false }, 'exact')

// Pairs of the trade: common practice, no source, where tests/reference/stitches.json does not name them.
describe('wrong-side twins', () => {
  it.each([
    ['k', 'p'],
    ['k tbl', 'p tbl'],
    ['k2tog', 'p2tog'],
    ['ssk', 'ssp'],
    ['k2tog tbl', 'p2tog tbl'],
    ['k3tog', 'p3tog'],
    ['sssk', 'sssp'],
    ['k3tog tbl', 'p3tog tbl'],
    ['sk2p', 'p2sp'],
    ['s2kp', 's2pp'],
    ['sk3p', 'p3sp'],
    ['k5tog', 'p5tog'],
    ['sl wyif', 'sl wyib'],
    ['m1', 'm1p'],
    ['m1l', 'm1lp'],
    ['m1r', 'm1rp'],
    ['kfb', 'pfb'],
    ['bo', 'bo p'],
    ['(k1, p1, k1) in 1', '(p1, k1, p1) in 1'],
    ['(k1, yo, k1) in 1', '(p1, yo, p1) in 1'],
  ])('%s and %s', (one, other) => {
    expect([stitch(one).wrongSideTwin, stitch(other).wrongSideTwin]).toEqual([other, one])
  })

  it.each(['yo', 'yo2', 'byo', 'sl', 'sl kwise', 'co', 'hold', '1/1 RPC', '(k1, p1) in 1'])(
    '%s is its own',
    (id) => {
      expect(stitch(id).wrongSideTwin).toBe(id)
    },
  )

  it('there is none where the catalogue has none: no purled lifted increase, no bead purled on', () => {
    expect(['rli', 'lli', 'bead', '1/1 RC'].map((id) => stitch(id).wrongSideTwin)).toEqual([
      null,
      null,
      null,
      null,
    ])
  })
})

describe('mirrors', () => {
  it.each([
    ['k2tog', 'ssk'],
    ['k3tog', 'sssk'],
    ['p2tog', 'ssp'],
    ['p3tog', 'sssp'],
    ['sk2p', 'ssksp'],
    ['m1l', 'm1r'],
    ['lli', 'rli'],
    ['1/1 RC', '1/1 LC'],
    ['2/2 RC', '2/2 LC'],
    ['1/1 RPC', '1/1 LPC'],
    ['(k1, p1) in 1', '(p1, k1) in 1'],
  ])('%s and %s', (one, other) => {
    expect([stitch(one).mirrorTwin, stitch(other).mirrorTwin]).toEqual([other, one])
  })

  it.each(['k', 'p', 'yo', 'yo2', 'byo', 's2kp', 's2pp', 'sl', 'nupp5', 'bo', 'k tbl', 'yo k2 pyo'])(
    '%s is its own',
    (id) => {
      expect(stitch(id).mirrorTwin).toBe(id)
    },
  )

  it('a skp mirrors to the plainest right-leaning decrease', () => {
    expect([stitch('skp').mirrorTwin, stitch('ksp').mirrorTwin]).toEqual(['k2tog', 'ssk'])
  })

  it('a mirror adds no twist that was not there', () => {
    for (const { id, twisted, mirrorTwin } of catalogue)
      if (!twisted && mirrorTwin !== null) expect(stitch(mirrorTwin).twisted, id).toBe(false)
  })

  it('four into one mirrors to a four into one with the other loop on top', () => {
    expect(twinsOf('k4tog').mirror).toEqual({ stitch: 'sk3p', likeness: 'same on top' })
    expect([stitch('k4tog').lean, stitch('sk3p').lean]).toEqual(['right', 'left'])
  })
})

describe('every twin', () => {
  it('of a twin is the stitch again, or one of the same fabric, where both are exact', () => {
    let exact = 0
    for (const { id } of catalogue)
      for (const which of ['wrongSide', 'mirror'] as const) {
        const twin = twinsOf(id)[which]
        if (twin?.likeness !== 'exact') continue
        const again = twinsOf(twin.stitch)[which]
        expect(again?.likeness, id).toBe('exact')
        expect(here(again?.stitch ?? ''), `${id}, ${which}`).toBe(here(id))
        exact += 1
      }
    expect(exact).toBeGreaterThan(catalogue.length)
  })

  it('takes and makes as the stitch does', () => {
    for (const { id, takes, makes, wrongSideTwin, mirrorTwin } of catalogue)
      for (const twin of [wrongSideTwin, mirrorTwin])
        if (twin !== null) expect([stitch(twin).takes, stitch(twin).makes], id).toEqual([takes, makes])
  })

  it('leans the other way in a mirror, unless only a knot of many is alike', () => {
    const other = { left: 'right', right: 'left', centre: 'centre' } as const
    for (const { id, lean } of catalogue) {
      const mirror = twinsOf(id).mirror
      if (lean === null || mirror === null || mirror.likeness === 'as a knot') continue
      expect(stitch(mirror.stitch).lean, id).toBe(other[lean])
    }
  })
})

describe('the stitch whose symbol shows in the chart', () => {
  it('is the stitch itself on the right side, and its twin for the wrong side', () => {
    expect(['k', 'p2tog', 'yo'].map((id) => rightSideLook(id, 'RS'))).toEqual(['k', 'p2tog', 'yo'])
    expect(
      ['p', 'k', 'p2tog', 'ssp', 'p3tog', 's2pp', 'p5tog', 'yo', 'sl wyif', 'bo p'].map((id) =>
        rightSideLook(id, 'WS'),
      ),
    ).toEqual(['k', 'p', 'k2tog', 'ssk', 'k3tog', 's2kp', 'k5tog', 'yo', 'sl wyib', 'bo'])
  })

  it('is the stitch itself where none looks so', () => {
    expect(rightSideLook('bead', 'WS')).toBe('bead')
  })
})
