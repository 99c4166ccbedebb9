import { edgeTotals } from '../counts/index.ts'
import type { Pattern } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import { type Change, easy, hard } from './adaptation.ts'
import { capital, rowsNamed, stitches } from './say.ts'
import { isPatterned, type Shown, type ShownRow, takesOf, tellingRow, type Word } from './shown.ts'
import { nearlyAlike } from './twins.ts'

/**
 * What a knitter should know of a flat pattern that went into the round. `starts`: how many stitches into its repeat
 * each row begins; `ownStart`: whether the repeat's own beginning would have done.
 */
export function roundChanges(
  pattern: Pattern,
  shown: Shown,
  starts: readonly number[],
  ownStart: boolean,
): Change[] {
  return [
    ...whatGoes(pattern, shown),
    ...wrongSideRows(shown),
    ...beginning(shown, starts, ownStart),
    ...nearTwins(shown),
  ]
}

const numbersOf = (rows: readonly ShownRow[]): number[] => rows.map(({ number }) => number)

function whatGoes(pattern: Pattern, { rows }: Shown): Change[] {
  const plus = 'plus' in pattern.castOn ? pattern.castOn.plus : 0
  const edges = edgeTotals(pattern).takes
  const changes = edges > 0 ? [easy(`The edge stitches (${edges} in all) go: a round has no edges.`)] : []
  const patterned = rows.filter(isPatterned)
  const withEnds = patterned.filter((row) => row.right.length + row.left.length > 0)
  if (plus === 0 && withEnds.length === 0) return changes
  const cast = plus > 0 ? ` Cast on ${stitches(plus)} fewer.` : ''
  if (endsAreAlike(patterned))
    return [
      ...changes,
      easy(`The balancing stitches beside the repeat go, and only the repeat is worked.${cast}`),
    ]
  const sentence =
    'The stitches beside the repeat go. They are not alike in every row, so the repeats of the flat rows, taken as they ' +
    `are written, would not stand over each other; those of the rounds here do.${cast}`
  return [...changes, hard(sentence, numbersOf(withEnds))]
}

const isPlain = (word: Word): boolean => word.every((id) => stitch(id).family === 'plain')

/** Whether the repeats as written stand over each other: beside the same number of plain stitches in every row. */
function endsAreAlike(rows: readonly ShownRow[]): boolean {
  const plain = rows.every(({ right, left, fewer }) => fewer === 0 && isPlain(right) && isPlain(left))
  return plain && new Set(rows.map(({ right }) => takesOf(right))).size <= 1
}

const isRest = ({ right, repeat, left }: ShownRow): boolean =>
  [...right, ...repeat, ...left].every((id) => id === 'p')

function wrongSideRows({ rows }: Shown): Change[] {
  const wrong = rows.filter(({ side }) => side === 'WS')
  const [rest, patterned] = [numbersOf(wrong.filter(isRest)), numbersOf(wrong.filter((row) => !isRest(row)))]
  const changes: Change[] = []
  if (rest.length > 0) {
    const were =
      rest.length === 1
        ? 'was a plain purl row and is a knit round'
        : 'were plain purl rows and are knit rounds'
    changes.push(
      easy(`${capital(rowsNamed(rest, 'round'))} ${were}: the right side faces you all the time.`, rest),
    )
  }
  if (patterned.length > 0) {
    const were =
      patterned.length === 1
        ? 'was a wrong-side row with stitches of its own. It is'
        : 'were wrong-side rows with stitches of their own. They are'
    const read =
      'read from the end back: a knit is a purl, a purl a knit, and a decrease its twin of the right side.'
    changes.push(hard(`${capital(rowsNamed(patterned, 'round'))} ${were} ${read}`, patterned))
  }
  return changes
}

function beginning(shown: Shown, starts: readonly number[], ownStart: boolean): Change[] {
  const { rows } = shown
  const telling = tellingRow(shown)
  const row = rows[telling]
  if (row === undefined) return []
  const at = starts[telling] ?? 0
  const over = rows.filter(({ repeat }, i) => {
    const beside = [repeat.at(starts[i] ?? 0), repeat.at((starts[i] ?? 0) - 1)]
    return beside.some((id) => stitch(id ?? 'k').family === 'yarn over')
  })
  const held = `A yarn over stands beside the marker in ${rowsNamed(numbersOf(over), 'round')}: hold it there, or it slips over the marker.`
  return [
    ...(at > 0 ? [hard(movedWords(row, at, ownStart), [row.number])] : []),
    ...(over.length > 0 ? [hard(held, numbersOf(over))] : []),
  ]
}

function movedWords({ number, repeat, side }: ShownRow, at: number, ownStart: boolean): string {
  const back = repeat.length - at
  const where = at <= back ? `${stitches(at)} further on` : `${stitches(back)} earlier`
  const shown = stitch(repeat[at] ?? 'k')
  const next = side === 'RS' ? shown.us : stitch(shown.wrongSideTwin ?? 'k').us
  const why = ownStart
    ? 'the marker then stands farther from the yarn overs'
    : 'where the repeat begins, a decrease would be worked across the marker'
  return `The round begins ${where} than the repeat, before a \`${next}\` in round ${number}: ${why}.`
}

function nearTwins({ rows }: Shown): Change[] {
  const wrong = rows.filter(({ side }) => side === 'WS')
  return nearlyAlike(wrong.map(({ repeat }) => repeat)).map(({ stitch: id, twin }) =>
    hard(
      `\`${stitch(id).us}\` has no exact twin on the right side; \`${stitch(twin).us}\` comes nearest.`,
      numbersOf(wrong.filter(({ repeat }) => repeat.includes(id))),
    ),
  )
}
