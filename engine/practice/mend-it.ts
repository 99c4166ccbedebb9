import {
  type Consequence,
  consequenceOf,
  type Mend,
  mendsFor,
  type Plan,
  rowName,
  sameFabric,
  sectionWords,
  workWrong,
} from '../mistakes/index.ts'
import type { Choice, Exercise } from './exercise.ts'
import { type Fault, faultOf, planIn, slipsIn, stretchesSeen } from './faults.ts'
import { byWeight, type Random, shuffled } from './luck.ts'
import { rowKind, type Table } from './table.ts'
import { capital, low, stitches } from './words.ts'
import { bothPictures, rowWords } from './wrong-repeat.ts'

type Made = Omit<Exercise, 'kind' | 'number'>

/** A mistake seen on the way back, with what can be done about it there. */
interface Case {
  readonly fault: Fault
  readonly follows: Consequence
  /** The exact mend that takes the least work. */
  readonly best: Mend
  /** Others that cost more, or do not give the right fabric. */
  readonly others: readonly Mend[]
}

/** Ripping back is right too, and takes the whole row. */
function othersThan(best: Mend, mends: readonly Mend[]): Mend[] {
  const rest = mends.filter(
    (mend) =>
      mend !== best && (!mend.exact || (mend.way === 'go back to the row' && mend.stitches > best.stitches)),
  )
  return rest.filter((mend, i) => rest.findIndex(({ way }) => way === mend.way) === i)
}

function caseOf(table: Table, fault: Fault): Case | null {
  const plan = planIn(table)
  const { mistake, edits } = fault.trace
  const follows = consequenceOf(plan, mistake)
  const mends = mendsFor(plan, mistake).filter(({ later, way }) => later === 1 || way === 'leave it')
  const [best] = mends.filter(({ exact }) => exact).sort((a, b) => a.stitches - b.stitches)
  const left = workWrong(plan, edits, 2, { unnoticed: true }).worked
  const right = { ...plan.worked, rows: plan.worked.rows.slice(0, left.rows.length) }
  if (!follows || !best || sameFabric(left, right)) return null
  return { fault, follows, best, others: othersThan(best, mends) }
}

/** What is done first: enough to know the mend by, and no word of what comes of it. */
function choiceWords({ way, steps, cosmetic }: Mend): string {
  if (way === 'leave it') return 'Leave it, and go on as if nothing had happened.'
  return `${capital(way)}. ${steps.slice(0, cosmetic ? 1 : 2).join(' ')}`
}

const eyeWords = ({ eye }: Consequence): string => eye.slice(0, 2).join(' ')

function countAfter({ piece }: Mend): string {
  const row = piece?.rows.at(-1)
  return stitches(row?.after.length ?? piece?.castOn ?? 0)
}

const lessWords = ({ stitches: n }: Mend): string =>
  n === 0 ? 'where nothing need be taken back' : `where ${n} ${n === 1 ? 'is' : 'are'} enough`

/** Where it is, unless the whole row is one stretch. */
const placeWords = (plan: Plan, section: number): string =>
  plan.sections[section] === 'body' ? '' : `, in ${sectionWords(plan, section)}`

/** What comes of a mend that is not the best. */
function replyTo(mend: Mend, { best, follows }: Case, kind: string): string {
  if (mend.exact)
    return `That gives the right fabric too, but all ${stitches(mend.stitches)} of the ${kind} are worked again, ${lessWords(best)}.`
  if (mend.cosmetic)
    return `The count is right again, ${countAfter(mend)}, and that is all: a cosmetic mend. The fabric keeps the mistake. ${eyeWords(follows)}`
  return `It is work, and the fabric is still not the right one, loop for loop: it was tried and laid beside it.`
}

function leavingWords({ follows, others }: Case): string {
  const { settled } = follows
  const harmless = others.some(({ way }) => way === 'leave it')
  const count =
    settled.now === settled.meant
      ? `The count is right, ${stitches(settled.now)}, but it stays in the fabric. ${eyeWords(follows)}`
      : `Then ${stitches(settled.now)} stay where ${settled.meant} should be. ${eyeWords(follows)}`
  return harmless ? `${count} Later rows fit, so it may be left in a large piece; it is not mended.` : count
}

const bestReply = ({ best }: Case): string =>
  [
    `Yes: the fabric is then the right one, loop for loop, with ${countAfter(best)}${best.way === 'go back to the row' ? ' when you are back there' : ''}.`,
    ...(best.caution ? [best.caution] : []),
  ].join(' ')

function choicesFor(one: Case, kind: string, random: Random): Choice[] {
  const others = one.others.filter(({ way }) => way !== 'leave it').slice(0, 3)
  const all: Omit<Choice, 'id'>[] = [
    { words: choiceWords(one.best), right: true, reply: bestReply(one) },
    ...others.map((mend) => ({ words: choiceWords(mend), right: false, reply: replyTo(mend, one, kind) })),
    { words: choiceWords({ ...one.best, way: 'leave it' }), right: false, reply: leavingWords(one) },
  ]
  return shuffled(all, random).map((choice, i) => ({ id: `m${i + 1}`, ...choice }))
}

function exerciseFor(table: Table, one: Case, random: Random): Made {
  const plan = planIn(table)
  const { fault, follows } = one
  const { row } = fault.trace.mistake
  const pictures = bothPictures(table, fault)
  const [here, back] = [rowName(plan, row), low(rowName(plan, row + 1))]
  return {
    ask: [
      `${here}: ${rowWords(table, row)}.`,
      `In ${low(here)}${placeWords(plan, fault.section)}, ${follows.name}. You see it as you work ${back}, when you come to the place.`,
    ],
    shown: [
      { form: 'picture', picture: pictures.wrong },
      {
        form: 'stretches',
        title: `${here} when it was done`,
        folded: false,
        stretches: stretchesSeen(plan, fault.wrong, fault.right),
      },
    ],
    parts: [
      {
        form: 'choose',
        id: 'mend',
        ask: 'Which mend gives the right fabric with the least work?',
        gap: false,
        picture: null,
        choices: choicesFor(one, rowKind(table), random),
      },
    ],
    because: [`${capital(one.best.way)}.`, ...one.best.steps, ...follows.words.slice(1, 2)],
    after: [pictures.right],
    mistake: fault.trace.mistake,
  }
}

const mostTries = 24

/** A wrong piece, and mends to choose from: one that gives the right fabric, others that do not, or take more work. */
export function mendIt(table: Table, random: Random): Made | string {
  const plan = planIn(table)
  const rows = table.rows.filter((row) => row + 1 < plan.rows.length)
  let spare: Case | null = null
  for (const row of shuffled(rows, random)) {
    const kinds = Map.groupBy(slipsIn(table, row), ({ mistake }) => mistake.kind)
    const order = byWeight([...kinds.values()], ([one]) => one?.weight ?? 1, random)
    for (const trace of order.flatMap((all) => shuffled(all, random).slice(0, 1)).slice(0, mostTries)) {
      const fault = faultOf(table, trace)
      const one = fault && caseOf(table, fault)
      if (!one) continue
      // A mend of the count alone is what learners reach for: it is worth a choice.
      if (one.others.some(({ cosmetic }) => cosmetic) || random() < 0.35)
        return exerciseFor(table, one, random)
      spare ??= one
    }
  }
  return spare ? exerciseFor(table, spare, random) : 'No slip in it can be mended on the row after it.'
}
