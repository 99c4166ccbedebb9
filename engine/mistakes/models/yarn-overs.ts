import { fallBefore, instead, moved } from '../acts.ts'
import { isDecrease, isPlain, isYarnOver, showsKnit, throughBack } from '../kin.ts'
import { atStep, hasStitch, type Model, takenAt, together } from '../model.ts'
import type { Plan, RowPlan } from '../plan.ts'

const single = (id: string): boolean => id === 'yo'

/** Whether the first loop that a step takes is a yarn over of a row before. */
function meetsYarnOver(plan: Plan, row: RowPlan, step: number): boolean {
  const loop = takenAt(plan, row.index, step)[0]
  return loop !== undefined && isYarnOver(loop.stitch)
}

/** Whether any of them is one that is to stay open. */
function opensYarnOver(plan: Plan, row: RowPlan, step: number): boolean {
  const right = plan.worked.rows[row.index]?.steps[step]
  const made = right?.made.map((id) => plan.worked.loops[id]).find((loop) => loop !== undefined)
  return takenAt(plan, row.index, step).some((loop) => {
    if (!loop || loop.mount === 'turned' || !isYarnOver(loop.stitch) || !made) return false
    return made.parents.includes(loop.id) && made.twisted[made.parents.indexOf(loop.id)] === false
  })
}

const nearEnd = (row: RowPlan, step: number): boolean => step < 3 || step >= row.acts.length - 3

const hasYarnOvers = (row: RowPlan): boolean => row.acts.some((act) => hasStitch(act, isYarnOver))

const jumped: Model = {
  kind: 'yarn over jumped the marker',
  name: 'a yarn over slipped over the marker beside it',
  howOften: 4,
  misread: false,
  spots: (_, row) =>
    row.acts.flatMap((act, step) => {
      if (!hasStitch(act, single)) return []
      const beside = [row.acts[step - 1], row.acts[step + 1]]
      return beside.flatMap((one) =>
        one && one.section !== act.section ? [{ step, other: one.section }] : [],
      )
    }),
  edits: (plan, { row, step, other }) => {
    const act = step === null ? undefined : plan.rows[row]?.acts[step]
    if (step === null || !act || other === null) return null
    return [{ do: 'change', row, changes: [{ at: step, remove: 1, put: [moved(act, other)] }] }]
  },
}

const madeUpLater: Model = {
  kind: 'yarn over made up later',
  name: 'a yarn over was left out and a stitch made for it in the next row',
  howOften: 2,
  misread: false,
  spots: (plan, row) =>
    row.acts.flatMap((act, step) =>
      hasStitch(act, single) && nextAlone(plan, row.index, step) ? [{ step }] : [],
    ),
  edits: (plan, { row, step }) => {
    const next = step === null ? null : nextAlone(plan, row, step)
    const act = next && plan.rows[next.row]?.acts[next.step]
    if (!next || !act || step === null) return null
    const make = instead(act, hasStitch(act, showsKnit) ? 'm1' : 'm1p')
    return [
      { do: 'change', row, changes: [{ at: step, remove: 1, put: [] }] },
      { do: 'change', row: next.row, changes: [{ at: next.step, remove: 1, put: [make] }] },
    ]
  },
}

/** The plain step of the next row that takes just the loop which a step makes. */
export function nextAlone(plan: Plan, row: number, step: number): { row: number; step: number } | null {
  const made = plan.worked.rows[row]?.steps[step]?.made
  const next = made?.length === 1 && made[0] !== undefined ? plan.takenBy.get(made[0]) : undefined
  if (!next || next.row !== row + 1) return null
  const act = plan.rows[next.row]?.acts[next.step]
  return act?.takes === 1 && hasStitch(act, isPlain) ? next : null
}

