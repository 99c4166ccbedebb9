import type { Act } from '../acts.ts'
import { instead } from '../acts.ts'
import type { Edit } from '../edits.ts'
import { isPlain } from '../kin.ts'
import { atStep, hasStitch, type Model } from '../model.ts'
import type { Plan, RowPlan } from '../plan.ts'

const repeatOf = (act: Act | undefined): number | null => (act?.deed.do === 'stitch' ? act.deed.repeat : null)

/** The acts before the first repeat, the repeats, and those after the last. */
function parts(row: RowPlan): { start: readonly Act[]; middle: readonly Act[]; end: readonly Act[] } {
  const first = row.acts.findIndex((act) => repeatOf(act) !== null)
  if (first < 0) return { start: [], middle: row.acts, end: [] }
  const last = row.acts.findLastIndex((act) => repeatOf(act) !== null)
  return {
    start: row.acts.slice(0, first),
    middle: row.acts.slice(first, last + 1),
    end: row.acts.slice(last + 1),
  }
}

const takes = (acts: readonly Act[]): number => acts.reduce((sum, act) => sum + act.takes, 0)

const blind = (row: RowPlan, acts: readonly Act[]): readonly Edit[] => [
  { do: 'acts', row: row.index, acts, blind: true, like: null },
]

const withEnds = (
  model: Pick<Model, 'kind' | 'name' | 'howOften'>,
  which: 'start' | 'end',
  acts: (row: RowPlan) => readonly Act[],
): Model => ({
  ...model,
  misread: false,
  spots: (_, row) =>
    takes(parts(row)[which]) > 0
      ? [{ step: which === 'start' ? 0 : row.acts.length - parts(row).end.length }]
      : [],
  edits: (plan, mistake) => {
    const row = plan.rows[mistake.row]
    return row && takes(parts(row)[which]) > 0 ? blind(row, acts(row)) : null
  },
})

/** The last repeat's acts once more, as if it came again over the stitches at the end. */
function onceMore(row: RowPlan): readonly Act[] {
  const { start, middle, end } = parts(row)
  const last = repeatOf(middle.at(-1))
  const again = middle
    .filter((act) => repeatOf(act) === last)
    .map((act) => ({ ...act, section: end[0]?.section ?? act.section, step: null }))
  return [...start, ...middle, ...again]
}

/** A plain stitch that ends or begins a repeat, next to another section. */
const atSeam = (act: Act, before: Act | undefined, after: Act | undefined): boolean =>
  hasStitch(act, isPlain) &&
  !act.open &&
  repeatOf(act) !== null &&
  ((after !== undefined && after.section !== act.section) ||
    (before !== undefined && before.section !== act.section))

/** A change that makes the rest of the row slide past the markers unseen. */
function unseen(model: Model): Model {
  return {
    ...model,
    edits: (plan: Plan, mistake) => {
      const row = plan.rows[mistake.row]
      const edit = model.edits(plan, mistake)?.[0]
      if (!row || edit?.do !== 'change') return null
      const acts = [...row.acts]
      for (const { at, remove, put } of edit.changes) acts.splice(at, remove, ...put)
      return blind(row, acts)
    },
  }
}

export const endModels: readonly Model[] = [
  withEnds(
    { kind: 'edge forgotten', name: 'the stitches before the first repeat were forgotten', howOften: 3 },
    'start',
    (row) => [...parts(row).middle, ...parts(row).end],
  ),
  withEnds(
    { kind: 'end forgotten', name: 'the stitches after the last repeat were forgotten', howOften: 2 },
    'end',
    (row) => [...parts(row).start, ...parts(row).middle],
  ),
  withEnds(
    {
      kind: 'end worked as a repeat',
      name: 'the stitches at the end were worked as the beginning of another repeat',
      howOften: 3,
    },
    'end',
    onceMore,
  ),
  unseen(
    atStep({
      kind: 'seam stitch left out',
      name: 'the plain stitch between two repeats was left out',
      howOften: 4,
      where: (act, before, after) => atSeam(act, before, after),
      put: () => [],
    }),
  ),
  unseen(
    atStep({
      kind: 'seam stitch worked twice',
      name: 'the plain stitch between two repeats was worked twice',
      howOften: 3,
      where: (act, before, after) => atSeam(act, before, after),
      put: (act) => (act.deed.do === 'stitch' ? [act, instead(act, act.deed.stitch)] : null),
    }),
  ),
]
