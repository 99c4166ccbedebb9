/** Edges, borders, half repeats at the sides, and two patterns in one piece. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  above,
  adapt,
  adaptationNames,
  beside,
  borders,
  edge,
  halfRepeats,
  readRequests,
  round,
} from '../../engine/adapt/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { library, libraryPattern } from '../fabric/support.ts'
import { done, faults, pattern, printed, randomRepeatLace, refused, sameInside } from './support.ts'

const flatOnes = library.filter((file) => libraryPattern(file).worked === 'flat')
const runs = Number(process.env.OPENWORK_RUNS ?? 30)

describe('edge stitches', () => {
  it.each(['garter', 'stocking', 'slipped'] as const)(
    '%s: every flat pattern proves with them, or says why not',
    (kind) => {
      const answers = flatOnes.map((file) => ({
        file,
        was: libraryPattern(file),
        now: edge(libraryPattern(file), kind, 2),
      }))
      const put = answers.filter(({ now }) => now.ok)
      expect(put.length).toBeGreaterThan(15)
      for (const { was, now } of put) {
        expect(faults(done(now).pattern)).toEqual([])
        if ('multiple' in was.castOn && !was.growing) expect(sameInside(was, done(now).pattern)).toBe(true)
      }
    },
  )

  it('tells the stitches of the whole swatch: repeats, balancing stitches and edges', () => {
    // Old facts by hand: 6n + 1 with 3 at each side.
    const { counts } = done(edge(libraryPattern('reed-bed.yaml'), 'garter', 3))
    expect(counts.map(({ stitches }) => stitches)).toEqual([13, 19, 25, 31, 37])
  })

  it('knits a stocking edge on the right side and purls it on the wrong one', () => {
    const { pattern: now } = done(edge(libraryPattern('ridged-eyelets.yaml'), 'stocking', 2))
    expect(printed(now)[3]).toBe('p2, k to last 2 sts, p2')
    expect(printed(now)[0]).toBe('knit')
  })

  it('is refused in the round', () => {
    expect(refused(edge(libraryPattern('harbour-swell.yaml'), 'garter', 3))).toMatchObject({
      code: 'round-has-no-sides',
    })
  })
})

describe('a border', () => {
  it('puts garter rows before row 1 and tells those that close', () => {
    const { pattern: now, closing } = done(borders(libraryPattern('reed-bed.yaml'), 3))
    expect(now.setUp.map(({ number, side }) => `${number} ${side}`)).toEqual(['-2 WS', '-1 RS', '0 WS'])
    expect(now.setUp.map(({ items }) => printRow(items))).toEqual(['knit', 'knit', 'knit'])
    expect(closing.map(({ number }) => number)).toEqual([3, 4, 5])
    expect(faults(now)).toEqual([])
  })

  it('is knit and purl by turns in the round, also when the piece goes there afterwards', () => {
    const requests = readRequests('border 2, round')
    if ('unknown' in requests) throw new Error('not read')
    const { pattern: now, closing } = done(adapt(libraryPattern('reed-bed.yaml'), requests))
    expect(now.setUp.map(({ items }) => printRow(items))).toEqual(['knit', 'purl'])
    expect(closing.map(({ items }) => printRow(items))).toEqual(['knit', 'purl'])
  })
})

describe('half repeats at the sides', () => {
  it('gives the miniature leaf its published sides back from the round', () => {
    // Sides with k2tog at the beginning and ssk at the end: as the library's row 3, common practice, no source.
    const leaf = libraryPattern('miniature-leaf.yaml')
    const { pattern: now } = done(halfRepeats(done(round(leaf)).pattern, 5))
    expect(printed(now)).toContain('k2tog, *yo, k3, yo, sk2p; rep from * to last 5 sts, yo, k3, yo, ssk')
    expect(now.castOn).toEqual(leaf.castOn)
    expect(sameInside(now, leaf)).toBe(true)
  })

  const halved = library.filter((file) => halfRepeats(libraryPattern(file)).ok)
  it.each(halved)('%s: the sides cut through the doubles, and the fabric between stays', (file) => {
    const was = libraryPattern(file)
    const { pattern: now } = done(halfRepeats(was))
    expect(faults(now)).toEqual([])
    expect(now.castOn).toMatchObject({ plus: 1 })
    expect(sameInside(was, now)).toBe(true)
    expect(printed(now).join(' ')).toMatch(/(^|[ ,])(k2tog|ssp), /)
  })

  it('is refused where no double stands in a column', () => {
    expect(refused(halfRepeats(libraryPattern('reed-bed.yaml')))).toMatchObject({ code: 'no-straight-line' })
  })
})

describe('two patterns in one piece', () => {
  const reeds = libraryPattern('reed-bed.yaml')
  const leaf = libraryPattern('miniature-leaf.yaml')

  it('side by side: one panel of each, until both begin again together', () => {
    const { pattern: now } = done(
      beside(
        libraryPattern('horseshoe.yaml'),
        pattern('{ multiple: 4, plus: 0 }', [
          '*yo, ssk, k2; rep from * to end',
          'purl',
          '*k2, yo, ssk; rep from * to end',
          'purl',
          'knit',
          'purl',
        ]),
      ),
    )
    // 10 + 1 and 4 stitches; 8 and 6 rows.
    expect(now.castOn).toEqual({ multiple: 15, plus: 0 })
    expect(now.rows).toHaveLength(24)
    expect(printed(now)[2]).toBe('*k2, yo, k2, sk2p, k2, yo, k4, yo, ssk; rep from * to end')
    expect(faults(now)).toEqual([])
  })

  it('works the panels of a wrong-side row in the other order', () => {
    const rib = libraryPattern('double-eyelet-rib.yaml')
    const { pattern: now } = done(beside(reeds, rib))
    expect(printed(now)[1]).toBe('*k2, p5, k2, p7; rep from * to end')
    expect(printed(now)[0]).toBe('*k1, yo, ssk, k1, k2tog, yo, k1, p2, k5, p2; rep from * to end')
  })

  it('one above the other: the stitches that fit both, counted on', () => {
    const { pattern: now } = done(above(reeds, libraryPattern('lamplit-quay.yaml')))
    // 6n + 1 and 8m + 1: every 24, and 1.
    expect(now.castOn).toEqual({ multiple: 24, plus: 1 })
    expect(now.rows).toHaveLength(10)
    expect(faults(now)).toEqual([])
  })

  it('finds the common number for any two rules, or none where there is none', () => {
    const plain = (multiple: number, plus: number): Pattern =>
      pattern(`{ multiple: ${multiple}, plus: ${plus} }`, [
        `*yo, ssk${multiple > 2 ? `, k${multiple - 2}` : ''}; rep from * to ${plus > 0 ? `last ${plus === 1 ? 'st' : `${plus} sts`}, k${plus}` : 'end'}`,
        'purl',
      ])
    const rule = fc.tuple(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 0, max: 6 }))
    fc.assert(
      fc.property(rule, rule, ([a, b], [c, d]) => {
        const answer = above(plain(a, b), plain(c, d))
        const fits = (x: number): boolean =>
          x >= a + b && x >= c + d && (x - b) % a === 0 && (x - d) % c === 0
        const counts = Array.from({ length: 400 }, (_, x) => x).filter(fits)
        if (!answer.ok) return answer.refusal.code === 'do-not-match' && counts.length === 0
        expect(faults(answer.pattern)).toEqual([])
        const { castOn } = answer.pattern
        if (!('multiple' in castOn)) return false
        // Every number that the rule allows fits both; it leaves out at most the smallest.
        const allowed = [1, 2, 3].map((n) => castOn.multiple * n + castOn.plus)
        return allowed.every((x) => x >= 400 || fits(x)) && counts.indexOf(allowed[0] ?? 0) <= 1
      }),
      { numRuns: runs * 3 },
    )
  })

  it('refuses flat beside round, and edges that differ one above the other', () => {
    expect(refused(beside(reeds, libraryPattern('harbour-swell.yaml')))).toMatchObject({
      code: 'do-not-match',
    })
    expect(
      refused(above(libraryPattern('fan.yaml'), libraryPattern('shetland-shawl-ground.yaml'))),
    ).toMatchObject({ code: 'do-not-match' })
  })

  it('proves for any two laces side by side', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 1e6 }), (one, other) => {
        expect(faults(done(beside(randomRepeatLace(one), randomRepeatLace(other))).pattern)).toEqual([])
      }),
      { numRuns: runs / 2 },
    )
  })

  it('keeps both fabrics', () => {
    const { pattern: now } = done(beside(leaf, leaf))
    expect(faults(now)).toEqual([])
    expect(now.rows).toHaveLength(8)
  })
})

describe('whatever is asked of whatever pattern', () => {
  const asked = adaptationNames.flatMap((name) => [name, `round, ${name}`])

  it.each(library)('%s proves for one to five repeats, or is refused for a reason of its own', (file) => {
    let adapted = 0
    for (const list of asked) {
      const requests = readRequests(list)
      if ('unknown' in requests) throw new Error(`${list} is not read`)
      const answer = adapt(libraryPattern(file), requests)
      if (answer.ok) {
        adapted++
        expect({ list, faults: faults(answer.pattern) }).toEqual({ list, faults: [] })
      } else {
        // The last check before a pattern goes out would be a reason of ours, not of the lace.
        expect({ list, code: answer.refusal.code }).not.toEqual({ list, code: 'does-not-come-out' })
        expect(answer.refusal.sentence).toMatch(/^[A-Z].*\.$/)
      }
    }
    expect(adapted).toBeGreaterThan(0)
  })

  it('says where markers went', () => {
    const marked = pattern('{ multiple: 4, plus: 0 }', ['*yo, ssk, pm, k2; rep from * to end', 'purl'])
    const { pattern: now, changes } = done(adapt(marked, [{ do: 'round' }]))
    expect(printed(now)[0]).toBe('*yo, ssk, k2; rep from * to end')
    expect(changes.at(-1)?.sentence).toContain('Markers')
  })

  it('is refused at once where the repeat is out of all measure', () => {
    const wide = pattern('{ multiple: 9000, plus: 0 }', ['*yo, ssk, k8998; rep from * to end', 'purl'])
    expect(refused(round(wide))).toMatchObject({ code: 'too-large' })
  })
})

describe('a list of requests', () => {
  it('is read in the words of the trade', () => {
    expect(readRequests('round, Garter Edge 4, wider, doubles upright, flat plainer')).toEqual([
      { do: 'round' },
      { do: 'edge', kind: 'garter', stitches: 4 },
      { do: 'wider', sizes: 1 },
      { do: 'doubles', lean: 'centre' },
      { do: 'flat', wrongSide: 'plainer' },
    ])
  })

  it.each(['rond', 'round 3', 'garter edge 0', '', 'constructor', 'wider 99999'])(
    'does not know `%s`',
    (written) => {
      expect(readRequests(written)).toHaveProperty('unknown')
    },
  )

  it('suggests what was meant', () => {
    expect(readRequests('mirrow')).toEqual({ unknown: 'mirrow', suggestion: 'mirror' })
  })

  it('is done one after the other; round then flat brings the sides back', () => {
    const requests = readRequests('round, flat')
    if ('unknown' in requests) throw new Error('not read')
    const leaf = libraryPattern('miniature-leaf.yaml')
    const { pattern: now } = done(adapt(leaf, requests))
    expect(printed(now)).toEqual(printed(leaf))
  })
})
