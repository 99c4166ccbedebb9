import { limits } from '../base/index.ts'
import type { About } from '../pattern/index.ts'
import type { Draft, DraftCastOn } from './draft.ts'

// Checked by hand, as a stored place is: a schema library would weigh more than all the rest of the page's own script.

type Parts = Readonly<Record<string, unknown>>

const partsOf = (value: unknown): Parts | null =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Parts) : null

const own = (parts: Parts, name: string): unknown => (Object.hasOwn(parts, name) ? parts[name] : undefined)

const text = (value: unknown, most: number): string | null =>
  typeof value === 'string' && value.length <= most ? value : null

const oneOf = <T extends string>(value: unknown, words: readonly T[]): T | null =>
  words.find((word) => word === value) ?? null

function texts(value: unknown, most: number, longest: number): string[] | null {
  if (!Array.isArray(value) || value.length > most) return null
  const all = value.map((one: unknown) => text(one, longest))
  return all.every((one) => one !== null) ? all : null
}

/** What people type into a row may be longer than a row can be: it is kept, and told as too long. */
const longestText = limits.fileCharacters

function castOnFrom(value: unknown): DraftCastOn | null {
  const parts = partsOf(value)
  if (!parts) return null
  const kind = oneOf(own(parts, 'kind'), ['multiple', 'exactly'])
  const [multiple, plus, exactly] = ['multiple', 'plus', 'exactly'].map((name) => text(own(parts, name), 200))
  if (kind === null || multiple == null || plus == null || exactly == null) return null
  return { kind, multiple, plus, exactly }
}

function edgesFrom(value: unknown): Draft['edges'] | null {
  const parts = partsOf(value)
  const [before, after] = ['before', 'after'].map((name) => text(parts && own(parts, name), longestText))
  return before == null || after == null ? null : { before, after }
}

/** What a pattern says about itself beside its rows: only words, numbers and lists of them are kept. */
function aboutFrom(value: unknown): About | null {
  const parts = partsOf(value)
  if (!parts || JSON.stringify(value).length > longestText) return null
  const lists = ['also', 'notToConfuseWith', 'teaches'].map((name) => texts(own(parts, name), 50, 200))
  const corrections = own(parts, 'corrections')
  if (lists.some((list) => list === null) || !Array.isArray(corrections)) return null
  const words = ['tradition', 'contributor', 'licence', 'tested', 'version', 'yarn', 'blocked', 'unblocked']
  const said: Record<string, unknown> = {}
  for (const name of [...words, 'notes']) {
    const one = text(own(parts, name), 20_000)
    if (one !== null) said[name] = one
  }
  const needle = own(parts, 'needle')
  if (typeof needle === 'number' && needle >= 0.5 && needle <= 50) said.needle = needle
  const level = oneOf(own(parts, 'level'), ['Basic', 'Easy', 'Intermediate', 'Complex'])
  if (level !== null) said.level = level
  const source = sourceFrom(own(parts, 'source'))
  if (source !== null) said.source = source
  const [also = [], notToConfuseWith = [], teaches = []] = lists.map((list) => list ?? [])
  const known = corrections.flatMap((one: unknown) => correctionFrom(one) ?? [])
  return { ...(said as Partial<About>), also, notToConfuseWith, teaches, corrections: known }
}

function sourceFrom(value: unknown): About['source'] | null {
  const parts = partsOf(value)
  const title = text(parts && own(parts, 'title'), 500)
  if (!parts || title === null) return null
  const [author, place] = ['author', 'place'].map((name) => text(own(parts, name), 300))
  const year = own(parts, 'year')
  return {
    title,
    ...(author != null && { author }),
    ...(typeof year === 'number' && Number.isInteger(year) && { year }),
    ...(place != null && { place }),
  }
}

const isRowList = (value: unknown): value is number[] =>
  Array.isArray(value) && value.length <= limits.rows && value.every((row) => Number.isSafeInteger(row))

function correctionFrom(value: unknown): About['corrections'][number] | null {
  const parts = partsOf(value)
  const [version, date, change] = ['version', 'date', 'change'].map((name) =>
    text(parts && own(parts, name), 500),
  )
  if (version == null || date == null || change == null) return null
  const rows = parts && own(parts, 'rows')
  return { version, date, change, ...(isRowList(rows) && { rows }) }
}

/** A draft as it was kept or sent, once its text was parsed; null for anything that is not one. */
export function parseDraft(value: unknown): Draft | null {
  const parts = partsOf(value)
  if (!parts) return null
  const title = text(own(parts, 'title'), longestText)
  const castOn = castOnFrom(own(parts, 'castOn'))
  const worked = oneOf(own(parts, 'worked'), ['flat', 'round'])
  const firstSide = oneOf(own(parts, 'firstSide'), ['RS', 'WS'])
  const setUp = texts(own(parts, 'setUp'), limits.rows, longestText)
  const rows = texts(own(parts, 'rows'), limits.rows, longestText)
  const edges = edgesFrom(own(parts, 'edges'))
  const growing = own(parts, 'growing')
  const doubleYarnOver = oneOf(own(parts, 'doubleYarnOver'), ['two', 'one'])
  const bindOffLeaves = oneOf(own(parts, 'bindOffLeaves'), ['extra', 'first'])
  const held = own(parts, 'held')
  const about = aboutFrom(own(parts, 'about'))
  if (title === null || !castOn || !worked || !firstSide || !setUp || !rows || rows.length === 0) return null
  if (!edges || typeof growing !== 'boolean' || !doubleYarnOver || !bindOffLeaves || !about) return null
  if (typeof held !== 'number' || !Number.isInteger(held) || held < 0 || held > 10_000) return null
  return {
    title,
    castOn,
    worked,
    firstSide,
    setUp,
    rows,
    edges,
    growing,
    doubleYarnOver,
    bindOffLeaves,
    held,
    about,
  }
}

/** A draft as a browser keeps it. */
export interface KeptDraft {
  /** When it was last written, in milliseconds since 1970. */
  readonly saved: number
  /** Names this state of it, so that another tab sees that it was changed. */
  readonly stamp: string
  readonly draft: Draft
}

/** A kept draft larger than this was never written by the page. */
const mostKept = 4_000_000

/** A draft from the text that a browser kept; null for anything else. */
export function parseKeptDraft(stored: unknown): KeptDraft | null {
  if (typeof stored !== 'string' || stored.length > mostKept) return null
  try {
    const parts = partsOf(JSON.parse(stored))
    const draft = parts && parseDraft(own(parts, 'draft'))
    const [saved, stamp] = [parts && own(parts, 'saved'), text(parts && own(parts, 'stamp'), 100)]
    const isTime = typeof saved === 'number' && Number.isFinite(saved) && saved >= 0 && saved < 8.64e15
    return draft && isTime && stamp !== null ? { saved, stamp, draft } : null
  } catch {
    return null
  }
}
