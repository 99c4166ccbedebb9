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
