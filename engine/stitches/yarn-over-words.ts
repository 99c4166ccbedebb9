/** What stands beside a yarn over in its row; null where that is not known. */
export interface Neighbours {
  readonly before: 'knit' | 'purl' | 'start' | null
  readonly after: 'knit' | 'purl' | 'end' | null
}

/**
 * How the yarn is held: carried by the hand of the right needle, or picked from the finger of the other hand.
 */
export type Hold = 'English' | 'Continental'

/**
 * The British word for a yarn over between two stitches. What is not known counts as a knit; a row's end too.
 */
export function neighbourYarnOver(
  before: Neighbours['before'],
  after: Neighbours['after'],
): 'yfwd' | 'yrn' | 'yfrn' | 'yon' {
  // The four cases: languages.json and abbreviations.json of the reference data. At a row's start: from
  // memory.
  if (after === 'purl') return before === 'purl' || before === 'start' ? 'yrn' : 'yfrn'
  return before === 'purl' ? 'yon' : 'yfwd'
}

const forward = 'Bring the yarn forward between the needles.'

/** Lays yarn that is in front over the needle, to the back. */
const overToBack: Record<Hold, string> = {
  English: 'Take the yarn over the right needle to the back.',
  Continental:
    'Bring the right tip forward under the yarn and up, so that the yarn lies over it to the back.',
}

/** From the back, all the way: up in front of the needle and over it. */
const aroundFromBack: Record<Hold, readonly string[]> = {
  English: [forward, overToBack.English],
  Continental: [
    'Reach the right tip over the yarn and behind it, then bring it forward underneath: ' +
      'the yarn lies over the needle, from front to back.',
  ],
}

const riseWithNext =
  'Leave the yarn in front: as you knit the next stitch, it rises over the right needle by itself.'
const inFrontOfEmpty = 'Hold the yarn in front of the empty right needle.'
const holdAtEnd = 'Keep a finger on the loop while you turn, so that it cannot slip off.'

/** A yarn over laid the usual way, by what stands beside it. */
export function yarnOverSteps(hold: Hold, neighbours: Neighbours): string[] {
  const { before, after } = neighbours
  if (after === 'knit') return beforeKnit(hold, before)
  const laid = toBack(hold, before)
  if (after === 'purl') return [...laid, 'Bring it forward between the needles again, ready to purl.']
  return after === 'end' ? [...laid, holdAtEnd] : laid
}

function beforeKnit(hold: Hold, before: Neighbours['before']): string[] {
  if (before === 'purl') return [riseWithNext]
  if (before === 'start') return [inFrontOfEmpty, riseWithNext]
  return hold === 'Continental'
    ? toBack(hold, before)
    : [forward, 'Carry it over the right needle to the back as you knit the next stitch.']
}

/** Over the needle, and left at the back. */
function toBack(hold: Hold, before: Neighbours['before']): string[] {
  if (before === 'purl') return [overToBack[hold]]
  return before === 'start' ? [inFrontOfEmpty, overToBack[hold]] : [...aroundFromBack[hold]]
}

/**
 * Two wraps: the first taken all the way round, the second laid as a yarn over whose yarn is in front
 * already.
 */
export const doubleYarnOverSteps = (hold: Hold, { before, after }: Neighbours): string[] => [
  ...toBack(hold, before),
  'Bring it forward between the needles again: that is the first wrap.',
  ...yarnOverSteps(hold, { before: 'purl', after }),
]

/** The other way round: up behind the needle and down in front. */
export function backwardYarnOverSteps(hold: Hold, { before, after }: Neighbours): string[] {
  const lay = {
    English: 'Bring the yarn from the back up over the right needle, toward you',
    Continental:
      'Dip the right tip under the yarn and up behind it: the yarn lies over the needle, from back to front',
  }[hold]
  return [
    ...(before === 'purl' ? ['Take the yarn to the back, between the needles.'] : []),
    `${lay}; its leading leg is at the back.`,
    ...(after === 'knit' ? ['Take it between the needles to the back again, ready to knit.'] : []),
  ]
}
