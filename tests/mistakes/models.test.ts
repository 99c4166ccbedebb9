import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Casebook,
  casebookOf,
  consequenceOf,
  editsOf,
  keyOf,
  lookWords,
  models,
  rowName,
  sameFabric,
  sightsFor,
  type Trace,
  workWrong,
} from '../../engine/mistakes/index.ts'
import { randomLace } from '../fabric/support.ts'
import { allTraces, bookOf, fromRows } from './support.ts'

const runs = Number(process.env.OPENWORK_RUNS ?? 20)

const laceOf = (seed: number): Casebook => {
  const { castOn, rows } = randomLace(seed)
  return casebookOf(fromRows(String(castOn), rows, 1))
}

/** A random lace and one mistake in it. */
const injured = fc
  .tuple(fc.nat(100_000), fc.nat(1_000_000))
  .map(([seed, pick]): { book: Casebook; trace: Trace } | null => {
    const book = laceOf(seed)
    const all = allTraces(book)
    const trace = all[pick % Math.max(1, all.length)]
    return trace ? { book, trace } : null
  })

const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0)

describe('the models', () => {
  it('are at least thirty-six, each with a name of its own', () => {
    expect(models.length).toBeGreaterThanOrEqual(36)
    expect(new Set(models.map(({ kind }) => kind)).size).toBe(models.length)
    expect(new Set(models.map(({ name }) => name)).size).toBe(models.length)
  })

  it('find each place once', () => {
    const keys = ['horseshoe', 'portholes', 'miniature-leaf'].flatMap((slug) =>
      allTraces(bookOf(slug)).map(({ mistake }) => `${slug} ${keyOf(mistake)}`),
    )
    expect(keys.length).toBeGreaterThan(300)
    expect(new Set(keys).size).toBe(keys.length)
  })

  it('count without loops what the needles count with them', () => {
    fc.assert(
      fc.property(injured, (one) => {
        fc.pre(one !== null)
        const { book, trace } = one
        for (const [habit, told] of [
          ['markers', trace.marked],
          ['words', trace.unmarked],
        ] as const) {
          const piece = workWrong(book.plan, trace.edits, told.length, { habit })
          expect(piece.rows).toHaveLength(told.length)
          for (const [i, row] of piece.rows.entries()) {
            const worked = piece.worked.rows[row.index]
            expect(worked?.after).toHaveLength(told[i]?.total ?? -1)
            expect(worked?.unworked).toEqual([])
            expect(row.counts).toEqual(told[i]?.counts)
          }
        }
      }),
      { numRuns: runs },
    )
  }, 120_000)

  it('change the fabric, the place of a marker, or what the words come to', () => {
    fc.assert(
      fc.property(injured, (one) => {
        fc.pre(one !== null)
        const { book, trace } = one
        const piece = workWrong(book.plan, trace.edits, 2)
        const rows = book.plan.worked.rows.slice(0, piece.worked.rows.length)
        const same = sameFabric(piece.worked, { ...book.plan.worked, rows })
        const moved = trace.marked.some(
          ({ row, counts }) => counts.join() !== book.plan.rows[row]?.makes.join(),
        )
        const stopped = trace.marked.some(({ at }) => at !== null)
        expect(!same || moved || stopped).toBe(true)
        // Where only a marker moved there is nothing to see in the stitches, and where stitches differ there is.
        const seen = sightsFor(book, trace).filter(({ look }) => look !== 'marker beside its place')
        if (same) expect(seen).toEqual([])
      }),
      { numRuns: runs },
    )
  }, 120_000)

  it('leave every loop below the mistake alone', () => {
    fc.assert(
      fc.property(injured, (one) => {
        fc.pre(one !== null)
        const { book, trace } = one
        fc.pre(trace.edits.every((edit) => edit.do !== 'castOn'))
        const piece = workWrong(book.plan, trace.edits, 3)
        const upTo = (rows: (typeof piece.worked)['rows']) => ({
          ...piece.worked,
          rows: rows.slice(0, piece.from),
        })
        expect(
          sameFabric(upTo(piece.worked.rows), {
            ...book.plan.worked,
            rows: book.plan.worked.rows.slice(0, piece.from),
          }),
        ).toBe(true)
      }),
      { numRuns: runs },
    )
  }, 120_000)
})

