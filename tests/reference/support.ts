import { readFileSync } from 'node:fs'
import type { Issue } from '../../engine/base/index.ts'
import { type Proof, prove } from '../../engine/counts/index.ts'
import { readPattern } from '../../engine/intake/index.ts'
import { type WorkedPattern, work } from '../../engine/needles/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'

export interface Rule {
  readonly multiple: number
  readonly plus: number
}

/** A pattern file in the making: what the outside facts give, and nothing that only the engine could know. */
export interface Draft {
  readonly castOn: Rule | number
  readonly rows: readonly string[]
  readonly setUp?: readonly string[]
  readonly firstSide?: 'RS' | 'WS' | null
  readonly worked?: 'flat' | 'round'
  readonly growing?: boolean
  /** Plain edge stitches, both sides together; an even number. */
  readonly edgeStitches?: number
}

/** The facts in one of this folder's files; `Fact` names what the file holds. */
export const facts = <Fact>(file: string): Fact =>
  JSON.parse(readFileSync(new URL(file, import.meta.url), 'utf8')) as Fact

/** The draft as a pattern file. A JSON string is a YAML string too, so rows may hold any sign. */
export function fileOf(draft: Draft): string {
  const { castOn } = draft
  const half = (draft.edgeStitches ?? 0) / 2
  const list = (rows: readonly string[]): string[] => rows.map((row) => `  - ${JSON.stringify(row)}`)
  return [
    'title: Outside check',
    typeof castOn === 'number'
      ? `castOn: ${castOn}`
      : `castOn: { multiple: ${castOn.multiple}, plus: ${castOn.plus} }`,
    ...(draft.worked === 'round' ? ['worked: round'] : []),
    ...(draft.firstSide === 'WS' ? ['firstSide: WS'] : []),
    ...(draft.growing ? ['growing: true'] : []),
    ...(half > 0 ? [`edges: { before: k${half}, after: k${half} }`] : []),
    ...(draft.setUp?.length ? ['setUp:', ...list(draft.setUp)] : []),
    'rows:',
    ...list(draft.rows),
    '',
  ].join('\n')
}

export const errors = (issues: readonly Issue[]): readonly Issue[] =>
  issues.filter((issue) => issue.severity === 'error')

/** Reads the draft; the problems of reading come along, so that a test can show them. */
export function read(draft: Draft): { pattern: Pattern; issues: readonly Issue[] } {
  const { pattern, issues } = readPattern({ name: 'outside-check.yaml', text: fileOf(draft) })
  if (!pattern) throw new Error(`not read: ${JSON.stringify(issues)}\n${fileOf(draft)}`)
  return { pattern, issues }
}

/** Reads and proves the draft. `problems` holds the errors of both. */
export function proved(draft: Draft): { pattern: Pattern; proof: Proof; problems: readonly Issue[] } {
  const { pattern, issues } = read(draft)
  const proof = prove(pattern)
  return { pattern, proof, problems: errors([...issues, ...proof.issues]) }
}

/** The draft worked loop by loop. */
export function worked(draft: Draft, repeats = 1): WorkedPattern {
  const { pattern } = read(draft)
  const done = work(pattern, repeats)
  if (!done.worked) throw new Error(`not worked: ${JSON.stringify(done.issues)}\n${fileOf(draft)}`)
  return done.worked
}

/** Loops on the needle after each row, set-up rows first. */
export const loopsAfterRows = (done: WorkedPattern): number[] =>
  done.rows.map((row) => row.after.length + row.unworked.length)

/** The first pattern row that an error speaks of; null where there is none. */
export function firstFailingRow(problems: readonly Issue[]): number | null {
  const rows = problems.flatMap((issue) => (issue.row === null ? [] : [issue.row]))
  return rows.length === 0 ? null : Math.min(...rows)
}
