import type { Issue } from '../base/index.ts'
import type { Pattern, Row } from '../pattern/index.ts'
import { type Effect, effectOf, type Made, type Motion, type Mount, perform } from '../stitches/index.ts'
import type { Laid } from './lay-out.ts'
import type { Loop, LoopId, MarkerUse, Step } from './worked.ts'

/** The hands in the middle of a pattern. The loop table only grows; each loop's mount is what it sits like now. */
export interface Hands {
  readonly loops: Loop[]
  readonly mounts: Mount[]
  /** On the left needle for the next row, from the tip on. */
  ahead: LoopId[]
  /** Left on the right needle by a turn, the one nearest the tip last. */
  behind: LoopId[]
  readonly holder: LoopId[]
  readonly issues: Issue[]
  steps: number
}

export const emptyHands = (): Hands => ({
  loops: [],
  mounts: [],
  ahead: [],
  behind: [],
  holder: [],
  issues: [],
  steps: 0,
})

export function castOn(hands: Hands, count: number, stitch: string): LoopId[] {
  const ids: LoopId[] = []
  for (let i = 0; i < count; i++) {
    const id = hands.loops.length
    hands.loops.push({
      id,
      row: -1,
      step: -1,
      stitch,
      parents: [],
      twisted: [],
      face: 'knit',
      mount: 'usual',
    })
    hands.mounts.push('usual')
    ids.push(id)
  }
  return ids
}

/** One row in the making. */
export interface RowWork {
  readonly row: Pick<Row, 'number' | 'side'>
  readonly index: number
  readonly left: LoopId[]
  /** Loops of `left` that are worked already. */
  taken: number
  readonly right: LoopId[]
  readonly steps: Step[]
  readonly markers: MarkerUse[]
}

const mountsOf = (hands: Hands, ids: readonly LoopId[]): Mount[] | undefined =>
  ids.some((id) => hands.mounts[id] === 'turned') ? ids.map((id) => hands.mounts[id] ?? 'usual') : undefined

/** The loops that a stitch leaves on the right needle: new ones in the table, or the ones it only slipped. */
function makeLoop(hands: Hands, work: RowWork, made: Made, stitch: string, taken: readonly LoopId[]): LoopId {
  if (made.slipped !== null) {
    const id = taken[made.slipped - 1] ?? -1
    hands.mounts[id] = made.mount
    return id
  }
  const knitFaceIsRight = (made.face === 'knit') === (work.row.side === 'RS')
  const parents = made.through.map((n) => taken[n - 1] ?? -1)
  const twisted = [...made.twisted]
  if (!knitFaceIsRight) {
    parents.reverse()
    twisted.reverse()
  }
  const id = hands.loops.length
  const face = knitFaceIsRight ? 'knit' : 'purl'
  hands.loops.push({
    id,
    row: work.index,
    step: work.steps.length,
    stitch,
    parents,
    twisted,
    face,
    mount: made.mount,
  })
  hands.mounts.push(made.mount)
  return id
}

/** A stitch to be worked; `motions` where the hands do not quite what the catalogue says. */
export type LaidStitch = Extract<Laid, { do: 'stitch' }> & { readonly motions?: readonly Motion[] }

const effectFor = ({ stitch, motions }: LaidStitch, mounts?: readonly Mount[]): Effect =>
  motions ? perform(motions, mounts) : effectOf(stitch, mounts)

/** Works one stitch; false where the needle or the holder has not enough loops for it. */
export function workStitch(hands: Hands, work: RowWork, laid: LaidStitch): boolean {
  const plain = effectFor(laid)
  const taken = work.left.slice(work.taken, work.taken + plain.takes)
  if (taken.length < plain.takes || hands.holder.length < plain.held) return false
  const mounts = mountsOf(hands, taken)
  const effect = mounts ? effectFor(laid, mounts) : plain
  work.taken += plain.takes
  const held = plain.held > 0 ? hands.holder.splice(0, plain.held) : []
  const made = effect.made.map((one) => makeLoop(hands, work, one, laid.stitch, [...taken, ...held]))
  if (effect.parked > 0) hands.holder.push(...taken)
  work.right.push(...made)
  const left = work.left.length - work.taken
  const { stitch, repeat, position, part, span } = laid
  const [row, step, right] = [work.row.number, work.steps.length + 1, work.right.length]
  work.steps.push({
    row,
    step,
    stitch,
    taken,
    made,
    left,
    right,
    total: left + right,
    repeat,
    position,
    part,
    span,
    held: plain.held,
  })
  return true
}

/** Flat, the needles change hands and the row runs back; in the round, the row goes on in the same direction. */
export function turnWork(
  hands: Hands,
  pattern: Pick<Pattern, 'worked'>,
  right: LoopId[],
  unworked: LoopId[],
  turned: boolean,
): void {
  const onward = pattern.worked === 'round' && !turned
  hands.ahead = onward ? [...right] : [...right].reverse()
  hands.behind = onward ? [] : [...unworked].reverse()
}
