import { takesAndMakes } from '../../pattern/index.ts'
import { rightSideLook } from '../../stitches/index.ts'
import { type Act, instead, stitchOf } from '../acts.ts'
import type { Mistake } from '../mistake.ts'
import type { Model, Spot } from '../model.ts'
import type { Plan, RowPlan } from '../plan.ts'

/** Two plain rows are alike however many stitches they have. */
const sameWords = (a: RowPlan, b: RowPlan): boolean =>
  (a.resting && b.resting && stitchOf(a.acts[0]) === stitchOf(b.acts[0])) ||
  (a.acts.length === b.acts.length && a.acts.every((act, i) => stitchOf(act) === stitchOf(b.acts[i])))

/** The nearest rows below and above that face the same way and read differently: the ones a finger slips to. */
function neighbours(plan: Plan, row: RowPlan): number[] {
  const like = (other: RowPlan) =>
    other.number >= 1 &&
    other.side === row.side &&
    other.leftward === row.leftward &&
    other.followed &&
    !sameWords(other, row)
  const below = plan.rows.findLast((other) => other.index < row.index && like(other))
  const above = plan.rows.find((other) => other.index > row.index && like(other))
  return [...new Set([below, above].flatMap((other) => (other ? [other.index] : [])))]
}

/** The steps at which a section begins, but the row's first. */
const sectionStarts = (row: RowPlan): number[] =>
  row.acts.flatMap((act, step) => (step > 0 && row.acts[step - 1]?.section !== act.section ? [step] : []))

/** The acts of another row, in sections that the worked row has. */
const meant = (acts: readonly Act[]): Act[] => acts.map((act) => ({ ...act, step: null }))

const wrongRow: Model = {
  kind: 'wrong row worked',
  name: 'another row of the pattern was worked',
  howOften: 3,
  misread: false,
  spots: (plan, row) => (row.number < 1 ? [] : neighbours(plan, row).map((other) => ({ step: null, other }))),
  edits: (plan, { row, other }) => {
    const acts = other === null ? undefined : plan.rows[other]?.acts
    if (!acts || other === null) return null
    return [{ do: 'acts', row, acts: meant(acts), blind: false, like: plan.sections.map(() => other) }]
  },
}

const switched: Model = {
  kind: 'rows switched',
  name: 'the row was changed for another in the middle',
  howOften: 2,
  misread: false,
  spots: (plan, row) =>
    row.number < 1
      ? []
      : neighbours(plan, row).flatMap((other): Spot[] => sectionStarts(row).map((step) => ({ step, other }))),
  edits: (plan, { row, step, other }) => {
    const [here, there] = [plan.rows[row], other === null ? undefined : plan.rows[other]]
    const from = step === null ? undefined : here?.acts[step]?.section
    if (!here || !there || from === undefined || step === null) return null
    const rest = there.acts.filter((act) => (here.leftward ? act.section >= from : act.section <= from))
    // The marker at which the rows are switched was passed by the row that was begun.
    const like = plan.sections.map((_, section) =>
      (here.leftward ? section >= from : section < from) ? there.index : row,
    )
    return [{ do: 'acts', row, acts: [...here.acts.slice(0, step), ...meant(rest)], blind: false, like }]
  },
}

const skipped: Model = {
  kind: 'row skipped',
  name: 'a plain row was skipped',
  howOften: 2,
  misread: false,
  spots: (plan, row) =>
    row.resting && row.index > 0 && row.index + 1 < plan.rows.length ? [{ step: null }] : [],
  edits: (plan, { row }) =>
    plan.worked.pattern.worked === 'flat'
      ? [
          { do: 'skip', row },
          { do: 'flip', row: row + 1 },
        ]
      : [{ do: 'skip', row }],
}

