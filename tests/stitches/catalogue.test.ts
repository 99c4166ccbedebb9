/** The catalogue as a list: complete, printable, frozen, and safe to ask for anything. */
import { describe, expect, it } from 'vitest'
import { catalogue, effectOf, findStitch, stitch, twinsOf } from '../../engine/stitches/index.ts'

describe('the catalogue', () => {
  it('has at least 45 stitches, each under one id', () => {
    expect(catalogue.length).toBeGreaterThanOrEqual(45)
    expect(new Set(catalogue.map(({ id }) => id)).size).toBe(catalogue.length)
  })

  it.each([
    'k',
    'p',
    'k tbl',
    'p tbl',
    'yo',
    'yo2',
    'yo2 long',
    'byo',
    'k2tog',
    'ssk',
    'skp',
    'k2tog tbl',
    'ksp',
    'p2tog',
    'ssp',
    'p2tog tbl',
    'spp',
    'k3tog',
    'sssk',
    'sk2p',
    'k2sp',
    's2kp',
    'k3tog tbl',
    'p3tog',
    'sssp',
    'p2sp',
    's2pp',
    'sp2p',
    'p3tog tbl',
    'sk3p',
    's2k3p',
    'k4tog',
    'k9tog',
    'p4tog',
    'p9tog',
    'k4tog tbl',
    'k9tog tbl',
    'sl1 k2 psso',
    'sl1 k3 psso',
    'yo k2 pyo',
    'sl',
    'sl wyif',
    'sl wyib',
    'sl kwise',
    'm1',
    'm1l',
    'm1r',
    'm1p',
    'm1lp',
    'm1rp',
    'kfb',
    'pfb',
    'kfbf',
    'lli',
    'rli',
    '(k1, yo, k1) in 1',
    '(k1, p1) in 1',
    '(k1, p1, k1) in 1',
    'nupp5',
    'nupp7',
    'nupp9',
    '1/1 RC',
    '1/1 LC',
    '2/2 RC',
    '2/2 LC',
    '1/1 RPC',
    '1/1 LPC',
    'bo',
    'bo p',
    'co',
    'bead',
    'k2tog join',
    'ssk join',
    'p2tog join',
    'hold',
  ])('has %s', (id) => {
    expect(findStitch(id)?.id).toBe(id)
  })

  it('gives each a name in small letters, US and UK words, and motions', () => {
    for (const { id, name, us, uk, motions } of catalogue) {
      expect(name, id).toMatch(/^[a-z][a-z0-9 ,-]+$/)
      expect(us.length * uk.length * motions.length, id).toBeGreaterThan(0)
    }
  })

  it('prints its US abbreviation, which is the id but for the long double yarn over', () => {
    expect(catalogue.filter(({ id, us }) => id !== us).map(({ id }) => id)).toEqual(['yo2 long'])
  })

  it('knows the British words', () => {
    expect(['yo', 'skp', 'sk2p', 'bo'].map((id) => stitch(id).uk)).toEqual([
      'yfwd',
      'skpo',
      'sk2po',
      'cast off',
    ])
  })

  it('fills as many chart cells as loops are made, and one at least', () => {
    for (const { id, makes, cells } of catalogue) expect(cells, id).toBe(Math.max(1, makes))
  })

  it('names no lean on the purl face', () => {
    for (const { id, effect, lean } of catalogue)
      if (effect.inFront.length === 0 && effect.made[0]?.face === 'purl') expect(lean, id).toBeNull()
  })

  it('cannot be changed', () => {
    expect(Object.isFrozen(catalogue)).toBe(true)
    for (const { id, effect, motions } of catalogue)
      expect([effect, effect.made, motions, twinsOf(id)].every(Object.isFrozen), id).toBe(true)
  })
})

describe('asking for a stitch', () => {
  it.each(['constructor', '__proto__', 'toString', '', 'K', 'k ', 'k2tog\n'])(
    'finds nothing under %j',
    (id) => {
      expect(findStitch(id)).toBeNull()
      expect(() => stitch(id)).toThrow(/no stitch/)
      expect(() => effectOf(id)).toThrow(/no stitch/)
    },
  )

  it('remembers effects by how the loops sit, and only by the loops taken', () => {
    expect(effectOf('ssk')).toBe(stitch('ssk').effect)
    expect(effectOf('ssk', ['usual', 'usual'])).toBe(stitch('ssk').effect)
    const turned = effectOf('ssk', ['turned', 'usual'])
    expect(turned).not.toEqual(stitch('ssk').effect)
    expect(effectOf('ssk', ['turned', 'usual', 'turned'])).toBe(turned)
    expect(effectOf('ssk', ['turned'])).toEqual(turned)
  })
})
