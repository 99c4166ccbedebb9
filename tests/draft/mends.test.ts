import { describe, expect, it } from 'vitest'
import {
  changed,
  checkDraft,
  type Draft,
  type DraftMend,
  emptyDraft,
  mendsFor,
} from '../../engine/intake/index.ts'
import { printRow, readRow } from '../../engine/notation/index.ts'
import { facts } from '../reference/support.ts'

const draftOf = (rows: readonly string[], multiple = '', plus = ''): Draft => ({
  ...emptyDraft,
  rows,
  castOn: { ...emptyDraft.castOn, multiple, plus },
})

/** Everything that is offered for a draft's problems. */
function offered(draft: Draft): DraftMend[] {
  const checked = checkDraft(draft)
  return checked.problems.flatMap((problem) => mendsFor(draft, checked, problem))
}

const reedBed = 'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end'

describe('a row that does not come out', () => {
  it.each([
    ['a knit left out', 'k1, *yo, ssk, k2tog, yo, k1; rep from * to end'],
    ['a double decrease for a single one', 'k1, *yo, sssk, k1, k2tog, yo, k1; rep from * to end'],
    ['a knit too many', 'k1, *yo, ssk, k2, k2tog, yo, k1; rep from * to end'],
  ])('%s: the row that was meant is among what is offered', (_, row) => {
    expect(offered(draftOf([row, 'purl'], '6', '1')).map(({ text }) => text)).toContain(reedBed)
  })

  it('a yarn over left out is found where the count does not come back', () => {
    const draft = draftOf(['k1, *yo, ssk, k1, k2tog, k1; rep from * to end', 'purl'], '6', '1')
    const mends = offered(draft)
    expect(mends[0]?.text).toBe(reedBed)
    expect(mends.some(({ change }) => change.kind === 'growing')).toBe(true)
  })

  it('the rule that the rows need is offered where the rows are right and the cast-on is not', () => {
    const draft = draftOf([reedBed, 'purl'], '6', '2')
    const rule = offered(draft).find(({ change }) => change.kind === 'castOn')
    expect(rule?.words).toBe('Cast on a multiple of 6 plus 1')
    expect(rule && checkDraft(changed(draft, rule.change)).sound).toBe(true)
  })
})

describe('words that are not understood', () => {
  it.each([
    ['k1, *yo, ssk, k1, k2tgo, yo, k1; rep from * to end', reedBed],
    ['k1, *yo, ssk, k1, k2tog, yo, k1; rep form * to end', reedBed],
    ['k1, *yo, ssk, k1, k2tog, yo, k1', reedBed],
    [
      'k1, *(yo, ssk) 2, k1, k2tog, yo, k1; rep from * to end',
      'k1, *(yo, ssk) 2 times, k1, k2tog, yo, k1; rep from * to end',
    ],
    ['k1, *yo, ssk, k1], k2tog, yo, k1; rep from * to end', reedBed],
  ])('%s', (row, meant) => {
    expect(offered(draftOf([row, 'purl'], '6', '1')).map(({ text }) => text)).toContain(meant)
  })

  it('a word that nothing is near to has no suggestion', () => {
    expect(offered(draftOf(['k1, xylophone, k1']))).toEqual([])
  })
})

/** What tests/reference/handbook-patterns.json says of a pattern; it names each book with its author, year and place. */
interface Handbook {
  readonly id: string
  readonly worked: 'flat' | 'round'
  readonly firstSide: 'RS' | 'WS' | null
  readonly statedCastOn: number | null
  readonly rule: { readonly multiple: number; readonly plus: number } | null
  readonly setUpRows: number
  readonly growing: boolean
  readonly balanced: boolean
  readonly rows: readonly { readonly printed: string; readonly corrected?: string }[]
}

const { patterns } = facts<{ patterns: readonly Handbook[] }>('handbook-patterns.json')

/** A pattern from an old book with its rows as corrected, but for one that stands as it was printed. */
function fromBook(p: Handbook, misprinted: number | null, stated: boolean): Draft {
  const texts = p.rows.map((row, i) => (i === misprinted ? row.printed : (row.corrected ?? row.printed)))
  const { castOn } = emptyDraft
  const rule = stated && p.rule
  return {
    ...emptyDraft,
    setUp: texts.slice(0, p.setUpRows),
    rows: texts.slice(p.setUpRows),
    worked: p.worked,
    growing: p.growing,
    firstSide: p.setUpRows % 2 === 1 ? 'WS' : (p.firstSide ?? 'RS'),
    castOn: rule
      ? { ...castOn, multiple: String(rule.multiple), plus: String(rule.plus) }
      : stated && p.statedCastOn !== null
        ? { ...castOn, kind: 'exactly', exactly: String(p.statedCastOn) }
        : castOn,
  }
}

describe('patterns from needlework books of 1843 to 1918', () => {
  it('come out as they are typed, before anything is said of the cast-on', () => {
    const typed = patterns.filter(({ balanced }) => balanced)
    expect(typed.length).toBeGreaterThan(25)
    expect(typed.filter((p) => !checkDraft(fromBook(p, null, false)).sound).map(({ id }) => id)).toEqual([])
  })

  it('of the misprinted rows most are mended by one of the presses that are offered', () => {
    const words = (row: string): string => printRow(readRow(row).items)
    const misprints = patterns.flatMap((p) =>
      p.rows.flatMap(({ corrected }, i) => (corrected === undefined ? [] : [{ p, i, corrected }])),
    )
    const mended = misprints.filter(({ p, i, corrected }) =>
      offered(fromBook(p, i, true)).some(({ text }) => text !== null && words(text) === words(corrected)),
    )
    expect(misprints.every(({ p, i }) => !checkDraft(fromBook(p, i, true)).sound)).toBe(true)
    expect(misprints.length).toBe(12)
    // Not found: a pair of stitches left out at once, and a pair of decreases that should be knits.
    expect(mended.length).toBe(10)
  })
})

it('nothing is offered that does not do what it says', () => {
  const rows = [
    'k1, *yo, ssk, k2tog, yo, k1; rep from * to end',
    'k1, *yo, k2tog, k1; rep form * to end',
    'k1, *[yo, ssk] 2, k1; rep from *',
    '*k2, yo; rep from * to last st, k1',
  ]
  let tried = 0
  for (const row of rows)
    for (const multiple of ['3', '5', '6']) {
      const draft = draftOf([row, 'purl'], multiple, '1')
      const before = checkDraft(draft)
      for (const problem of before.problems)
        for (const mend of mendsFor(draft, before, problem)) {
          const after = checkDraft(changed(draft, mend.change))
          const errors = after.problems.filter(({ issue }) => issue.severity === 'error').length
          expect(errors, `${row}: ${mend.words}`).toBe(mend.remaining)
          tried++
        }
    }
  expect(tried).toBeGreaterThan(12)
})
