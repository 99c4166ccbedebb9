import type { Act } from './acts.ts'
import type { Plan, RowPlan } from './plan.ts'

/** A stretch of a row's acts replaced: `remove` acts from `at` on by others. */
export interface Change {
  readonly at: number
  readonly remove: number
  readonly put: readonly Act[]
}

/** What a mistake changes in a plan. */
export type Edit =
  | { readonly do: 'change'; readonly row: number; readonly changes: readonly Change[] }
  /** Other acts for the whole row. */
  | {
      readonly do: 'acts'
      readonly row: number
      readonly acts: readonly Act[]
      /** The markers are passed without a look at them. */
      readonly blind: boolean
      /** For the marker after each section: the row by which it is moved; null where it is this row. */
      readonly like: readonly number[] | null
    }
  | { readonly do: 'skip'; readonly row: number }
  /** From this row on the other side faces the knitter. */
  | { readonly do: 'flip'; readonly row: number }
  | { readonly do: 'castOn'; readonly count: number }

export const change = (row: number, at: number, remove: number, ...put: Act[]): Edit => ({
  do: 'change',
  row,
  changes: [{ at, remove, put }],
})

/** A row's acts after the changes of these edits. */
export function changedActs(row: RowPlan, edits: readonly Edit[]): readonly Act[] {
  let acts: readonly Act[] = row.acts
  for (const edit of edits) {
    if (!('row' in edit) || edit.row !== row.index) continue
    if (edit.do === 'acts') acts = edit.acts
    else if (edit.do === 'change') acts = withChanges(acts, edit.changes)
  }
  return acts
}

/** Changes are told by places in the right row: the last comes first, so that the places still hold. */
function withChanges(acts: readonly Act[], changes: readonly Change[]): Act[] {
  const found = [...acts]
  for (const { at, remove, put } of [...changes].sort((a, b) => b.at - a.at)) found.splice(at, remove, ...put)
  return found
}

/** Whether all changes of a row take just the loops, section by section, that the right acts took. */
export function takesAlike(row: RowPlan, edits: readonly Edit[]): boolean {
  for (const edit of edits) {
    if (edit.do !== 'change') return false
    if (edit.row !== row.index) continue
    for (const { at, remove, put } of edit.changes) if (!alikeAt(row, at, remove, put)) return false
  }
  return true
}

function alikeAt(row: RowPlan, at: number, remove: number, put: readonly Act[]): boolean {
  let more = 0
  let section: number | null = null
  for (const [sign, acts] of [[1, put] as const, [-1, row.acts.slice(at, at + remove)] as const])
    for (const act of acts) {
      if (act.takes === 0) continue
      if (act.open || (section !== null && section !== act.section)) return false
      section = act.section
      more += sign * act.takes
    }
  return more === 0
}

/** The right counts with what the changes of the row make more or fewer. */
export function countsWith(row: RowPlan, edits: readonly Edit[]): number[] {
  const counts = [...row.makes]
  const add = (act: Act | undefined, sign: number) => {
    if (act) counts[act.section] = (counts[act.section] ?? 0) + sign * act.makes
  }
  for (const edit of edits) {
    if (edit.do !== 'change' || edit.row !== row.index) continue
    for (const { at, remove, put } of edit.changes) {
      for (const act of put) add(act, 1)
      for (let i = at; i < at + remove; i++) add(row.acts[i], -1)
    }
  }
  return counts
}

/** The sections in which the changes of a row take something away or put something in. */
export function sectionsTouched(row: RowPlan, edits: readonly Edit[]): Set<number> {
  const found = new Set<number>()
  for (const edit of edits) {
    if (edit.do !== 'change' || edit.row !== row.index) continue
    for (const { at, remove, put } of edit.changes)
      for (const act of [...put, ...row.acts.slice(at, at + remove)]) found.add(act.section)
  }
  return found
}

/** Several changes of one row as one edit. Null where there is none, or where they are not of that sort. */
export function joined(row: number, edits: readonly (readonly Edit[])[]): Edit | null {
  const changes: Change[] = []
  for (const edit of edits.flat()) {
    if (edit.do !== 'change' || edit.row !== row) return null
    changes.push(...edit.changes)
  }
  return changes.length === 0 ? null : { do: 'change', row, changes }
}

/** The row's acts that stand at a step and beside it. */
export function actAt(plan: Plan, row: number, step: number | null): Act | undefined {
  return step === null ? undefined : plan.rows[row]?.acts[step]
}

/** The last row that edits touch. */
export const lastRowOf = (edits: readonly Edit[]): number =>
  edits.reduce((last, edit) => Math.max(last, edit.do === 'castOn' ? -1 : edit.row), -1)
