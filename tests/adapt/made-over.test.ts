/** Mirrored, wider, with other decreases: what stays and what changes. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Adapted,
  leanDoubles,
  mirror,
  narrower,
  plainStitchIn,
  plainStitchOut,
  wider,
} from '../../engine/adapt/index.ts'
import { fabricOf } from '../../engine/fabric/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { library, libraryPattern, workedPattern } from '../fabric/support.ts'
import { facts } from '../reference/support.ts'
import { done, faults, pattern, printed, randomRepeatLace, refused, sameInside } from './support.ts'

const runs = Number(process.env.OPENWORK_RUNS ?? 40)

/** The whole fabric by its loops, whatever they are called: faces, parents in their order, twists. */
const fabric = (one: Pattern): unknown =>
  fabricOf(workedPattern(one, 2)).loops.map(({ kind, face, parents, twisted }) => ({
    kind,
    face: kind === 'over' ? null : face,
    parents,
    twisted,
  }))

describe('in a mirror', () => {
  const mirrored = library.filter((file) => mirror(libraryPattern(file)).ok)

  it('every pattern proves, but for an edging that binds off in its rows', () => {
    expect(library.filter((file) => !mirrored.includes(file))).toEqual(['slipway-edging.yaml'])
    expect(mirrored.flatMap((file) => faults(done(mirror(libraryPattern(file))).pattern))).toEqual([])
  })

  // Twisted decreases have no exact mirror image in the catalogue, and the report says so.
  it.each(mirrored.filter((file) => file !== 'shetland-bead.yaml'))(
    '%s: twice gives the fabric back, loop for loop',
    (file) => {
      const was = libraryPattern(file)
      const twice = done(mirror(done(mirror(was)).pattern)).pattern
      expect(fabric(twice)).toEqual(fabric(was))
      expect(twice.castOn).toEqual(was.castOn)
    },
  )

  it('is another fabric where the lace leans, and the same where it is symmetric', () => {
    const swell = libraryPattern('harbour-swell.yaml')
    expect(sameInside(swell, done(mirror(swell)).pattern)).toBe(false)
    const wings = libraryPattern('gull-wings.yaml')
    expect(sameInside(wings, done(mirror(wings)).pattern)).toBe(true)
  })

  it('turns the edges round as well: one of a single stitch and one of three change sides', () => {
    const was = pattern(
      '{ multiple: 4, plus: 0 }',
      ['*k2tog, yo, k2; rep from * to end', 'purl'],
      'edges: { before: k1, after: k3 }\n',
    )
    const { edges, rows } = done(mirror(was)).pattern
    expect([printRow(edges.before), printRow(edges.after)]).toEqual(['k3', 'k1'])
    expect(rows.map(({ items }) => printRow(items))).toEqual(['*k2, yo, ssk; rep from * to end', 'purl'])
  })

  it('says where a stitch has no exact mirror image', () => {
    const { changes } = done(mirror(libraryPattern('shetland-bead.yaml')))
    expect(changes.find(({ ease }) => ease === 'hard')).toMatchObject({ rows: [2] })
  })

  it('refuses what happens only where the yarn is', () => {
    expect(refused(mirror(libraryPattern('slipway-edging.yaml')))).toMatchObject({ row: 8 })
  })

  it('gives any lace back when done twice', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const was = randomRepeatLace(seed)
        const once = done(mirror(was)).pattern
        expect(faults(once)).toEqual([])
        expect(fabric(done(mirror(once)).pattern)).toEqual(fabric(was))
      }),
      { numRuns: runs },
    )
  })
})

interface Classic {
  readonly id: string
  readonly statedRule: { readonly multiple: number; readonly plus: number }
  readonly rowCount: number
  readonly rows: readonly string[]
}
const { patterns: classics } = facts<{ patterns: readonly Classic[] }>('classic-patterns.json')
const classic = (id: string): Classic => classics.find((one) => one.id === id) as Classic

describe('the horseshoe in its sizes', () => {
  const horseshoe = libraryPattern('horseshoe.yaml')

  /** 'k1 [yo k5 sk2p k5 yo k1] rep' without the purls of the column between two shoes. */
  const plainly = (row: string): string =>
    row === 'pall' || row.startsWith('k1 [p')
      ? 'purl'
      : row
          .replace(/\bp1\b/g, 'k1')
          .replace(/\bk1 k1\b/g, 'k2')
          .replace(/^k1 \[(.*)\] rep$/, 'k1, *$1; rep from * to end')
          .replace(/(?<=\*.*) (?=(k|yo|sk2p))/g, ', ')
          .replace(/k(\d+), k1;/, (_, n: string) => `k${Number(n) + 1};`)

  it('ten plus one over eight rows is the one that the library has', () => {
    // Source: texturedknits.blogspot.com/2013/02/horseshoe-lace.html.
    const published = classic('cl-03')
    expect(horseshoe.castOn).toEqual(published.statedRule)
    expect(printed(horseshoe)).toEqual(published.rows.map(plainly))
  })

  it('two sizes wider is the published one of fourteen plus one over twelve rows', () => {
    // Source: woolandflour.wordpress.com/2010/03/02/february-stich-horseshoe/, which purls the column between the shoes.
    const published = classic('cl-05')
    const { pattern: now } = done(wider(horseshoe, 2))
    expect(now.castOn).toEqual(published.statedRule)
    expect(now.rows).toHaveLength(published.rowCount)
    expect(printed(now)).toEqual(published.rows.map(plainly))
  })

  it('two sizes narrower is the small one of six plus one over four rows', () => {
    // Common practice, no source: the small horseshoe as knitters pass it on.
    const small = libraryPattern('mini-horseshoe.yaml')
    const { pattern: now } = done(narrower(horseshoe, 2))
    expect(now.castOn).toEqual({ multiple: 6, plus: 1 })
    expect(printed(now)).toEqual(printed(small))
    expect(sameInside(now, small)).toBe(true)
  })

  it('proves in every size, and wider then narrower gives it back', () => {
    for (const size of [1, 2, 3, 7]) {
      const big = done(wider(horseshoe, size)).pattern
      expect(faults(big)).toEqual([])
      expect(printed(done(narrower(big, size)).pattern)).toEqual(printed(horseshoe))
    }
  })

  it('has no size below two patterned rows', () => {
    expect(refused(narrower(horseshoe, 3))).toMatchObject({ code: 'no-family' })
  })

  it('has no rule for a lace whose holes do not travel', () => {
    expect(refused(wider(libraryPattern('reed-bed.yaml')))).toMatchObject({ code: 'no-family' })
    expect(refused(wider(libraryPattern('lamplit-quay.yaml')))).toMatchObject({ code: 'no-family' })
  })
})

