import { describe, expect, it } from 'vitest'
import { consequenceOf, fabricText, mendsFor, sectionWords } from '../../engine/mistakes/index.ts'
import type { WorkedPattern } from '../../engine/needles/index.ts'
import type { ChoosePart, Exercise, Table } from '../../engine/practice/index.ts'
import { forAny, given, tableFor } from './support.ts'

const part = ({ parts }: Exercise, id: string): ChoosePart => {
  const found = parts.find((one) => one.id === id)
  if (found?.form !== 'choose') throw new Error(`no ${id} is asked`)
  return found
}

const rightOf = (exercise: Exercise, id: string): string =>
  part(exercise, id).choices.find(({ right }) => right)?.words ?? ''

const pieces = ({ shown, after }: Exercise): WorkedPattern[] =>
  [...shown.flatMap((one) => (one.form === 'picture' ? [one.picture] : [])), ...after].flatMap((one) =>
    one.form === 'fabric' ? [one.piece] : [],
  )

const stretches = ({ shown }: Exercise) =>
  shown.flatMap((one) => (one.form === 'stretches' ? one.stretches : []))

/** The loops of a row from the right, each in words of its own, cut at the counts that the exercise tells. */
function cut(worked: WorkedPattern, index: number, counts: readonly number[]): string[] {
  const row = worked.rows[index]
  const line = (fabricText({ ...worked, rows: worked.rows.slice(0, index + 1) })[index] ?? '').split(', ')
  const fromRight = worked.pattern.worked === 'round' || row?.side === 'RS' ? line : line.toReversed()
  let at = 0
  return counts.map((count) => {
    at += count
    return fromRight.slice(at - count, at).join(', ')
  })
}

const onNeedle = (worked: WorkedPattern, index: number): number => worked.rows[index]?.after.length ?? -1

describe('which one is wrong', () => {
  it('the repeat that is said differs from the right one, and no other does', () => {
    forAny('wrong-repeat', (exercise) => {
      const all = stretches(exercise)
      if (all.some(({ name }) => name.startsWith('Piece'))) return
      const [wrong, right] = pieces(exercise)
      const { row } = exercise.mistake ?? { row: -1 }
      if (!wrong || !right) throw new Error('two pieces are drawn')
      const is = cut(
        wrong,
        row,
        all.map(({ count }) => count),
      )
      const meant = cut(
        right,
        row,
        all.map((one) => one.meant),
      )
      const differ = all.filter((_, i) => is[i] !== meant[i]).map(({ name }) => name)
      // A loop that slid off leaves no loop to compare: then the counts differ.
      expect(differ).toEqual([rightOf(exercise, 'where')])
      expect(all.reduce((sum, { count }) => sum + count, 0)).toBe(onNeedle(wrong, row))
      expect(all.reduce((sum, one) => sum + one.meant, 0)).toBe(onNeedle(right, row))
    })
  })

  it('of three pieces two are the same and the third is not', () => {
    for (const file of ['slipway-edging.yaml', 'dillmont-lace-397.yaml', 'jib-shawl.yaml'])
      for (let number = 0; number < 25; number++) {
        const exercise = given(tableFor(file), 'wrong-repeat', number)
        const texts = pieces(exercise).map((piece) => fabricText(piece).join('\n'))
        expect(texts).toHaveLength(3)
        const [odd, ...more] = texts.filter((text) => texts.filter((other) => other === text).length === 1)
        expect(more).toEqual([])
        expect(rightOf(exercise, 'where')).toBe(['Piece A', 'Piece B', 'Piece C'][texts.indexOf(odd ?? '')])
        const readings = stretches(exercise).map(({ reading }) => reading)
        expect(new Set(readings).size).toBe(2)
      }
  })

  it('what was done is the mistake that was made, and the counts said are those on the needle', () => {
    forAny('wrong-repeat', (exercise, { book }) => {
      const { mistake } = exercise
      const follows = mistake && consequenceOf(book.plan, mistake)
      if (!follows) throw new Error('a mistake is made')
      expect(rightOf(exercise, 'what').toLowerCase()).toBe(`${follows.name}.`)
      expect(exercise.because.join(' ')).toContain(String(follows.total.now))
      for (const { section, meant, now } of follows.counts) {
        const said = stretches(exercise).find(
          ({ name }) => name.toLowerCase() === sectionWords(book.plan, section),
        )
        if (said) expect(said).toMatchObject({ meant, count: now })
      }
    })
  })
})

describe('which mend', () => {
  const rightCount = ({ book, worked }: Table, row: number): number =>
    row < 0 ? worked.castOn : (book.plan.rows[row]?.makes ?? []).reduce((sum, count) => sum + count, 0)

  it('the right one gives the right fabric with the least work', () => {
    forAny('mend-it', (exercise, table) => {
      const { mistake } = exercise
      if (!mistake) throw new Error('a mistake is made')
      const mends = mendsFor(table.book.plan, mistake).filter(({ later }) => later === 1)
      const exact = mends.filter(({ exact: isExact }) => isExact)
      const least = Math.min(...exact.map(({ stitches }) => stitches))
      const said = rightOf(exercise, 'mend').toLowerCase()
      expect(exact.some(({ way, stitches }) => stitches === least && said.startsWith(way))).toBe(true)
      const reply = part(exercise, 'mend').choices.find(({ right }) => right)?.reply
      // Ripped back, the work is at the row before the mistake's.
      const row = said.startsWith('go back') ? mistake.row - 1 : mistake.row + 1
      expect(reply).toContain(`${rightCount(table, row)} stitch`)
    })
  })

  it('a mend of the count alone is said to be cosmetic, and counts right', () => {
    let cosmetic = 0
    forAny(
      'mend-it',
      (exercise, table) => {
        const { mistake } = exercise
        if (!mistake) throw new Error('a mistake is made')
        for (const { words, right, reply } of part(exercise, 'mend').choices) {
          const mend = mendsFor(table.book.plan, mistake).find(
            ({ way, later }) => later === 1 && words.toLowerCase().startsWith(way),
          )
          if (!mend?.cosmetic) continue
          cosmetic++
          expect(right).toBe(false)
          expect(reply).toContain('cosmetic')
          expect(reply).toContain(`${rightCount(table, mistake.row + 1)} stitch`)
          // The choice must not give itself away.
          expect(words).not.toMatch(/fabric keeps/)
        }
      },
      40,
    )
    expect(cosmetic).toBeGreaterThan(5)
  })
})
