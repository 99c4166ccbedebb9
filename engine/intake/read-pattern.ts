import { type Document, isMap, parseDocument, visit, type YAMLMap } from 'yaml'
import { type Issue, type IssueCode, limits, type Source, type Span } from '../base/index.ts'
import { closestWord } from '../notation/index.ts'
import type { About, Item, Pattern, Row } from '../pattern/index.ts'
import { readEdges, readRows } from './rows.ts'
import { fileKeys, fileSchema, type PatternFile } from './schema.ts'
import { shield, unshield } from './shield.ts'

export interface PatternReading {
  /** Null where the file cannot be read as a pattern at all. A row with a problem keeps what could be read of it. */
  readonly pattern: Pattern | null
  readonly issues: readonly Issue[]
  /** Where the cast-on is stated. */
  readonly castOnSpan: Span | null
}

/** The one way from a pattern file's text to a pattern. Collects every problem; nothing is thrown. */
export function readPattern(source: Source): PatternReading {
  const issues: Issue[] = []
  const tell = (code: IssueCode, span: Span | null, values: Issue['values'] = {}): void => {
    issues.push({ code, severity: 'error', span, row: null, values })
  }
  const nothing = { pattern: null, issues, castOnSpan: null }
  if (source.text.length > limits.fileCharacters) {
    tell(
      'file-too-large',
      { start: 0, end: 1 },
      { characters: source.text.length, most: limits.fileCharacters },
    )
    return nothing
  }
  const control = /[^\P{Cc}\t\n\r]|[\u202a-\u202e\u2066-\u2069]/u.exec(source.text)
  if (control) {
    const code = control[0].codePointAt(0)?.toString(16).toUpperCase().padStart(4, '0') ?? ''
    tell('control-character', { start: control.index, end: control.index + 1 }, { code })
    return nothing
  }
  if (source.text.trim() === '') {
    tell('file-empty', { start: 0, end: 1 })
    return nothing
  }
  const shielded = shield(source.text)
  const document = parseDocument(shielded, { uniqueKeys: true, prettyErrors: false, strict: true })
  for (const error of document.errors) {
    tell('yaml-broken', { start: error.pos[0], end: error.pos[1] }, { reason: plainReason(error.code) })
  }
  visit(document, {
    Alias: (_key, node) =>
      tell('yaml-alias', node.range ? { start: node.range[0], end: node.range[1] } : null),
  })
  if (issues.length > 0) return nothing
  const root = document.contents
  if (!isMap(root)) {
    tell('file-not-a-pattern', { start: 0, end: 1 })
    return nothing
  }
  return readMap(root, document, source.text, issues)
}

function readMap(root: YAMLMap, document: Document, text: string, issues: Issue[]): PatternReading {
  const castOnSpan = spanOf(document, ['castOn'])
  const plain: unknown = document.toJS({ maxAliasCount: 0 })
  const parsed = fileSchema.safeParse(plain)
  if (!parsed.success)
    for (const problem of parsed.error.issues) issues.push(...schemaIssues(problem, document, root))
  if (!root.has('rows') && !issues.some((issue) => issue.values.key === 'rows'))
    issues.push(keyMissing('rows'))
  const file = parsed.success ? parsed.data : salvage(plain)
  if (!file) return { pattern: null, issues, castOnSpan }
  const options = { doubleYarnOver: file.doubleYarnOver, bindOffLeaves: file.bindOffLeaves }
  const setUpNode = document.get('setUp', true)
  const setUp = setUpNode === undefined ? [] : readRows(setUpNode, text, options, 'setUp', issues)
  const rows = root.has('rows') ? readRows(document.get('rows', true), text, options, 'rows', issues) : []
  const edges = readEdges(document.get('edges', true), text, options, issues)
  return { pattern: patternOf(file, setUp, rows, edges), issues, castOnSpan }
}

type ReadRow = Omit<Row, 'number' | 'side'>

function patternOf(
  file: PatternFile,
  setUp: readonly ReadRow[],
  rows: readonly ReadRow[],
  edges: { before: readonly Item[]; after: readonly Item[] },
): Pattern {
  const side = (number: number): 'RS' | 'WS' => {
    if (file.worked === 'round') return 'RS'
    const odd = Math.abs(number) % 2 === 1
    return odd === (file.firstSide === 'RS') ? 'RS' : 'WS'
  }
  const numbered = (list: readonly ReadRow[], first: number): Row[] =>
    list.map((row, i) => ({ number: first + i, side: side(first + i), ...row }))
  const { title, castOn, worked, firstSide, growing, doubleYarnOver, bindOffLeaves, held, draft } = file
  return {
    title: unshield(title),
    castOn,
    worked,
    firstSide,
    setUp: numbered(setUp, 1 - setUp.length),
    rows: numbered(rows, 1),
    growing,
    edges,
    doubleYarnOver,
    bindOffLeaves,
    held,
    draft,
    about: aboutOf(file),
  }
}

function aboutOf(file: PatternFile): About {
  const { also, notToConfuseWith, teaches, corrections } = file
  const optional = {
    tradition: file.tradition,
    level: file.level,
    source: file.source,
    contributor: file.contributor,
    licence: file.licence,
    tested: file.tested,
    version: file.version,
    yarn: file.yarn,
    needle: file.needle,
    blocked: file.blocked,
    unblocked: file.unblocked,
    notes: file.notes,
  }
  const said = Object.fromEntries(Object.entries(optional).filter(([, value]) => value !== undefined))
  return { also, notToConfuseWith, teaches, corrections, ...(said as Partial<About>) }
}

