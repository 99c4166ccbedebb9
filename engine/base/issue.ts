import type { IssueCode } from './sentences.ts'
import type { Span } from './source.ts'

export type Severity = 'error' | 'warning'

/** A problem as data: what (code), where, and the values that its sentences need. Made into words by `sentenceOf`. */
export interface Issue {
  readonly code: IssueCode
  readonly severity: Severity
  /** Where it stands in the text; null when the whole text is meant. */
  readonly span: Span | null
  /** The pattern row that it speaks of; null outside rows. */
  readonly row: number | null
  readonly values: Readonly<Record<string, string | number>>
}
