import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { at, sentenceOf } from '../../engine/base/index.ts'
import { work } from '../../engine/needles/index.ts'
import { check } from '../support.ts'

const runs = Number(process.env.OPENWORK_RUNS ?? 300)
const codes = (castOn: string, rows: string[], more = '') =>
  check(castOn, rows, more).issues.map((issue) => [issue.code, issue.row])
const told = (castOn: string, rows: string[], more = '') =>
  check(castOn, rows, more).issues.map(
    (issue) => `${sentenceOf(issue).message}. ${sentenceOf(issue).hint ?? ''}`,
  )
const counts = (castOn: string, rows: string[], more = '') =>
  check(castOn, rows, more).proof?.rows.map(({ before, after }) => [
    before.perRepeat,
    before.plus,
    after.perRepeat,
    after.plus,
  ])

const eyelets = ['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl']

describe('the counts of every row', () => {
  it('hold for every number of repeats', () => {
    expect(check('{ multiple: 6, plus: 1 }', eyelets).sound).toBe(true)
    expect(counts('{ multiple: 6, plus: 1 }', eyelets)).toEqual([
      [6, 1, 6, 1],
      [6, 1, 6, 1],
    ])
  })

  it('may change from row to row and come back', () => {
    const fountain = [
      'k1, *yo, k3, yo, k1; rep from * to end',
      'purl',
      'k2, *sk2p, k3; rep from * to last 5 sts, sk2p, k2',
      'purl',
    ]
    expect(counts('{ multiple: 4, plus: 1 }', fountain)).toEqual([
      [4, 1, 6, 1],
      [6, 1, 6, 1],
      [6, 1, 4, 1],
      [4, 1, 4, 1],
    ])
  })

  it('include the edges, which the cast-on leaves out', () => {
    const { proof, sound } = check('{ multiple: 6, plus: 1 }', eyelets, 'edges: { before: k3, after: k3 }\n')
    expect(sound).toBe(true)
    expect(proof?.edges).toBe(6)
    expect(proof?.castOn).toEqual({ multiple: 6, plus: 1 })
    expect(proof?.rows[0]?.before).toEqual({ perRepeat: 6, plus: 7 })
  })

  it("close where a row's own repeat is narrower or wider than the pattern's", () => {
    expect(
      check('{ multiple: 12, plus: 0 }', ['*k2tog, yo; rep from * to end', '*p12; rep from * to end']).sound,
    ).toBe(true)
    expect(
      check('{ multiple: 6, plus: 0 }', ['*k2tog, yo; rep from * to end', '*p4; rep from * to end']).sound,
    ).toBe(false)
  })

  it('are known through a partial row and the row back over it', () => {
    const short = ['k5, turn', 'p5', 'knit', 'purl']
    expect(check('{ multiple: 6, plus: 1 }', short).sound).toBe(true)
    expect(codes('{ multiple: 6, plus: 1 }', ['k8, turn', 'purl', 'knit', 'purl'])).toEqual([
      ['row-needs-stitches', 1],
      ['cast-on-too-weak', null],
    ])
  })
})

describe('a row that does not fit', () => {
  it('a missed yarn over is told where the count first shows it', () => {
    const rows = ['k1, *yo, ssk, k1, k2tog, k1; rep from * to end', 'purl', ...eyelets]
    expect(codes('{ multiple: 6, plus: 1 }', rows)[0]).toEqual(['repeat-does-not-fit', 3])
    expect(codes('{ multiple: 6, plus: 1 }', [rows[0] ?? '', 'purl'])).toEqual([['count-not-back', 2]])
  })

  it("says in a knitter's words how much is left over", () => {
    const row = '*k2, yo, k5, yo, k1, sk2p, yo, k5, yo, k1, sk2p; rep from * to end'
    const [message] = told('{ multiple: 21, plus: 0 }', ['knit', row])
    expect(message).toMatch(/^Row 2 uses 40 of 42 stitches for 2 repeats: 2 are left over/)
    expect(message).toContain('It would fit if the repeat took 1 stitch more')
  })

  it('is told once, and the rows after it are still looked at', () => {
    const rows = [
      '*k1, yo, k2tog, k2; rep from * to end',
      'purl',
      '*k6, yo; rep from * to end',
      'k7, *k3; rep from * to end',
    ]
    expect(codes('{ multiple: 6, plus: 0 }', rows).map(([, row]) => row)).toEqual([1, 4])
  })

  it('whose repeat takes nothing can never close', () => {
    expect(codes('{ multiple: 6, plus: 0 }', ['*yo; rep from * to end'])).toContainEqual([
      'repeat-takes-nothing',
      1,
    ])
  })

  it('does not blame a count on a row with a word that is not understood', () => {
    expect(
      codes('{ multiple: 6, plus: 1 }', ['k1, *yo, ss k, k1, k2tog, yo, k1; rep from * to end', 'purl']),
    ).toEqual([['unknown-word', 1]])
  })
})

