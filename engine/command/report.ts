import { type Issue, lineAndColumn, sentenceOf } from '../base/index.ts'
import type { RowCount } from '../counts/index.ts'
import { told } from '../intake/index.ts'
import type { CastOn } from '../pattern/index.ts'
import type { CheckedFile } from './files.ts'

/** A problem as the outside contract has it. */
interface ProblemEntry {
  readonly severity: 'error' | 'warning'
  readonly code: string
  readonly row: number | null
  readonly line: number
  readonly column: number
  readonly message: string
}

interface CountEntry {
  readonly row: number
  readonly side: 'RS' | 'WS'
  readonly before: { perRepeat: number; plus: number }
  readonly after: { perRepeat: number; plus: number }
}

export interface CheckEntry {
  readonly file: string
  readonly ok: boolean
  readonly castOn: CastOn | null
  readonly derivedCastOn: CastOn | null
  /** Edge stitches of one row, which the counts include and the cast-on leaves out. */
  readonly edges: number
  readonly setUp: readonly CountEntry[]
  readonly rows: readonly CountEntry[]
  readonly problems: readonly ProblemEntry[]
}

const withHint = (issue: Issue): string => {
  const { message, hint } = sentenceOf(issue)
  return hint === null
    ? message
    : `${message}${/[.?!]$/.test(message) ? '' : '.'} ${hint.charAt(0).toUpperCase()}${hint.slice(1)}`
}

const countEntry = ({ row, side, before, after }: RowCount): CountEntry => ({ row, side, before, after })

/** One file's entry in `check --json`. */
export function checkEntry({ source, pattern, proof, issues, sound }: CheckedFile): CheckEntry {
  return {
    file: source.name,
    ok: sound,
    castOn: pattern?.castOn ?? null,
    derivedCastOn: proof?.derived ?? null,
    edges: proof?.edges ?? 0,
    setUp: proof?.setUp.map(countEntry) ?? [],
    rows: proof?.rows.map(countEntry) ?? [],
    problems: told(issues).map((issue) => ({
      severity: issue.severity,
      code: issue.code,
      row: issue.row,
      ...lineAndColumn(source.text, issue.span?.start ?? 0),
      message: withHint(issue),
    })),
  }
}
