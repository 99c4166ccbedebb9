import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Exercise,
  itemsInOrder,
  judge,
  type OrderPart,
  workedInOrder,
} from '../../engine/practice/index.ts'
import { anyFile, anyNumber, given, runs, tableFor, tableFrom } from './support.ts'

const orderIn = ({ parts: [part] }: Exercise): OrderPart => {
  if (part?.form !== 'order') throw new Error('an order is asked')
  return part
}

describe('the row in order', () => {
  it('lies mixed up', () => {
    fc.assert(
      fc.property(anyFile, anyNumber, (file, number) => {
        const part = orderIn(given(tableFor(file), 'row-in-order', number))
        const words = (ids: readonly string[]) =>
          ids.map((id) => part.pieces.find((piece) => piece.id === id)?.words)
        expect(words(part.pieces.map(({ id }) => id))).not.toEqual(words(part.right))
        expect([...part.right].sort()).toEqual(part.pieces.map(({ id }) => id).sort())
      }),
      { numRuns: runs },
    )
  })

  it('any order is right just when the same stitches are worked one after the other, and its count is the worked one', () => {
    fc.assert(
      fc.property(anyFile, anyNumber, fc.infiniteStream(fc.nat()), (file, number, luck) => {
        const table = tableFor(file)
        const exercise = given(table, 'row-in-order', number)
        const part = orderIn(exercise)
        const ids = part.pieces
          .map(({ id }) => ({ id, at: luck.next().value ?? 0 }))
          .sort((a, b) => a.at - b.at)
          .map(({ id }) => id)
        const items = itemsInOrder(table, part, ids)
        const worked = items && workedInOrder(table, part.row, items)
        if (!worked) throw new Error('every order of these pieces can be worked')
        const steps = (one: typeof worked): string =>
          one.rows[part.row]?.steps.map(({ stitch }) => stitch).join() ?? ''
        const [reply] = judge(table, exercise, { order: ids })
        expect(reply?.right).toBe(steps(worked) === steps(table.worked))
        if (reply?.right === false)
          expect(reply.words).toContain(`end with ${worked.rows[part.row]?.after.length} stitch`)
      }),
      { numRuns: runs },
    )
  })

  it('ssk and k2tog in each other’s places keep the count, and lean to their holes instead of away from them', () => {
    const table = tableFrom('{ multiple: 6, plus: 1 }', [
      'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
      'purl',
    ])
    const exercise = given(table, 'row-in-order', 1)
    const part = orderIn(exercise)
    const [first, second] = ['ssk', 'k2tog'].map(
      (words) => part.pieces.find((piece) => piece.words === words)?.id ?? '',
    )
    const swapped = part.right.map((id) => (id === first ? second : id === second ? first : id)) as string[]
    const [reply] = judge(table, exercise, { order: swapped })
    expect(reply?.right).toBe(false)
    expect(reply?.words).toContain('the same count')
    expect(reply?.words).toMatch(/k2tog leans to the right either way: here it would lean .* its hole/)
    expect(reply?.words).toContain('You are right as far as yo.')
  })

  it('the same lace begun later is told apart from lace that is wrong', () => {
    const table = tableFrom('{ multiple: 6, plus: 1 }', [
      'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
      'purl',
    ])
    const exercise = given(table, 'row-in-order', 1)
    const part = orderIn(exercise)
    const turned = [...part.right.slice(2), ...part.right.slice(0, 2)]
    expect(judge(table, exercise, { order: turned })[0]?.words).toContain(
      'the same lace begun 2 pieces later',
    )
  })

  it('two equal pieces may change places', () => {
    const table = tableFrom('{ multiple: 6, plus: 1 }', [
      'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
      'purl',
    ])
    const exercise = given(table, 'row-in-order', 1)
    const part = orderIn(exercise)
    const [a, b] = part.pieces.filter(({ words }) => words === 'yo').map(({ id }) => id)
    const swapped = part.right.map((id) => (id === a ? b : id === b ? a : id)) as string[]
    expect(swapped).not.toEqual(part.right)
    expect(judge(table, exercise, { order: swapped })[0]?.right).toBe(true)
  })

  it('pieces left out or put twice are no order', () => {
    const table = tableFor('reed-bed.yaml')
    const exercise = given(table, 'row-in-order', 1)
    const part = orderIn(exercise)
    for (const order of [[], part.right.slice(1), part.right.map(() => part.right[0] ?? ''), ['x']])
      expect(judge(table, exercise, { order })[0]?.right).toBe(null)
  })
})
