import { consequenceOf, rowName, sectionWords } from '../mistakes/index.ts'
import type { WorkedPattern } from '../needles/index.ts'
import { printRow } from '../notation/index.ts'
import { withEdges } from '../pattern/index.ts'
import type { Choice, Exercise, Picture, StretchSeen } from './exercise.ts'
import { type Fault, faultOf, isRepeat, planIn, slipsIn, stretchesSeen } from './faults.ts'
import { byWeight, drawn, type Random, shuffled } from './luck.ts'
import { readingOf } from './reading.ts'
import type { Table } from './table.ts'
import { whatWasDone } from './what-was-done.ts'
import { capital, low, stitches } from './words.ts'

type Made = Omit<Exercise, 'kind' | 'number'>

/** A mistake with the kinds that it can be chosen from. */
interface Chosen {
  readonly fault: Fault
  readonly done: readonly Choice[]
}

const mostTries = 40

/** A slip in the rows: kinds by how often learners make them, and any place of that kind. */
function chosenFrom(
  table: Table,
  rows: readonly number[],
  fits: (fault: Fault) => boolean,
  random: Random,
): Chosen | null {
  for (const row of shuffled(rows, random)) {
    const kinds = Map.groupBy(slipsIn(table, row), ({ mistake }) => mistake.kind)
    const order = byWeight([...kinds.values()], ([one]) => one?.weight ?? 1, random)
    const tries = order.flatMap((all) => shuffled(all, random).slice(0, 3))
    for (const trace of tries.slice(0, mostTries)) {
      const fault = faultOf(table, trace)
      const done = fault && fits(fault) ? whatWasDone(table, fault, random) : null
      if (fault && done) return { fault, done }
    }
  }
  return null
}

/** Rows that lie in three repeats or more between their markers. */
const rowsInRepeats = (table: Table): number[] =>
  table.rows.filter((row) => {
    const { makes = [] } = planIn(table).rows[row] ?? {}
    return makes.filter((count, section) => count > 0 && isRepeat(planIn(table), section)).length >= 3
  })

/** The row's words, edge stitches and all. */
export function rowWords({ worked }: Table, row: number): string {
  const { pattern } = worked
  const meant = [...pattern.setUp, ...pattern.rows][row]
  return meant ? printRow(withEdges(meant, pattern)) : ''
}

const upTo = (worked: WorkedPattern, rows: number): WorkedPattern => ({
  ...worked,
  rows: worked.rows.slice(0, rows),
})

/** The right piece and the wrong one, as many rows high. */
export function bothPictures(table: Table, { piece }: Fault): { right: Picture; wrong: Picture } {
  const right = upTo(planIn(table).worked, piece.worked.rows.length)
  return {
    right: { form: 'fabric', piece: right, title: 'As it should be' },
    wrong: { form: 'fabric', piece: piece.worked, title: 'The piece on the table' },
  }
}

const told = (table: Table, { trace }: Fault): readonly string[] =>
  consequenceOf(planIn(table), trace.mistake)?.words ?? []

const whereReply = ({ name, meant, count }: StretchSeen, right: boolean): string =>
  right
    ? count === meant
      ? `Yes, ${low(name)}. Its ${stitches(count)} are as many as they should be, so only the eye could find it.`
      : `Yes, ${low(name)}: ${stitches(count)} where ${meant} should be.`
    : `${name} has its ${stitches(meant)}, and every hole and decrease of it is in its place.`

function whereChoices(seen: readonly StretchSeen[], rightName: string): Choice[] {
  return seen.map((one, i) => ({
    id: `r${i + 1}`,
    words: one.name,
    right: one.name === rightName,
    reply: whereReply(one, one.name === rightName),
  }))
}

function besideEachOther(table: Table, { fault, done }: Chosen): Made {
  const plan = planIn(table)
  const { row } = fault.trace.mistake
  const seen = stretchesSeen(plan, fault.wrong, fault.right)
  const repeats = seen.filter(({ name }) => /^Repeat/.test(name))
  const pictures = bothPictures(table, fault)
  return {
    ask: [
      `${rowName(plan, row)}: ${rowWords(table, row)}.`,
      `One repeat of it went wrong; the others are right. Repeat 1 is at the right.`,
    ],
    shown: [
      { form: 'picture', picture: pictures.wrong },
      { form: 'stretches', title: `${rowName(plan, row)} when it was done`, folded: true, stretches: seen },
    ],
    parts: partsFor(
      whereChoices(repeats, capital(sectionWords(plan, fault.section))),
      done,
      'Which repeat is wrong?',
    ),
    because: told(table, fault),
    after: [pictures.right],
    mistake: fault.trace.mistake,
  }
}

const partsFor = (where: readonly Choice[], done: readonly Choice[], ask: string): Made['parts'] => [
  { form: 'choose', id: 'where', ask, gap: false, picture: null, choices: where },
  { form: 'choose', id: 'what', ask: 'What was done?', gap: false, picture: null, choices: done },
]

const names = ['Piece A', 'Piece B', 'Piece C'] as const

/** Where a pattern is no wider than it is: three knitters' pieces lie on the table. */
function threePieces(table: Table, { fault, done }: Chosen, random: Random): Made {
  const plan = planIn(table)
  const { row } = fault.trace.mistake
  const wrongName = drawn(names, random)
  const pictures = bothPictures(table, fault)
  const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)
  const seen = names.map((name): StretchSeen => {
    const found = name === wrongName ? fault.wrong : fault.right
    const reading = found.counts
      .map((_, section) => readingOf(found, section))
      .filter((words) => words !== '')
    return { name, meant: sum(fault.right.counts), count: sum(found.counts), reading: reading.join(' · ') }
  })
  return {
    ask: [
      `${rowName(plan, row)}: ${rowWords(table, row)}.`,
      'Three pieces lie on the table, worked by three knitters. In one of them it went wrong.',
    ],
    shown: [
      ...names.map((name) => ({
        form: 'picture' as const,
        picture: { ...(name === wrongName ? pictures.wrong : pictures.right), title: name },
      })),
      { form: 'stretches', title: `${rowName(plan, row)} when it was done`, folded: true, stretches: seen },
    ],
    parts: partsFor(whereChoices(seen, wrongName), done, 'Which piece is wrong?'),
    because: told(table, fault),
    after: [],
    mistake: fault.trace.mistake,
  }
}

/** Several repeats of a row, or several pieces, of which one went wrong. */
export function wrongRepeat(table: Table, random: Random): Made | string {
  const plan = planIn(table)
  const wide = rowsInRepeats(table)
  if (wide.length > 0) {
    const chosen = chosenFrom(table, wide, ({ section }) => isRepeat(plan, section), random)
    if (chosen) return besideEachOther(table, chosen)
  }
  const chosen = chosenFrom(table, table.rows, () => true, random)
  return chosen
    ? threePieces(table, chosen, random)
    : 'No slip of the hands can be made in it that shows in one place only.'
}