export const yarnOverModels: readonly Model[] = [
  atStep({
    kind: 'yarn over left out',
    name: 'a yarn over was left out',
    howOften: 5,
    misread: true,
    where: (act) => hasStitch(act, isYarnOver),
    put: () => [],
  }),
  atStep({
    kind: 'yarn over made twice',
    name: 'a yarn over was made twice',
    howOften: 2,
    where: (act) => hasStitch(act, single),
    put: (act) => [act, instead(act, 'yo')],
  }),
  atStep({
    kind: 'yarn over too many',
    name: 'there is a yarn over where none belongs',
    howOften: 1,
    where: (act, before, _, __, row) =>
      hasYarnOvers(row) &&
      together(act, before) &&
      hasStitch(act, (id) => id === 'k') &&
      hasStitch(before, (id) => id === 'k'),
    put: (act) => [instead(act, 'yo')],
    remove: 0,
  }),
  atStep({
    kind: 'yarn over one stitch early',
    name: 'a yarn over was made one stitch too early',
    howOften: 3,
    misread: true,
    where: (act, before) => hasStitch(act, single) && together(act, before) && hasStitch(before, isPlain),
    put: (act, before) => (before ? [act, before] : null),
    remove: 2,
    from: -1,
  }),
  atStep({
    kind: 'yarn over one stitch late',
    name: 'a yarn over was made one stitch too late',
    howOften: 3,
    misread: true,
    where: (act, _, after) => hasStitch(act, single) && together(act, after) && hasStitch(after, isPlain),
    put: (act, _, after) => (after ? [after, act] : null),
    remove: 2,
  }),
  atStep({
    kind: 'yarn over wrapped backwards',
    name: 'a yarn over was wrapped the other way round',
    howOften: 3,
    misread: true,
    where: (act) => hasStitch(act, single),
    put: (act) => [instead(act, 'byo')],
  }),
  atStep({
    kind: 'yarn over worked through the back',
    name: 'a yarn over of the row before was worked through its back leg',
    howOften: 3,
    where: (act, _, __, plan, row, step) =>
      hasStitch(act, (id) => throughBack(id) !== null) && opensYarnOver(plan, row, step),
    put: (act) => (act.deed.do === 'stitch' ? [instead(act, throughBack(act.deed.stitch) ?? 'k tbl')] : null),
  }),
  atStep({
    kind: 'yarn over dropped on the return',
    name: 'a yarn over of the row before slid off the needle',
    howOften: 3,
    where: (act, _, __, plan, row, step) => act.takes > 0 && act.makes > 0 && meetsYarnOver(plan, row, step),
    put: (act) => (act.takes === 1 ? [fallBefore(act)] : [fallBefore(act), act]),
  }),
  jumped,
  atStep({
    kind: 'yarn over half made',
    name: 'the yarn came forward for the purl only and made no yarn over',
    howOften: 5,
    where: (act, before, after) =>
      hasStitch(act, single) &&
      hasStitch(before, showsKnit) &&
      !hasStitch(before, isYarnOver) &&
      hasStitch(after, (id) => !showsKnit(id)),
    put: () => [],
  }),
  atStep({
    kind: 'yarn left in front',
    name: 'the yarn was left in front after a purl and made a yarn over by itself',
    howOften: 4,
    where: (act, before) =>
      act.takes > 0 &&
      hasStitch(act, (id) => (isPlain(id) || isDecrease(id)) && showsKnit(id)) &&
      before !== undefined &&
      before.takes > 0 &&
      hasStitch(before, (id) => (isPlain(id) || isDecrease(id)) && !showsKnit(id)),
    put: (act) => [instead(act, 'yo')],
    remove: 0,
  }),
  atStep({
    kind: 'yarn over at the edge lost',
    name: 'the yarn over at the edge was lost',
    howOften: 4,
    where: (act, _, __, ___, row, step) => {
      const outside = act.deed.do === 'stitch' && act.deed.repeat === null
      const last = step === 0 || step === row.acts.length - 1
      return hasStitch(act, single) && (last || (outside && nearEnd(row, step)))
    },
    put: () => [],
  }),
  atStep({
    kind: 'double yarn over taken as one',
    name: 'both loops of a double yarn over were worked as one',
    howOften: 4,
    misread: true,
    where: (act, before, _, plan, row, step) => {
      const [first, second] = [takenAt(plan, row.index, step - 1), takenAt(plan, row.index, step)]
      const [a, b] = [first[0], second[0]]
      if (act.takes !== 1 || before?.takes !== 1 || !a || !b || !isYarnOver(a.stitch)) return false
      return a.row === b.row && a.step === b.step && a.id !== b.id
    },
    put: (act) => [fallBefore(act)],
  }),
  atStep({
    kind: 'second wrap slipped off',
    name: 'the second wrap of a double yarn over slid off',
    howOften: 3,
    where: (act) => hasStitch(act, (id) => id === 'yo2'),
    put: (act) => [instead(act, 'yo')],
  }),
  madeUpLater,
]
