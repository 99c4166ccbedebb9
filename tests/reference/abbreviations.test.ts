/**
 * The trade body's abbreviations (abbreviations.json names the lists in which each was seen): each is understood in a row,
 * and takes and makes what the list says.
 */
import { describe, expect, it } from 'vitest'
import { constant } from '../../engine/base/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { facts, proved } from './support.ts'

interface Meaning {
  readonly abbreviation: string
  readonly written: readonly string[]
  readonly meaning: string
}
interface Counted extends Meaning {
  readonly takes: number
  readonly makes: number
}
const list = facts<{
  stitches: Counted[]
  inSequence: Counted[]
  noLoop: Meaning[]
}>('abbreviations.json')

const eachWritten = <M extends Meaning>(meanings: readonly M[]): (M & { row: string })[] =>
  meanings.flatMap((m) => m.written.map((row) => ({ ...m, row })))

/** The word between two knits, so that a yarn over has its neighbours. */
const between = (row: string, takes: number) =>
  proved({ castOn: takes + 2, rows: [`k1, ${row}, k1`], growing: true })

describe('stitches', () => {
  it.each(eachWritten(list.stitches))(
    '$row ($meaning) takes $takes and makes $makes',
    ({ row, takes, makes }) => {
      const { pattern, proof, problems } = between(row, takes)
      expect(problems).toEqual([])
      expect(proof.rows[0]?.after).toEqual(constant(makes + 2))
      const item = pattern.rows[0]?.items[1]
      if (item?.kind !== 'stitch') throw new Error(`read as ${JSON.stringify(item)}`)
      const { takes: took, makes: made } = stitch(item.stitch)
      expect({ takes: took * item.times, makes: made * item.times }).toEqual({ takes, makes })
    },
  )

  it.each(eachWritten(list.inSequence))('$row ($meaning) is one stitch', ({ row, takes, makes }) => {
    const { pattern, proof, problems } = between(row, takes)
    expect(problems).toEqual([])
    expect(proof.rows[0]?.after).toEqual(constant(makes + 2))
    expect(pattern.rows[0]?.items).toHaveLength(3)
  })

  it.each(eachWritten(list.stitches))(
    '$row is read in capitals and in small letters alike',
    ({ row, takes }) => {
      const read = [row.toLowerCase(), row.toUpperCase()].map(
        (text) => between(text, takes).pattern.rows[0]?.items[1],
      )
      expect(read[0]).toMatchObject({ kind: 'stitch' })
      expect(read[1]).toEqual({ ...read[0], span: expect.anything() })
    },
  )
})

describe('what is no stitch', () => {
  it.each(eachWritten(list.noLoop))('$row ($meaning) leaves the count alone', ({ row }) => {
    const { proof, problems } = between(row, 0)
    expect(problems).toEqual([])
    expect(proof.rows[0]?.after).toEqual(constant(2))
  })
})
