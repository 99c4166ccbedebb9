import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  exerciseKinds,
  exerciseOf,
  isExercise,
  judge,
  rightAnswers,
  rightWords,
  tableOf,
} from '../../engine/practice/index.ts'
import { library, libraryPattern } from '../fabric/support.ts'
import { anyFile, anyNumber, forAny, given, runs, tableFor, tableFrom } from './support.ts'

describe('every pattern of the library', () => {
  it.each(library)('%s gives every kind of exercise', (file) => {
    const table = tableFor(file)
    const missing = exerciseKinds.filter((kind) => !isExercise(exerciseOf(table, kind, 407)))
    expect(missing).toEqual([])
  })

  it('one number gives one exercise, to everyone', () => {
    fc.assert(
      fc.property(anyFile, anyNumber, fc.constantFrom(...exerciseKinds), (file, number, kind) => {
        const other = tableOf(JSON.parse(JSON.stringify(libraryPattern(file))))
        if (!other) throw new Error(`${file} cannot be practised`)
        expect(given(other, kind, number)).toEqual(given(tableFor(file), kind, number))
      }),
      { numRuns: runs },
    )
  })

  it('numbers give many exercises, not one', () => {
    for (const kind of exerciseKinds) {
      const seen = new Set(
        Array.from({ length: 40 }, (_, number) =>
          JSON.stringify({ ...given(tableFor('arrowhead.yaml'), kind, number), number: 0 }),
        ),
      )
      expect(seen.size, kind).toBeGreaterThan(5)
    }
  })
})

describe.each(exerciseKinds)('%s', (kind) => {
  it('has one right choice, choices that differ, and a reply to each', () => {
    forAny(kind, ({ parts }) => {
      expect(parts.length).toBeGreaterThan(0)
      expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length)
      for (const part of parts) {
        if (part.form !== 'choose') continue
        expect(part.choices.length).toBeGreaterThan(1)
        expect(part.choices.filter(({ right }) => right)).toHaveLength(1)
        expect(new Set(part.choices.map(({ id }) => id)).size).toBe(part.choices.length)
        expect(new Set(part.choices.map(({ words }) => words)).size).toBe(part.choices.length)
        for (const { reply } of part.choices) expect(reply.trim().length).toBeGreaterThan(8)
      }
    })
  })

  it('takes the right answers for right, and says why', () => {
    forAny(kind, (exercise, table) => {
      for (const reply of judge(table, exercise, rightAnswers(exercise))) {
        expect(reply.right).toBe(true)
        expect(reply.words).not.toBe('')
      }
      for (const part of exercise.parts) expect(rightWords(part)).not.toBe('')
      expect(exercise.because.join(' ').length).toBeGreaterThan(5)
      expect(exercise.ask.join(' ')).not.toMatch(/undefined|null|NaN|\[object/)
      expect(exercise.because.join(' ')).not.toMatch(/undefined|null|NaN|\[object/)
    })
  })

  it('takes no wrong choice for right, and nothing for an answer', () => {
    forAny(kind, (exercise, table) => {
      for (const { right } of judge(table, exercise, {})) expect(right).toBe(null)
      for (const part of exercise.parts) {
        if (part.form !== 'choose') continue
        for (const choice of part.choices.filter(({ right }) => !right)) {
          const reply = judge(table, exercise, { [part.id]: choice.id }).find((one) => one.part === part.id)
          expect(reply).toEqual({ part: part.id, right: false, words: choice.reply })
        }
      }
    })
  })
})

describe('a pattern that cannot ask', () => {
  it('says so: in plain knitting there is no order to find, and nothing to be seen', () => {
    const table = tableFrom('{ multiple: 2, plus: 0 }', ['knit', 'purl'])
    for (const kind of ['row-in-order', 'comes-next', 'fill-the-row'] as const) {
      const one = exerciseOf(table, kind, 1)
      expect(isExercise(one), kind).toBe(false)
      expect(!isExercise(one) && one.why).toMatch(/\w+ .*\.$/)
    }
  })

  it('a repeat of two yarn-over pairs still has an order', () => {
    const table = tableFrom('{ multiple: 2, plus: 2 }', ['k1, *yo, k2tog; rep from * to last st, k1', 'purl'])
    expect(given(table, 'row-in-order', 3).parts).toHaveLength(1)
  })
})