describe('what follows from a mistake', () => {
  const reed = bookOf('reed-bed')
  const of = (book: Casebook, kind: string, zone = 'repeat 2', everywhere = false): Trace => {
    const found = allTraces(book).find(
      ({ mistake, section }) =>
        mistake.kind === kind &&
        mistake.everywhere === everywhere &&
        (zone === '' || book.plan.sections[section ?? -1] === zone),
    )
    if (!found) throw new Error(`${kind} is nowhere in ${zone}`)
    return found
  }
  const consequence = (book: Casebook, trace: Trace) => {
    const found = consequenceOf(book.plan, trace.mistake)
    if (!found) throw new Error('no consequence')
    return found
  }

  it('a yarn over left out: one short, shown by the next lace row at the latest', () => {
    const found = consequence(reed, of(reed, 'yarn over left out'))
    expect(found.total).toEqual({ meant: 19, now: 18 })
    expect(found.counts).toEqual([{ section: 2, meant: 6, now: 5 }])
    expect(found.shows).toMatchObject({ by: 'row end', row: 0, nextTurn: true, off: -1 })
    expect(found.laterRowsFit).toBe(false)
    expect(found.eye).toEqual([lookWords['no hole']])
    expect(found.words.join(' ')).toMatch(/Row 1, repeat 2: a yarn over was left out/)
  })

  it('a wrong lean: nothing to count, every later row fits, only the eye finds it', () => {
    const found = consequence(reed, of(reed, 'wrong lean'))
    expect(found.counts).toEqual([])
    expect(found.total).toEqual({ meant: 19, now: 19 })
    expect(found.laterRowsFit).toBe(true)
    expect(found.shows.by).toBe('eye')
    expect(found.words.join(' ')).toMatch(/counting does not show it/)
  })

  it('a yarn over that jumped the marker: five and seven, and nothing is knitted wrongly', () => {
    const found = consequence(reed, of(reed, 'yarn over jumped the marker'))
    expect(found.counts.map(({ now, meant }) => now - meant).sort()).toEqual([-1, 1])
    expect(found.knittedRightly).toBe(true)
    expect(found.words.join(' ')).toMatch(/Nothing is knitted wrongly/)
  })

  it('a fudge: wrong in its row, right again in the next, and seen by the eye', () => {
    const found = consequence(reed, of(reed, 'yarn over made up later'))
    expect(found.total.now).toBe(18)
    expect(found.settled).toEqual({ meant: 19, now: 19 })
    expect(found.eye).toContain(lookWords['made stitch'])
    expect(found.words.join(' ')).toMatch(/hides it/)
  })

  it('the same misreading in every repeat adds up', () => {
    const found = consequence(reed, of(reed, 'decrease left out', 'repeat 1', true))
    expect(found.counts.map(({ now, meant }) => now - meant)).toEqual([1, 1, 1])
  })

  it('gives the wrong rows to be drawn beside the right ones', () => {
    const found = consequence(reed, of(reed, 'wrong lean'))
    expect(found.wrong.worked.rows.length).toBeGreaterThan(found.wrong.from)
    expect(found.wrong.rows[0]?.counts).toEqual(reed.plan.rows[0]?.makes)
    expect(found.wrong.worked.rows[0]?.steps).toHaveLength(reed.plan.worked.rows[0]?.steps.length ?? 0)
  })

  it('agrees with itself: what the eye sees, what is counted, and the sum of both', () => {
    const book = bookOf('miniature-leaf')
    for (const trace of allTraces(book).filter((_, i) => i % 7 === 0)) {
      const found = consequence(book, trace)
      expect(total(found.counts.map(({ now, meant }) => now - meant))).toBe(
        found.total.now - found.total.meant,
      )
      expect(found.words[0]).toContain(rowName(book.plan, trace.mistake.row))
      expect(editsOf(book.plan, trace.mistake)?.length).toBeGreaterThan(0)
    }
  }, 60_000)
})
