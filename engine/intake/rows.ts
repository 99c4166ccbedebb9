import { isMap, isScalar, isSeq, type Scalar } from 'yaml'
import { type Issue, type IssueCode, limits, type Span } from '../base/index.ts'
import { type ReadOptions, readRow, rowLabel } from '../notation/index.ts'
import type { Item, Row } from '../pattern/index.ts'
import { scalarOffsets } from './scalar-offsets.ts'
import { unshield } from './shield.ts'

export type ReadRowText = Omit<Row, 'number' | 'side'>
type Options = Pick<ReadOptions, 'doubleYarnOver' | 'bindOffLeaves'>

/** A row's text where it stands in the file. */
interface Written {
  readonly text: string
  readonly place: (offset: number) => number
  readonly span: Span
}

type Tell = (code: IssueCode, span: Span | null, values?: Issue['values']) => void

const rangeOf = (node: unknown): Span | null => {
  const range = (node as { range?: [number, number, number] | null } | null)?.range
  return range ? { start: range[0], end: Math.max(range[0] + 1, range[1]) } : null
}

function written(node: Scalar, source: string): Written {
  const value = unshield(typeof node.value === 'string' ? node.value : (node.source ?? String(node.value)))
  const span = rangeOf(node) ?? { start: 0, end: 1 }
  return { text: value, place: scalarOffsets(source.slice(span.start, span.end), span.start, value), span }
}

/** The part of a written row behind its first `length` characters. */
const behind = (row: Written, length: number): Written => ({
  text: row.text.slice(length),
  place: (offset) => row.place(offset + length),
  span: { start: row.place(length), end: row.span.end },
})

/** One line of a block of rows. */
function linesOf(row: Written): Written[] {
  const lines: Written[] = []
  let at = 0
  for (const line of row.text.split('\n')) {
    const from = at
    if (line.trim() !== '') {
      const span = { start: row.place(from), end: row.place(from + line.length) }
      lines.push({ text: line, place: (offset) => row.place(from + offset), span })
    }
    at += line.length + 1
  }
  return lines
}

/**
 * Reads the rows of a pattern file: a list, a map from row numbers to rows, or a block of text with one row a line.
 * Rows may be headed ('Rows 2, 4 and 6:'); those without a heading take the next free number.
 */
export function readRows(
  node: unknown,
  source: string,
  options: Options,
  key: string,
  issues: Issue[],
): ReadRowText[] {
  const tell: Tell = (code, span, values = {}) =>
    issues.push({ code, severity: 'error', span, row: null, values })
  const numbered = new Map<number, Written>()
  let next = 1
  const put = (numbers: readonly number[], row: Written): void => {
    for (const n of numbers) {
      if (n < 1 || n > limits.rows) tell('row-number-wrong', row.span, { number: n, most: limits.rows })
      else if (numbered.has(n)) tell('row-given-twice', row.span, { number: n })
      else numbered.set(n, row)
    }
    next = Math.max(next, ...numbers) + 1
  }
  const putText = (row: Written): void => {
    const label = rowLabel(row.text)
    if (label && label.length < row.text.length) put(label.numbers, behind(row, label.length))
    else put([next], row)
  }
  const putPair = (key_: unknown, value: unknown): void => {
    const label = isScalar(key_) ? rowLabel(`${String(key_.value)}:`) : null
    if (!label || !isScalar(value) || value.value === null)
      tell('row-heading-wrong', rangeOf(key_) ?? rangeOf(value), { key })
    else put(label.numbers, written(value, source))
  }
  if (isMap(node)) {
    for (const pair of node.items) putPair(pair.key, pair.value)
  } else if (isSeq(node)) {
    for (const item of node.items) {
      if (isMap(item)) for (const pair of item.items) putPair(pair.key, pair.value)
      else if (isScalar(item) && item.value !== null) putText(written(item, source))
      else tell('row-not-text', rangeOf(item))
    }
  } else if (isScalar(node) && typeof node.value === 'string') {
    for (const line of linesOf(written(node, source))) putText(line)
  } else if (!isScalar(node) || node.value !== null) {
    tell('rows-not-a-list', rangeOf(node), { key })
    return []
  }
  if (numbered.size === 0 && key === 'rows') tell('rows-empty', rangeOf(node) ?? { start: 0, end: 1 })
  return inOrder(numbered, options, key, issues, tell)
}

function inOrder(
  numbered: ReadonlyMap<number, Written>,
  options: Options,
  key: string,
  issues: Issue[],
  tell: Tell,
): ReadRowText[] {
  const last = Math.max(0, ...numbered.keys())
  const readings = new Map<number, ReturnType<typeof readRow>>()
  const rows: ReadRowText[] = []
  for (let n = 1; n <= last; n++) {
    const row = numbered.get(n)
    if (!row) {
      tell('row-left-out', numbered.get(last)?.span ?? null, { number: n, last })
      return rows
    }
    const number = key === 'rows' ? n : n - last
    const reading = readRow(row.text, { ...options, row: number, place: row.place })
    issues.push(...reading.issues)
    const other = reading.sameAs === null ? null : readings.get(reading.sameAs)
    if (reading.sameAs !== null && !other) {
      issues.push({
        code: 'row-as-unknown',
        severity: 'error',
        span: row.span,
        row: number,
        values: { number: reading.sameAs },
      })
    }
    readings.set(n, other ?? reading)
    rows.push({ items: (other ?? reading).items, text: row.text.trim(), span: row.span })
  }
  return rows
}

/** Reads `edges: { before, after }`. */
export function readEdges(
  node: unknown,
  source: string,
  options: Options,
  issues: Issue[],
): { before: readonly Item[]; after: readonly Item[] } {
  const tell: Tell = (code, span, values = {}) =>
    issues.push({ code, severity: 'error', span, row: null, values })
  const edges: { before: readonly Item[]; after: readonly Item[] } = { before: [], after: [] }
  if (node === undefined || node === null) return edges
  if (!isMap(node)) {
    tell('edges-wrong', rangeOf(node))
    return edges
  }
  for (const pair of node.items) {
    const name = isScalar(pair.key) ? String(pair.key.value) : ''
    if ((name !== 'before' && name !== 'after') || !isScalar(pair.value)) {
      tell('edges-wrong', rangeOf(pair.key))
      continue
    }
    const text = written(pair.value, source)
    const reading = readRow(text.text, { ...options, place: text.place })
    issues.push(...reading.issues)
    const open = reading.items.find(
      (item) => item.kind === 'repeat' || item.kind === 'across' || item.kind === 'turn',
    )
    if (open) tell('edge-not-fixed', open.span)
    else edges[name] = reading.items
  }
  return edges
}
