import { type Document, isMap, parseDocument, visit } from 'yaml'
import type { z } from 'zod'
import { excerpt, limits, lineAndColumn, printable, type Source, type Span } from '../base/index.ts'
import type { ClassPlan } from '../lesson/index.ts'
import { closestWord } from '../notation/index.ts'
import {
  type ClassKey,
  classKeys,
  classSchema,
  innerKeys,
  planOf,
  savedPlan,
  wanted,
} from './class-file-schema.ts'

/** Something in a class file that is not as it should be. */
export interface ClassProblem {
  readonly span: Span
  /** From 1, as in every problem. */
  readonly line: number
  readonly column: number
  readonly message: string
  /** What to try; null where the message says it. */
  readonly hint: string | null
}

export interface ClassReading {
  /** What could be read; null where the file is not a class file at all. */
  readonly plan: ClassPlan | null
  readonly problems: readonly ClassProblem[]
}

/** Patterns that a class may choose from, by address. */
export type KnownPatterns = ReadonlyMap<string, { readonly proved: boolean }>

type Tell = (span: Span | null, message: string, hint?: string | null) => void

/** Reads a class file. Collects every problem; what is sound is kept, and nothing is thrown. */
export function readClass(source: Source, known: KnownPatterns | null = null): ClassReading {
  const problems: ClassProblem[] = []
  const tell: Tell = (span, message, hint = null) => {
    const at = span ?? { start: 0, end: 1 }
    problems.push({ span: at, ...lineAndColumn(source.text, at.start), message: printable(message), hint })
  }
  const document = documentIn(source.text, tell)
  if (!document) return { plan: null, problems }
  const plain = document.toJS({ maxAliasCount: 0 }) as Record<string, unknown>
  const parsed = classSchema.safeParse(plain)
  if (!parsed.success) for (const issue of parsed.error.issues) tellIssue(issue, document, tell)
  const plan = parsed.success ? planOf(parsed.data) : savedPlan(plain)
  if (!document.has('title')) tell(null, 'the class has no `title`', 'write `title: …`')
  tellPatterns(plain.patterns, document, known, tell)
  return { plan, problems: problems.toSorted((a, b) => a.span.start - b.span.start) }
}

/** The text as keys and values; null, with the reason told, where it is something else. */
function documentIn(text: string, tell: Tell): Document | null {
  if (text.length > limits.fileCharacters) {
    tell(
      null,
      `the file has ${text.length} characters, at most ${limits.fileCharacters} are read`,
      'is this the right file?',
    )
    return null
  }
  const control = /[^\P{Cc}\t\n\r]|[\u202a-\u202e\u2066-\u2069]/u.exec(text)
  if (control) {
    tell(
      { start: control.index, end: control.index + 1 },
      'an invisible control character stands here',
      'delete it',
    )
    return null
  }
  const document = parseDocument(text, { uniqueKeys: true, prettyErrors: false, strict: true })
  const before = document.errors.length
  for (const { pos, code } of document.errors)
    tell({ start: pos[0], end: pos[1] }, reasons[code] ?? 'the file is not put together as keys and values')
  let aliases = 0
  visit(document, {
    Alias: (_key, { range }) => {
      aliases += 1
      tell(
        range ? { start: range[0], end: range[1] } : null,
        'a text cannot begin with * here',
        'put it in quotes',
      )
    },
  })
  if (before + aliases > 0) return null
  if (isMap(document.contents)) return document
  tell(
    null,
    'this is not a class file: it has no keys such as title and patterns',
    'write `title: …` and `patterns:`',
  )
  return null
}

const reasons: Readonly<Record<string, string>> = {
  BAD_INDENT: 'the spaces at the start of this line do not line up with the lines around it',
  TAB_AS_INDENT: 'a tab stands at the start of this line; use spaces',
  MISSING_CHAR: 'a quote or a bracket is opened and not closed',
  DUPLICATE_KEY: 'this key stands twice',
  BLOCK_AS_IMPLICIT_KEY: 'a colon makes this line look like a key; put the text in quotes',
}

