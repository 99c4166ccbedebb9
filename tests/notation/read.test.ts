import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sentenceOf } from '../../engine/base/index.ts'
import { printRow, readRow } from '../../engine/notation/index.ts'
import { takesAndMakes } from '../../engine/pattern/index.ts'

const read = (text: string): string => {
  const reading = readRow(text)
  expect(reading.issues, text).toEqual([])
  return printRow(reading.items)
}
const problems = (text: string) => readRow(text).issues.map((issue) => issue.code)

describe('rows as knitters write them', () => {
  it.each([
    [
      'K1, *YO, SSK, K1, K2TOG, yo, K1; Rep from * to end',
      'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
    ],
    ['k 1, (k1, yo) twice', 'k1, [k1, yo] twice'],
    ['[k2tog] 3 times', 'k2tog 3 times'],
    ['k1 p1   yo  k2tog', 'k1, p1, yo, k2tog'],
    ['k 2 tog, k 2tog, knit 2 together, k2 tog', 'k2tog, k2tog, k2tog, k2tog'],
    ['*k1, yo; rep from * to last 3 sts, k3', '*k1, yo; rep from * to last 3 sts, k3'],
    ['*k2, yo; rep from *, k1', '*k2, yo; rep from * to last st, k1'],
    ['*k2, yo, rep from * across', '*k2, yo; rep from * to end'],
    ['*k1, yo*, rep from * to end', '*k1, yo; rep from * to end'],
    ['*k1, p1; rep from * 3 times more', '*k1, p1; rep from * 4 times in all'],
    ['*k1, p1; rep from * 3 times in all', '*k1, p1; rep from * 3 times in all'],
    ['(yo, k2tog) to last 2 sts, k2', '*yo, k2tog; rep from * to last 2 sts, k2'],
    ['k1, (k2, [yo, k2tog] twice) 3 times', 'k1, [k2, (yo, k2tog) twice] 3 times'],
    ['knit', 'knit'],
    ['purl across', 'purl'],
    ['P to end of row', 'purl'],
    ['k all', 'knit'],
    ['sl1, knit to end', 'sl1, k to end'],
    ['knit to last 3 sts, yo, k3', 'k to last 3 sts, yo, k3'],
    ['yo twice, k2 tbl', 'yo twice, k2 tbl'],
    ['k1, slip marker, k1, place marker, pm, sm', 'k1, sm, k1, pm, pm, sm'],
    ['skpo, sk2po, s2kp2', 'skp, sk2p, s2kp'],
    ['(k1, yo, k1) in next st, k1-p1-k1 in one', '(k1, yo, k1) in next st, (k1, p1, k1) in next st'],
    ['bind off 4 sts, knit to end', 'bind off 4 sts, k to end'],
    ['cast off 3, k2', 'bind off 3 sts, k2'],
    ['k3, turn', 'k3, turn'],
    ['k3, join in the round', 'k3, join in the round'],
    ['1/1 rc, 2/2 LC', '1/1 RC, 2/2 LC'],
    ['nupp 7, nupp', 'nupp7, nupp5'],
    ['k2tog with 1 held st', 'k2tog with 1 held st'],
    [
      'place 5 sts on holder, return 3 held sts to needle',
      'place 5 sts on holder, return 3 held sts to needle',
    ],
  ])('%s', (written, meant) => expect(read(written)).toBe(meant))

  it('takes a bare slip purlwise, and knitwise before a pass over', () => {
    expect(read('sl1, k2')).toBe('sl1, k2')
    expect(read('sl1, k1, psso')).toBe('skp')
    expect(read('sl 1, k2tog, pass slipped stitch over')).toBe('sk2p')
    expect(read('sl2-k1-p2sso')).toBe('s2kp')
    expect(read('sl1, k3, psso')).toBe('sl1, k3, psso')
    expect(read('sl1 wyif, sl 1 purlwise with yarn in back, sl1 kwise')).toBe('sl1 wyif, sl1 wyib, sl1 kwise')
  })

  it('works three stitches into one as one stitch that takes three', () => {
    for (const row of ['sl1, k2tog, psso', 'sk2p']) {
      const { items } = readRow(row)
      expect(items).toHaveLength(1)
      expect(takesAndMakes(items)).toMatchObject({ takes: 3, makes: 1 })
    }
  })

  it('counts a bind-off with the stitch that is left on the right needle on top', () => {
    expect(takesAndMakes(readRow('bind off 4, k7').items)).toMatchObject({ takes: 12, makes: 8 })
    expect(takesAndMakes(readRow('bind off 4, k7', { bindOffLeaves: 'first' }).items)).toMatchObject({
      takes: 11,
      makes: 7,
    })
    expect(takesAndMakes(readRow('k3, bind off 4').items)).toMatchObject({ takes: 7, makes: 3 })
  })
})

