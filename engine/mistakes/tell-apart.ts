import { needlesAfter, type WorkedPattern } from '../needles/index.ts'
import { lookOf, madeBefore, type PossiblePlace } from './where.ts'

/** What a reader can look at, to tell places apart. */
export type LookAt = 'side' | 'last stitch' | 'loop to come' | 'stitches worked' | 'stitches to come'

/** One thing to look at, with what is to be seen at each of the places. */
export interface TellApart {
  readonly look: LookAt
  /** By what is seen there: a side, a look, or a number. */
  readonly choices: readonly { readonly sees: string; readonly places: readonly PossiblePlace[] }[]
}

/** What a reader sees at a place. */
export function seenAt(worked: WorkedPattern, look: LookAt, place: PossiblePlace): string {
  const { left, right } = needlesAfter(worked, place.row, place.done)
  switch (look) {
    case 'side':
      return worked.rows[place.row]?.side ?? 'RS'
    case 'last stitch':
      return lookOfStitch(madeBefore(worked, place).at(-1))
    case 'loop to come':
      return left[0] === undefined ? 'none' : lookOfLoop(worked, worked.loops[left[0]])
    case 'stitches worked':
      return String(right.length)
    case 'stitches to come':
      return String(left.length)
  }
}

const lookOfStitch = (id: string | undefined): string =>
  id === undefined ? 'none' : (lookOf(id) ?? 'something else')

/** What a loop on the left needle looks like: holes and decreases show on both sides alike, the rest is plain. */
function lookOfLoop(worked: WorkedPattern, loop: WorkedPattern['loops'][number] | undefined): string {
  if (!loop || loop.row < 0) return 'plain'
  const look = lookOf(worked.rows[loop.row]?.steps[loop.step]?.stitch ?? loop.stitch)
  return look === 'knit' || look === 'purl' ? 'plain' : (look ?? 'something else')
}

/** Looking is quicker than counting. */
const ease: Readonly<Record<LookAt, number>> = {
  side: 1,
  'last stitch': 1,
  'loop to come': 0.95,
  'stitches worked': 0.6,
  'stitches to come': 0.6,
}

/** More than that cannot be taken in at once. */
const mostChoices = 6

/** The one thing to look at that narrows the places down most; null where nothing does. */
export function tellApart(worked: WorkedPattern, places: readonly PossiblePlace[]): TellApart | null {
  const flat = worked.pattern.worked === 'flat'
  const looks = (Object.keys(ease) as LookAt[]).filter((look) => flat || look !== 'side')
  const ranked = looks
    .map((look) => ({ look, choices: choicesOf(worked, look, places) }))
    .filter(({ choices }) => choices.length > 1 && choices.length <= mostChoices)
    .map((one) => ({ one, worth: ease[one.look] * bits(one.choices.map((choice) => choice.places.length)) }))
    .sort((a, b) => b.worth - a.worth)
  return ranked[0]?.one ?? null
}

/** As a reader would go through them; numbers by their size. */
const order = [
  'RS',
  'WS',
  'hole',
  'two together',
  'three together',
  'knit',
  'purl',
  'plain',
  'something else',
  'none',
]

function choicesOf(
  worked: WorkedPattern,
  look: LookAt,
  places: readonly PossiblePlace[],
): TellApart['choices'] {
  const groups = new Map<string, PossiblePlace[]>()
  for (const place of places) {
    const sees = seenAt(worked, look, place)
    groups.set(sees, [...(groups.get(sees) ?? []), place])
  }
  const choices = [...groups].map(([sees, all]) => ({ sees, places: all }))
  return choices.sort(
    (a, b) => Number(a.sees) - Number(b.sees) || order.indexOf(a.sees) - order.indexOf(b.sees),
  )
}

/** What an answer is expected to tell, where all places are as likely. */
function bits(sizes: readonly number[]): number {
  const all = sizes.reduce((sum, size) => sum + size, 0)
  return sizes.reduce((sum, size) => sum + (size / all) * Math.log2(all / size), 0)
}