describe('the count after the last row', () => {
  it('must be what row 1 began with', () => {
    expect(codes('7', ['k1, yo, k6', 'k8'])).toEqual([['count-not-back', 2]])
    expect(codes('7', ['k1, yo, k6', 'k8'], 'growing: true\n')).toEqual([])
  })

  it('is compared with the count before row 1, not with the cast-on', () => {
    expect(check('3', ['k2tog, yo, k3', 'k5'], 'setUp:\n  - k1, yo, k1, yo, k1\n').sound).toBe(true)
  })
})

describe('the cast-on rule', () => {
  const rule = (rows: string[], stated = '{ multiple: 1, plus: 0 }') => check(stated, rows).proof?.derived

  it('comes from the rows alone', () => {
    expect(rule(eyelets)).toEqual({ multiple: 6, plus: 1 })
    expect(rule(eyelets, '{ multiple: 99, plus: 7 }')).toEqual({ multiple: 6, plus: 1 })
    expect(rule(['*k2, p2; rep from * to end', '*k3, p3; rep from * to end'])).toEqual({
      multiple: 12,
      plus: 0,
    })
    expect(rule(['k1, *yo, k2tog; rep from * to last st, k1', 'purl'])).toEqual({ multiple: 2, plus: 2 })
    expect(rule(['k5, yo, k2tog', 'purl'])).toEqual({ fixed: 7 })
    expect(rule(['*k2; rep from * to end', '*k2; rep from * to last st, k1'])).toBeNull()
  })

  it('stated too weak is an error that says the right one', () => {
    expect(codes('{ multiple: 3, plus: 1 }', eyelets)).toEqual([
      ['repeat-does-not-fit', 1],
      ['cast-on-too-weak', null],
    ])
    expect(told('{ multiple: 3, plus: 1 }', eyelets).at(-1)).toContain('a multiple of 6 plus 1')
  })

  it('stated stronger than needed is a warning', () => {
    const { issues, sound } = check('{ multiple: 12, plus: 1 }', eyelets)
    expect(issues.map((issue) => [issue.code, issue.severity])).toEqual([['cast-on-too-strong', 'warning']])
    expect(sound).toBe(true)
  })

  it('a fixed number that fits is no rule and not warned of', () => {
    expect(codes('25', eyelets)).toEqual([])
    expect(codes('26', eyelets).map(([code]) => code)).toContain('repeat-does-not-fit')
  })
})

/** Rows made of balanced bits: each takes as many as it makes, so that any row of them fits its width. */
const bits: [string, number][] = [
  ['k1', 1],
  ['k2', 2],
  ['p3', 3],
  ['yo, k2tog', 2],
  ['ssk, yo', 2],
  ['yo, sk2p, yo', 3],
  ['k1, yo, s2kp, yo', 4],
]
const balanced = fc.array(fc.constantFrom(...bits), { minLength: 1, maxLength: 5 }).map((chosen) => ({
  row: chosen.map(([text]) => text).join(', '),
  width: chosen.reduce((sum, [, width]) => sum + width, 0),
}))

describe('any lace of balanced bits', () => {
  it('is proved on its own width and its ends, and works out as the proof says', () => {
    fc.assert(
      fc.property(
        balanced,
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        ({ row, width }, ends, n) => {
          const tail = ends === 0 ? 'to end' : `to last ${ends} sts, k${ends}`
          const { sound, proof, pattern } = check(`{ multiple: ${width}, plus: ${ends} }`, [
            `*${row}; rep from * ${tail}`,
            'purl',
          ])
          expect(sound).toBe(true)
          const done = pattern && work(pattern, n).worked
          expect(done?.rows.map((one) => one.after.length)).toEqual(
            proof?.rows.map((one) => at(one.after, n)),
          )
        },
      ),
      { numRuns: runs },
    )
  })

  it('is refused on a cast-on one stitch too wide, for every number of repeats', () => {
    fc.assert(
      fc.property(
        balanced.filter(({ width }) => width > 1),
        fc.integer({ min: 1, max: 9 }),
        ({ row, width }, n) => {
          expect(check(String(width * n + 1), [`*${row}; rep from * to end`, 'purl']).sound).toBe(false)
        },
      ),
      { numRuns: runs },
    )
  })

  it('has its width as a divisor of every cast-on that the rule allows', () => {
    fc.assert(
      fc.property(balanced, balanced, (a, b) => {
        const rule = check('1', [`*${a.row}; rep from * to end`, `*${b.row}; rep from * to end`]).proof
          ?.derived
        if (!rule || 'fixed' in rule) throw new Error('no rule')
        expect(rule.multiple % a.width).toBe(0)
        expect(rule.multiple % b.width).toBe(0)
        expect((a.width * b.width) % rule.multiple).toBe(0)
      }),
      { numRuns: runs },
    )
  })
})
