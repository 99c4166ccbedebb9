import { describe, expect, it } from 'vitest'
import { changedActs } from '../../engine/mistakes/edits.ts'
import { workRow } from '../../engine/mistakes/follow.ts'
import {
  casebookOf,
  diagnose,
  editsOf,
  partsOfPair,
  preparing,
  sightsFor,
  tracesIn,
} from '../../engine/mistakes/index.ts'
import { allTraces, bookOf, changedCounts, fromLibrary } from './support.ts'

describe('made ready bit by bit', () => {
  it('changes no answer, wherever it is interrupted', () => {
    const evidence = { row: 2, counts: changedCounts(bookOf('horseshoe'), 2, { 2: -1 }) }
    const plain = diagnose(bookOf('horseshoe'), evidence)
    for (const bits of [1, 3, 50, 5000]) {
      const book = bookOf('horseshoe')
      const work = preparing(book, 2)
      for (let i = 0; i < bits; i++) work.next()
      const ready = diagnose(book, evidence)
      expect(
        ready.suspects.map(({ kind, row, section, share, looks }) => [kind, row, section, share, looks]),
      ).toEqual(
        plain.suspects.map(({ kind, row, section, share, looks }) => [kind, row, section, share, looks]),
      )
      expect(ready.question).toEqual(plain.question)
    }
  })

  it('begins with the row that the reader is in, and comes to an end', () => {
    const book = bookOf('horseshoe')
    const work = preparing(book, 3)
    work.next()
    expect([...book.rows.keys()]).toEqual([3])
    let bits = 0
    while (!work.next().done) bits++
    expect(book.rows.size).toBe(book.plan.rows.length)
    expect(bits).toBeGreaterThan(100)
    const known = book.sights.size
    for (const trace of allTraces(book)) sightsFor(book, trace)
    expect(book.sights.size).toBe(known)
  })
})

describe('only the stretches that are changed are worked again', () => {
  it.each(['reed-bed', 'horseshoe', 'vine', 'little-fountain'])(
    'in %s with the counts of the whole row',
    (slug) => {
      const book = casebookOf(fromLibrary(slug, 3))
      let seen = 0
      for (const { index } of book.plan.rows) {
        for (const { mistake, marked } of tracesIn(book, index)) {
          const edits = editsOf(book.plan, mistake) ?? []
          const row = book.plan.rows[index]
          const [first] = marked
          if (!row || !first || edits.some((edit) => edit.do !== 'change' || edit.row !== index)) continue
          const {
            acts: _,
            side: __,
            ...whole
          } = workRow(book.plan, row, changedActs(row, edits), row.takes, false)
          expect(first).toEqual(whole)
          seen++
        }
      }
      expect(seen).toBeGreaterThan(50)
    },
  )
})

describe('two mistakes together', () => {
  const reed = bookOf('reed-bed')
  const evidence = { row: 0, counts: changedCounts(reed, 0, { 1: 1, 3: 1 }), firstTurn: true }

  it('each is told by itself, the newest first, with the counts that it alone gives', () => {
    const { pairs } = diagnose(reed, evidence)
    expect(pairs.length).toBeGreaterThan(0)
    for (const pair of pairs) {
      const parts = partsOfPair(reed, evidence, pair)
      expect(parts).toHaveLength(2)
      const offs = parts.map(({ fittings }) =>
        (fittings[0]?.outcome.counts ?? []).map((count, i) => count - (reed.plan.rows[0]?.makes[i] ?? 0)),
      )
      expect((offs[0] ?? []).map((by, i) => by + (offs[1]?.[i] ?? 0))).toEqual(
        [0, 1, 0, 1].slice(0, offs[0]?.length),
      )
      const [newest, older] = parts.map(({ fittings }) => fittings[0]?.trace.mistake.step ?? -1)
      expect(newest).toBeGreaterThan(older ?? 0)
      for (const { looks } of parts) expect(looks.length).toBeGreaterThan(0)
    }
  })
})
