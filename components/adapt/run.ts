import {
  type Adaptation,
  type Adapted,
  above,
  adaptOnce,
  begun,
  beside,
  type Change,
  further,
  type Refusal,
} from '../../engine/adapt/index.ts'
import type { MakeOver } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'

/** What came of one step. */
export type Outcome =
  | { readonly came: 'done'; readonly changes: readonly Change[] }
  /** `before`: the pattern that it was asked of. */
  | { readonly came: 'refused'; readonly refusal: Refusal; readonly before: Pattern }
  | { readonly came: 'unknown' }
  /** It wants another pattern that is not there. */
  | { readonly came: 'missing' }
  /** A step before it stands in the way. */
  | { readonly came: 'waits' }

export interface Run {
  /** As far as the steps go. */
  readonly done: Adapted
  readonly outcomes: readonly Outcome[]
}

/** The library's other patterns by slug, as far as they were fetched. */
export type Others = ReadonlyMap<string, Pattern>

/** A pattern made over step by step. The first step that cannot be done ends it; those behind it wait. */
export function run(pattern: Pattern, steps: readonly MakeOver[], others: Others): Run {
  let done = begun(pattern)
  const outcomes: Outcome[] = []
  for (const step of steps) {
    const stuck = outcomes.some(({ came }) => came !== 'done')
    const next = stuck ? 'waits' : tried(done, step, others)
    if (typeof next === 'string') outcomes.push({ came: next })
    else if (!next.ok) outcomes.push({ came: 'refused', refusal: next.refusal, before: done.pattern })
    else {
      outcomes.push({ came: 'done', changes: next.changes.slice(done.changes.length) })
      done = next
    }
  }
  return { done, outcomes }
}

function tried(done: Adapted, step: MakeOver, others: Others): Adaptation | 'unknown' | 'missing' {
  if (step.kind === 'unknown') return 'unknown'
  if (step.kind === 'request') return further(done, (now, kept) => adaptOnce(now, step.request, kept))
  const other = others.get(step.slug)
  if (!other) return 'missing'
  return further(done, (now) => {
    if (step.where === 'beside') return beside(now, other)
    return step.where === 'above' ? above(now, other) : above(other, now)
  })
}
