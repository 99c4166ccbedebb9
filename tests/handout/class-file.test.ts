import { globSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  classProblemText,
  parseClassLink,
  parseKeptClass,
  readClass,
  readClassForm,
  writeClass,
} from '../../engine/intake/index.ts'
import { type ClassPlan, emptyClass, papers, prints, sections } from '../../engine/lesson/index.ts'
import { known } from './support.ts'

const read = (text: string) => readClass({ name: 'class.yaml', text }, known)
const places = (text: string): string[] =>
  read(text).problems.map(({ line, column, message }) => `${line}:${column} ${message}`)

describe('a class file', () => {
  it('of the guild is read without a problem', () => {
    const files = globSync('content/classes/*.yaml')
    expect(files.length).toBeGreaterThanOrEqual(2)
    for (const file of files) expect(places(readFileSync(file, 'utf8')), file).toEqual([])
  })

  it('tells every problem with its line and column, and keeps the rest', () => {
    const text = [
      'title: An evening',
      'paper: foolscap',
      'patterns:',
      '  - { pattern: reed-bad, repeats: 3 }',
      '  - { pattern: fan, repeats: 0 }',
      'parts:',
      '  - { minuets: 10, what: casting on }',
      'colour: blue',
    ].join('\n')
    const { plan, problems } = read(text)
    expect(problems.map(({ line, column }) => [line, column])).toEqual([
      [2, 8],
      [4, 16],
      [5, 30],
      [7, 5],
      [7, 7],
      [8, 1],
    ])
    expect(problems.find(({ line, column }) => line === 7 && column === 7)?.hint).toBe(
      'did you mean `minutes`?',
    )
    expect(plan?.title).toBe('An evening')
    expect(plan?.paper).toBe('a4')
    expect(plan?.patterns).toEqual([{ pattern: 'reed-bad', repeats: 3 }])
  })

  it('names a pattern that the library does not have, and what may have been meant', () => {
    const [problem] = read('title: A\npatterns:\n  - { pattern: reed-bad, repeats: 3 }').problems
    expect(problem).toMatchObject({ line: 3, column: 16, hint: 'did you mean `reed-bed`?' })
    expect(problem?.message).toContain('reed-bad')
  })

  it('refuses a draft that is not proved: no counts of it can be printed', () => {
    const drafts = new Map([['fan', { proved: false }]])
    const { problems } = readClass({ name: 'c', text: 'title: A\npatterns: [fan]' }, drafts)
    expect(problems.map(({ message }) => message).join()).toContain('not proved')
  })

  it('says what it lacks', () => {
    expect(places('date: tomorrow')).toEqual([
      '1:1 the class has no `title`',
      '1:1 the class has no patterns',
    ])
    expect(places('title: A\npatterns: []')).toEqual(['2:11 the class has no patterns'])
  })

  it.each([
    ['nothing', ''],
    ['a list', '- a\n- b'],
    ['broken YAML', 'title: "A\npatterns: ['],
    ['an alias', 'title: A\nplace: *here'],
    ['a control character', 'title: A\u0007'],
    ['too much', 'x'.repeat(300_000)],
  ])('that is %s is refused with a place, and nothing is thrown', (_, text) => {
    const { plan, problems } = read(text)
    expect(plan).toBeNull()
    expect(problems.length).toBeGreaterThan(0)
    for (const { line, column } of problems) expect(Math.min(line, column)).toBeGreaterThanOrEqual(1)
  })

  it('shows the line with a caret', () => {
    const source = { name: 'class.yaml', text: 'title: A\npaper: foolscap\npatterns: [fan]' }
    expect(classProblemText(source, readClass(source, known).problems)).toBe(
      'class.yaml:2:8: error: `paper` wants a4 or letter\n  paper: foolscap\n         ^^^^^^^^\n',
    )
  })
})

const words = (maxLength: number) =>
  fc.stringMatching(/^[a-zA-Z0-9 ,:'"#*&{}[\]é½-]*$/).map((s) => s.slice(0, maxLength))
const plans: fc.Arbitrary<ClassPlan> = fc.record({
  title: words(60),
  guild: words(60),
  date: words(40),
  place: words(60),
  yarn: words(60),
  needle: fc.option(fc.constantFrom(2, 3.75, 4.5, 10)),
  patterns: fc.array(
    fc.record({ pattern: fc.constantFrom(...known.keys()), repeats: fc.integer({ min: 1, max: 60 }) }),
    { maxLength: 5 },
  ),
  parts: fc.array(
    fc.record({
      minutes: fc.integer({ min: 0, max: 600 }),
      what: words(40),
      all: words(40),
      most: words(40),
      quick: words(40),
    }),
    { maxLength: 5 },
  ),
  bring: fc.array(words(40), { maxLength: 4 }),
  homework: words(200),
  sections: fc.subarray([...sections]),
  terms: fc.constantFrom('us', 'uk'),
  paper: fc.constantFrom(...papers),
  print: fc.constantFrom(...prints),
})

describe('a class that is put away and taken out again is the same', () => {
  it('as a file', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        expect(read(writeClass(plan)).plan).toEqual(plan)
      }),
    )
  })

  it('in the browser', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        expect(parseKeptClass(JSON.stringify({ saved: 1, plan }))?.plan).toEqual(plan)
      }),
    )
  })

  it('in the form', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        expect(readClassForm({ ...plan })).toEqual({ plan, problems: [] })
      }),
    )
  })
})

describe('what is not a class', () => {
  it.each([null, '', '{', '{}', '{"saved":-1,"plan":{}}', '{"saved":1,"plan":{"title":7}}', '[]'])(
    'is not taken out of the browser: %s',
    (stored) => expect(parseKeptClass(stored)).toBeNull(),
  )

  it.each(['', '#', '#../x', '#A', `#${'a'.repeat(200)}`, null])('is not followed as a link: %s', (hash) =>
    expect(parseClassLink(hash)).toBeNull(),
  )

  it('but a name is', () => expect(parseClassLink('#first-lace-evening')).toBe('first-lace-evening'))

  it('is told field by field in the form, and the other fields stay', () => {
    const form = readClassForm({
      ...emptyClass,
      title: 'Kept',
      needle: 400,
      parts: [{ minutes: 1.5, what: 'Mending' }],
    })
    expect(form.plan.title).toBe('Kept')
    expect(form.plan.parts).toMatchObject([{ minutes: 0, what: 'Mending' }])
    expect(form.problems.map((sentence) => sentence.split(':')[0])).toEqual(['Needles', 'Running order'])
  })
})
