import { catalogue, findStitch, type Motion, type Stitch, type StitchId, stitch } from '../stitches/index.ts'

/** Which stitch is taken for which other: found from what the stitches do, so that a new stitch joins in by itself. */

export const isYarnOver = (id: StitchId): boolean => stitch(id).family === 'yarn over'
export const isPlain = (id: StitchId): boolean => stitch(id).family === 'plain'

/** Several loops become one. */
export function isDecrease(id: StitchId): boolean {
  const { takes, makes, effect } = stitch(id)
  return (
    takes >= 2 &&
    makes === 1 &&
    effect.held === 0 &&
    effect.chain === null &&
    effect.made[0]?.slipped === null
  )
}

/** Whether the knit face shows on the side that is worked on. */
export const showsKnit = (id: StitchId): boolean => stitch(id).effect.made[0]?.face !== 'purl'

export const plainLike = (id: StitchId): StitchId => (showsKnit(id) ? 'k' : 'p')

type Front = 'first' | 'middle' | 'last'

/** Which of the loops taken lies in front on the knit face. */
function frontOf({ takes, effect }: Stitch): Front {
  const front = effect.made[0]?.through[0]
  return front === 1 ? 'first' : front === takes ? 'last' : 'middle'
}

const twistedIn = ({ effect }: Stitch): boolean => effect.made[0]?.twisted.includes(true) ?? false

const byNeed = new Map<string, StitchId | null>()

/** The plainest decrease of the catalogue of that width, face and front, as twisted or open as asked. */
function decreaseOf(takes: number, face: boolean, front: Front, twisted: boolean): StitchId | null {
  const key = `${takes} ${face} ${front} ${twisted}`
  const known = byNeed.get(key)
  if (known !== undefined) return known
  const found = catalogue.find(
    (s) =>
      s.takes === takes &&
      isDecrease(s.id) &&
      showsKnit(s.id) === face &&
      frontOf(s) === front &&
      twistedIn(s) === twisted,
  )
  byNeed.set(key, found?.id ?? null)
  return found?.id ?? null
}

function resized(id: StitchId, by: number): StitchId | null {
  const s = stitch(id)
  const [takes, face] = [s.takes + by, showsKnit(id)]
  if (takes === 1) return plainLike(id)
  // Of two loops none is the middle one: a centred decrease done over two is knitted together as they lie.
  return decreaseOf(takes, face, frontOf(s), twistedIn(s)) ?? decreaseOf(takes, face, 'last', false)
}

/** The same kind of decrease over one loop fewer: a plain stitch in the end. */
export const narrower = (id: StitchId): StitchId | null => (isDecrease(id) ? resized(id, -1) : null)

/** The same kind of decrease over one loop more; of a plain stitch, two worked together. */
export function wider(id: StitchId): StitchId | null {
  if (isPlain(id)) return decreaseOf(2, showsKnit(id), 'last', false)
  return isDecrease(id) ? resized(id, 1) : null
}

/** The decrease of the same width that leans the other way; null for what stands upright. */
export function otherLean(id: StitchId): StitchId | null {
  const s = stitch(id)
  const front = frontOf(s)
  if (!isDecrease(id) || front === 'middle') return null
  return decreaseOf(s.takes, showsKnit(id), front === 'first' ? 'last' : 'first', false)
}

/** The same stitch through the back loops; null where the catalogue has none. */
export const throughBack = (id: StitchId): StitchId | null => findStitch(`${id} tbl`)?.id ?? null

/** The double decrease that has the other front: its middle line stands or leans. */
export function otherDouble(id: StitchId): StitchId | null {
  const s = stitch(id)
  if (s.family !== 'double decrease' || s.takes !== 3) return null
  return decreaseOf(3, showsKnit(id), frontOf(s) === 'middle' ? 'first' : 'middle', false)
}

const isPass = (motion: Motion): boolean => motion.do === 'pass' && motion.from === 'right'

/** How many loops a stitch slips first and passes over what it works then; 0 where it does nothing of the kind. */
export function passedOver(id: StitchId): number {
  const { motions, family } = stitch(id)
  const slipsFirst = motions.find((motion) => motion.do !== 'yarn')?.do === 'slip'
  if (!slipsFirst || family === 'bind off') return 0
  return motions.reduce((sum, motion) => sum + (motion.do === 'pass' && isPass(motion) ? motion.loops : 0), 0)
}

/** Of a stitch that passes over: the stitch that is worked in the middle of it. Null where it is not one of the catalogue. */
export function workedInside(id: StitchId): StitchId | null {
  const passed = passedOver(id)
  const { takes } = stitch(id)
  const inside = takes - passed
  if (passed === 0 || inside < 1) return null
  return inside === 1 ? plainLike(id) : decreaseOf(inside, showsKnit(id), 'last', false)
}

const changed = new Map<string, readonly Motion[] | null>()

/** The stitch's motions after a change of each; null where nothing changes. Remembered, since they are compared by identity. */
function varied(
  id: StitchId,
  name: string,
  change: (motion: Motion) => readonly Motion[],
): readonly Motion[] | null {
  const key = `${name} ${id}`
  const known = changed.get(key)
  if (known !== undefined) return known
  const { motions } = stitch(id)
  const found = motions.flatMap(change)
  const same = found.length === motions.length && found.every((motion, i) => motion === motions[i])
  changed.set(key, same ? null : found)
  return same ? null : found
}

/** Slipped as if to purl where it should be as if to knit. */
export const slippedPurlwise = (id: StitchId): readonly Motion[] | null =>
  isDecrease(id)
    ? varied(id, 'purlwise', (motion) =>
        motion.do === 'slip' && motion.as === 'knitwise' ? [{ ...motion, as: 'purlwise' }] : [motion],
      )
    : null

/** Slipped one after the other where it should be together. */
export const slippedOneByOne = (id: StitchId): readonly Motion[] | null =>
  isDecrease(id)
    ? varied(id, 'one by one', (motion) =>
        motion.do === 'slip' && motion.together && motion.as === 'knitwise'
          ? Array.from({ length: motion.loops }, () => ({ ...motion, loops: 1, together: false }))
          : [motion],
      )
    : null
