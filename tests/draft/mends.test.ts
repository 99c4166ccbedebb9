import { describe, expect, it } from 'vitest'
import {
  changed,
  checkDraft,
  type Draft,
  type DraftMend,
  emptyDraft,
  mendsFor,
} from '../../engine/intake/index.ts'

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
