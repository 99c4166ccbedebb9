import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lineAndColumn } from '../../engine/base/index.ts'
import { checkPattern, readPattern } from '../../engine/intake/index.ts'
import { printRow } from '../../engine/notation/index.ts'

const rowsOf = (text: string) =>
  readPattern({ name: 'test', text }).pattern?.rows.map((row) => printRow(row.items))
const head = 'title: Test\ncastOn: { multiple: 2, plus: 2 }\n'
const wanted = ['k1, *yo, k2tog; rep from * to last st, k1', 'purl', '*k2; rep from * to end', 'purl']

describe('rows in a file', () => {
  it.each([
    [
      'a list',
      'rows:\n  - k1, *yo, k2tog; rep from * to last st, k1\n  - purl\n  - *k2; rep from * to end\n  - purl\n',
    ],
    [
      'a list with headings',
      'rows:\n  - Row 1 (RS): k1, *yo, k2tog; rep from * to last st, k1\n  - rows 2 and 4: purl\n  - Row 3: *k2; rep from * to end\n',
    ],
    [
      'a map by number',
      'rows:\n  1: k1, *yo, k2tog; rep from * to last st, k1\n  rows 2 and 4: purl\n  3: "*k2; rep from * to end"\n',
    ],
    [
      'a block of text',
      'rows: |\n  Row 1: k1, *yo, k2tog; rep from * to last st, k1\n  Row 2: purl\n  Row 3: *k2; rep from * to end\n  Row 4: purl\n',
    ],
    [
      'in quotes',
      'rows:\n  - "k1, *yo, k2tog; rep from * to last st, k1"\n  - \'purl\'\n  - "*k2; rep from * to end"\n  - as row 2\n',
    ],
    [
      'broken over two lines',
      'rows:\n  - k1, *yo,\n    k2tog; rep from * to last st, k1\n  - purl\n  - (k2) to end\n  - purl\n',
    ],
    [
      'beginning with a bracket',
      'rows:\n  - k1, (yo, k2tog) to last st, k1\n  - purl\n  - [k2] to end\n  - purl\n',
    ],
  ])('%s', (_, rows) => expect(rowsOf(head + rows)).toEqual(wanted))

  it('may be a range of rows', () => {
    expect(rowsOf(`${head}rows:\n  1-3: knit\n  4: purl\n`)).toEqual(['knit', 'knit', 'knit', 'purl'])
  })

  it('that are left out or given twice are told', () => {
    const codes = (rows: string) =>
      readPattern({ name: 'test', text: head + rows }).issues.map((issue) => issue.code)
    expect(codes('rows:\n  1: knit\n  3: purl\n')).toContain('row-left-out')
    expect(codes('rows:\n  1: knit\n  rows 1 and 2: purl\n')).toContain('row-given-twice')
    expect(codes('rows:\n  - knit\n  - as row 7\n')).toContain('row-as-unknown')
  })
})

describe('the place of a problem', () => {
  const place = (text: string) => {
    const { issues } = checkPattern({ name: 'test', text })
    const at = issues[0]?.span
    return at ? { ...lineAndColumn(text, at.start), word: text.slice(at.start, at.end) } : null
  }

  it.each([
    ['plain', 'title: T\ncastOn: 4\nrows:\n  - k4\n  - k1, ss k, k1\n', 5, 9],
    ['double quotes', 'title: T\ncastOn: 4\nrows:\n  - k4\n  - "k1, ss k, k1"\n', 5, 10],
    ['single quotes', "title: T\ncastOn: 4\nrows:\n  - k4\n  - 'k1, ss k, k1'\n", 5, 10],
    ['escapes', 'title: T\ncastOn: 4\nrows:\n  - k4\n  - "k1,\\u0020ss k, k1"\n', 5, 15],
    ['a block', 'title: T\ncastOn: 4\nrows: |\n  k4\n  Row 2: k1, ss k, k1\n', 5, 14],
    ['a broken line', 'title: T\ncastOn: 4\nrows:\n  - k4\n  - k1,\n    ss k, k1\n', 6, 5],
    ['windows line ends', 'title: T\r\ncastOn: 4\r\nrows:\r\n  - k4\r\n  - k1, ss k, k1\r\n', 5, 9],
    [
      'letters beyond the first plane before it',
      'title: T\ncastOn: 4\nrows:\n  - k4\n  - k1, 🧶, ss k\n',
      5,
      9,
    ],
  ])('is exact in %s', (name, text, line, column) => {
    const found = place(text)
    expect(found).toMatchObject({ line, column })
    if (!name.startsWith('letters')) expect(found?.word).toBe('ss k')
  })

  it('is exact for a row wherever it stands', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('k1', 'yo', 'k2tog', 'p3'), { minLength: 0, maxLength: 8 }),
        fc.constantFrom('"', "'", ''),
        (before, quote) => {
          const row = [...before, 'wobble'].join(', ')
          const text = `title: T\ncastOn: 4\nrows:\n  - ${quote}${row}${quote}\n`
          const issue = readPattern({ name: 'test', text }).issues.find((one) => one.code === 'unknown-word')
          expect(text.slice(issue?.span?.start, issue?.span?.end)).toBe('wobble')
        },
      ),
      { numRuns: 100 },
    )
  })
})

describe('the head of a file', () => {
  it('reads a cast-on without plus as a plain multiple', () => {
    const { pattern } = readPattern({
      name: 'test',
      text: 'title: T\ncastOn: { multiple: 2 }\nrows:\n  - knit\n',
    })
    expect(pattern?.castOn).toEqual({ multiple: 2, plus: 0 })
  })

  it('tells all problems of the head and still looks at the rows', () => {
    const { issues } = readPattern({
      name: 'test',
      text: 'title: T\ncastOn: 4\nlevle: Easy\nworked: sideways\nrows:\n  - k2, ss k\n',
    })
    expect(issues.map((issue) => issue.code).sort()).toEqual(['key-unknown', 'unknown-word', 'value-wrong'])
    expect(issues.find((issue) => issue.code === 'key-unknown')?.values.suggestion).toBe('level')
  })

  it('numbers rows and sides: the first side, set-up rows before it, all on the right side in the round', () => {
    const sides = (more: string) => {
      const { pattern } = readPattern({
        name: 'test',
        text: `title: T\ncastOn: 4\n${more}setUp:\n  - knit\n  - purl\nrows:\n  - knit\n  - purl\n`,
      })
      return [...(pattern?.setUp ?? []), ...(pattern?.rows ?? [])].map((row) => `${row.number}${row.side}`)
    }
    expect(sides('')).toEqual(['-1RS', '0WS', '1RS', '2WS'])
    expect(sides('firstSide: WS\n')).toEqual(['-1WS', '0RS', '1WS', '2RS'])
    expect(sides('worked: round\n')).toEqual(['-1RS', '0RS', '1RS', '2RS'])
  })

  it('never throws, whatever the file holds', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 200 }),
          fc.json().map((j) => `title: T\ncastOn: ${j}\nrows: ${j}\n`),
        ),
        (text) => {
          const { issues, pattern } = checkPattern({ name: 'test', text })
          expect(issues.length > 0 || pattern !== null).toBe(true)
        },
      ),
      { numRuns: Number(process.env.OPENWORK_RUNS ?? 300) },
    )
  })
})
