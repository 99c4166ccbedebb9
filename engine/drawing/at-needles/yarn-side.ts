import type { WorkedPattern, WorkedRow } from '../../needles/index.ts'
import { type Motion, type Neighbours, stitch } from '../../stitches/index.ts'

/** Where the working yarn hangs, as the knitter sees it. */
export type YarnSide = 'front' | 'behind'

/** Before the first stitch of a row that follows a knitted cast-on. */
const atFirst: YarnSide = 'behind'

/** Where the yarn hangs after the first `done` steps of a row. */
export function yarnSideAt(worked: WorkedPattern, rowIndex: number, done: number): YarnSide {
  const row = worked.rows[rowIndex]
  if (row === undefined) return atFirst
  for (let step = done - 1; step >= 0; step--) {
    const side = sideAfter(row, step)
    if (side !== null) return side
  }
  if (rowIndex === 0) return atFirst
  const before = yarnSideAt(worked, rowIndex - 1, worked.rows[rowIndex - 1]?.steps.length ?? 0)
  const isTurned = worked.pattern.worked === 'flat' || worked.rows[rowIndex - 1]?.turned === true
  return isTurned ? otherSide(before) : before
}

export const otherSide = (side: YarnSide): YarnSide => (side === 'front' ? 'behind' : 'front')

/** Where a stitch leaves the yarn; null where it does not touch it. */
function sideAfter(row: WorkedRow, step: number): YarnSide | null {
  const { motions } = stitch(row.steps[step]?.stitch ?? '')
  const { after } = neighboursOf(row, step)
  let face: 'knit' | 'purl' = 'knit'
  let side: YarnSide | null = null
  for (const motion of motions) {
    if (motion.do === 'enter') face = motion.as === 'knitwise' ? 'knit' : 'purl'
    if (motion.do === 'enterBelow' || motion.do === 'castOn') face = 'knit'
    const put = sideOf(motion, face, after)
    if (put !== null) side = put
  }
  return side
}

function sideOf(motion: Motion, face: 'knit' | 'purl', after: Neighbours['after']): YarnSide | null {
  if (motion.do === 'draw' || motion.do === 'castOn') return face === 'knit' ? 'behind' : 'front'
  if (motion.do === 'over') {
    if (motion.backward) return after === 'knit' ? 'behind' : 'front'
    return after === 'purl' ? 'front' : 'behind'
  }
  if (motion.do !== 'yarn') return null
  // Carried to one side for this stitch alone, it is taken back unless the next one wants it there.
  const served = motion.to === 'front' ? 'purl' : 'knit'
  const carried = motion.to === 'front' ? 'front' : 'behind'
  return after === served || after === 'end' ? carried : otherSide(carried)
}

/**
 * Whether the yarn runs before the loops that were slipped since the newest one was made; null where none were. Slipped
 * without a word it stays on the wrong side.
 */
export function runsInFront({ steps, side }: WorkedRow, done: number): boolean | null {
  const last = steps[done - 1]
  if (last === undefined || !stitch(last.stitch).effect.made.every(({ slipped }) => slipped !== null))
    return null
  if (stitch(last.stitch).family !== 'slip') return null
  const carried = stitch(last.stitch).motions.find((motion) => motion.do === 'yarn')
  return carried === undefined ? side === 'WS' : carried.to === 'front'
}

/** What stands on either side of a stitch in its row. */
export function neighboursOf(row: WorkedRow, step: number): Neighbours {
  const before = row.steps[step - 1]
  const after = row.steps[step + 1]
  return {
    before: before ? faceOf(before.stitch, -1) : row.waiting.length > 0 ? null : 'start',
    after: after ? faceOf(after.stitch, 0) : row.unworked.length > 0 ? null : 'end',
  }
}

/** Whether a stitch is knitted or purled where it meets its neighbour; null where nothing is drawn through. */
function faceOf(id: string, end: 0 | -1): 'knit' | 'purl' | null {
  const { made, chain } = stitch(id).effect
  const meeting = made.at(end) ?? chain
  return meeting && meeting.slipped === null && meeting.from !== 'air' ? meeting.face : null
}
