import { globSync, readFileSync } from 'node:fs'
import { checkPattern } from '../../engine/intake/index.ts'
import type { Estimate, Figure, Wishes } from '../../engine/measure/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { fileOf } from '../support.ts'

const folder = new URL('../../content/patterns/', import.meta.url)

const sound = (name: string, text: string): Pattern | null => {
  const checked = checkPattern({ name, text })
  return checked.sound ? checked.pattern : null
}

/** Every proved pattern of the library. */
export const library: readonly Pattern[] = globSync('*.yaml', { cwd: folder })
  .sort()
  .map((file) => sound(file, readFileSync(new URL(file, folder), 'utf8')))
  .filter((pattern) => pattern !== null)

/** The pattern of that title; fails the test where there is none. */
export function titled(title: string): Pattern {
  const pattern = library.find((one) => one.title === title)
  if (!pattern) throw new Error(`there is no proved pattern called ${title}`)
  return pattern
}

export function patternOf(castOn: string, rows: readonly string[], more = ''): Pattern {
  const pattern = sound('test', fileOf(castOn, rows, more))
  if (!pattern) throw new Error(`not sound: ${rows.join(' / ')}`)
  return pattern
}

/** Published facts, copied with the source of each beside it. */
export const published = <Facts>(file: string): Facts =>
  JSON.parse(readFileSync(new URL(`../reference/${file}.json`, import.meta.url), 'utf8')) as Facts

/** Nothing told. */
export const nothing: Wishes = {
  width: null,
  length: null,
  blocked: true,
  repeats: null,
  through: null,
  added: 0,
  swatch: { of: 'lace', before: null, after: null },
  ball: { length: null, grams: null },
  weighed: null,
  measuredYarn: null,
  pace: null,
  needle: null,
}

/** A scarf of double-knitting wool, 22 stitches and 28 rows in 10 cm before blocking, 18 and 24 after. */
export const scarf: Wishes = {
  ...nothing,
  width: 300,
  length: 1600,
  swatch: {
    of: 'lace',
    before: { stitches: 22, rows: 28, over: 100 },
    after: { stitches: 18, rows: 24, over: 100 },
  },
  ball: { length: 120_000, grams: 50 },
  weighed: { grams: 9, stitches: 31, rows: 40 },
  pace: 20,
  needle: 4.5,
}

export const holds = ({ least, most }: Figure, value: number): boolean => least <= value && value <= most

/** The value, when there is one; fails the test otherwise. */
export function known<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error('nothing was told')
  return value
}

/** Every estimate that stands anywhere in a value. */
export function estimatesIn(value: unknown): Estimate[] {
  if (typeof value !== 'object' || value === null) return []
  const own = 'roughness' in value && 'least' in value ? [value as Estimate] : []
  return [...own, ...Object.values(value).flatMap(estimatesIn)]
}
