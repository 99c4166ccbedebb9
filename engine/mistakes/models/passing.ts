import { stitch } from '../../stitches/index.ts'
import { type Act, fallBefore, instead, liftAfter } from '../acts.ts'
import { isYarnOver, passedOver, slippedOneByOne, slippedPurlwise, workedInside } from '../kin.ts'
import { atStep, hasStitch, type Model } from '../model.ts'

/** How the stitch slips: what is left when nothing is passed. */
function slipOf(id: string): string {
  const first = stitch(id).motions.find((motion) => motion.do === 'slip')
  return first?.do === 'slip' && first.as === 'purlwise' ? 'sl' : 'sl kwise'
}

const passesOne = (act: Act | undefined): act is Act =>
  hasStitch(act, (id) => passedOver(id) === 1 && workedInside(id) !== null)

/** The loops slipped and the stitch worked after them, with nothing passed. */
function unpassed(act: Act): Act[] | null {
  if (act.deed.do !== 'stitch') return null
  const { stitch: id } = act.deed
  const inside = workedInside(id)
  if (!inside) return null
  return [...Array.from({ length: passedOver(id) }, () => instead(act, slipOf(id))), instead(act, inside)]
}

const yarnOverBefore = (act: Act, after: Act | undefined): boolean =>
  hasStitch(act, (id) => id === 'yo') && passesOne(after)

export const passingModels: readonly Model[] = [
  atStep({
    kind: 'pass over forgotten',
    name: 'the slipped stitch was not passed over',
    howOften: 4,
    misread: true,
    where: (act) => hasStitch(act, (id) => passedOver(id) > 0),
    put: unpassed,
  }),
  atStep({
    kind: 'yarn over passed over',
    name: 'the yarn over was passed over instead of the slipped stitch',
    howOften: 2,
    where: (act, _, after) => yarnOverBefore(act, after),
    put: (act, _, after) => {
      const inside = after ? unpassed(after) : null
      return inside && [act, ...inside, liftAfter(act, 2)]
    },
    remove: 2,
  }),
  atStep({
    kind: 'yarn over passed over too',
    name: 'the yarn over was passed over together with the slipped stitch',
    howOften: 1,
    where: (act, _, after) => yarnOverBefore(act, after),
    put: (act, _, after) => (after ? [act, after, liftAfter(act, 1)] : null),
    remove: 2,
  }),
  atStep({
    kind: 'slipped stitch dropped',
    name: 'the slipped stitch was dropped instead of passed over',
    howOften: 2,
    where: passesOne,
    put: (act) => {
      const inside = act.deed.do === 'stitch' ? workedInside(act.deed.stitch) : null
      return inside === null ? null : [fallBefore(act), instead(act, inside)]
    },
  }),
  atStep({
    kind: 'slipped purlwise',
    name: 'the stitches of a decrease were slipped as if to purl',
    howOften: 3,
    misread: true,
    where: (act) => hasStitch(act, (id) => !isYarnOver(id) && slippedPurlwise(id) !== null),
    put: (act) =>
      act.deed.do === 'stitch' ? [instead(act, act.deed.stitch, slippedPurlwise(act.deed.stitch))] : null,
  }),
  atStep({
    kind: 'slipped one by one',
    name: 'the stitches of a centred decrease were slipped one by one instead of together',
    howOften: 3,
    misread: true,
    where: (act) => hasStitch(act, (id) => slippedOneByOne(id) !== null),
    put: (act) =>
      act.deed.do === 'stitch' ? [instead(act, act.deed.stitch, slippedOneByOne(act.deed.stitch))] : null,
  }),
]
