import type { Issue } from './issue.ts'
import { countWordings } from './wordings/counts.ts'
import { fileWordings } from './wordings/files.ts'
import { rowWordings } from './wordings/rows.ts'
import type { Wording } from './wordings/wording.ts'

/** A problem in words: what is wrong and why, and what to try. */
export interface Sentence {
  readonly message: string
  /** What to try, or null where the message says it all. */
  readonly hint: string | null
}

const wordings = { ...fileWordings, ...rowWordings, ...countWordings }

export type IssueCode = keyof typeof wordings

/** The row that a problem speaks of, to begin its sentence with. */
export function rowName(row: number): string {
  return row >= 1 ? `Row ${row}` : 'A set-up row'
}

const countCodes: readonly IssueCode[] = [
  'row-leaves-stitches',
  'row-needs-stitches',
  'repeat-does-not-fit',
  'count-not-back',
  'row-too-short',
  'row-cannot-be-worked',
]

/** A problem in words. The row is named where the sentence is about the whole row. */
export function sentenceOf(issue: Issue): Sentence {
  const wording: Wording = wordings[issue.code]
  const message = wording.message(issue.values)
  const named = issue.row !== null && countCodes.includes(issue.code)
  const full = named
    ? `${rowName(issue.row ?? 0)}${issue.code === 'row-too-short' ? ': ' : ' '}${message}`
    : message
  return { message: full, hint: wording.hint?.(issue.values) ?? null }
}

/** Every kind of problem with what it is about, for the page of problems. */
export const problemKinds: readonly { readonly code: IssueCode; readonly about: string }[] = Object.entries(
  wordings,
).map(([code, wording]) => ({ code: code as IssueCode, about: wording.about }))
