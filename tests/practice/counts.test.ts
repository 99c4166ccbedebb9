import { describe, expect, it } from 'vitest'
import { needlesAfter } from '../../engine/needles/index.ts'
import { type Exercise, judge, type Line, readCount } from '../../engine/practice/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { forAny, given, tableFor } from './support.ts'

const linesOf = ({ shown }: Exercise): readonly Line[] =>
  shown.flatMap((one) => (one.form === 'lines' ? one.lines : []))

describe('what comes next', () => {
  it('is the next worked step of the row, and the count is what lies on both needles', () => {
    forAny('comes-next', (exercise, { worked, rows }) => {
      const [which, count] = exercise.parts
      const right = which?.form === 'choose' ? which.choices.find((one) => one.right)?.id : null
      const [full, open] = linesOf(exercise)
      const done = (open?.pieces.length ?? 1) - 1
      expect(full?.pieces[done]?.words).toMatch(right === 'k' || right === 'p' ? /^[kp]1$/ : /./)
      // Somewhere in the rows asked about, the same stitches with the same counts are followed by this one.
      const counts = open?.pieces.slice(0, done).map((piece) => piece.count)
      const all = [...Array(worked.rows.length).keys()].flatMap((row) =>
        (worked.rows[row]?.steps ?? []).flatMap((step, at) => {
          const before = worked.rows[row]?.steps.slice(at - done, at).map((one) => one.total)
          const { left, right: made } = needlesAfter(worked, row, at + 1)
          return at >= done && step.stitch === right && before?.join() === counts?.join()
            ? [left.length + made.length]
            : []
        }),
      )
      expect(rows.length).toBeGreaterThan(0)
      expect(count?.form === 'count' && all.includes(count.right)).toBe(true)
    })
  })

  it('a stitch that would leave another count is told so with that count', () => {
    forAny('comes-next', ({ parts: [which, count] }) => {
      if (which?.form !== 'choose' || count?.form !== 'count') throw new Error('two questions are asked')
      const right = which.choices.find((one) => one.right)
      const before = count.right - stitch(right?.id ?? 'k').makes + stitch(right?.id ?? 'k').takes
      for (const { id, right: isRight, reply } of which.choices) {
        const then = before - stitch(id).takes + stitch(id).makes
        if (!isRight && then !== count.right) expect(reply).toContain(`there would be ${then} `)
        if (!isRight && then === count.right) expect(reply).toContain('the count would come out')
      }
      expect(count.because).toContain(`= ${count.right}.`)
    })
  })

  it('counts are read as people write them, and odd ones told kindly', () => {
    expect(['18', ' 18 sts', '１８'].map(readCount)).toEqual([18, 18, 18])
    expect(['', 'x', '-3', '1.5', '99999', '1e3'].map(readCount)).toEqual([
      null,
      null,
      null,
      null,
      null,
      null,
    ])
    const table = tableFor('reed-bed.yaml')
    const exercise = given(table, 'comes-next', 7)
    const reply = judge(table, exercise, { count: 'twenty' }).find(({ part }) => part === 'count')
    expect(reply).toMatchObject({ right: null })
    expect(reply?.words).toContain('digits')
  })
})

describe('a row filled in', () => {
  it('is the same three times, and the counts under its pieces are those of the worked row', () => {
    forAny('fill-the-row', (exercise) => {
      const lines = linesOf(exercise)
      expect(lines).toHaveLength(3)
      const words = lines.map(({ pieces }) =>
        pieces.map(({ words: told, part }) => {
          const asked = exercise.parts.find(({ id }) => id === part)
          return told ?? (asked?.form === 'choose' ? asked.choices.find(({ right }) => right)?.words : null)
        }),
      )
      expect(words[1]).toEqual(words[0])
      expect(words[2]).toEqual(words[0])
    })
  })

  it('fades: nothing is asked of the first, something of the second, all of the third', () => {
    forAny('fill-the-row', (exercise) => {
      const gaps = linesOf(exercise).map(({ pieces }) => pieces.filter(({ words }) => words === null).length)
      const pieces = linesOf(exercise)[2]?.pieces.length ?? 0
      expect(gaps[0]).toBe(0)
      expect(gaps[1]).toBeGreaterThan(0)
      expect(gaps[1]).toBeLessThan(pieces)
      expect(gaps[2]).toBe(pieces)
    })
  })

  it('every count follows from the one before by what the stitches take and make', () => {
    forAny('fill-the-row', (exercise) => {
      for (const part of exercise.parts) {
        if (part.form !== 'choose') throw new Error('only gaps are asked')
        const right = part.choices.find((one) => one.right)
        const [before = 0, took = 0, made = 0, then = 0] = (
          right?.reply.match(/(\d+) − (\d+) \+ (\d+) = (\d+)/) ?? []
        )
          .slice(1)
          .map(Number)
        expect(before - took + made).toBe(then)
        expect(part.ask).toContain(`${then} stitch`)
        for (const { right: isRight, reply } of part.choices)
          if (!isRight) expect(reply).toMatch(/would leave \d+/)
      }
    })
  })
})