describe('British yarn-forward words', () => {
  it('make a loop between knits and only carry the yarn before a slip', () => {
    expect(read('k1, yfwd, k1')).toBe('k1, yo, k1')
    expect(read('k1, yfwd, sl1, yb, k1')).toBe('k1, sl1 wyif, yb, k1')
    expect(read('p1, yb, sl1, yf, p1')).toBe('p1, sl1 wyib, yarn to front, p1')
  })

  it('are always a loop where they say how the yarn goes round', () => {
    expect(read('p1, yrn, p1, yon, k1, yfrn, p1')).toBe('p1, yo, p1, yo, k1, yo, p1')
  })

  it('are warned of where they could be either', () => {
    expect(problems('k1, yf, p1')).toEqual(['yarn-forward-ambiguous'])
    expect(problems('k1, yfwd, sl1, k2tog, psso')).toEqual(['yarn-forward-ambiguous'])
    expect(printRow(readRow('k1, yfwd, sl1, k2tog, psso').items)).toBe('k1, yo, sk2p')
  })
})

describe('what is not understood', () => {
  it.each([
    ['k1, ss k, yo', 'unknown-word', 'did you mean `ssk`?'],
    ['k1, k2tgo', 'unknown-word', 'did you mean `k2tog`?'],
    ['*k2, yo, k2tog', 'repeat-not-closed', null],
    ['k2, rep from * to end', 'repeat-without-star', null],
    ['k1, (k2, yo', 'bracket-not-closed', null],
    ['k1)', 'bracket-not-open', null],
    ['()', 'bracket-empty', null],
    ['*k1, *p1; rep from * to end', 'repeat-in-repeat', null],
    ['k3, turn, p3', 'turn-not-last', null],
    ['k1, psso', 'pass-over-nothing', null],
    ['', 'row-empty', null],
    ['k0', 'number-zero', null],
    ['(k1, yo) 3', 'times-missing', null],
    ['k12tog', 'decrease-size', null],
    ['(p1, yo) in next st', 'increase-unknown', null],
    ['🧶 k1', 'character-unknown', null],
  ])('%s: %s', (row, code, hint) => {
    const { issues } = readRow(row)
    expect(issues.map((issue) => issue.code)).toContain(code)
    const issue = issues.find((one) => one.code === code)
    if (hint !== null && issue) expect(sentenceOf(issue).hint).toBe(hint)
  })

  it('points at the word itself and reads on after it', () => {
    const row = 'k1, ss k, yo, k2tgo, k3'
    const { issues, items } = readRow(row)
    expect(issues.map((issue) => row.slice(issue.span?.start, issue.span?.end))).toEqual(['ss k', 'k2tgo'])
    expect(printRow(items)).toBe('k1, yo, k3')
  })

  it("reads '4 times' after a star as 4 more, and says so", () => {
    const { issues, items } = readRow('*k2, p1; rep from * 4 times')
    expect(issues.map((issue) => [issue.code, issue.severity])).toEqual([['repeat-times-more', 'warning']])
    expect(printRow(items)).toBe('*k2, p1; rep from * 5 times in all')
  })

  it('never fails, whatever is typed, and every problem lies within the row', () => {
    const bits = fc.constantFrom(
      'k1',
      'yo',
      '*',
      '(',
      ')',
      '[',
      ']',
      ',',
      ';',
      'rep',
      'from',
      'to',
      'end',
      'last',
      '3',
      'sts',
      'psso',
      'sl1',
      'times',
      'twice',
      'in',
      'k2tog',
      'xx',
      '-',
      'turn',
      'bo',
      ' ',
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 60 }),
          fc.array(bits, { maxLength: 30 }).map((b) => b.join(' ')),
        ),
        (row) => {
          for (const issue of readRow(row).issues) {
            expect(issue.span?.start).toBeGreaterThanOrEqual(0)
            expect(issue.span?.end).toBeLessThanOrEqual(row.length)
            expect(sentenceOf(issue).message.length).toBeGreaterThan(0)
          }
        },
      ),
      { numRuns: Number(process.env.OPENWORK_RUNS ?? 300) },
    )
  })
})
