import { type Issue, limits, type Span } from '../base/index.ts'
import { type Derived, deriveCastOn, edgeTotals, type Proof, prove } from '../counts/index.ts'
import { type RowReading, readRow, rowLabel } from '../notation/index.ts'
import { type CastOn, type Item, type Pattern, type Row, takesAndMakes } from '../pattern/index.ts'
import type { Draft, DraftCastOn } from './draft.ts'

/** The field that a problem stands in. A row goes by its number: set-up rows end at 0. */
export type DraftPlace =
  | { readonly part: 'row'; readonly row: number }
  | { readonly part: 'before' | 'after' | 'castOn' }

/** A problem with its field; its span is a stretch of that field's text. */
export interface DraftProblem {
  readonly place: DraftPlace
  readonly issue: Issue
}

export interface DraftReading {
  readonly pattern: Pattern
  /** Rows of which not everything could be read. */
  readonly unread: ReadonlySet<number>
  readonly problems: readonly DraftProblem[]
  /** What the fields say; null where they say nothing that can be read. */
  readonly stated: CastOn | null
  /** What the rows that can be read need; null where no cast-on that anybody means lets them all come out. */
  readonly derived: CastOn | null
}

export interface DraftChecked extends DraftReading {
  /** Null where no row is written. */
  readonly proof: Proof | null
  readonly sound: boolean
}

type Tell = (place: DraftPlace, issue: Issue) => void

const error = (code: Issue['code'], span: Span, row: number | null, values: Issue['values']): Issue => ({
  code,
  severity: 'error',
  span,
  row,
  values,
})

/** Reads one row, its heading ('Row 3:') aside. Spans are offsets in the whole text. */
function readWritten(text: string, number: number, draft: Draft, tell: Tell): RowReading {
  const { doubleYarnOver, bindOffLeaves } = draft
  const place: DraftPlace = { part: 'row', row: number }
  const label = rowLabel(text)
  const skip = label && label.length < text.length ? label.length : 0
  if (skip > 0 && !label?.numbers.includes(number))
    tell(
      place,
      error('row-number-wrong', { start: 0, end: skip }, number, {
        number: label?.numbers[0] ?? 0,
        most: draft.rows.length,
      }),
    )
  const reading = readRow(text.slice(skip), {
    doubleYarnOver,
    bindOffLeaves,
    row: number,
    place: (offset) => offset + skip,
  })
  for (const issue of reading.issues) tell(place, issue)
  return reading
}

/** Blank rows after the last written one are room to write in, no rows. */
export function writtenRows(rows: readonly string[]): readonly string[] {
  const last = rows.findLastIndex((row) => row.trim() !== '')
  return rows.slice(0, last + 1)
}

function rowsOf(texts: readonly string[], first: number, draft: Draft, tell: Tell): Row[] {
  const readings: (readonly Item[])[] = []
  return texts.map((text, i) => {
    const number = first + i
    const reading = readWritten(text, number, draft, tell)
    const span = { start: 0, end: text.length }
    const same = reading.sameAs === null ? reading.items : readings[reading.sameAs - 1]
    if (!same)
      tell(
        { part: 'row', row: number },
        error('row-as-unknown', span, number, { number: reading.sameAs ?? 0 }),
      )
    const items = same ?? []
    readings.push(items)
    return { number, side: sideOf(number, draft), items, text, span }
  })
}

function sideOf(number: number, { worked, firstSide }: Draft): Row['side'] {
  if (worked === 'round') return 'RS'
  const odd = Math.abs(number) % 2 === 1
  return odd === (firstSide === 'RS') ? 'RS' : 'WS'
}

function edgeOf(part: 'before' | 'after', draft: Draft, tell: Tell): readonly Item[] {
  const text = draft.edges[part]
  if (text.trim() === '') return []
  const { items, issues } = readRow(text, {
    doubleYarnOver: draft.doubleYarnOver,
    bindOffLeaves: draft.bindOffLeaves,
  })
  for (const issue of issues) tell({ part }, issue)
  const open = items.find(({ kind }) => ['repeat', 'across', 'turn'].includes(kind))
  if (open) tell({ part }, error('edge-not-fixed', open.span, null, {}))
  return open ? [] : items
}

/** A whole number as it is typed: null for an empty field, undefined for anything else. */
function numberIn(text: string, least: number): number | null | undefined {
  const tidy = text.normalize('NFKC').trim()
  if (tidy === '') return null
  const value = /^\d{1,5}$/.test(tidy) ? Number(tidy) : Number.NaN
  return value >= least && value <= 10_000 ? value : undefined
}

