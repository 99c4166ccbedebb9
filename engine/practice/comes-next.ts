import { rowName } from '../mistakes/index.ts'
import type { Step, WorkedRow } from '../needles/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'
import type { Choice, CountPart, Exercise, Line } from './exercise.ts'
import { drawn, type Random, shuffled } from './luck.ts'
import { nearStitches } from './near-stitches.ts'
import { type Again, againsIn, type Round } from './rounds.ts'
import { rowKind, type Table } from './table.ts'
import { doesWords, fullName, low, stitches, written } from './words.ts'

type Made = Omit<Exercise, 'kind' | 'number'>

/** The stitch that is to come. */
interface Next {
  readonly row: WorkedRow
  readonly step: Step
  /** Stitches on both needles before it. */
  readonly before: number
}

const lineOf = (name: string, steps: readonly Step[], open: boolean): Line => ({
  name,
  pieces: [
    ...steps.map(({ stitch: id, total }) => ({ words: written(id), part: null, count: total })),
    ...(open ? [{ words: null, part: 'stitch', count: null }] : []),
  ],
})

/** Half the time a plain stitch would come next anyway: what is asked is where the hands must think. */
function placeIn({ steps }: Round, random: Random): number {
  const busy = steps.flatMap(({ stitch: id }, i) => {
    const was = steps[i - 1]
    return i > 0 && (stitch(id).family !== 'plain' || was?.stitch !== id) ? [i] : []
  })
  return drawn(busy.length > 0 ? busy : steps.map((_, i) => i), random)
}

function choicesFor(
  table: Table,
  { step, before }: Next,
  own: readonly StitchId[],
  random: Random,
): Choice[] {
  const near = nearStitches(table, step.stitch)
  const others = [...shuffled(own, random), ...near].filter((id) => id !== step.stitch)
  const ids = [...new Set([step.stitch, ...others])].slice(0, 4)
  return shuffled(ids, random).map((id) => ({
    id,
    words: fullName(id),
    right: id === step.stitch,
    reply: replyFor(id, step, before),
  }))
}

function replyFor(id: StitchId, { stitch: right, total }: Step, before: number): string {
  const { takes, makes } = stitch(id)
  if (id === right) return `Yes, ${written(id)}. It ${doesWords(id)}.`
  const then = before - takes + makes
  if (then !== total)
    return `${written(id)} ${doesWords(id)}: there would be ${then} on the needles, where ${total} belong.`
  return `${written(id)} ${doesWords(id)}, as ${written(right)} does: the count would come out and hide it. Look at what stood in this place before.`
}

function countPart({ row, step, before }: Next): CountPart {
  const { takes, makes } = stitch(step.stitch)
  const start = row.before.length + row.waiting.length
  const all = [
    { count: before, words: `${before} were there before it.` },
    {
      count: step.right,
      words: `${step.right} lie on the right needle alone; the others wait on the left one.`,
    },
    {
      count: step.left,
      words: `${step.left} still wait on the left needle; the others are on the right one.`,
    },
    { count: start, words: `${start} were there at the beginning.` },
  ]
  return {
    form: 'count',
    id: 'count',
    ask: 'How many stitches are then on both needles together?',
    right: step.total,
    because: `${before} before it; ${written(step.stitch)} takes ${takes} and makes ${makes}: ${before} − ${takes} + ${makes} = ${step.total}.`,
    near: all.filter(
      ({ count }, i) => count !== step.total && all.findIndex((one) => one.count === count) === i,
    ),
  }
}

function askWords(table: Table, { row, of }: Again, round: Round): string[] {
  const name = rowName(table.book.plan, row)
  const [again, before] =
    of === 'repeat'
      ? ['the same stitches come again in every repeat', 'the first repeat']
      : [`the ${rowKind(table)} is the same in every turn of the pattern`, 'the first time']
  return [
    `You are working ${low(name)}, ${low(round.name)}. The number under a stitch is the count on both needles after it.`,
    `Say what comes before you look: ${again}, so ${before} tells you.`,
  ]
}

/** The next stitch of a row, and the count that it leaves. */
export function comesNext(table: Table, random: Random): Made | string {
  const agains = againsIn(table)
  if (agains.length === 0)
    return 'No row of it works the same stitches over again, so nothing tells which stitch comes next.'
  const again = drawn(agains, random)
  const [first] = again.rounds
  const round = drawn(again.rounds.slice(1), random)
  const at = placeIn(round, random)
  const [row, step] = [table.worked.rows[round.row], round.steps[at]]
  if (!row || !step || !first) return 'The row is empty.'
  const before = row.steps[step.step - 2]?.total ?? row.before.length + row.waiting.length
  const next: Next = { row, step, before }
  const own = [...new Set(round.steps.map((one) => one.stitch))]
  const count = countPart(next)
  return {
    ask: askWords(table, again, round),
    shown: [
      {
        form: 'lines',
        title: `${rowName(table.book.plan, again.row)} so far`,
        lines: [lineOf(first.name, first.steps, false), lineOf(round.name, round.steps.slice(0, at), true)],
      },
    ],
    parts: [
      {
        form: 'choose',
        id: 'stitch',
        ask: 'Which stitch comes next?',
        gap: false,
        picture: null,
        choices: choicesFor(table, next, own, random),
      },
      count,
    ],
    because: [
      `${fullName(step.stitch)}, as stitch ${at + 1} of the ${low(first.name)} was. ${count.because}`,
      `${rowName(table.book.plan, again.row)} ends with ${stitches(row.after.length + row.unworked.length)}.`,
    ],
    after: [],
    mistake: null,
  }
}