type Path = readonly PropertyKey[]

/** Where a value stands, or else what it stands in. */
function spanAt(document: Document, path: Path): Span | null {
  for (let length = path.length; length > 0; length--) {
    const node = document.getIn(path.slice(0, length), true) as
      | { range?: [number, number, number] | null }
      | undefined
    if (node?.range) return { start: node.range[0], end: node.range[1] }
  }
  return null
}

function keySpan(document: Document, path: Path, key: string): Span | null {
  const parent: unknown = path.length === 0 ? document.contents : document.getIn(path, true)
  const pair = isMap(parent)
    ? parent.items.find((item) => String((item.key as { value?: unknown } | null)?.value) === key)
    : undefined
  const range = (pair?.key as { range?: [number, number, number] } | null | undefined)?.range
  return range ? { start: range[0], end: range[1] } : null
}

type SchemaIssue = z.core.$ZodIssue

function tellIssue(issue: SchemaIssue, document: Document, tell: Tell): void {
  const [top] = issue.path.map(String)
  if (issue.code === 'unrecognized_keys') {
    const names = top === undefined ? classKeys : (innerKeys[top] ?? [])
    for (const key of issue.keys) {
      const meant = closestWord(key, names)
      const hint = meant ? `did you mean \`${meant}\`?` : null
      tell(keySpan(document, issue.path, key), `there is no key \`${key.slice(0, 60)}\` here`, hint)
    }
    return
  }
  // A choice between two shapes tells of neither: the second, with keys, is the one that was meant.
  const inner = issue.code === 'invalid_union' ? (issue.errors.at(-1) ?? []) : []
  if (inner.some(({ path, code }) => path.length > 0 || code === 'unrecognized_keys')) {
    for (const one of inner) tellIssue({ ...one, path: [...issue.path, ...one.path] }, document, tell)
    return
  }
  const key = issue.path
    .map((step) => (typeof step === 'number' ? `entry ${step + 1}` : String(step)))
    .join(', ')
  tell(spanAt(document, issue.path), `\`${key}\` wants ${wanted[top as ClassKey] ?? 'something else'}`)
}

const slugIn = (entry: unknown): unknown =>
  typeof entry === 'object' && entry !== null ? (entry as { pattern?: unknown }).pattern : entry

/** Patterns that the class names and the library does not have, or has as a draft only. */
function tellPatterns(named: unknown, document: Document, known: KnownPatterns | null, tell: Tell): void {
  if (named === undefined || (Array.isArray(named) && named.length === 0)) {
    const hint = 'write `patterns:` and below it `- { pattern: reed-bed, repeats: 3 }`'
    tell(spanAt(document, ['patterns']), 'the class has no patterns', hint)
  }
  if (!Array.isArray(named) || !known) return
  for (const [i, entry] of named.entries()) {
    const slug = slugIn(entry)
    if (typeof slug !== 'string' || known.get(slug)?.proved) continue
    const span = spanAt(document, ['patterns', i, 'pattern'])
    const meant = closestWord(slug, [...known.keys()])
    if (known.has(slug))
      tell(span, `\`${slug}\` is a draft that is not proved, so no counts of it can be printed`)
    else
      tell(
        span,
        `there is no pattern \`${slug}\` in the library`,
        meant ? `did you mean \`${meant}\`?` : null,
      )
  }
}

/** The problems of a class file as text: place and sentence, the line with a caret, what to try. */
export const classProblemText = ({ name, text }: Source, problems: readonly ClassProblem[]): string =>
  problems
    .map(({ span, line, column, message, hint }) => {
      const shown = excerpt(text, span)
      const lines = [`${name}:${line}:${column}: error: ${message}`, `  ${shown.line}`, `  ${shown.caret}`]
      return `${[...lines, ...(hint === null ? [] : [`  ${hint}`])].join('\n')}\n`
    })
    .join('')
