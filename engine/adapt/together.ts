import { greatestCommonDivisor, limits, modulo, solveCongruence } from '../base/index.ts'
import { printRow } from '../notation/index.ts'
import { type Pattern, stitchesUsed, workedAgain } from '../pattern/index.ts'
import { type Adaptation, type Change, easy } from './adaptation.ts'
import { finished, needsRepeat, rowsOf, sideOf } from './make.ts'
import { rebuilt } from './rebuild.ts'
import { isRefused, type Refused, refuse } from './refusal.ts'
import { ruleWords } from './say.ts'
import { type Shown, type ShownRow, shownOf, takesOf, timesOver, type Word } from './shown.ts'

const lcm = (a: number, b: number): number => (a / greatestCommonDivisor(a, b)) * b

const apart = (sentence: string, hint?: string): Refused =>
  refuse('do-not-match', sentence, hint === undefined ? {} : { hint })

/** What two patterns must have in common to be worked as one piece; null where they have it. */
function mismatch(a: Pattern, b: Pattern): Refused | null {
  const one = needsRepeat(a) ?? needsRepeat(b)
  if (one !== null) return one
  if (a.worked !== b.worked)
    return apart(
      'One is worked flat and the other in the round.',
      'adapt one of them to the other’s way first',
    )
  if (a.doubleYarnOver !== b.doubleYarnOver && [a, b].some(worksDoubleOvers))
    return apart('One counts a double yarn over as two stitches and the other as one.')
  return null
}

const worksDoubleOvers = ({ rows }: Pattern): boolean =>
  rows.some(({ items }) => [...stitchesUsed(items)].some((id) => id.startsWith('yo2')))

const edgeText = ({ edges }: Pattern): string =>
  [edges.before, edges.after].map((items) => printRow(items)).join(' | ')

/**
 * Two patterns side by side, `a` at the right: one repeat of each, with the stitches that balance it, makes the new
 * repeat. Their rows go on until both begin again together.
 */
export function beside(a: Pattern, b: Pattern): Adaptation {
  const wrong = mismatch(a, b) ?? besideMismatch(a, b)
  if (wrong !== null) return wrong
  const [right, left] = [shownOf(a), shownOf(b)]
  if (isRefused(right)) return right
  if (isRefused(left)) return left
  const length = lcm(right.rows.length, left.rows.length)
  if (length > limits.rows) return apart(`They would begin together again only after ${length} rows.`)
  const rows = Array.from({ length }, (_, i) => joinedRow(a, right, left, i))
  const keep = edgeText(a) === edgeText(b)
  const edges = keep ? a.edges : { before: [], after: [] }
  const draft = rebuilt({ ...a, title: `${a.title} beside ${b.title}`, edges }, { setUp: [], rows })
  return finished(draft, besideChanges(a, b, rows, keep))
}

function besideMismatch(a: Pattern, b: Pattern): Refused | null {
  if (a.setUp.length + b.setUp.length > 0)
    return apart(
      'Set-up rows come once, and side by side they would have to be the same.',
      'work the set-up apart',
    )
  if (a.worked === 'flat' && a.firstSide !== b.firstSide)
    return apart(
      'One begins on the right side and the other on the wrong side.',
      'begin one of them at its second row',
    )
  return null
}

/** A whole row of one repeat as the right side shows it. The same words on the other side run the other way. */
function panel({ rows }: Shown, i: number, side: ShownRow['side']): Word {
  const row = rows[i % rows.length] as ShownRow
  const word = [...row.right, ...timesOver(row.repeat, 1 - row.fewer), ...row.left]
  return row.side === side ? word : word.toReversed()
}

function joinedRow(way: Pattern, right: Shown, left: Shown, i: number): ShownRow {
  const side = sideOf(i + 1, way)
  const repeat = [...panel(right, i, side), ...panel(left, i, side)]
  return { number: i + 1, side, right: [], repeat, left: [], fewer: 0 }
}

function besideChanges(a: Pattern, b: Pattern, rows: readonly ShownRow[], keep: boolean): Change[] {
  const width = takesOf(rows[0]?.repeat ?? [])
  const changes: Change[] = [
    easy(
      `One repeat of ${a.title} and one of ${b.title}, each with the stitches that balance it, make a repeat of ${width} stitches.`,
    ),
  ]
  const [one, other] = [a.rows.length, b.rows.length]
  if (one !== other)
    changes.push(easy(`${one} rows and ${other} rows begin together again after ${rows.length}.`))
  if (!keep) changes.push(easy('Their edges differ and are left out; put new edge stitches on both sides.'))
  return changes
}

/** The rows of `lower`, then those of `upper` above them, on the stitches that fit both. */
export function above(lower: Pattern, upper: Pattern): Adaptation {
  const wrong = mismatch(lower, upper) ?? aboveMismatch(lower, upper)
  if (wrong !== null) return wrong
  const castOn = commonCastOn(lower, upper)
  if (isRefused(castOn)) return castOn
  const twice = lower.worked === 'flat' && lower.rows.length % 2 === 1
  const first = workedAgain(lower, twice ? 2 : 1)
  const rows = rowsOf(
    [...first.rows, ...upper.rows].map(({ items }) => items),
    1,
    lower,
  )
  const edges = edgeText(lower) === ' | ' ? upper.edges : lower.edges
  const draft = { ...lower, title: `${upper.title} above ${lower.title}`, castOn, edges, rows }
  const changes = [easy(`${lower.title} and ${upper.title} both come out on ${ruleWords(castOn)}.`)]
  if (twice)
    changes.push(
      easy(
        `${lower.title} has an odd number of rows and is worked twice, so that ${upper.title} begins on its own side.`,
      ),
    )
  return finished(draft, changes)
}

function aboveMismatch(lower: Pattern, upper: Pattern): Refused | null {
  const texts = [edgeText(lower), edgeText(upper)]
  if (texts[0] !== texts[1] && !texts.includes(' | '))
    return apart(
      'Their edge stitches differ, and one edge runs up the whole piece.',
      'give both the same edge',
    )
  if (upper.setUp.length > 0) return apart(`${upper.title} has set-up rows, which belong at the cast-on.`)
  if (lower.worked === 'flat' && lower.firstSide !== upper.firstSide)
    return apart(
      'One begins on the right side and the other on the wrong side.',
      'begin one of them at its second row',
    )
  return null
}

interface Rule {
  readonly multiple: number
  readonly plus: number
}

/** The stitches on which both come out with at least one repeat each. */
function commonCastOn(a: Pattern, b: Pattern): Rule | Refused {
  const [one, other] = [a.castOn as Rule, b.castOn as Rule]
  const found = solveCongruence(one.multiple, other.plus - one.plus, other.multiple)
  if (found === null)
    return apart(
      `One needs ${ruleWords(one)}, the other ${ruleWords(other)}, and no number of stitches is both.`,
      `change the balancing stitches of one by ${modulo(other.plus - one.plus, greatestCommonDivisor(one.multiple, other.multiple))}`,
    )
  const multiple = one.multiple * found.step
  const rest = modulo(one.multiple * found.first + one.plus, multiple)
  const least = Math.max(one.multiple + one.plus, other.multiple + other.plus)
  const start = rest + multiple * Math.ceil(Math.max(0, least - rest) / multiple)
  // Rules are told from n = 1 on, with nothing negative beside the multiple.
  return { multiple, plus: start >= multiple ? start - multiple : start }
}