/** What is left of a file whose head has problems, so that its rows are looked at all the same. */
function salvage(plain: unknown): PatternFile | null {
  if (typeof plain !== 'object' || plain === null) return null
  const kept: Record<string, unknown> = { title: 'Untitled', castOn: 1, rows: [] }
  for (const [key, value] of Object.entries(plain)) {
    const field = Object.hasOwn(fileSchema.shape, key)
      ? fileSchema.shape[key as keyof typeof fileSchema.shape]
      : null
    if (field?.safeParse(value).success) kept[key] = value
  }
  if (!Object.hasOwn(plain, 'castOn') || kept.castOn !== (plain as Record<string, unknown>).castOn)
    return null
  const parsed = fileSchema.safeParse(kept)
  return parsed.success ? parsed.data : null
}

interface SchemaProblem {
  readonly code: string
  readonly path: readonly PropertyKey[]
  readonly message: string
  readonly keys?: readonly string[]
  readonly values?: readonly unknown[]
  readonly errors?: readonly (readonly SchemaProblem[])[]
}

const keyMissing = (key: string): Issue => ({
  code: 'key-missing',
  severity: 'error',
  span: { start: 0, end: 1 },
  row: null,
  values: { key },
})

function schemaIssues(raw: unknown, document: Document, root: YAMLMap): Issue[] {
  const problem = raw as SchemaProblem
  const path = problem.path.map(String)
  const key = path.join('.')
  if (problem.code === 'unrecognized_keys') {
    return (problem.keys ?? []).map((unknown) => ({
      code: 'key-unknown',
      severity: 'error',
      row: null,
      span: keySpan(document, root, [...path, unknown]),
      values: {
        key: unknown.slice(0, 60),
        suggestion: closestWord(unknown, path.length === 0 ? fileKeys : ['multiple', 'plus']) ?? '',
      },
    }))
  }
  if (path.length === 1 && !document.has(path[0])) return [keyMissing(key)]
  return [
    {
      code: 'value-wrong',
      severity: 'error',
      row: null,
      span: spanOf(document, path),
      values: { key, expected: expected(key, problem), written: writtenAt(document, path) },
    },
  ]
}

/** What stands at a key, where that is short enough to be said back. */
function writtenAt(document: Document, path: readonly string[]): string {
  const value: unknown = document.getIn(path)
  const sayable =
    ['string', 'boolean'].includes(typeof value) || (typeof value === 'number' && Math.abs(value) < 1e9)
  return sayable ? String(value).slice(0, 40) : ''
}

/** What a key wants, in words. */
function expected(key: string, problem: SchemaProblem): string {
  if (problem.code === 'too_big' && problem.message.includes('characters')) return 'something shorter'
  if (problem.code === 'custom') return 'text without invisible control characters'
  const known: Record<string, string> = {
    castOn: 'a number of stitches such as 23, or a rule such as { multiple: 6, plus: 1 }',
    'castOn.multiple': 'a whole number from 1',
    'castOn.plus': 'a whole number from 0',
    worked: 'flat or round',
    firstSide: 'RS or WS',
    growing: 'true or false',
    draft: 'true or false',
    doubleYarnOver: 'two or one',
    bindOffLeaves: 'extra or first',
    level: 'Basic, Easy, Intermediate or Complex',
    needle: 'a size in millimetres, such as 4.5',
    held: 'a whole number of stitches',
    title: 'a name, in quotes if it begins with a sign',
    corrections: 'a list of { version, date, change, rows }, where rows such as [3, 5] may be left out',
    source: 'a title, or { title, author, year, place }',
  }
  return (
    known[key] ??
    known[key.split('.')[0] ?? ''] ??
    (problem.code === 'too_big' ? 'something shorter' : 'text, in quotes if it looks like a number')
  )
}

function spanOf(document: Document, path: readonly string[]): Span | null {
  for (let length = path.length; length > 0; length--) {
    const node: unknown = document.getIn(
      path.slice(0, length).map((p) => (/^\d+$/.test(p) ? Number(p) : p)),
      true,
    )
    const range = (node as { range?: [number, number, number] | null } | undefined)?.range
    if (range) return { start: range[0], end: range[1] }
  }
  return null
}

function keySpan(document: Document, root: YAMLMap, path: readonly string[]): Span | null {
  const parent: unknown = path.length === 1 ? root : document.getIn(path.slice(0, -1), true)
  if (!isMap(parent)) return null
  const pair = parent.items.find(
    (item) => String((item.key as { value?: unknown } | null)?.value) === path.at(-1),
  )
  const range = (pair?.key as { range?: [number, number, number] } | null)?.range
  return range ? { start: range[0], end: range[1] } : null
}

/** The reader's own reason for broken YAML, in a knitter's words. */
function plainReason(code: string): string {
  const reasons: Record<string, string> = {
    BAD_INDENT: 'the spaces at the start of this line do not line up with the lines around it',
    TAB_AS_INDENT: 'a tab stands at the start of this line; use spaces',
    MISSING_CHAR: 'a quote or a bracket is opened and not closed',
    DUPLICATE_KEY: 'this key stands twice',
    BLOCK_AS_IMPLICIT_KEY: 'a colon makes this line look like a key; put the text in quotes',
    MULTILINE_IMPLICIT_KEY: 'a colon is missing, or the line is broken in the middle of a key',
    BAD_SCALAR_START: 'the text begins with a sign that has a meaning of its own here; put it in quotes',
    UNEXPECTED_TOKEN: 'something stands here that does not belong; perhaps a quote is missing',
    IMPOSSIBLE: 'this cannot be read',
  }
  return reasons[code] ?? 'the file is not put together as keys and values'
}
