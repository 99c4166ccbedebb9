import { printable } from '../base/index.ts'
import type { Evidence, Look } from '../mistakes/index.ts'

/** What a form about a mistake can hold, for the pattern and the width that it stands for. */
export interface Asked {
  /** Rows that can be chosen. */
  readonly rows: number
  /** Stitches of a row. */
  readonly stepsIn: (row: number) => number
  /** Stretches between the markers. */
  readonly sections: number
  readonly looks: readonly Look[]
  /** The counts that belong there: taken for told where the reader says that they are right. */
  readonly meant: (row: number, step: number | null) => readonly number[]
}

/** What is not understood, in words for the reader, and the field that it stands in. */
export interface Unclear {
  readonly field: string
  readonly words: string
}

export type Told =
  | { readonly evidence: Evidence; readonly unclear: readonly [] }
  | { readonly evidence: null; readonly unclear: readonly Unclear[] }

/** Repeats side by side for which a mistake is looked for. */
export const mostRepeatsAsked = 20
/** More loops than that lie on no needle that the engine works for. */
export const mostLoops = 2000
const mostCharacters = 40

// Checked by hand, as a stored place is: a schema library would weigh more than the page's own script.

export type Read = { readonly value: number | null } | { readonly words: string }

/** A whole number as people write it: '6', ' 6 sts', '６'. Null where nothing stands. */
export function readCount(text: unknown, most: number): Read {
  if (text === undefined || text === null || text === '') return { value: null }
  if (typeof text !== 'string') return { words: 'That is not a number. Write it in digits, such as 6.' }
  const tidy = text.slice(0, mostCharacters).normalize('NFKC').trim()
  if (tidy === '') return { value: null }
  const digits = /^\+?(\d+)(?:\s*(?:sts?|stitch(?:es)?)\.?)?$/i.exec(tidy)?.[1]
  if (digits === undefined) {
    if (/^[-−–]\s*\d+$/.test(tidy))
      return {
        words: 'A count cannot be less than 0. Write how many stitches there are, not how many are missing.',
      }
    if (/^\d+[.,]\d+$/.test(tidy))
      return { words: 'Half a stitch cannot be counted. Write a whole number, such as 6.' }
    return { words: `‘${printable(tidy)}’ is not a number. Write it in digits, such as 6.` }
  }
  const value = Number(digits)
  return value <= most
    ? { value }
    : { words: `That is more than this page can look at. Write a number up to ${most}.` }
}

/** How many repeats there are. */
export function readRepeats(text: unknown): { readonly repeats: number } | Unclear {
  const read = readCount(text, mostRepeatsAsked)
  if ('words' in read) return { field: 'repeats', words: read.words }
  if (read.value === null || read.value < 1)
    return { field: 'repeats', words: 'Write how many repeats lie side by side: 1 or more.' }
  return { repeats: read.value }
}

const mostInVersion = 20

/** The version printed on a reader's copy, as she copies it: 'v1.2', 'Version 1.2', 'draft'. Null where nothing stands. */
export function readVersion(text: unknown): { readonly version: string | null } | Unclear {
  if (text === undefined || text === null || text === '') return { version: null }
  const field = 'version'
  if (typeof text !== 'string')
    return { field, words: 'Write the version as it is printed, such as 1.0, or leave this empty.' }
  const tidy = text
    .slice(0, 2 * mostCharacters)
    .normalize('NFKC')
    .trim()
    .toLowerCase()
  const version = tidy.replace(/^v(?:ersion|\.)?\s*(?=\d)/, '').replace(/^version\s+/, '')
  if (version === '') return { version: null }
  if (version.length <= mostInVersion && /^[\p{L}\d][\p{L}\d ._-]*$/u.test(version)) return { version }
  return {
    field,
    words: `‘${printable(tidy.slice(0, mostCharacters))}’ is not a version. Write what is printed, such as 1.0, or leave this empty.`,
  }
}

/** A number that a list offered; null for anything else. */
export function chosen(text: unknown, least: number, most: number): number | null {
  if (typeof text !== 'string' || !/^\d{1,5}$/.test(text)) return null
  const value = Number(text)
  return value >= least && value <= most ? value : null
}

/**
 * What a reader filled in, by the names of the fields: row, step, way, count-0, count-1, …, total, look, section. Either
 * evidence, or every field that is not understood with what to do about it.
 */
export function readEvidence(form: unknown, asked: Asked): Told {
  const field = fieldsOf(form)
  const row = chosen(field('row'), 0, asked.rows - 1)
  if (row === null) return unclear({ field: 'row', words: 'Choose the row that you are in from the list.' })
  const step = stepOf(field('step'), asked.stepsIn(row))
  if (step === undefined) return unclear({ field: 'step', words: 'Choose how far you are from the list.' })
  const place = step === null ? { row } : { row, step }
  switch (field('way')) {
    case 'sections':
      return countsOf(field, asked, place)
    case 'total':
      return totalOf(field, place)
    case 'looks':
      return looksOf(field, asked, place)
    default:
      return unclear({
        field: 'way',
        words: 'Choose what you can tell: each count, the total, or what looks wrong.',
      })
  }
}

const unclear = (...all: Unclear[]): Told => ({ evidence: null, unclear: all })
const clear = (evidence: Evidence): Told => ({ evidence, unclear: [] })

export type Fields = (name: string) => unknown
type Where = Pick<Evidence, 'row' | 'step'>

/** Only what the form holds itself: no name is looked up on what all objects share. */
export function fieldsOf(form: unknown): Fields {
  const own = typeof form === 'object' && form !== null ? (form as Record<string, unknown>) : {}
  return (name) => (Object.hasOwn(own, name) ? own[name] : undefined)
}

/** Null where the row is done, undefined for what cannot be. */
const stepOf = (text: unknown, steps: number): number | null | undefined =>
  text === undefined || text === '' || text === 'done'
    ? null
    : (chosen(text, 1, Math.max(1, steps)) ?? undefined)

function countsOf(field: Fields, { sections }: Asked, place: Where): Told {
  const read = Array.from({ length: sections }, (_, i) => ({
    name: `count-${i}`,
    read: readCount(field(`count-${i}`), mostLoops),
  }))
  const odd = read.flatMap(({ name, read: one }) =>
    'words' in one ? [{ field: name, words: one.words }] : [],
  )
  if (odd.length > 0) return unclear(...odd)
  const counts = read.map(({ read: one }) => ('value' in one ? one.value : null))
  if (counts.every((count) => count === null))
    return unclear({
      field: 'count-0',
      words: 'Write at least one count. What you have not counted may stay empty.',
    })
  return clear({ ...place, counts })
}

function totalOf(field: Fields, place: Where): Told {
  const read = readCount(field('total'), mostLoops)
  if ('words' in read) return unclear({ field: 'total', words: read.words })
  if (read.value === null)
    return unclear({ field: 'total', words: 'Write how many stitches you count in all.' })
  return clear({ ...place, total: read.value })
}

function looksOf(field: Fields, { looks, sections, meant }: Asked, place: Where): Told {
  const look = looks.find((one) => one === field('look'))
  if (look === undefined)
    return unclear({
      field: 'look',
      words: 'Choose what you see. If nothing of it fits, count each repeat instead.',
    })
  const section = field('section')
  const where = section === undefined || section === '' ? null : chosen(section, 0, sections - 1)
  if (where === null && section !== undefined && section !== '')
    return unclear({ field: 'section', words: 'Choose from the list where you see it.' })
  return clear({ ...place, counts: meant(place.row, place.step ?? null), looks: [look], section: where })
}
