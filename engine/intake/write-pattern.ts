import { Document, type YAMLMap } from 'yaml'
import { printRow } from '../notation/index.ts'
import type { CastOn, Pattern, Row } from '../pattern/index.ts'
import type { Draft } from './draft.ts'
import { checkDraft, writtenRows } from './read-draft.ts'

/** What a pattern file says, in the order in which its keys are written. */
type Filed = Readonly<Record<string, unknown>>

const castOnValue = (castOn: CastOn): unknown =>
  'fixed' in castOn ? castOn.fixed : { multiple: castOn.multiple, plus: castOn.plus }

/** Keys at what a file without them means are left out. */
const unless = <T>(usual: T, value: T): T | undefined => (value === usual ? undefined : value)

const listed = (words: readonly string[]): readonly string[] | undefined =>
  words.length === 0 ? undefined : words

interface Written {
  readonly setUp: readonly string[]
  readonly rows: readonly string[]
  readonly edges: { readonly before: string; readonly after: string }
}

function filed(pattern: Pattern, { setUp, rows, edges }: Written): Filed {
  const { about } = pattern
  const edge = Object.entries(edges).filter(([, words]) => words.trim() !== '')
  return {
    title: pattern.title,
    castOn: castOnValue(pattern.castOn),
    worked: unless('flat', pattern.worked),
    firstSide: unless('RS', pattern.firstSide),
    growing: unless(false, pattern.growing),
    draft: unless(false, pattern.draft),
    doubleYarnOver: unless('two', pattern.doubleYarnOver),
    bindOffLeaves: unless('extra', pattern.bindOffLeaves),
    held: unless(0, pattern.held),
    edges: edge.length > 0 ? Object.fromEntries(edge) : undefined,
    setUp: listed(setUp),
    rows,
    also: listed(about.also),
    notToConfuseWith: listed(about.notToConfuseWith),
    tradition: about.tradition,
    level: about.level,
    teaches: listed(about.teaches),
    source: about.source,
    contributor: about.contributor,
    licence: about.licence,
    tested: about.tested,
    version: about.version,
    corrections: about.corrections.length > 0 ? about.corrections : undefined,
    yarn: about.yarn,
    needle: about.needle,
    blocked: about.blocked,
    unblocked: about.unblocked,
    notes: about.notes,
  }
}

/** Written one key a line, rows one a line however long, so that two versions can be compared line by line. */
function textOf(keys: Filed): string {
  const said = Object.fromEntries(Object.entries(keys).filter(([, value]) => value !== undefined))
  const document = new Document(said)
  for (const key of ['castOn', 'edges', 'source', 'teaches', 'also', 'notToConfuseWith']) {
    const node = document.get(key, true) as YAMLMap | undefined
    if (node && typeof node === 'object') node.flow = true
  }
  return document.toString({ lineWidth: 0, flowCollectionPadding: true })
}

const wordsOf = (row: Row): string => (row.text === '' ? printRow(row.items) : row.text)

/** A pattern as the text of a pattern file. Read back it is the same pattern, its rows as they were written. */
export function writePattern(pattern: Pattern): string {
  const { before, after } = pattern.edges
  return textOf(
    filed(pattern, {
      setUp: pattern.setUp.map(wordsOf),
      rows: pattern.rows.map(wordsOf),
      edges: { before: printRow(before), after: printRow(after) },
    }),
  )
}

/** A draft as the text of a pattern file, sound or not. One that is not proved says so by `draft: true`. */
export function writeDraft(draft: Draft): string {
  const { pattern, sound } = checkDraft(draft)
  const rows = writtenRows(draft.rows).map((row) => row.trim())
  const setUp = writtenRows(draft.setUp).map((row) => row.trim())
  return textOf(filed({ ...pattern, draft: !sound }, { setUp, rows, edges: draft.edges }))
}
