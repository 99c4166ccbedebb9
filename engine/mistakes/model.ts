import { type Act, stitchOf } from './acts.ts'
import type { Edit } from './edits.ts'
import type { Mistake, MistakeKind } from './mistake.ts'
import type { Plan, RowPlan } from './plan.ts'

/** Where a mistake can happen in a row. */
export interface Spot {
  readonly step: number | null
  readonly other?: number
}

/** One kind of mistake. */
export interface Model {
  readonly kind: MistakeKind
  /** What happened, for a reader: 'a yarn over was left out'. */
  readonly name: string
  /**
   * How often learners make it where it can happen, from 1 (seldom) to 5 (all the time). Common practice, no source.
   */
  readonly howOften: 1 | 2 | 3 | 4 | 5
  /** A row misread makes it in every repeat alike. */
  readonly misread: boolean
  readonly spots: (plan: Plan, row: RowPlan) => readonly Spot[]
  /** The edits that make it; null where it cannot happen there. */
  readonly edits: (plan: Plan, mistake: Mistake) => readonly Edit[] | null
}

/** Whether an act's stitch passes a test. */
export const hasStitch = (act: Act | undefined, test: (id: string) => boolean): act is Act => {
  const id = stitchOf(act)
  return id !== null && test(id)
}

export const together = (a: Act | undefined, b: Act | undefined): boolean =>
  a !== undefined && b !== undefined && a.section === b.section

/** A model whose mistake replaces the act at its step by others, or by none. */
export function atStep(
  model: Pick<Model, 'kind' | 'name' | 'howOften'> & {
    readonly misread?: boolean
    readonly where: (
      act: Act,
      before: Act | undefined,
      after: Act | undefined,
      plan: Plan,
      row: RowPlan,
      step: number,
    ) => boolean
    readonly put: (act: Act, before: Act | undefined, after: Act | undefined) => readonly Act[] | null
    /** Acts taken away from the step on. */
    readonly remove?: number
    /** The step at which the stretch begins, counted from the mistake's step. */
    readonly from?: number
  },
): Model {
  const { kind, name, howOften, where, put, remove = 1, from = 0 } = model
  return {
    kind,
    name,
    howOften,
    misread: model.misread ?? false,
    spots: (plan, row) =>
      row.acts.flatMap((act, step) => {
        const [before, after] = [row.acts[step - 1], row.acts[step + 1]]
        return where(act, before, after, plan, row, step) && put(act, before, after) ? [{ step }] : []
      }),
    edits: (plan, { row, step }) => {
      const acts = plan.rows[row]?.acts
      const act = step === null ? undefined : acts?.[step]
      if (!acts || step === null || !act) return null
      const others = put(act, acts[step - 1], acts[step + 1])
      return others && [{ do: 'change', row, changes: [{ at: step + from, remove, put: others }] }]
    },
  }
}

/** The loops that a step of the right row takes, as the worked pattern has them. */
export const takenAt = (plan: Plan, row: number, step: number) =>
  (plan.worked.rows[row]?.steps[step]?.taken ?? []).map((id) => plan.worked.loops[id])
