import { type Issue, limits } from '../base/index.ts'
import type { Pattern, Row } from '../pattern/index.ts'
import { takesAndMakes } from '../pattern/index.ts'
import { effectOf, type Made, type Mount } from '../stitches/index.ts'
import { layOut } from './lay-out.ts'
import type { Loop, LoopId, MarkerUse, Step, WorkedPattern, WorkedRow } from './worked.ts'

/** The hands in the middle of a pattern. The loop table only grows; each loop's mount is what it sits like now. */
interface Hands {
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

function castOn(hands: Hands, count: number, stitch: string): LoopId[] {
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
interface RowWork {
  readonly row: Row
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

type LaidStitch = Extract<ReturnType<typeof layOut>[number], { do: 'stitch' }>

function workStitch(hands: Hands, work: RowWork, laid: LaidStitch): boolean {
  const plain = effectOf(laid.stitch)
  const taken = work.left.slice(work.taken, work.taken + plain.takes)
  if (taken.length < plain.takes || hands.holder.length < plain.held) return false
  const mounts = mountsOf(hands, taken)
  const effect = mounts ? effectOf(laid.stitch, mounts) : plain
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

function workRow(hands: Hands, pattern: Pattern, row: Row, index: number): WorkedRow | null {
  const before = hands.ahead
  const waiting = hands.behind
  const work: RowWork = {
    row,
    index,
    left: [...before],
    taken: 0,
    right: [...waiting],
    steps: [],
    markers: [],
  }
  let turned = false
  for (const laid of layOut(row, pattern, before.length, limits.stitchesInRow)) {
    if (laid.do === 'marker') work.markers.push({ action: laid.action, beforeStep: work.steps.length + 1 })
    else if (laid.do === 'turn') turned = true
    else if (laid.do === 'resume') work.left.splice(work.taken, 0, ...hands.holder.splice(-laid.count))
    else if (!workStitch(hands, work, laid)) return null
    if (turned) break
  }
  const unworked = work.left.slice(work.taken)
  if (unworked.length > 0 && !turned) return null
  hands.steps += work.steps.length
  turnWork(hands, pattern, work.right, unworked, turned)
  return {
    number: row.number,
    side: row.side,
    steps: work.steps,
    before,
    waiting,
    after: work.right,
    unworked,
    turned,
    markers: work.markers,
  }
}

/** Flat, the needles change hands and the row runs back; in the round, the row goes on in the same direction. */
function turnWork(
  hands: Hands,
  pattern: Pattern,
  right: LoopId[],
  unworked: LoopId[],
  turned: boolean,
): void {
  const onward = pattern.worked === 'round' && !turned
  hands.ahead = onward ? [...right] : [...right].reverse()
  hands.behind = onward ? [] : [...unworked].reverse()
}

export interface Working {
  /** Null where a row does not fit, or where it would be too much work. */
  readonly worked: WorkedPattern | null
  readonly issues: readonly Issue[]
}

/**
 * Works a pattern loop by loop over `repeats` pattern repeats (ignored for a fixed cast-on).
 * Meant for proved patterns; a row that does not fit ends the work with an issue that names it.
 */
export function work(pattern: Pattern, repeats: number): Working {
  const n = 'fixed' in pattern.castOn ? 1 : repeats
  const inside =
    'fixed' in pattern.castOn ? pattern.castOn.fixed : pattern.castOn.multiple * n + pattern.castOn.plus
  const edges = takesAndMakes([...pattern.edges.before, ...pattern.edges.after])?.takes ?? 0
  const count = inside + edges
  const hands: Hands = { loops: [], mounts: [], ahead: [], behind: [], holder: [], issues: [], steps: 0 }
  const all = [...pattern.setUp, ...pattern.rows]
  if (
    !Number.isSafeInteger(n) ||
    n < 1 ||
    count > limits.stitchesInRow ||
    count * all.length > limits.steps
  ) {
    return { worked: null, issues: [tooMuch(n, count)] }
  }
  hands.ahead = castOn(hands, count, 'co')
  hands.holder.push(...castOn(hands, Math.min(pattern.held, limits.stitchesInRow), 'co'))
  const rows: WorkedRow[] = []
  for (const [index, row] of all.entries()) {
    const worked = workRow(hands, pattern, row, index)
    if (!worked) return { worked: null, issues: [cannotWork(row, n)] }
    if (hands.steps > limits.steps) return { worked: null, issues: [tooMuch(n, count)] }
    rows.push(worked)
  }
  return { worked: { pattern, repeats: n, castOn: count, loops: hands.loops, rows }, issues: [] }
}

const tooMuch = (repeats: number, stitches: number): Issue => ({
  code: 'too-much-work',
  severity: 'error',
  span: null,
  row: null,
  values: { repeats, stitches, most: limits.stitchesInRow, steps: limits.steps },
})

const cannotWork = (row: Row, repeats: number): Issue => ({
  code: 'row-cannot-be-worked',
  severity: 'error',
  span: row.span,
  row: row.number,
  values: { repeats },
})
