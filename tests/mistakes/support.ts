import { readFileSync } from 'node:fs'
import { readPattern } from '../../engine/intake/index.ts'
import { type Casebook, casebookOf, type Trace, tracesIn } from '../../engine/mistakes/index.ts'
import { type WorkedPattern, work } from '../../engine/needles/index.ts'
import { fileOf } from '../support.ts'

const folder = new URL('../../content/patterns/', import.meta.url)

/** A pattern file's text worked over so many repeats. */
export function workedText(name: string, text: string, repeats: number): WorkedPattern {
  const { pattern, issues } = readPattern({ name, text })
  const worked = pattern && work(pattern, repeats).worked
  if (!worked) throw new Error(`${name} is not worked: ${JSON.stringify(issues)}`)
  return worked
}

export const fromLibrary = (slug: string, repeats = 3): WorkedPattern =>
  workedText(slug, readFileSync(new URL(`${slug}.yaml`, folder), 'utf8'), repeats)

export const fromRows = (castOn: string, rows: readonly string[], repeats = 3, more = ''): WorkedPattern =>
  workedText('test', fileOf(castOn, rows, more), repeats)

export const bookOf = (slug: string, repeats = 3): Casebook => casebookOf(fromLibrary(slug, repeats))

export const allTraces = (book: Casebook): Trace[] =>
  book.plan.rows.flatMap((row) => [...tracesIn(book, row.index)])

/** The right counts of a row with some sections changed. */
export function changedCounts(book: Casebook, row: number, by: Readonly<Record<number, number>>): number[] {
  return (book.plan.rows[row]?.makes ?? []).map((count, section) => count + (by[section] ?? 0))
}