describe('a plain stitch in every repeat', () => {
  /** Where the report says that the stitch went in. */
  const placeOf = ({ changes }: Adapted): number =>
    Number(/is stitch (\d+)/.exec(changes[0]?.sentence ?? '')?.[1])

  const wide = library.filter((file) => plainStitchIn(libraryPattern(file)).ok)

  it.each(wide)('%s: one more in each repeat proves, and taking it out gives the fabric back', (file) => {
    const was = libraryPattern(file)
    const answer = done(plainStitchIn(was))
    const { pattern: now } = answer
    expect(faults(now)).toEqual([])
    if ('multiple' in was.castOn)
      expect(now.castOn).toEqual({ ...was.castOn, multiple: was.castOn.multiple + 1 })
    const back = done(plainStitchOut(now, placeOf(answer))).pattern
    expect(back.castOn).toEqual(was.castOn)
    expect(fabric(back)).toEqual(fabric(was))
  })

  it('follows the fabric where the rows are shifted against each other', () => {
    const { pattern: now } = done(plainStitchIn(libraryPattern('miniature-leaf.yaml'), 2))
    expect(printed(now)[2]).toBe(
      'k2tog, *k1, yo, k3, yo, sk2p; rep from * to last 6 sts, k1, yo, k3, yo, ssk',
    )
  })

  it('is refused where it would cut a decrease of another row', () => {
    const leaf = libraryPattern('miniature-leaf.yaml')
    expect(refused(plainStitchIn(leaf, 1))).toMatchObject({ code: 'no-straight-line' })
  })

  it('is not taken out where two yarn overs would meet', () => {
    expect(refused(plainStitchOut(libraryPattern('gull-wings.yaml'), 4))).toMatchObject({
      code: 'no-straight-line',
    })
  })

  it('goes into any lace at any place and out again, or is refused', () => {
    let put = 0
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 8 }), (seed, place) => {
        const was = randomRepeatLace(seed)
        const now = plainStitchIn(was, place)
        if (!now.ok) return ['no-straight-line'].includes(now.refusal.code)
        put++
        expect(faults(now.pattern)).toEqual([])
        expect(fabric(done(plainStitchOut(now.pattern, placeOf(now))).pattern)).toEqual(fabric(was))
        return true
      }),
      { numRuns: runs },
    )
    expect(put).toBeGreaterThan(runs / 10)
  })
})

describe('another double decrease', () => {
  it('lies another way over the same three stitches', () => {
    const was = libraryPattern('horseshoe.yaml')
    const parents = (one: Pattern): number[][] =>
      fabricOf(workedPattern(one, 2)).loops.map((loop) => loop.parents.toSorted((a, b) => a - b))
    for (const [lean, stitch] of [
      ['centre', 's2kp'],
      ['right', 'k3tog'],
    ] as const) {
      const { pattern: now, changes } = done(leanDoubles(was, lean))
      expect(printed(now)).toEqual(printed(was).map((row) => row.replace('sk2p', stitch)))
      expect(parents(now)).toEqual(parents(was))
      expect(faults(now)).toEqual([])
      expect(changes[0]?.sentence).toContain('instead of to the left')
      expect(printed(done(leanDoubles(now, 'left')).pattern)).toEqual(printed(was))
    }
  })

  it('takes its wrong-side form on a wrong-side row', () => {
    const { pattern: now } = done(leanDoubles(libraryPattern('shetland-bead.yaml'), 'left'))
    expect(printed(now)[3]).toContain('p2sp')
    expect(faults(now)).toEqual([])
  })

  it('says that a mirrored pair is one no longer', () => {
    const { changes } = done(leanDoubles(libraryPattern('two-terns.yaml'), 'left'))
    expect(changes.some(({ ease, sentence }) => ease === 'hard' && sentence.includes('mirrored pair'))).toBe(
      true,
    )
  })

  it('is refused where there is none, and where it lies so already', () => {
    expect(refused(leanDoubles(libraryPattern('reed-bed.yaml'), 'left'))).toMatchObject({
      code: 'no-doubles',
    })
    expect(refused(leanDoubles(libraryPattern('horseshoe.yaml'), 'left'))).toMatchObject({ code: 'already' })
    const twice = pattern('{ multiple: 3, plus: 0 }', ['*yo, k3tog, yo; rep from * to end', 'purl'])
    expect(refused(leanDoubles(twice, 'right'))).toMatchObject({ code: 'already' })
  })
})
