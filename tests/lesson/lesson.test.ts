import { describe, expect, it } from 'vitest'
import {
  balanceAt,
  castOnNumbers,
  lessonOf,
  lessonStep,
  lookCheckAt,
  rowBoxes,
  swatchCard,
} from '../../engine/lesson/index.ts'
import { check, worked } from '../support.ts'

const eyelets = ['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl']

describe('the status', () => {
  it('says row, stitch and count', () => {
    const lesson = lessonOf(worked('{ multiple: 6, plus: 1 }', eyelets))
    expect(lessonStep(lesson, 0, 1)?.status).toBe('Row 1, stitch 2: yarn over. 14 stitches')
    expect(lessonStep(lesson, 1, 0)?.status).toBe('Row 2, stitch 1: purl. 13 stitches')
    expect(lessonStep(lesson, 0, 99)).toBeNull()
  })

  it('calls rows rounds in the round, and set-up rows by their own number', () => {
    const round = lessonOf(
      worked(
        '{ multiple: 2, plus: 0 }',
        ['*yo, k2tog; rep from * to end', 'knit'],
        2,
        'worked: round\nsetUp:\n  - knit\n',
      ),
    )
    expect(lessonStep(round, 0, 0)?.status).toBe('Set-up round 1, stitch 1: knit. 4 stitches')
    expect(lessonStep(round, 1, 0)?.status).toBe('Round 1, stitch 1: yarn over. 5 stitches')
  })
})

describe('the balance since the row began', () => {
  const words = (castOn: string, row: string, more = '') => {
    const [first] = worked(castOn, [row, 'purl'], 1, more).rows
    return first?.steps.map((_, i) => balanceAt(first, i + 1).words) ?? []
  }

  it('a yarn over is one more, which a decrease pays back', () => {
    expect(words('2', 'yo, k2tog')).toEqual([
      '+1: one decrease will pay it back.',
      'Even: as many as the row began with.',
    ])
  })

  it('a decrease is one fewer, which a yarn over makes up', () => {
    expect(words('2', 'k2tog, yo')[0]).toBe('−1: one yarn over will make it up.')
    expect(words('3', 'sk2p, yo, yo')[0]).toBe('−2: two yarn overs will make them up.')
  })

  it('a row that is meant to end with another count says so', () => {
    expect(words('3', 'k1, yo, k2', 'growing: true\n')).toEqual([
      'Even for now; this row is meant to end with 4.',
      '+1, as it is meant: this row ends with 4.',
      '+1, as it is meant: this row ends with 4.',
      '+1, as it is meant: this row ends with 4.',
    ])
  })
})

describe('what to look at', () => {
  it('a hole over a hole sits straight above it, and beside it where the row was moved', () => {
    const mesh = worked(
      '6',
      ['k2, yo, k2tog, k2', 'purl', 'k2, yo, k2tog, k2', 'purl', 'k1, yo, k2tog, k3', 'purl'],
      1,
    )
    expect(lookCheckAt(mesh, 0, 2)).toBeNull()
    expect(lookCheckAt(mesh, 2, 2)).toContain('half a stitch to the right of the nearest hole of row 1')
    expect(lookCheckAt(mesh, 4, 1)).toContain('to the right of the nearest hole of row 3')
  })

  it('tells which loops a decrease gathers and which of them lies in front', () => {
    const rows = worked('5', ['k1, yo, k2tog, k2', 'p5', 'k1, k2tog, yo, k2', 'p5'], 1)
    expect(lookCheckAt(rows, 0, 2)).toBe(
      'In the order of the needle: first a cast-on loop, second a cast-on loop. On the right side the second of them lies in front.',
    )
    const wrongSide = worked('4', ['k4', 'p2tog, p2tog'], 1, 'growing: true\n')
    expect(lookCheckAt(wrongSide, 1, 0)).toContain('On the right side the first of them lies in front.')
  })

  it('points out the yarn over that a plain stitch goes into', () => {
    expect(lookCheckAt(worked('{ multiple: 6, plus: 1 }', eyelets), 1, 1)).toBe(
      'This stitch goes into the yarn over of row 1.',
    )
    expect(lookCheckAt(worked('{ multiple: 6, plus: 1 }', eyelets), 1, 0)).toBeNull()
  })
})

describe('a row in three boxes', () => {
  it('is edge, repeat and end, with what one repeat leaves', () => {
    const { pattern } = check('{ multiple: 9, plus: 4 }', [
      'purl',
      'k3, *yo, k2, ssk, k2tog, k2, yo, k1; rep from * to last st, k1',
      'purl',
      'purl',
    ])
    const row = pattern?.rows[1]
    if (!pattern || !row) throw new Error('not read')
    expect(rowBoxes(row, pattern)).toMatchObject({
      edge: 'k3',
      repeat: 'yo, k2, ssk, k2tog, k2, yo, k1',
      end: 'k1',
      repeatTakes: 9,
      repeatMakes: 9,
    })
  })

  it("has the file's edge stitches in the outer boxes", () => {
    const { pattern } = check('{ multiple: 6, plus: 1 }', eyelets, 'edges: { before: k3, after: k2 }\n')
    const [lace, plain] = pattern?.rows ?? []
    if (!pattern || !lace || !plain) throw new Error('not read')
    expect(rowBoxes(lace, pattern)).toMatchObject({ edge: 'k3, k1', end: 'k2' })
    expect(rowBoxes(plain, pattern)).toMatchObject({ edge: 'k2', repeat: 'purl', end: 'k3' })
  })
})

describe('cast-on numbers', () => {
  it('n repeats of a multiple m plus p need m·n + p stitches, and the edges (common practice, no source)', () => {
    const { pattern } = check('{ multiple: 6, plus: 1 }', eyelets, 'edges: { before: k3, after: k3 }\n')
    expect(pattern && castOnNumbers(pattern).map((one) => one.stitches)).toEqual([19, 25, 31, 37, 43])
  })
})

describe('the swatch card', () => {
  it('has every row once with its count, over as many cards as it needs', () => {
    const rows = Array.from({ length: 40 }, (_, i) => eyelets[i % 2] as string)
    const { pattern, proof } = check('{ multiple: 6, plus: 1 }', rows)
    if (!pattern || !proof) throw new Error('not read')
    const card = swatchCard(pattern, proof)
    expect(card.castOn).toBe(13)
    expect(card.sheets.length).toBeGreaterThan(1)
    expect(card.sheets.flatMap((sheet) => sheet.rows.map((row) => row.label))).toEqual(
      rows.map((_, i) => String(i + 1)),
    )
    expect(card.sheets.flatMap((sheet) => sheet.rows).every((row) => row.count === 13)).toBe(true)
    expect(card.sheets.every((sheet) => sheet.rows.length > 0)).toBe(true)
  })
})
