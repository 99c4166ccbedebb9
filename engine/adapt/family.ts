import type { Pattern } from '../pattern/index.ts'
import type { StitchId } from '../stitches/index.ts'
import { type Adaptation, easy } from './adaptation.ts'
import { finished, needsRepeat } from './make.ts'
import { keepsCount, rebuilt } from './rebuild.ts'
import { isRefused, type Refused, refuse } from './refusal.ts'
import { stitches } from './say.ts'
import { isPatterned, type Shown, type ShownRow, shownOf, takesOf, type Word } from './shown.ts'

/**
 * The next wider size of a lace whose holes travel by one stitch from one patterned row to the next: one plain stitch
 * more wherever the plain runs shrink, and the rows that go with the longer way. The published sizes of the horseshoe
 * are of this kind: 6 + 1 over 4 rows, 10 + 1 over 8, 14 + 1 over 12.
 */
export const wider = (pattern: Pattern, sizes = 1): Adaptation => resized(pattern, sizes)

/** The next narrower size of the same. At least two patterned rows stay, without which nothing travels. */
export const narrower = (pattern: Pattern, sizes = 1): Adaptation => resized(pattern, -sizes)

function resized(pattern: Pattern, sizes: number): Adaptation {
  const shown = needsRepeat(pattern) ?? shownOf(pattern)
  if (isRefused(shown)) return shown
  const family = familyOf(shown)
  if (isRefused(family)) return family
  const size = family.gaps.length + sizes
  if (size < 2)
    return refuse(
      'no-family',
      'A size smaller would leave less than two patterned rows, and nothing would travel.',
    )
  if (size > 60) return refuse('no-family', 'That would be more than 60 patterned rows.')
  const rows = Array.from({ length: size }, (_, i) => groupOf(family, i, sizes)).flat()
  const numbered = rows.map((row, i) => ({ ...row, number: i + 1 }))
  const setUp = shown.setUp.map((row) => widened(row, sizes * shrinking(family)))
  return finished(rebuilt(pattern, { setUp, rows: numbered }), [easy(sentence(family, sizes))])
}

/** A row as its lace stitches and the lengths of the plain runs before, between and after them. */
interface Runs {
  readonly lace: Word
  readonly gaps: readonly number[]
}

interface Family {
  readonly lace: Word
  readonly plain: StitchId
  /** For each patterned row, the lengths of its plain runs. */
  readonly gaps: readonly (readonly number[])[]
  /** By how much each run grows from row to row: 1, 0 or -1. */
  readonly steps: readonly number[]
  /** The rows from one patterned row to the next, that row first or not; `at` is its place. */
  readonly group: readonly ShownRow[]
  readonly at: number
}

function runsIn(word: Word, plain: StitchId): Runs {
  const gaps = [0]
  const lace: StitchId[] = []
  for (const id of word) {
    if (id === plain) gaps.splice(-1, 1, (gaps.at(-1) ?? 0) + 1)
    else {
      lace.push(id)
      gaps.push(0)
    }
  }
  return { lace, gaps }
}

const noFamily = (why: string): Refused =>
  refuse('no-family', `${why}, so there is no rule for its next size.`, {
    hint: 'put a plain stitch into every repeat instead, where no decrease stands in the way',
  })

function familyOf(shown: Shown): Family | Refused {
  const { rows } = shown
  const patterned = rows.filter(isPatterned)
  const [first] = patterned
  if (first === undefined || patterned.length < 2) return noFamily('It has fewer than two patterned rows')
  const group = groupIn(rows, patterned)
  if (group === null || !keepsCount(rows) || shown.setUp.some(isPatterned))
    return noFamily('Its patterned rows and its plain ones do not take turns evenly')
  if (!patterned.every((row) => sameEnds(row, first))) return noFamily('Its row ends differ from row to row')
  const plain = first.side === 'RS' ? 'k' : 'p'
  const runs = patterned.map(({ repeat }) => runsIn(repeat, plain))
  const lace = runs[0]?.lace ?? []
  if (!runs.every((one) => one.lace.join() === lace.join()))
    return noFamily('Its patterned rows are not made of the same stitches')
  const gaps = runs.map((one) => one.gaps)
  const steps = stepsOf(gaps)
  if (steps === null) return noFamily('Its holes do not travel by one stitch from row to row')
  return { lace, plain, gaps, steps, group, at: group.indexOf(first) }
}

const sameEnds = (a: ShownRow, b: ShownRow): boolean =>
  a.fewer === b.fewer &&
  a.side === b.side &&
  a.right.join() === b.right.join() &&
  a.left.join() === b.left.join()

/** The first of equal groups of rows with one patterned row each; null where the rows are not such groups. */
function groupIn(rows: readonly ShownRow[], patterned: readonly ShownRow[]): readonly ShownRow[] | null {
  const size = rows.length / patterned.length
  if (!Number.isInteger(size)) return null
  const alike = rows.every((row, i) => {
    const model = rows[i % size] as ShownRow
    return isPatterned(row) === isPatterned(model) && (isPatterned(row) || sameRest(row, model))
  })
  return alike ? rows.slice(0, size) : null
}

const sameRest = (a: ShownRow, b: ShownRow): boolean => sameEnds(a, b) && a.repeat.join() === b.repeat.join()

function stepsOf(gaps: readonly (readonly number[])[]): number[] | null {
  const [first, second] = gaps
  if (first === undefined || second === undefined) return null
  const steps = first.map((gap, j) => (second[j] ?? 0) - gap)
  const even = gaps.every((row, i) => row.every((gap, j) => gap === (first[j] ?? 0) + i * (steps[j] ?? 0)))
  return even && steps.some((step) => step !== 0) && steps.every((step) => Math.abs(step) <= 1) ? steps : null
}

const shrinking = ({ steps }: Family): number => steps.filter((step) => step < 0).length

function groupOf(family: Family, i: number, sizes: number): ShownRow[] {
  const { group, at, gaps, steps, lace, plain } = family
  const lengths = (gaps[0] ?? []).map((gap, j) => {
    const step = steps[j] ?? 0
    return gap + i * step + (step < 0 ? sizes : 0)
  })
  const repeat = lengths.flatMap((length, j): StitchId[] => [
    ...Array.from({ length }, () => plain),
    ...(lace[j] === undefined ? [] : [lace[j]]),
  ])
  return group.map((row, place) =>
    place === at ? { ...row, repeat } : widened(row, sizes * shrinking(family)),
  )
}

/** A plain row's repeat with so many stitches more. */
function widened(row: ShownRow, more: number): ShownRow {
  const [plain] = row.repeat
  if (plain === undefined) return row
  return { ...row, repeat: Array.from({ length: row.repeat.length + more }, () => plain) }
}

function sentence(family: Family, sizes: number): string {
  const { group, gaps, lace } = family
  const [wide, long] = [Math.abs(sizes) * shrinking(family), Math.abs(sizes) * group.length]
  const width = takesOf(lace) + (gaps[0] ?? []).reduce((sum, gap) => sum + gap, 0)
  const [change, rows] = sizes > 0 ? ['wider', 'more'] : ['narrower', 'fewer']
  const now = width + sizes * shrinking(family)
  const way = sizes > 0 ? 'longer' : 'shorter'
  return `Each repeat is ${stitches(wide)} ${change}, ${now} instead of ${width}, and ${long} rows ${rows} go with the ${way} way of the holes: ${(gaps.length + sizes) * group.length} rows in all.`
}
