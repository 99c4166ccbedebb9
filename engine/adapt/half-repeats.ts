import type { Pattern } from '../pattern/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'
import { type Adaptation, type Change, easy, hard } from './adaptation.ts'
import { onSides } from './flat.ts'
import { type Line, lineThrough, type Place } from './lines.ts'
import { finished, needsRepeat } from './make.ts'
import { rebuilt } from './rebuild.ts'
import { isRefused, type Refused, refuse } from './refusal.ts'
import { rowsNamed } from './say.ts'
import { type Shown, type ShownRow, shownOf, tellingRow } from './shown.ts'

/**
 * A flat piece whose sides run up the middle of a column of double decreases: at the sides each double is a single,
 * k2tog at the right end and ssk at the left one, so that the count stays a multiple plus 1. A pattern in the round
 * is made flat by it. `at`: through which stitch (from 1) of the first patterned row's repeat, from right to left.
 */
export function halfRepeats(pattern: Pattern, at?: number): Adaptation {
  const shown = needsRepeat(pattern) ?? flatShown(pattern)
  if (isRefused(shown)) return shown
  const line = bestLine(shown, at)
  if (line === null) return noColumn(at)
  const places = [...line.setUp, ...line.rows]
  const cut = [...shown.setUp, ...shown.rows].map((row, i) => cutRow(row, places[i] as Place))
  const rows = { setUp: cut.slice(0, shown.setUp.length), rows: cut.slice(shown.setUp.length) }
  return finished(rebuilt({ ...pattern, worked: 'flat' }, rows), changesOf(shown, line))
}

const noColumn = (at: number | undefined): Refused =>
  refuse(
    'no-straight-line',
    at === undefined
      ? 'No column has a double decrease in its middle and plain stitches everywhere else, so there is nothing to halve.'
      : `The column of stitch ${at} has no double decrease in its middle, or meets another stitch on its way.`,
  )

/** The rows as a flat piece has them. */
function flatShown(pattern: Pattern): Shown | Refused {
  const shown = shownOf(pattern)
  if (isRefused(shown) || pattern.worked === 'flat') return shown
  const twice = shown.rows.length % 2 === 1
  const setUp = onSides(shown.setUp, 1 - shown.setUp.length)
  const rows = onSides(twice ? [...shown.rows, ...shown.rows] : shown.rows, 1)
  if (isRefused(setUp)) return setUp
  return isRefused(rows) ? rows : { setUp, rows }
}

const isDouble = (id: StitchId | undefined): boolean =>
  id !== undefined &&
  stitch(id).family === 'double decrease' &&
  stitch(id).takes === 3 &&
  stitch(id).makes === 1

const isSingle = (id: StitchId | undefined): boolean =>
  id !== undefined && ['plain', 'twisted', 'slip'].includes(stitch(id).family)

/** The column with the most doubles; of several, the one nearest the repeat's beginning. */
function bestLine(shown: Shown, at: number | undefined): Line | null {
  const telling = tellingRow(shown)
  const starts = [...(shown.rows[0]?.repeat.keys() ?? [])]
  const lines = starts.flatMap((start) => {
    const line = lineThrough(shown, start, ({ repeat }, place, loop) =>
      isDouble(repeat[place.at]) ? loop === 1 : isSingle(repeat[place.at]),
    )
    return line !== null && (at === undefined || line.rows[telling]?.at === at - 1) ? [line] : []
  })
  const ranked = lines.toSorted((a, b) => doublesOn(shown, b).length - doublesOn(shown, a).length)
  const [best] = ranked
  return best !== undefined && doublesOn(shown, best).length > 0 ? best : null
}

const doublesOn = (shown: Shown, line: Line): ShownRow[] =>
  shown.rows.filter(({ repeat }, i) => isDouble(repeat[line.rows[i]?.at ?? 0]))

/** From the middle of one column to the middle of another. */
function cutRow(row: ShownRow, { at }: Place): ShownRow {
  const middle = row.repeat[at] as StitchId
  const between = [...row.repeat.slice(at + 1), ...row.repeat.slice(0, at)]
  const repeat = [...between, middle]
  if (!isDouble(middle)) return { ...row, right: [middle], repeat, left: [], fewer: 0 }
  const [right, left]: [StitchId, StitchId] = row.side === 'RS' ? ['k2tog', 'ssk'] : ['p2tog', 'ssp']
  return { ...row, right: [right], repeat, left: [...between, left], fewer: 1 }
}

function changesOf(shown: Shown, line: Line): Change[] {
  const doubles = doublesOn(shown, line)
  const numbers = doubles.map(({ number }) => number)
  const wrong = doubles.filter(({ side }) => side === 'WS').map(({ number }) => number)
  return [
    hard(
      `The sides run up the middle of the double decreases of ${rowsNamed(numbers)}: there each double is a single, \`k2tog\` at the right end and \`ssk\` at the left end as you look at the right side, and the yarn overs beside it stay.`,
      numbers,
    ),
    ...(wrong.length > 0
      ? [
          hard(
            `On the wrong side, in ${rowsNamed(wrong)}, they are \`ssp\` at the beginning and \`p2tog\` at the end.`,
            wrong,
          ),
        ]
      : []),
    easy(
      'Both sides are alike, and pieces sewn together there go on with the lace. The cast-on is a multiple plus 1.',
    ),
  ]
}
