import type { WorkedPattern } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'
import { isDecrease, isYarnOver, showsKnit } from './kin.ts'

/** What a reader can tell of where she is. */
export interface Clues {
  /** Loops on the needle still to be worked, and on the one that holds the new stitches. */
  readonly left?: number
  readonly right?: number
  /** The last stitches made, the newest last: a catalogue stitch, or what it looks like. */
  readonly last?: readonly Glimpse[]
  /** Index of the row, where she knows it. */
  readonly row?: number
}

export type Glimpse =
  | { readonly stitch: string }
  | { readonly looks: 'hole' | 'two together' | 'three together' | 'knit' | 'purl' }

/** A place in the pattern that agrees with the clues. */
export interface PossiblePlace {
  /** Index into the worked rows. */
  readonly row: number
  /** Steps done: the next step to do has this index. */
  readonly done: number
  /** How many of the last stitches agree. */
  readonly agree: number
}

/** What a stitch looks like to the knitter who has it in front of her. */
function glimpsed(stitch: string, glimpse: Glimpse): boolean {
  if ('stitch' in glimpse) return glimpse.stitch === stitch
  const { looks } = glimpse
  if (looks === 'hole') return isYarnOver(stitch)
  if (looks === 'two together' || looks === 'three together')
    return isDecrease(stitch) && takesOf(stitch) === (looks === 'two together' ? 2 : 3)
  return !isYarnOver(stitch) && !isDecrease(stitch) && showsKnit(stitch) === (looks === 'knit')
}

const takesOf = (id: string): number => stitch(id).takes

/**
 * The places at which so many loops lie on each needle, or at which the last stitches made were these. Only places that
 * agree with all clues; where the last stitches are told and nowhere fit all, those where most of them do.
 */
export function placesFor(
  worked: WorkedPattern,
  { left, right, last = [], row: only }: Clues,
): PossiblePlace[] {
  const found: PossiblePlace[] = []
  for (const [row, { steps, before, waiting }] of worked.rows.entries()) {
    if (only !== undefined && only !== row) continue
    for (let done = 0; done <= steps.length; done++) {
      const step = steps[done - 1]
      const onLeft = step?.left ?? before.length
      const onRight = step?.right ?? waiting.length
      if ((left !== undefined && left !== onLeft) || (right !== undefined && right !== onRight)) continue
      const agree = agreement(
        steps.slice(0, done).map((one) => one.stitch),
        last,
      )
      if (last.length === 0 || agree > 0) found.push({ row, done, agree })
    }
  }
  const most = Math.max(0, ...found.map(({ agree }) => agree))
  return found.filter(({ agree }) => agree === most)
}

/** How many of the last stitches agree, from the newest back. */
function agreement(done: readonly string[], last: readonly Glimpse[]): number {
  let agree = 0
  while (agree < last.length) {
    const [made, told] = [done.at(-1 - agree), last.at(-1 - agree)]
    if (made === undefined || told === undefined || !glimpsed(made, told)) break
    agree++
  }
  return agree
}
