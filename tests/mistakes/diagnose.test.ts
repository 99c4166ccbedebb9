import { describe, expect, it } from 'vitest'
import {
  answer,
  type Casebook,
  type Diagnosis,
  diagnose,
  likelyMistakesAt,
  openingWords,
  pairWords,
  suspectWords,
} from '../../engine/mistakes/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { allTraces, bookOf, changedCounts } from './support.ts'

const reed = bookOf('reed-bed')
const fountain = bookOf('little-fountain')

const found = ({ suspects }: Diagnosis): string[] =>
  suspects.map(
    ({ kind, row, section }) =>
      `${kind} | row ${row + 1} | ${section === null ? '' : (reed.plan.sections[section] ?? '')}`,
  )

const kinds = ({ suspects }: Diagnosis): string[] => suspects.map(({ kind }) => kind)

describe('find my mistake, by the counts of each repeat', () => {
  it('six, five, six: a yarn over is missing in the second', () => {
    const diagnosis = diagnose(reed, { row: 0, counts: changedCounts(reed, 0, { 2: -1 }) })
    expect(found(diagnosis)[0]).toBe('yarn over left out | row 1 | repeat 2')
    expect(diagnosis.right).toBe(false)
    expect(diagnosis.suspects.every(({ section, everywhere }) => section === 2 && !everywhere)).toBe(true)
  })

  it('five and seven next door: a yarn over jumped the marker, and nothing is knitted wrongly', () => {
    const counts = (reed.plan.rows[0]?.makes ?? []).map((count, section) =>
      section === 2 ? count - 1 : section === 1 ? count + 1 : count,
    )
    const diagnosis = diagnose(reed, { row: 0, counts })
    expect(kinds(diagnosis)[0]).toBe('yarn over jumped the marker')
    const words = diagnosis.suspects[0] ? suspectWords(diagnosis, diagnosis.suspects[0]).join(' ') : ''
    expect(words).toMatch(/One over in repeat 1 and one short next door in repeat 2/)
    expect(words).toMatch(/Nothing is knitted wrongly/)
  })

  it('the same in every repeat: something was misread', () => {
    const diagnosis = diagnose(reed, { row: 0, counts: changedCounts(reed, 0, { 1: -1, 2: -1, 3: -1 }) })
    expect(diagnosis.suspects[0]?.everywhere).toBe(true)
  })

  it('counts that she left out are not held against anything', () => {
    const counts = (reed.plan.rows[0]?.makes ?? []).map((count, section) =>
      section === 2 ? count - 1 : null,
    )
    expect(kinds(diagnose(reed, { row: 0, counts }))[0]).toBe('yarn over left out')
  })

  it('says so when the count is meant to change, and when it is right', () => {
    const diagnosis = diagnose(fountain, { row: 0, counts: changedCounts(fountain, 0, {}) })
    expect(diagnosis).toMatchObject({ right: true, changes: true, suspects: [] })
    expect(openingWords(diagnosis).join(' ')).toMatch(/meant to change in row 1: from 13 to 19/)
    expect(openingWords(diagnosis).join(' ')).toMatch(/just what they should be/)
    // Who does not know that counts her cast-on and is told the same.
    expect(diagnose(fountain, { row: 0, total: 13 })).toMatchObject({ right: false, changes: true })
  })

  it('finds what was done in the row before', () => {
    const diagnosis = diagnose(
      reed,
      { row: 1, counts: changedCounts(reed, 1, { 2: -1 }), firstTurn: true },
      { most: 20 },
    )
    const lost = diagnosis.suspects.find(({ kind, row }) => kind === 'yarn over left out' && row === 0)
    expect(lost && suspectWords(diagnosis, lost).join(' ')).toMatch(/in the row before/)
    const sure = diagnose(
      reed,
      { row: 1, counts: changedCounts(reed, 1, { 2: -1 }), firstTurn: true, rightUpTo: 0 },
      { most: 20 },
    )
    expect(sure.suspects.length).toBeGreaterThan(0)
    expect(sure.suspects.every(({ row }) => row === 1)).toBe(true)
  })

  it('knows that in the middle of a row only what is done can be wrong', () => {
    const steps = reed.plan.worked.rows[0]?.steps ?? []
    const middle = 8
    const right = diagnose(reed, { row: 0, step: middle, total: steps[middle - 1]?.total ?? 0 })
    expect(right.right).toBe(true)
    const short = diagnose(
      reed,
      { row: 0, step: middle, total: (steps[middle - 1]?.total ?? 0) - 1, firstTurn: true },
      { most: 30 },
    )
    expect(kinds(short)).toContain('yarn over left out')
    for (const { fittings } of short.suspects)
      for (const { trace } of fittings) expect(trace.mistake.step).toBeLessThan(middle)
  })

  it('finds two mistakes where no single one gives the counts', () => {
    const counts = changedCounts(reed, 0, { 1: 1, 3: 1 })
    const diagnosis = diagnose(reed, { row: 0, counts, firstTurn: true })
    expect(diagnosis.suspects).toEqual([])
    expect(diagnosis.pairs.length).toBeGreaterThan(0)
    const [pair] = diagnosis.pairs
    expect(pair && new Set([pair.first.section, pair.second.section])).toEqual(new Set([1, 3]))
    expect(pair && pairWords(reed.plan, pair)).toMatch(/^Two mistakes together: .*repeat \d.*; .*repeat \d/)
  })

  it('does not guess where nothing gives the counts', () => {
    const diagnosis = diagnose(reed, { row: 0, counts: [1, 40, 6, 6] })
    expect(diagnosis).toMatchObject({ suspects: [], pairs: [], question: null })
    expect(openingWords(diagnosis).join(' ')).toMatch(/Count once more/)
  })
})

