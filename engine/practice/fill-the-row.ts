import { rowName } from '../mistakes/index.ts'
import { stitch } from '../stitches/index.ts'
import type { Choice, ChoosePart, Exercise, Line } from './exercise.ts'
import { drawn, type Random, shuffled } from './luck.ts'
import { nearStitches } from './near-stitches.ts'
import { type Again, againsIn, type Run, runsOf } from './rounds.ts'
import { rowKind, type Table } from './table.ts'
import { listed, low, stitches, written } from './words.ts'

type Made = Omit<Exercise, 'kind' | 'number'>

/** More gaps than that are typing, not practice. */
const mostPieces = 12

/** What may stand in a gap: the row's own pieces, and one look-alike for each kind of stitch that is not plain. */
function optionsFor(table: Table, runs: readonly Run[]): { words: string; id: string; times: number }[] {
  const seen = new Map<string, { words: string; id: string; times: number }>()
  const put = (words: string, id: string, times: number): void => {
    if (!seen.has(words)) seen.set(words, { words, id, times })
  }
  for (const { words, stitch: id, times } of runs) put(words, id, times)
  for (const { stitch: id } of runs) {
    const [near] = nearStitches(table, id).filter((other) => stitch(other).family === stitch(id).family)
    if (stitch(id).family !== 'plain' && near) put(written(near), near, 1)
  }
  if (seen.size < 3)
    for (const { stitch: id } of runs)
      for (const near of nearStitches(table, id).slice(0, 1)) put(written(near), near, 1)
  return [...seen.values()].sort((a, b) => (a.words < b.words ? -1 : 1))
}

function choicesFor(table: Table, runs: readonly Run[], at: number, before: number): Choice[] {
  const run = runs[at] as Run
  return optionsFor(table, runs).map(({ words, id, times }, i) => {
    const { takes, makes } = stitch(id)
    const then = before + times * (makes - takes)
    const right = words === run.words
    const reply = right
      ? `${run.words}: ${before} − ${run.times * stitch(run.stitch).takes} + ${run.times * stitch(run.stitch).makes} = ${run.total}.`
      : then === run.total
        ? `${words} would leave ${then} too: the count does not tell them apart. See what stood here in the line above.`
        : `${words} would leave ${then} on the needles, and the line says ${run.total}.`
    return { id: `o${i}`, words, right, reply }
  })
}

interface Filled {
  readonly line: Line
  readonly parts: readonly ChoosePart[]
}

/** One line with gaps where they are asked for; counts stand under every piece. */
function filled(
  table: Table,
  name: string,
  runs: readonly Run[],
  gaps: ReadonlySet<number>,
  before: number,
  key: string,
): Filled {
  const parts: ChoosePart[] = []
  const pieces = runs.map((run, i) => {
    if (!gaps.has(i)) return { words: run.words, part: null, count: run.total }
    const id = `${key}${i + 1}`
    parts.push({
      form: 'choose',
      id,
      ask: `${name}, piece ${i + 1}: after it ${stitches(run.total)}`,
      gap: true,
      picture: null,
      choices: choicesFor(table, runs, i, runs[i - 1]?.total ?? before),
    })
    return { words: null, part: id, count: run.total }
  })
  return { line: { name, pieces }, parts }
}

/** Gaps for the second line: the last piece, as it is easiest, and others up to half. */
function someOf(runs: readonly Run[], random: Random): ReadonlySet<number> {
  const last = runs.length - 1
  const others = shuffled(
    runs.slice(0, -1).map((_, i) => i),
    random,
  )
  return new Set([last, ...others.slice(0, Math.floor(runs.length / 2) - 1)])
}

function readable(agains: readonly Again[]): Again[] {
  const runs = ({ rounds: [round] }: Again): number => runsOf(round?.steps ?? []).length
  const short = agains.filter((again) => runs(again) <= mostPieces)
  return short.length > 0 ? short : [...agains].sort((a, b) => runs(a) - runs(b)).slice(0, 1)
}

const beforeOf = (table: Table, row: number, step: number): number => {
  const worked = table.worked.rows[row]
  return worked?.steps[step - 2]?.total ?? (worked ? worked.before.length + worked.waiting.length : 0)
}

/** How the count goes from repeat to repeat. */
const totalsWords = ([before = 0, ...after]: readonly number[]): string =>
  after.every((total) => total === before)
    ? `Every repeat gives back as many as it takes: ${stitches(before)} before it, and as many after it.`
    : `There are ${stitches(before)} before the repeats, and ${listed(after.map(String))} after each of them.`

/** A row written in full once, with gaps once, and by its counts alone once. */
export function fillTheRow(table: Table, random: Random): Made | string {
  const agains = againsIn(table)
  if (agains.length === 0)
    return 'No row of it works the same stitches three times, so there is nothing to fade out.'
  const again = drawn(readable(agains), random)
  const all = again.rounds.map((round) => ({
    round,
    runs: runsOf(round.steps),
    before: beforeOf(table, round.row, round.steps[0]?.step ?? 1),
  }))
  const lines = all.map(({ round, runs, before }, i) => {
    const gaps = i === 0 ? new Set<number>() : i === 1 ? someOf(runs, random) : new Set(runs.keys())
    return filled(table, round.name, runs, gaps, before, ['a', 'b', 'c'][i] ?? 'd')
  })
  const [first] = all
  const name = rowName(table.book.plan, again.row)
  const totals = [first?.before ?? 0, ...all.map(({ runs }) => runs.at(-1)?.total ?? 0)]
  return {
    ask: [
      `${name} three times: in full, with gaps, and by its counts alone. The number under a piece is the count on both needles after it.`,
      `Fill the gaps; what the count does tells you what the hands did. Before the ${low(first?.round.name ?? '')} there are ${stitches(totals[0] ?? 0)}.`,
    ],
    shown: [{ form: 'lines', title: name, lines: lines.map(({ line }) => line) }],
    parts: lines.flatMap(({ parts }) => parts),
    because: [
      `Each time it is ${(first?.runs ?? []).map(({ words }) => words).join(', ')}.`,
      again.of === 'repeat'
        ? totalsWords(totals)
        : `Each time the ${rowKind(table)} ends with ${stitches(totals[1] ?? 0)}.`,
    ],
    after: [],
    mistake: null,
  }
}
