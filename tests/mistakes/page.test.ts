import { describe, expect, it } from 'vitest'
import { readPattern, readVersion } from '../../engine/intake/index.ts'
import {
  casebookOf,
  checkPage,
  diagnose,
  everyRepeatWords,
  openingWords,
  pageWords,
  sameInEveryRepeat,
} from '../../engine/mistakes/index.ts'
import type { About } from '../../engine/pattern/index.ts'
import { bookOf, changedCounts, fromRows } from './support.ts'

const reed = bookOf('reed-bed')
const fountain = bookOf('little-fountain')

const corrected: About = {
  also: [],
  notToConfuseWith: [],
  teaches: [],
  version: '1.10',
  corrections: [
    { version: '1.1', date: '2026-03-01', change: 'Row 3: a yarn over was missing.', rows: [3] },
    { version: '1.9', date: '2026-04-01', change: 'Rows 1 and 3: the ends.', rows: [3, 1] },
    { version: '1.10', date: '2026-05-01', change: 'A note on yarn.' },
  ],
}
const page = (printed: string, about: About = corrected) => checkPage(about, printed)
const words = (printed: string, about: About = corrected): string =>
  pageWords(reed.plan, page(printed, about)).join(' ')

describe('a copy on paper beside the page of today', () => {
  it('says which rows were corrected since it was printed', () => {
    expect(page('1.0')).toMatchObject({ is: 'older', rows: [1, 3], gaps: true })
    expect(words('1.0')).toMatch(/Your copy is version 1\.0, and this page is version 1\.10\./)
    expect(words('1.0')).toMatch(/row 1 and row 3 were corrected, and perhaps more/)
    expect(words('1.0')).toContain('Version 1.1, 2026-03-01: Row 3: a yarn over was missing.')
    expect(page('1.1').rows).toEqual([1, 3])
    expect(words('1.1')).not.toContain('a yarn over was missing')
  })

  it('counts versions as numbers: 1.10 is newer than 1.9', () => {
    expect(page('1.9')).toMatchObject({ is: 'older', rows: [] })
    expect(words('1.9')).toMatch(/told in words only: Version 1\.10/)
    expect(page('1.10').is).toBe('the same')
    expect(page('1.11').is).toBe('newer')
    expect(page('1.10.0').is).toBe('the same')
  })

  it('says that a copy is up to date, and that no record is kept', () => {
    expect(words('1.10')).toMatch(/up to date/)
    expect(words('1.0', { ...corrected, corrections: [] })).toMatch(/No record is kept/)
    expect(words('2')).toMatch(/newer/)
    expect(words('spring', corrected)).toMatch(/not known/)
  })

  it('a draft comes before every version, and may have changed unseen', () => {
    expect(page('draft')).toMatchObject({ is: 'older', rows: [1, 3] })
    const { version: _, ...unversioned } = corrected
    expect(page('draft', unversioned).is).toBe('the same')
    expect(words('draft', unversioned)).toMatch(/may change without a record/)
  })
})

describe('corrections in a pattern file', () => {
  const file = (corrections: string): string =>
    `title: Test\ncastOn: 4\nrows:\n  - knit\nversion: '1.1'\ncorrections:\n${corrections}`
  const read = (corrections: string) => readPattern({ name: 'test', text: file(corrections) })

  it('may name their rows, and need not', () => {
    const { pattern, issues } = read(
      "  - { version: '1.0', date: '2026-01-01', change: a }\n  - { version: '1.1', date: '2026-01-02', change: b, rows: [1] }\n",
    )
    expect(issues).toEqual([])
    expect(pattern?.about.corrections.map(({ rows }) => rows)).toEqual([undefined, [1]])
  })

  it.each(['row 3', '[1.5]', '[three]', '{ from: 1 }'])('rows cannot be %s', (rows) => {
    const { issues } = read(`  - { version: '1.1', date: '2026-01-02', change: b, rows: ${rows} }\n`)
    expect(issues.map(({ code }) => code)).toEqual(['value-wrong'])
  })
})

describe('the version as a reader copies it', () => {
  it.each([
    ['1.0', '1.0'],
    [' v1.2 ', '1.2'],
    ['Version 1.2', '1.2'],
    ['v. 2', '2'],
    ['１．３', '1.3'],
    ['Draft', 'draft'],
    ['', null],
    [undefined, null],
  ])('%j is %j', (text, version) => {
    expect(readVersion(text)).toEqual({ version })
  })

  it.each(['<b>', '1.0; drop', 'x'.repeat(500), 7, '…'])('%j is told kindly', (text) => {
    expect(readVersion(text)).toMatchObject({
      field: 'version',
      words: expect.stringContaining('such as 1.0'),
    })
  })
})

describe('the same difference in every repeat', () => {
  it('is no slip of the hands: it points at the page', () => {
    const counts = changedCounts(reed, 0, { 1: -1, 2: -1, 3: -1 })
    expect(sameInEveryRepeat(reed.plan, { row: 0, counts })).toBe(-1)
    expect(everyRepeatWords('1.0', null)).toMatch(
      /see which version is printed on it: this page is version 1\.0/,
    )
    expect(everyRepeatWords('1.10', page('1.10'))).toMatch(/up to date/)
  })

  it('is not seen where one repeat differs, where nothing does, or where one was not counted', () => {
    for (const by of [{ 1: -1, 2: -1 }, { 1: -1, 2: -1, 3: 1 }, {}])
      expect(sameInEveryRepeat(reed.plan, { row: 0, counts: changedCounts(reed, 0, by) })).toBeNull()
    const counts = changedCounts(reed, 0, { 1: -1, 2: -1, 3: -1 }).map((count, i) => (i === 2 ? null : count))
    expect(sameInEveryRepeat(reed.plan, { row: 0, counts })).toBeNull()
    const one = casebookOf(
      fromRows('{ multiple: 4, plus: 1 }', ["'k1, *yo, k2tog, k2; rep from *'", 'purl'], 1),
    )
    expect(sameInEveryRepeat(one.plan, { row: 0, counts: changedCounts(one, 0, { 1: -1 }) })).toBeNull()
  })
})

describe('a count that is meant to change', () => {
  // Little Fountain gains two stitches a repeat in its first row: 13 become 19 over three repeats.
  it('is told first, also to who counts what was there before', () => {
    const told = openingWords(diagnose(fountain, { row: 0, total: 13 })).join(' ')
    expect(told).toMatch(/meant to change in row 1: from 13 to 19 stitches/)
    expect(told).toMatch(/as many as there were before the row/)
    expect(openingWords(diagnose(fountain, { row: 0, total: 18 })).join(' ')).not.toMatch(/before the row/)
  })

  it('in the middle of the row with what belongs there so far', () => {
    const steps = fountain.plan.worked.rows[0]?.steps ?? []
    const total = steps[4]?.total ?? 0
    expect(openingWords(diagnose(fountain, { row: 0, step: 5, total })).join(' ')).toContain(
      `so far from 13 to ${total} stitches`,
    )
  })

  it('is not told of a row that keeps its count', () => {
    expect(openingWords(diagnose(reed, { row: 0, total: 1 })).join(' ')).not.toMatch(/meant to change/)
    const steps = reed.plan.worked.rows[0]?.steps ?? []
    const middle = diagnose(reed, { row: 0, step: 2, total: steps[1]?.total ?? 0 })
    expect(middle.changes).toBe(false)
  })
})
