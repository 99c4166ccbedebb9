import { stitch } from '../../stitches/index.ts'
import { type Act, fallBefore, instead } from '../acts.ts'
import {
  isDecrease,
  isPlain,
  isYarnOver,
  narrower,
  otherDouble,
  otherLean,
  plainLike,
  wider,
} from '../kin.ts'
import { atStep, hasStitch, type Model, takenAt, together } from '../model.ts'
import { nextAlone } from './yarn-overs.ts'

/** The act with another stitch that is found from its own; null where there is none. */
const as = (act: Act | undefined, kin: (id: string) => string | null): readonly Act[] | null => {
  const other = act?.deed.do === 'stitch' ? kin(act.deed.stitch) : null
  return act && other !== null ? [instead(act, other)] : null
}

const isPair = (act: Act, after: Act | undefined): boolean =>
  (hasStitch(act, (id) => id === 'yo') && hasStitch(after, isDecrease)) ||
  (hasStitch(act, isDecrease) && hasStitch(after, (id) => id === 'yo'))

/** As many plain stitches as the decrease takes. */
const plainOnes = (act: Act): readonly Act[] =>
  act.deed.do === 'stitch'
    ? Array.from({ length: act.takes }, () =>
        instead(act, plainLike((act.deed as { stitch: string }).stitch)),
      )
    : []

const madeUpLater: Model = {
  kind: 'decrease made up later',
  name: 'a decrease was left out and made up for in the next row',
  howOften: 2,
  misread: false,
  spots: (plan, row) =>
    row.acts.flatMap((act, step) =>
      hasStitch(act, (id) => isDecrease(id) && stitch(id).takes <= 3) && nextAlone(plan, row.index, step)
        ? [{ step }]
        : [],
    ),
  edits: (plan, { row, step }) => {
    const act = step === null ? undefined : plan.rows[row]?.acts[step]
    const next = step === null ? null : nextAlone(plan, row, step)
    const later = next && plan.rows[next.row]?.acts[next.step]
    if (!act || !next || !later || later.deed.do !== 'stitch' || step === null) return null
    const two = wider(later.deed.stitch)
    const into = act.takes === 2 ? two : two && wider(two)
    if (!into) return null
    return [
      { do: 'change', row, changes: [{ at: step, remove: 1, put: plainOnes(act) }] },
      { do: 'change', row: next.row, changes: [{ at: next.step, remove: 1, put: [instead(later, into)] }] },
    ]
  },
}

export const decreaseModels: readonly Model[] = [
  atStep({
    kind: 'single for double',
    name: 'a decrease took one stitch too few',
    howOften: 4,
    misread: true,
    where: (act) => act.takes >= 3 && hasStitch(act, isDecrease),
    put: (act) => as(act, narrower),
  }),
  atStep({
    kind: 'double for single',
    name: 'a decrease took one stitch too many',
    howOften: 3,
    misread: true,
    where: (act) => act.takes === 2 && hasStitch(act, isDecrease),
    put: (act) => as(act, wider),
  }),
  atStep({
    kind: 'decrease left out',
    name: 'a decrease was left out',
    howOften: 4,
    misread: true,
    where: (act) => hasStitch(act, isDecrease),
    put: plainOnes,
  }),
  atStep({
    kind: 'decrease too many',
    name: 'two stitches were worked together where no decrease belongs',
    howOften: 2,
    where: (act, _, after) =>
      together(act, after) &&
      hasStitch(act, isPlain) &&
      hasStitch(after, (id) => id === (act.deed as { stitch: string }).stitch),
    put: (act) => as(act, wider),
    remove: 2,
  }),
  atStep({
    kind: 'wrong lean',
    name: 'a decrease leans the wrong way',
    howOften: 4,
    misread: true,
    where: (act) => hasStitch(act, isDecrease),
    put: (act) => as(act, otherLean),
  }),
  atStep({
    kind: 'other double decrease',
    name: 'a double decrease of the other sort was worked',
    howOften: 3,
    misread: true,
    where: (act) => hasStitch(act, isDecrease),
    put: (act) => as(act, otherDouble),
  }),
  atStep({
    kind: 'decrease one stitch early',
    name: 'a decrease was worked one stitch too early',
    howOften: 3,
    misread: true,
    where: (act, before) => hasStitch(act, isDecrease) && together(act, before) && hasStitch(before, isPlain),
    put: (act, before) => (before ? [act, before] : null),
    remove: 2,
    from: -1,
  }),
  atStep({
    kind: 'decrease one stitch late',
    name: 'a decrease was worked one stitch too late',
    howOften: 3,
    misread: true,
    where: (act, _, after) => hasStitch(act, isDecrease) && together(act, after) && hasStitch(after, isPlain),
    put: (act, _, after) => (after ? [after, act] : null),
    remove: 2,
  }),
  atStep({
    kind: 'decrease and yarn over swapped',
    name: 'a yarn over and the decrease beside it changed places',
    howOften: 3,
    misread: true,
    where: (act, _, after) => together(act, after) && isPair(act, after),
    put: (act, _, after) => (after ? [after, act] : null),
    remove: 2,
  }),
  madeUpLater,
  atStep({
    kind: 'stitch dropped',
    name: 'a stitch was dropped',
    howOften: 2,
    where: (act, _, __, plan, row, step) => {
      const met = takenAt(plan, row.index, step)[0]
      return act.takes === 1 && hasStitch(act, isPlain) && met !== undefined && !isYarnOver(met.stitch)
    },
    put: (act) => [fallBefore(act)],
  }),
  atStep({
    kind: 'knit for purl',
    name: 'a knit was worked for a purl, or a purl for a knit',
    howOften: 2,
    where: (act, _, __, ___, row) =>
      hasStitch(act, isPlain) &&
      ['k', 'p'].every((id) => row.acts.some((one) => hasStitch(one, (other) => other === id))),
    put: (act) => as(act, (id) => (id === 'k' ? 'p' : 'k')),
  }),
]
