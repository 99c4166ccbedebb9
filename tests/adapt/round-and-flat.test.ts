/** Flat into the round and back: the same fabric inside the repeat, only the sides come and go. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flat, round } from '../../engine/adapt/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import { withEdges } from '../../engine/pattern/index.ts'
import { library, libraryPattern } from '../fabric/support.ts'
import { done, faults, pattern, printed, randomRepeatLace, refused, sameInside } from './support.ts'

const adaptable = library.filter((file) => {
  const { castOn, growing } = libraryPattern(file)
  return 'multiple' in castOn && !growing
})
const flatOnes = adaptable.filter((file) => libraryPattern(file).worked === 'flat')
const runs = Number(process.env.OPENWORK_RUNS ?? 40)

describe('flat into the round', () => {
  it.each(flatOnes)('%s comes out on its repeat alone, and is the same fabric inside', (file) => {
    const was = libraryPattern(file)
    const { pattern: now, counts } = done(round(was))
    expect(faults(now)).toEqual([])
    expect(now).toMatchObject({ worked: 'round', edges: { before: [], after: [] } })
    expect('multiple' in was.castOn && was.castOn.multiple).toBe(counts[0]?.stitches)
    expect(sameInside(was, now)).toBe(true)
  })

  it('knits the purl rows and leaves out the balancing stitch', () => {
    const { pattern: now, changes } = done(round(libraryPattern('horseshoe.yaml')))
    expect(printed(now).slice(0, 3)).toEqual([
      '*yo, k3, sk2p, k3, yo, k1; rep from * to end',
      'knit',
      '*k1, yo, k2, sk2p, k2, yo, k2; rep from * to end',
    ])
    expect(changes.map(({ sentence }) => sentence)).toContain(
      'The balancing stitches beside the repeat go, and only the repeat is worked. Cast on 1 stitch fewer.',
    )
  })

  it('reads a wrong-side row with a pattern of its own from the end back', () => {
    const { pattern: now, changes } = done(round(libraryPattern('shetland-bead.yaml')))
    expect(printed(now)[1]).toBe('*k2tog, yo, k3, yo, k2tog tbl; rep from * to end')
    expect(changes.some(({ ease, rows }) => ease === 'hard' && rows.join() === '2,4')).toBe(true)
  })

  it('begins the round elsewhere where a decrease would straddle the marker, and says so', () => {
    const { pattern: now, changes } = done(round(libraryPattern('miniature-leaf.yaml')))
    expect(printed(now)[0]).not.toMatch(/^\*k2tog/)
    const said = changes.find(({ sentence }) => sentence.includes('across the marker'))
    expect(said).toMatchObject({ ease: 'hard', rows: [1] })
  })

  it('says which rows did not stand over each other as written', () => {
    const { changes } = done(round(libraryPattern('zigzag-mesh.yaml')))
    expect(
      changes.some(({ ease, sentence }) => ease === 'hard' && sentence.includes('not alike in every row')),
    ).toBe(true)
  })

  it('refuses a lace without a place for the marker', () => {
    // Of four stitches three are gathered and one is spread; two rows on, all of it one stitch further.
    const spread = '*k3tog, (k1, yo, k1) in next st; rep from * to'
    const bricks = pattern('{ multiple: 4, plus: 2 }', [
      `k1, ${spread} last st, k1`,
      'purl',
      `k2, ${spread} end`,
      'purl',
    ])
    expect(refused(round(bricks))).toMatchObject({ code: 'no-straight-line' })
    const stacked = pattern('{ multiple: 4, plus: 2 }', [`k1, ${spread} last st, k1`, 'purl'])
    expect(done(round(stacked)).pattern.castOn).toEqual({ multiple: 4, plus: 0 })
  })

  it.each([
    ['slipway-edging.yaml', 'no-repeat'],
    ['jib-shawl.yaml', 'growing'],
    ['harbour-swell.yaml', 'already'],
  ])('refuses %s: %s', (file, code) => {
    expect(refused(round(libraryPattern(file)))).toMatchObject({ code })
  })

  it('refuses a wrong-side stitch that nothing on the right side looks like, and names row and stitch', () => {
    const crossed = pattern('{ multiple: 4, plus: 0 }', ['knit', '*1/1 RC, p2; rep from * to end'])
    expect(refused(round(crossed))).toMatchObject({ code: 'no-twin', row: 2, stitch: '1/1 RC' })
  })
})

describe('round into flat', () => {
  it.each(adaptable)('%s: flat, round, flat gives the fabric back inside the repeat', (file) => {
    const was = libraryPattern(file)
    const inRound = was.worked === 'round' ? was : done(round(was)).pattern
    const { pattern: now } = done(flat(inRound))
    expect(faults(now)).toEqual([])
    expect(now.worked).toBe('flat')
    expect(sameInside(was, now)).toBe(true)
  })

  it.each(flatOnes)('%s: with what was kept, the very rows come back, sides and all', (file) => {
    const was = libraryPattern(file)
    const there = done(round(was))
    const back = done(flat(there.pattern, { kept: there.kept })).pattern
    const rows = (one: typeof was): string[] =>
      [...one.setUp, ...one.rows].map((row) => `${row.side} ${printRow(withEdges(row, one))}`)
    expect(rows(back)).toEqual(rows(was))
    expect(back.castOn).toEqual(was.castOn)
  })

  it('does not put old sides to rounds that are no longer theirs', () => {
    const { kept } = done(round(libraryPattern('horseshoe.yaml')))
    const other = done(flat(libraryPattern('harbour-swell.yaml'), { kept })).pattern
    expect(other.castOn).toEqual({ multiple: 6, plus: 0 })
    expect(faults(other)).toEqual([])
  })

  it('writes an odd number of rounds out twice, so that the second time falls on the other side', () => {
    const three = pattern(
      '{ multiple: 4, plus: 0 }',
      ['*yo, ssk, k2; rep from * to end', 'knit', 'purl'],
      'worked: round\n',
    )
    const { pattern: now, changes } = done(flat(three))
    expect(now.rows.map(({ side }) => side)).toEqual(['RS', 'WS', 'RS', 'WS', 'RS', 'WS'])
    expect(printed(now).map((row) => row.replace(/; rep.*/, ''))).toEqual([
      '*yo, ssk, k2',
      'purl',
      'purl',
      '*p2, ssp, yo',
      'knit',
      'knit',
    ])
    expect(changes.some(({ sentence }) => sentence.includes('odd number'))).toBe(true)
    expect(faults(now)).toEqual([])
  })

  const passed = pattern(
    '{ multiple: 6, plus: 0 }',
    ['knit', '*yo, k1, sk2p, k1, yo, k1; rep from * to end'],
    'worked: round\n',
  )

  it('keeps the look of a passed-over double with its awkward form, and offers a plainer one with its change', () => {
    const { pattern: now, offers } = done(flat(passed))
    expect(printed(now)[1]).toBe('*p1, yo, p1, p2sp, p1, yo; rep from * to end')
    expect(offers).toMatchObject([{ rows: [2], stitch: 'p2sp', plainer: 'p3tog', sameFabric: false }])
    expect(offers[0]?.sentence).toContain('to the right instead of to the left')
    expect(sameInside(passed, now)).toBe(true)
  })

  it('takes the plainer one where that is wanted: same counts, another look', () => {
    const { pattern: now, offers } = done(flat(passed, { wrongSide: 'plainer' }))
    expect(printed(now)[1]).toBe('*p1, yo, p1, p3tog, p1, yo; rep from * to end')
    expect(offers).toEqual([])
    expect(faults(now)).toEqual([])
    expect(sameInside(passed, now)).toBe(false)
  })
})

describe('any lace', () => {
  it('goes into the round as the same fabric, or is refused with a reason; and comes back', () => {
    let [adapted, asked] = [0, 0]
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const was = randomRepeatLace(seed)
        const there = round(was)
        asked++
        if (!there.ok) return ['no-straight-line', 'no-twin'].includes(there.refusal.code)
        adapted++
        const back = done(flat(there.pattern)).pattern
        return (
          faults(there.pattern).length === 0 &&
          sameInside(was, there.pattern) &&
          faults(back).length === 0 &&
          sameInside(was, back)
        )
      }),
      { numRuns: runs },
    )
    // Most laces have a place for the marker; a search that found none would pass the property above.
    expect(adapted / asked).toBeGreaterThan(0.3)
  })
})
