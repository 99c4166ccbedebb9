import type { Issue, Source } from '../base/index.ts'
import { type Proof, prove } from '../counts/index.ts'
import type { Pattern } from '../pattern/index.ts'
import { readPattern } from './read-pattern.ts'

export interface Checked {
  readonly pattern: Pattern | null
  /** Null where there is nothing to prove: the file cannot be read, or a row cannot. */
  readonly proof: Proof | null
  readonly issues: readonly Issue[]
  /** No error at all. */
  readonly sound: boolean
}

/**
 * Reads a pattern file and proves it. A row with a word that is not understood is told as that; its count is then not
 * told as wrong as well, since it would only be wrong for the missing word.
 */
export function checkPattern(source: Source): Checked {
  const { pattern, issues, castOnSpan } = readPattern(source)
  const isError = (issue: Issue): boolean => issue.severity === 'error'
  if (!pattern || pattern.rows.length === 0)
    return { pattern, proof: null, issues, sound: !issues.some(isError) && pattern !== null }
  const unread = new Set(issues.flatMap((issue) => (isError(issue) && issue.row !== null ? [issue.row] : [])))
  const proof = prove(pattern, { castOnSpan, unread })
  const all = [...issues, ...proof.issues]
  return { pattern, proof, issues: all, sound: !all.some(isError) }
}