describe('the one question', () => {
  const ask = (book: Casebook) =>
    diagnose(book, { row: 0, counts: changedCounts(book, 0, { 2: -1 }) }, { most: 50 })

  it('has answers in words, and one for who cannot tell', () => {
    const { question } = ask(reed)
    expect(question?.kind).toBe('what do you see')
    expect(question?.choices.length).toBeGreaterThan(2)
    expect(question?.choices.at(-1)?.id).toBe('unsure')
    expect(new Set(question?.choices.map(({ words }) => words)).size).toBe(question?.choices.length)
  })

  it('every answer leaves fewer suspects, and "cannot tell" leaves them all', () => {
    const before = ask(reed)
    for (const { id } of before.question?.choices ?? []) {
      const after = answer(before, id)
      if (id === 'unsure') expect(after.found).toBe(before.found)
      else {
        expect(after.found).toBeGreaterThan(0)
        expect(after.found).toBeLessThan(before.found)
      }
      expect(after.question?.kind).not.toBe(before.question?.kind)
    }
  })

  it('is the one that is expected to tell most: for a total alone, where it is', () => {
    const wide = bookOf('reed-bed', 9)
    const { question } = diagnose(wide, { row: 0, total: 54 }, { most: 50 })
    expect(question?.kind).toBe('which section')
    expect(question?.worth).toBeGreaterThan(1)
  })

  it('goes on until one suspect is left, and is then not asked', () => {
    const before = ask(reed)
    const after = answer(before, 'free loop')
    expect(new Set(kinds(after))).toEqual(new Set(['stitch dropped']))
    // Which row it was is still open, and asked.
    expect(after.question).not.toBeNull()
    const replies = (after.question?.choices ?? []).filter(({ id }) => id !== 'unsure')
    expect(replies.length).toBe(after.found)
    for (const { id } of replies) {
      const last = answer(after, id)
      expect(last.suspects).toHaveLength(1)
      expect(last.question).toBeNull()
    }
  })
})

describe('it looks wrong', () => {
  it('a lean, a twist and a shift are found although all counts are right', () => {
    expect(kinds(diagnose(reed, { row: 0, looks: ['leans the other way'], section: 2 }))[0]).toBe(
      'wrong lean',
    )
    expect(
      kinds(diagnose(reed, { row: 1, looks: ['hole shut'], section: 2 }))
        .slice(0, 2)
        .sort(),
    ).toEqual(['yarn over worked through the back', 'yarn over wrapped backwards'])
    expect(kinds(diagnose(reed, { row: 1, looks: ['squat'] }))).toEqual([])
  })

  it('an answer never rests on what cannot be seen yet', () => {
    const diagnosis = diagnose(reed, { row: 0, looks: ['hole shut'], firstTurn: true })
    expect(kinds(diagnosis)).not.toContain('yarn over wrapped backwards')
  })
})

describe('what to expect at a step', () => {
  it('at most two, heaviest first, each kind once, with the row’s count', () => {
    for (const [index, { stitch: id }] of (reed.plan.worked.rows[0]?.steps ?? []).entries()) {
      const likely = likelyMistakesAt(reed, 0, index)
      expect(likely.length).toBeLessThanOrEqual(2)
      expect(likely.length).toBeGreaterThan(0)
      expect((likely[0]?.weight ?? 0) >= (likely[1]?.weight ?? 0)).toBe(true)
      expect(new Set(likely.map(({ kind }) => kind)).size).toBe(likely.length)
      if (stitch(id).family === 'yarn over') {
        expect(likely[0]).toMatchObject({ kind: 'yarn over left out', rowEnds: 18 })
        expect(likely[0]?.words).toMatch(/one short, with 18 stitches/)
      }
    }
  })

  it('a pass over forgotten comes before what seldom happens', () => {
    const mini = bookOf('mini-horseshoe')
    const at = mini.plan.worked.rows[0]?.steps.findIndex((step) => step.stitch === 'sk2p') ?? -1
    expect(likelyMistakesAt(mini, 0, at).map(({ kind }) => kind)).toContain('pass over forgotten')
    expect(allTraces(mini).length).toBeGreaterThan(200)
  })
})
