import { globSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  checkPattern,
  draftOf,
  emptyDraft,
  readPattern,
  writeDraft,
  writePattern,
} from '../../engine/intake/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { arbitraryRow } from '../notation/arbitrary-row.ts'

const files = globSync('content/{patterns,guide/examples}/*.yaml')
const spanless = (pattern: Pattern | null): unknown =>
  JSON.parse(JSON.stringify(pattern, (key, value) => (key === 'span' ? undefined : value)))
const read = (text: string): Pattern | null => readPattern({ name: 'test', text }).pattern

describe('a pattern that is written and read back', () => {
  it('is the same, for every file of the library', () => {
    expect(files.length).toBeGreaterThan(25)
    for (const file of files) {
      const pattern = read(readFileSync(file, 'utf8'))
      if (!pattern) throw new Error(`${file} cannot be read`)
      expect(spanless(read(writePattern(pattern))), file).toEqual(spanless(pattern))
    }
  })

  it('is the same by way of a draft', () => {
    for (const file of files) {
      const { pattern, sound } = checkPattern({ name: file, text: readFileSync(file, 'utf8') })
      if (!pattern || !sound) continue
      const again = read(writeDraft(draftOf(pattern)))
      expect(spanless(again), file).toEqual(spanless({ ...pattern, draft: false }))
    }
  })

  it('is the same whatever its rows are', () => {
    const head = read('title: Test\ncastOn: 9\nrows: [knit]\n')
    if (!head) throw new Error('the head cannot be read')
    fc.assert(
      fc.property(fc.array(arbitraryRow, { minLength: 1, maxLength: 6 }), (rows) => {
        const pattern: Pattern = {
          ...head,
          rows: rows.map((items, i) => ({
            number: i + 1,
            side: i % 2 === 0 ? 'RS' : 'WS',
            items,
            text: printRow(items),
            span: { start: 0, end: 0 },
          })),
        }
        expect(spanless(read(writePattern(pattern)))).toEqual(spanless(pattern))
      }),
    )
  })
})

describe('a draft that is written', () => {
  const words = fc.string({ unit: 'grapheme', maxLength: 60 }).map((text) => text.replace(/\p{C}/gu, ''))

  it('keeps its title and notes, whatever they are', () => {
    fc.assert(
      fc.property(words, words, (title, notes) => {
        fc.pre(title.trim() !== '')
        const draft = { ...emptyDraft, title, rows: ['knit'], about: { ...emptyDraft.about, notes } }
        const again = read(writeDraft(draft))
        expect(again?.title).toBe(title.trim())
        expect(again?.about.notes ?? '').toBe(notes)
      }),
    )
  })

  it('keeps rows that cannot be read yet, and says that it is a draft', () => {
    const rows = ['*yo, k2to; rep from *', '[k1', '- knit # twice', 'k1: yo', '"purl']
    const again = read(writeDraft({ ...emptyDraft, rows }))
    expect(again?.rows.map((row) => row.text)).toEqual(rows)
    expect(again?.draft).toBe(true)
  })

  it('states the cast-on that its rows need where none is stated', () => {
    const text = writeDraft({ ...emptyDraft, rows: ['k1, *yo, k2tog; rep from * to end', 'purl'] })
    expect(text).toContain('castOn: { multiple: 2, plus: 1 }')
    expect(checkPattern({ name: 'test', text }).issues).toEqual([])
  })
})
