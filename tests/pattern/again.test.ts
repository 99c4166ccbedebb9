import { describe, expect, it } from 'vitest'
import { work } from '../../engine/needles/index.ts'
import { type Pattern, workedAgain } from '../../engine/pattern/index.ts'
import { check } from '../support.ts'

function sound(...file: Parameters<typeof check>): Pattern {
  const { pattern, issues, sound } = check(...file)
  if (!pattern || !sound) throw new Error(`not sound: ${JSON.stringify(issues)}`)
  return pattern
}

const reedBed = sound('{ multiple: 6, plus: 1 }', [
  'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
  'purl',
])
/** Grows by a stitch in row 1 and is back after row 2. */
const edging = sound('5', ['k3, yo, k2', 'bind off 1, knit to end'])
const shawl = sound(
  '3',
  ['k2, yo, knit to last 2 sts, yo, k2', 'purl', 'k2, yo, knit to last 2 sts, yo, k2', 'purl'],
  'growing: true\nsetUp:\n  - k1, yo, k1, yo, k1\n  - knit\n',
)
const oddRows = sound('4', ['knit', 'purl', 'knit'])

const sidesOf = ({ rows }: Pattern): string => rows.map(({ side }) => side).join(' ')

describe('a pattern whose rows are worked again', () => {
  it('has its rows so many times, numbered as they were', () => {
    const numbers = workedAgain(reedBed, 3).rows.map(({ number }) => number)
    expect(numbers).toEqual([1, 2, 1, 2, 1, 2])
  })

  it('can be worked over the same cast-on: every time begins with what the last one left', () => {
    for (const pattern of [reedBed, edging]) {
      const { worked } = work(workedAgain(pattern, 4), 2)
      const [once] = [work(pattern, 2).worked]
      expect(worked?.rows).toHaveLength(4 * pattern.rows.length)
      expect(worked?.rows.at(-1)?.after).toHaveLength(worked?.castOn ?? 0)
      const steps = worked?.rows.flatMap((row) => row.steps).length
      expect(steps).toBe(4 * (once?.rows.flatMap((row) => row.steps).length ?? 0))
    }
  })

  it('has its set-up rows once', () => {
    const again = workedAgain(shawl, 3)
    expect(again.setUp).toEqual(shawl.setUp)
    const { worked } = work(again, 1)
    // From 3 stitches to 5 by the set-up rows, and four more in each time of the four rows.
    expect(worked?.rows.at(-1)?.after).toHaveLength(5 + 3 * 4)
  })

  it('begins on the other side after an odd number of rows, but not in the round', () => {
    expect(sidesOf(workedAgain(oddRows, 3))).toBe('RS WS RS WS RS WS RS WS RS')
    expect(sidesOf(workedAgain({ ...oddRows, worked: 'round' }, 2))).toBe('RS WS RS RS WS RS')
    expect(sidesOf(workedAgain(reedBed, 2))).toBe('RS WS RS WS')
  })

  it('is the pattern itself when worked once', () => {
    expect(workedAgain(reedBed, 1)).toEqual(reedBed)
  })
})