function statedCastOn({ kind, multiple, plus, exactly }: DraftCastOn, tell: Tell): CastOn | null {
  const wrong = (written: string, expected: string): null => {
    const values = { key: 'cast on', expected, written: written.slice(0, 40) }
    tell({ part: 'castOn' }, error('value-wrong', { start: 0, end: written.length }, null, values))
    return null
  }
  if (kind === 'exactly') {
    const fixed = numberIn(exactly, 1)
    return fixed === undefined ? wrong(exactly, 'a whole number from 1') : fixed === null ? null : { fixed }
  }
  const [by, more] = [numberIn(multiple, 1), numberIn(plus, 0)]
  if (by === undefined) return wrong(multiple, 'a whole number from 1')
  if (more === undefined) return wrong(plus, 'a whole number from 0')
  return by === null ? null : { multiple: by, plus: more ?? 0 }
}

/** Where nothing is stated and no cast-on fits: as wide as the first repeat with the stitches round it. */
function guessedCastOn(rows: readonly Row[]): CastOn {
  for (const { items } of rows) {
    const at = items.findIndex(({ kind }) => kind === 'repeat')
    const repeat = items[at]
    if (repeat?.kind !== 'repeat') continue
    const inner = takesAndMakes(repeat.items)
    const ends = takesAndMakes([...items.slice(0, at), ...items.slice(at + 1)])
    if (inner && inner.takes > 0) return { multiple: inner.takes, plus: ends?.takes ?? 0 }
  }
  const whole = takesAndMakes(rows[0]?.items ?? [])
  return { fixed: Math.max(1, whole?.takes ?? 1) }
}

/** Reads a draft field by field. Always gives a pattern of what could be read; every problem has its field and place. */
export function readDraft(draft: Draft): DraftReading {
  const problems: DraftProblem[] = []
  const tell: Tell = (place, issue) => problems.push({ place, issue })
  const setUp = rowsOf(draft.setUp, 1 - draft.setUp.length, draft, tell)
  const rows = rowsOf(writtenRows(draft.rows).slice(0, limits.rows), 1, draft, tell)
  const edges = { before: edgeOf('before', draft, tell), after: edgeOf('after', draft, tell) }
  const stated = statedCastOn(draft.castOn, tell)
  const unread = new Set(
    problems.flatMap(({ place, issue }) =>
      place.part === 'row' && issue.severity === 'error' ? [place.row] : [],
    ),
  )
  const { worked, firstSide, growing, doubleYarnOver, bindOffLeaves, held, about } = draft
  const bare: Pattern = {
    title: draft.title.trim() === '' ? 'Untitled' : draft.title.trim(),
    castOn: { fixed: 1 },
    worked,
    firstSide,
    setUp,
    rows,
    growing,
    edges,
    doubleYarnOver,
    bindOffLeaves,
    held,
    draft: false,
    about,
  }
  const guessed = guessedCastOn([...setUp, ...rows])
  const found = derivedCastOn(bare, unread)?.castOn ?? null
  const derived = found && isMeant(found, stated ?? guessed) ? found : null
  const castOn = stated ?? derived ?? guessed
  return { pattern: { ...bare, castOn }, unread, problems, stated, derived }
}

/** Two slips in different rows can give a rule like 'multiple of 420', which nobody meant. */
const isMeant = (rule: CastOn, near: CastOn): boolean =>
  'fixed' in rule || 'fixed' in near || rule.multiple <= 4 * near.multiple

function derivedCastOn(pattern: Pattern, unread: ReadonlySet<number>): Derived | null {
  const read = (row: Row): boolean => !unread.has(row.number)
  const known = { ...pattern, setUp: pattern.setUp.filter(read), rows: pattern.rows.filter(read) }
  return known.rows.length === 0 ? null : deriveCastOn(known, edgeTotals(pattern))
}

/** Reads a draft and proves it for every number of repeats, as a pattern file is proved. */
export function checkDraft(draft: Draft): DraftChecked {
  const reading = readDraft(draft)
  const { pattern, unread } = reading
  if (pattern.rows.length === 0) return { ...reading, proof: null, sound: false }
  const proof = prove(pattern, { unread })
  const problems = [...reading.problems, ...proof.issues.map(placed)]
  return { ...reading, problems, proof, sound: !problems.some(({ issue }) => issue.severity === 'error') }
}

const placed = (issue: Issue): DraftProblem => ({
  place: issue.row === null ? { part: 'castOn' } : { part: 'row', row: issue.row },
  issue,
})
