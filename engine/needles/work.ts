import { type Issue, limits } from '../base/index.ts'
import type { Pattern, Row } from '../pattern/index.ts'
import { takesAndMakes } from '../pattern/index.ts'
import { castOn, emptyHands, type Hands, type RowWork, turnWork, workStitch } from './hands.ts'
import { layOut } from './lay-out.ts'
import type { WorkedPattern, WorkedRow } from './worked.ts'

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
  const hands = emptyHands()
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
