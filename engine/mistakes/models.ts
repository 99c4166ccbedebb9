import type { Edit } from './edits.ts'
import { joined } from './edits.ts'
import type { Mistake, MistakeKind } from './mistake.ts'
import type { Model } from './model.ts'
import { decreaseModels } from './models/decreases.ts'
import { endModels } from './models/ends.ts'
import { markerModels } from './models/markers.ts'
import { passingModels } from './models/passing.ts'
import { rowModels } from './models/rows.ts'
import { yarnOverModels } from './models/yarn-overs.ts'
import type { Plan, RowPlan } from './plan.ts'

/** Every kind of mistake, each once. */
export const models: readonly Model[] = [
  ...yarnOverModels,
  ...passingModels,
  ...decreaseModels,
  ...endModels,
  ...markerModels,
  ...rowModels,
]

const byKind = new Map(models.map((model) => [model.kind, model]))

/** The model of a kind. Throws on an unknown kind: a programming error. */
export function modelOf(kind: MistakeKind): Model {
  const model = byKind.get(kind)
  if (!model) throw new Error(`no mistake is called '${kind}'`)
  return model
}

/** The steps that stand where this one stands, one in every repeat of the row; empty for what stands outside. */
function alike(row: RowPlan, step: number): number[] {
  const deed = row.acts[step]?.deed
  if (deed?.do !== 'stitch' || deed.repeat === null) return []
  return row.acts.flatMap((act, i) =>
    act.deed.do === 'stitch' &&
    act.deed.repeat !== null &&
    act.deed.position === deed.position &&
    act.deed.stitch === deed.stitch
      ? [i]
      : [],
  )
}

/** Every mistake that can be made in a row, in the order of the models. Some of them turn out to change nothing. */
export function mistakesIn(plan: Plan, rowIndex: number): Mistake[] {
  const row = plan.rows[rowIndex]
  if (!row?.followed) return []
  const found: Mistake[] = []
  for (const model of models) {
    for (const { step, other = null } of model.spots(plan, row)) {
      const once: Mistake = { kind: model.kind, row: rowIndex, step, other, everywhere: false }
      found.push(once)
      const all = model.misread && step !== null ? alike(row, step) : []
      if (all.length > 1 && all[0] === step) found.push({ ...once, everywhere: true })
    }
  }
  return found
}

/** The edits that make a mistake; null where it cannot be made there. */
export function editsOf(plan: Plan, mistake: Mistake): readonly Edit[] | null {
  const model = modelOf(mistake.kind)
  if (!mistake.everywhere) return model.edits(plan, mistake)
  const row = plan.rows[mistake.row]
  if (!row || mistake.step === null) return null
  const every = alike(row, mistake.step).map((step) =>
    model.edits(plan, { ...mistake, step, everywhere: false }),
  )
  const edit = every.some((one) => one === null)
    ? null
    : joined(
        mistake.row,
        every.filter((one) => one !== null),
      )
  return edit && [edit]
}
