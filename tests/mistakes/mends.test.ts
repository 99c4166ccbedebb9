import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../engine/base/index.ts'
import {
  type Casebook,
  casebookOf,
  type Mend,
  mendsFor,
  sameFabric,
  type Trace,
} from '../../engine/mistakes/index.ts'
import type { WorkedPattern } from '../../engine/needles/index.ts'
import { library, randomLace } from '../fabric/support.ts'
import { allTraces, bookOf, fromRows } from './support.ts'

const runs = Number(process.env.OPENWORK_RUNS ?? 20)

const total = (counts: readonly number[] = []): number => counts.reduce((sum, count) => sum + count, 0)

const rightUpTo = ({ plan }: Casebook, rows: number): WorkedPattern => ({
  ...plan.worked,
  rows: plan.worked.rows.slice(0, rows),
})

/** What every mend must hold to, whatever it mends. */
function holds(book: Casebook, { mistake }: Trace, mend: Mend): void {
  const right = mend.piece && rightUpTo(book, mend.piece.rows.length)
  if (mend.exact) expect(mend.piece && right && sameFabric(mend.piece, right)).toBe(true)
  expect(mend.steps.length).toBeGreaterThan(0)
  if (!mend.cosmetic) return
  expect(mend.exact).toBe(false)
  expect(mend.piece && right && sameFabric(mend.piece, right)).toBe(false)
  const last = book.plan.rows[mistake.row + 1]
  expect(mend.piece?.rows.at(-1)?.after).toHaveLength(total(last?.makes))
  expect(mend.steps.join(' ')).toMatch(/the fabric keeps the mistake/)
}

describe('mends', () => {
  it('exact ones give the right fabric back, cosmetic ones only the count, and say so', () => {
    const random = seededRandom(7)
    let [exact, cosmetic] = [0, 0]
    for (const file of library) {
      const book = bookOf(file.replace(/\.yaml$/, ''))
      for (const trace of allTraces(book)) {
        if (random() > 0.015) continue
        const mends = mendsFor(book.plan, trace.mistake)
        expect(mends.some((mend) => mend.exact)).toBe(true)
        for (const mend of mends) holds(book, trace, mend)
        exact += mends.filter((mend) => mend.exact).length
        cosmetic += mends.filter((mend) => mend.cosmetic).length
      }
    }
    expect(exact).toBeGreaterThan(300)
    expect(cosmetic).toBeGreaterThan(30)
  }, 240_000)

  it('hold in any lace', () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.nat(1_000_000), (seed, pick) => {
        const { castOn, rows } = randomLace(seed)
        const book = casebookOf(fromRows(String(castOn), rows, 1))
        const all = allTraces(book)
        const trace = all[pick % all.length]
        fc.pre(trace !== undefined)
        const mends = mendsFor(book.plan, trace.mistake)
        expect(mends.some((mend) => mend.exact)).toBe(true)
        for (const mend of mends) holds(book, trace, mend)
      }),
      { numRuns: runs },
    )
  }, 120_000)

  const reed = bookOf('reed-bed')
  const mendsOf = (book: Casebook, kind: string): readonly Mend[] => {
    const trace = allTraces(book).find(
      ({ mistake, section }) => mistake.kind === kind && section === 2 && !mistake.everywhere,
    )
    return trace ? mendsFor(book.plan, trace.mistake) : []
  }
  const ways = (mends: readonly Mend[], later: number): string[] =>
    mends.filter((mend) => mend.later === later).map(({ way }) => way)

  it('a yarn over left out: un-knit to it, lift the strand a row later, or make one and know that it shows', () => {
    const mends = mendsOf(reed, 'yarn over left out')
    expect(ways(mends, 0)).toEqual(['un-knit to it'])
    expect(ways(mends, 1)).toEqual(['lift the strand', 'make one beside it', 'go back to the row'])
    expect(mends.find(({ way }) => way === 'lift the strand')).toMatchObject({ exact: true, cosmetic: false })
  })

  it('two rows later the strand is lifted through two rows', () => {
    const mends = mendsOf(bookOf('shetland-shawl-ground'), 'yarn over left out')
    const slow = casebookOf(
      fromRows('{ multiple: 6, plus: 1 }', [
        'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
        'purl',
        'knit',
        'purl',
      ]),
    )
    const two = mendsOf(slow, 'yarn over left out').filter(({ later }) => later === 2)
    expect(mends.length).toBeGreaterThan(0)
    expect(two.find(({ way }) => way === 'lift the strand')).toMatchObject({ exact: true })
    expect(two[0]?.steps.join(' ')).toMatch(/one above the other/)
  })

  it('a yarn over too many is let go, and un-knitting counts the stitches back to it', () => {
    const mends = mendsOf(reed, 'yarn over made twice')
    expect(ways(mends, 1)[0]).toBe('let it drop')
    const back = mends.find(({ way }) => way === 'un-knit to it')
    const steps = reed.plan.worked.rows[0]?.steps.length ?? 0
    expect(back?.stitches).toBeGreaterThan(1)
    expect(back?.stitches).toBeLessThanOrEqual(steps + 1)
  })

  it('a marker is moved and nothing is knitted', () => {
    const [first] = mendsOf(reed, 'yarn over jumped the marker')
    expect(first).toMatchObject({ way: 'move the marker', exact: true, stitches: 0, caution: null })
  })

  it('a backward yarn over is worked through its other leg', () => {
    expect(ways(mendsOf(reed, 'yarn over wrapped backwards'), 1)[0]).toBe('work the other leg')
  })

  it('one wrong lean may be left, a dropped stitch or a wrong count may not', () => {
    expect(mendsOf(reed, 'wrong lean').at(-1)?.way).toBe('leave it')
    for (const kind of ['stitch dropped', 'yarn over left out', 'decrease left out', 'pass over forgotten'])
      expect(mendsOf(bookOf('horseshoe'), kind).map(({ way }) => way)).not.toContain('leave it')
  })

  it('say a word for the hands where columns are worked again', () => {
    const again = mendsOf(reed, 'wrong lean').find(
      ({ way, later }) => way === 'work the column again' && later === 1,
    )
    expect(again?.caution).toMatch(/rest|doctor/)
  })
})
