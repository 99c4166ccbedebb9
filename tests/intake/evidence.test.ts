import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Asked, mostRepeatsAsked, readEvidence, readRepeats } from '../../engine/intake/index.ts'

const asked: Asked = {
  rows: 4,
  stepsIn: (row) => (row === 0 ? 19 : 13),
  sections: 3,
  looks: ['no hole', 'leans the other way'],
  meant: (_, step) => (step === null ? [1, 6, 6] : [1, 6, 5]),
}
const counted = { row: '2', step: 'done', way: 'sections', 'count-0': '1', 'count-1': '5', 'count-2': '6' }

describe('what a reader tells of her knitting', () => {
  it('is taken as she wrote it', () => {
    expect(readEvidence(counted, asked)).toEqual({ evidence: { row: 2, counts: [1, 5, 6] }, unclear: [] })
    expect(readEvidence({ row: '0', step: '7', way: 'total', total: ' 18 ' }, asked).evidence).toEqual({
      row: 0,
      step: 7,
      total: 18,
    })
  })

  it('leaves open what she has not counted', () => {
    expect(readEvidence({ ...counted, 'count-2': '' }, asked).evidence?.counts).toEqual([1, 5, null])
  })

  it.each(['6 sts', '６', '+6', ' 6 stitches', '6 st.'])('understands %s', (text) => {
    expect(readEvidence({ ...counted, 'count-1': text }, asked).evidence?.counts).toEqual([1, 6, 6])
  })

  it.each([
    ['six', /digits/],
    ['-1', /less than 0/],
    ['5.5', /Half a stitch/],
    ['99999999999999999999', /up to/],
    ['<b>', /digits/],
  ])('says kindly what to do about %s, beside its field', (text, words) => {
    const { evidence, unclear } = readEvidence({ ...counted, 'count-1': text }, asked)
    expect(evidence).toBeNull()
    expect(unclear.map(({ field }) => field)).toEqual(['count-1'])
    expect(unclear[0]?.words).toMatch(words)
  })

  it('tells of every odd count at once', () => {
    const { unclear } = readEvidence({ ...counted, 'count-0': 'a', 'count-2': 'b' }, asked)
    expect(unclear.map(({ field }) => field)).toEqual(['count-0', 'count-2'])
  })

  it('takes the meant counts for told where only the look is wrong', () => {
    expect(
      readEvidence({ row: '1', step: '', way: 'looks', look: 'no hole', section: '1' }, asked).evidence,
    ).toEqual({
      row: 1,
      counts: [1, 6, 6],
      looks: ['no hole'],
      section: 1,
    })
    expect(
      readEvidence({ row: '1', way: 'looks', look: 'no hole', section: '' }, asked).evidence?.section,
    ).toBeNull()
  })

  it.each([
    ['row', { ...counted, row: '4' }],
    ['row', { ...counted, row: '1e0' }],
    ['step', { ...counted, step: '14' }],
    ['way', { ...counted, way: 'guess' }],
    ['look', { ...counted, way: 'looks', look: 'toString' }],
    ['section', { ...counted, way: 'looks', look: 'no hole', section: '3' }],
    ['total', { ...counted, way: 'total', total: '' }],
    ['count-0', { row: '1', way: 'sections' }],
  ])('asks again for the %s when the form never offered that', (field, form) => {
    const { evidence, unclear } = readEvidence(form, asked)
    expect(evidence).toBeNull()
    expect(unclear[0]?.field).toBe(field)
  })

  it('never throws, and believes nothing that lies outside the form', () => {
    const odd = fc.oneof(
      fc.anything(),
      fc.dictionary(fc.constantFrom(...Object.keys(counted), 'total', 'look'), fc.anything()),
    )
    fc.assert(
      fc.property(odd, (form) => {
        const { evidence, unclear } = readEvidence(form, asked)
        expect(evidence === null).toBe(unclear.length > 0)
        if (evidence) expect(evidence.row).toBeLessThan(asked.rows)
      }),
      { numRuns: 1000 },
    )
    expect(
      readEvidence(JSON.parse('{"__proto__":{"row":"1","way":"total","total":"3"}}'), asked).evidence,
    ).toBeNull()
  })
})

describe('the number of repeats', () => {
  it('is any that can be looked at', () => {
    for (let repeats = 1; repeats <= mostRepeatsAsked; repeats++)
      expect(readRepeats(String(repeats))).toEqual({ repeats })
  })

  it.each(['', '0', 'many', String(mostRepeatsAsked + 1), '-2'])('is asked for again after ‘%s’', (text) => {
    expect(readRepeats(text)).toMatchObject({ field: 'repeats' })
  })
})
