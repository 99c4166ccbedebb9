import { printRow } from '../notation/index.ts'
import type { About, CastOn, Pattern, Row } from '../pattern/index.ts'

/** How many to cast on, as it stands in the fields: nothing is said where they are empty. */
export interface DraftCastOn {
  readonly kind: 'multiple' | 'exactly'
  readonly multiple: string
  readonly plus: string
  readonly exactly: string
}

/** A pattern while it is being written: every text just as it was typed, finished or not. */
export interface Draft {
  readonly title: string
  readonly castOn: DraftCastOn
  readonly worked: Pattern['worked']
  readonly firstSide: Pattern['firstSide']
  /** Set-up rows, one text each. */
  readonly setUp: readonly string[]
  /** Row 1 first. */
  readonly rows: readonly string[]
  readonly edges: { readonly before: string; readonly after: string }
  readonly growing: boolean
  readonly doubleYarnOver: Pattern['doubleYarnOver']
  readonly bindOffLeaves: Pattern['bindOffLeaves']
  readonly held: number
  readonly about: About
}

/** A sheet with nothing on it but a first row to write in. */
export const emptyDraft: Draft = {
  title: '',
  castOn: { kind: 'multiple', multiple: '', plus: '', exactly: '' },
  worked: 'flat',
  firstSide: 'RS',
  setUp: [],
  rows: [''],
  edges: { before: '', after: '' },
  growing: false,
  doubleYarnOver: 'two',
  bindOffLeaves: 'extra',
  held: 0,
  about: { also: [], notToConfuseWith: [], teaches: [], corrections: [] },
}

/** Whether anything was typed at all. */
export const isBlank = (draft: Draft): boolean => JSON.stringify(draft) === JSON.stringify(emptyDraft)

export const draftCastOn = (castOn: CastOn): DraftCastOn =>
  'fixed' in castOn
    ? { kind: 'exactly', multiple: '', plus: '', exactly: String(castOn.fixed) }
    : { kind: 'multiple', multiple: String(castOn.multiple), plus: String(castOn.plus), exactly: '' }

const isWritten = ({ text, items }: Row): boolean => text !== '' || items.length === 0

/** A pattern as a draft: rows as they were written, or printed where nobody wrote them. */
export function draftOf(pattern: Pattern): Draft {
  const words = (row: Row): string => (isWritten(row) ? row.text : printRow(row.items))
  const { title, worked, firstSide, growing, doubleYarnOver, bindOffLeaves, held, about } = pattern
  const rows = pattern.rows.map(words)
  return {
    title,
    castOn: draftCastOn(pattern.castOn),
    worked,
    firstSide,
    setUp: pattern.setUp.map(words),
    rows: rows.length > 0 ? rows : [''],
    edges: { before: printRow(pattern.edges.before), after: printRow(pattern.edges.after) },
    growing,
    doubleYarnOver,
    bindOffLeaves,
    held,
    about,
  }
}

/** The draft with its rows, edges and cast-on taken from a pattern that was made from it; all else stays. */
export function withRowsOf(draft: Draft, pattern: Pattern): Draft {
  const { castOn, worked, firstSide, setUp, edges, growing } = draftOf(pattern)
  const rows = pattern.rows.map((row) => printRow(row.items))
  return { ...draft, castOn, worked, firstSide, setUp, rows, edges, growing }
}
