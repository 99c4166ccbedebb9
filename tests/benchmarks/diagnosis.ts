// How long an answer takes: `node tests/benchmarks/diagnosis.ts`. Ends with 1 where an answer took 100 ms or more.
import { readPattern } from '../../engine/intake/index.ts'
import {
  answer,
  type Casebook,
  casebookOf,
  diagnose,
  type Evidence,
  preparing,
  type Trace,
  tracesIn,
} from '../../engine/mistakes/index.ts'
import { work } from '../../engine/needles/index.ts'

const most = 100
/** A page that does not react for longer feels stuck. */
const mostBit = 50

/** A lace of 121 stitches and 20 rows: a repeat of eight, fifteen times. */
function bookOfLace(): Casebook {
  const repeat = [
    'yo, k2, s2kp, k2, yo, k1',
    'k1, yo, k1, s2kp, k1, yo, k2',
    'k2, yo, s2kp, yo, k3',
    'yo, ssk, k3, k2tog, yo, k1',
  ]
  const rows = Array.from({ length: 20 }, (_, i) =>
    i % 2 === 0 ? `k1, *${repeat[(i / 2) % 4]}; rep from * to end` : 'purl',
  )
  const text = `title: Bench\ncastOn: { multiple: 8, plus: 1 }\nrows:\n${rows.map((row) => `  - '${row}'\n`).join('')}`
  const { pattern, issues } = readPattern({ name: 'bench.yaml', text })
  const worked = pattern && work(pattern, 15).worked
  if (!worked) throw new Error(JSON.stringify(issues))
  return casebookOf(worked)
}

/** What a reader could tell of some mistakes in every row. */
function evidence(book: Casebook): Evidence[] {
  const every = <T>(of: readonly T[], nth: number): T[] => of.filter((_, i) => i % nth === 0)
  return book.plan.rows.flatMap((row) =>
    every(tracesIn(book, row.index), 97).flatMap((trace) => toldOf(trace)),
  )
}

function toldOf({ marked, unmarked }: Trace): Evidence[] {
  const [counted, totalled] = [marked.at(-1), unmarked[0]]
  return [
    ...(counted ? [{ row: counted.row, counts: counted.counts }] : []),
    ...(totalled ? [{ row: totalled.row, total: totalled.total }] : []),
  ]
}

const looks: readonly Evidence[] = (
  ['no hole', 'leans the other way', 'free loop', 'hole shut'] as const
).flatMap((look) => [2, 9, 19].map((row) => ({ row, looks: [look] })))

function timed<T>(what: () => T): [T, number] {
  const start = performance.now()
  const done = what()
  return [done, performance.now() - start]
}

const [fresh, planned] = timed(bookOfLace)
const told: Evidence = { row: 10, counts: [1, ...Array.from({ length: 15 }, (_, i) => (i === 6 ? 7 : 8))] }
const [, first] = timed(() => diagnose(fresh, told))
/** Each bit of the making ready: none may hold up a page for long. */
const book = bookOfLace()
const bits: number[] = []
const making = preparing(book, 10)
for (let [one, took] = timed(() => making.next()); !one.done; [one, took] = timed(() => making.next()))
  bits.push(took)
const ready = bits.reduce((sum, took) => sum + took, 0)
const longest = Math.max(...bits)
const [, firstReady] = timed(() => diagnose(book, told))
const times: number[] = []
for (const one of [...evidence(book), ...looks]) {
  const [diagnosis, took] = timed(() => diagnose(book, one))
  const reply = diagnosis.question?.choices[0]?.id
  const [, again] = reply === undefined ? [null, 0] : timed(() => answer(diagnosis, reply))
  times.push(took, again)
}
times.sort((a, b) => a - b)
const [median, worst] = [times[Math.floor(times.length / 2)] ?? 0, times.at(-1) ?? 0]
const ms = (time: number): string => `${time.toFixed(1)} ms`
console.log(`121 stitches, 20 rows: laid out in ${ms(planned)}, all rows made ready in ${ms(ready)}`)
console.log(`made ready in ${bits.length} bits, the longest ${ms(longest)}; asked for at most ${ms(mostBit)}`)
console.log(`the very first answer: nothing ready ${ms(first)}, all ready ${ms(firstReady)}`)
console.log(
  `${times.length} answers: median ${ms(median)}, worst ${ms(worst)}; asked for less than ${ms(most)}`,
)
process.exitCode = worst < most && firstReady < most ? 0 : 1
