import { describe, expect, it } from 'vitest'
import { type CallOutKind, callOutsAt, lessonOf, lessonStep } from '../../engine/lesson/index.ts'
import { worked } from '../support.ts'

const lesson = (castOn: string, rows: string[], more = '') => lessonOf(worked(castOn, rows, 2, more))

/** Every call-out of one row with the stitch that it stands at. */
function called(
  castOn: string,
  rows: string[],
  row: number,
  more = '',
): [number, CallOutKind, number | null][] {
  const one = lesson(castOn, rows, more)
  const steps = one.worked.rows[row]?.steps ?? []
  return steps.flatMap((step, i) =>
    callOutsAt(one.worked, one.chart, row, i, 9).map((c): [number, CallOutKind, number | null] => [
      step.step,
      c.kind,
      c.rowEnds,
    ]),
  )
}

const eyelets = ['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl']
const horseshoe = [
  'k1, *yo, k1, sk2p, k1, yo, k1; rep from * to end',
  'purl',
  'k1, *k1, yo, sk2p, yo, k2; rep from * to end',
  'purl',
]

describe('what can go wrong at a stitch', () => {
  it('a missed yarn over leaves the row one short', () => {
    const found = called('{ multiple: 6, plus: 1 }', eyelets, 0).filter(
      ([, kind]) => kind === 'yarn over missed',
    )
    expect(found).toEqual([
      [2, 'yarn over missed', 12],
      [6, 'yarn over missed', 12],
      [8, 'yarn over missed', 12],
      [12, 'yarn over missed', 12],
    ])
  })

  it('a missed double yarn over leaves it two short', () => {
    const found = called(
      '{ multiple: 4, plus: 2 }',
      ['k1, *k2tog, yo twice, ssk; rep from * to last st, k1', 'p1, *p2, k1, p1; rep from * to last st, p1'],
      0,
    )
    expect(found.find(([, kind]) => kind === 'yarn over missed')?.[2]).toBe(8)
  })

  it('a slipped stitch not passed over, or a single for a double, leaves it one over', () => {
    const found = called('{ multiple: 6, plus: 1 }', horseshoe, 0).filter(([step]) => step === 4)
    expect(found).toContainEqual([4, 'pass over forgotten', 14])
    expect(found).toContainEqual([4, 'single for double', 14])
  })

  it('two slipped stitches not passed over leave it two over', () => {
    const found = called(
      '{ multiple: 6, plus: 1 }',
      ['k1, *yo, k1, s2kp, k1, yo, k1; rep from * to end', 'purl'],
      0,
    )
    expect(found).toContainEqual([4, 'pass over forgotten', 15])
  })

  it('the yarn over can be taken for the slipped stitch only where it lies beside it', () => {
    expect(called('{ multiple: 6, plus: 1 }', horseshoe, 2)).toContainEqual([
      4,
      'yarn over passed instead',
      13,
    ])
    expect(called('{ multiple: 6, plus: 1 }', horseshoe, 0).map(([, kind]) => kind)).not.toContain(
      'yarn over passed instead',
    )
    expect(called('{ multiple: 6, plus: 1 }', eyelets, 0).map(([, kind]) => kind)).not.toContain(
      'yarn over passed instead',
    )
  })

  it('a yarn over of the row before can be twisted shut, and the count hides it', () => {
    const found = called('{ multiple: 6, plus: 1 }', eyelets, 1)
    expect(found.map(([step]) => step)).toEqual([2, 6, 8, 12])
    expect(found.every(([, kind, ends]) => kind === 'yarn over twisted' && ends === 13)).toBe(true)
  })

  it('a yarn over twisted on purpose is said to be so', () => {
    const one = lesson('{ multiple: 2, plus: 0 }', [
      '*yo, k2tog; rep from * to end',
      '*p1, p1 tbl; rep from * to end',
    ])
    const words = callOutsAt(one.worked, one.chart, 1, 1).map((c) => c.words)
    expect(words.join()).toContain('on purpose')
  })

  it('edge stitches can be forgotten, also those that the file keeps apart, but not in the round', () => {
    const edges = 'edges: { before: k3, after: k3 }\n'
    expect(called('{ multiple: 6, plus: 1 }', eyelets, 0)[0]?.slice(0, 2)).toEqual([1, 'edge forgotten'])
    expect(
      called(
        '{ multiple: 6, plus: 0 }',
        ['*yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl'],
        0,
        edges,
      )[0]?.slice(0, 2),
    ).toEqual([1, 'edge forgotten'])
    expect(
      called('{ multiple: 6, plus: 1 }', eyelets.slice(0, 1), 0, 'worked: round\n').map(([, kind]) => kind),
    ).not.toContain('edge forgotten')
  })

  it('a run of equal stitches across the line between two repeats is longer than the words show', () => {
    const found = called('{ multiple: 6, plus: 1 }', horseshoe, 2).filter(
      ([, kind]) => kind === 'longer run at the seam',
    )
    expect(found.map(([step]) => step)).toEqual([1, 6])
    const one = lesson('{ multiple: 6, plus: 1 }', horseshoe)
    expect(
      callOutsAt(one.worked, one.chart, 2, 5)
        .map((c) => c.words)
        .join(),
    ).toContain('knit 3 times running: 2 to end this repeat, 1 to begin the next repeat')
    expect(called('{ multiple: 6, plus: 1 }', horseshoe, 0).map(([, kind]) => kind)).not.toContain(
      'longer run at the seam',
    )
  })

  it('a decrease across the line between two repeats moves the marker', () => {
    const leaf = [
      'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
      'purl',
      'k2tog, *yo, k3, yo, sk2p; rep from * to last 5 sts, yo, k3, yo, ssk',
      'purl',
    ]
    const found = called('{ multiple: 6, plus: 1 }', leaf, 2)
    expect(found.some(([, kind]) => kind === 'marker moves')).toBe(true)
    expect(called('{ multiple: 6, plus: 1 }', leaf, 0).map(([, kind]) => kind)).not.toContain('marker moves')
  })

  it('says two things at most at one stitch', () => {
    const one = lesson('{ multiple: 6, plus: 1 }', horseshoe)
    for (const [row, { steps }] of one.worked.rows.entries()) {
      for (const index of steps.keys())
        expect(lessonStep(one, row, index)?.callOuts.length).toBeLessThanOrEqual(2)
    }
  })
})