const wrongSide: Model = {
  kind: 'started on the wrong side',
  name: 'the work was begun with the other side facing',
  howOften: 2,
  misread: false,
  spots: (plan, row) => (row.index === 0 && plan.worked.pattern.worked === 'flat' ? [{ step: null }] : []),
  edits: () => [{ do: 'flip', row: 0 }],
}

const mirrored = (plan: Plan, acts: readonly Act[]): Act[] =>
  acts.map((act) => ({ ...act, section: plan.sections.length - 1 - act.section, step: null }))

/** A wrong-side row of lace, from its other end. */
const backwards: Model = {
  kind: 'row read backwards',
  name: 'a wrong-side row was read from its wrong end',
  howOften: 2,
  misread: false,
  spots: (plan, row) => {
    const flat = plan.worked.pattern.worked === 'flat' && row.side === 'WS'
    const backward = { ...row, acts: row.acts.toReversed() }
    return flat && !row.resting && !sameWords(row, backward) ? [{ step: null }] : []
  },
  edits: (plan, { row }) => {
    const acts = plan.rows[row]?.acts
    return acts
      ? [{ do: 'acts', row, acts: mirrored(plan, acts.toReversed()), blind: true, like: null }]
      : null
  },
}

/** What the sign means on the right side, worked on the wrong side. */
const asTheSignSays = (act: Act): Act => {
  const id = stitchOf(act)
  return id === null ? act : { ...instead(act, rightSideLook(id, 'WS')), open: act.open }
}

const sameSign: Model = {
  kind: 'blank box the same on both sides',
  name: 'the signs of a wrong-side row were worked as on the right side',
  howOften: 2,
  misread: false,
  spots: (plan, row) => {
    const flat = plan.worked.pattern.worked === 'flat' && row.side === 'WS'
    const differs = row.acts.some((act) => stitchOf(asTheSignSays(act)) !== stitchOf(act))
    const fits = row.acts.every((act) => asTheSignSays(act).takes === act.takes)
    return flat && differs && fits ? [{ step: null }] : []
  },
  edits: (plan, { row }) => {
    const acts = plan.rows[row]?.acts
    return acts ? [{ do: 'acts', row, acts: acts.map(asTheSignSays), blind: false, like: null }] : null
  },
}

const edges = (plan: Plan): number =>
  takesAndMakes([...plan.worked.pattern.edges.before, ...plan.worked.pattern.edges.after])?.takes ?? 0

/** What a reader gets who adds the plus to the multiple, or leaves it out. */
function misread(plan: Plan): number[] {
  const { castOn } = plan.worked.pattern
  if ('fixed' in castOn || castOn.plus === 0) return []
  const n = plan.worked.repeats
  const counts = [(castOn.multiple + castOn.plus) * n + edges(plan), castOn.multiple * n + edges(plan)]
  return [...new Set(counts)].filter((count) => count !== plan.worked.castOn)
}

/** The widths of rows that stand at another count than the cast-on. */
function chartWidths(plan: Plan): number[] {
  const counts = plan.worked.rows.map((row) => row.after.length + row.unworked.length)
  return [...new Set(counts)].filter((count) => count !== plan.worked.castOn && count > 0)
}

const castOn = (
  model: Pick<Model, 'kind' | 'name' | 'howOften'>,
  counts: (plan: Plan) => readonly number[],
): Model => ({
  ...model,
  misread: false,
  spots: (plan, row) => (row.index === 0 ? counts(plan).map((other) => ({ step: null, other })) : []),
  edits: (_: Plan, { other }: Mistake) => (other === null ? null : [{ do: 'castOn', count: other }]),
})

export const rowModels: readonly Model[] = [
  castOn(
    { kind: 'multiple misread', name: 'the multiple and the plus were misread at the cast-on', howOften: 3 },
    misread,
  ),
  castOn(
    { kind: 'chart row cast on', name: 'the width of a later row was cast on', howOften: 2 },
    chartWidths,
  ),
  wrongRow,
  switched,
  skipped,
  wrongSide,
  backwards,
  sameSign,
]
