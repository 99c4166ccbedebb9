import type { Evidence } from './evidence.ts'
import type { RowOutcome } from './follow.ts'
import { type Look, looks, lookWords } from './look.ts'
import type { Fitting } from './match.ts'
import { type Plan, sectionWords } from './plan.ts'
import { looksNow } from './suspects.ts'
import type { Casebook } from './traces.ts'

export type QuestionKind =
  | 'which section'
  | 'what do you see'
  | 'did the words come out'
  | 'was the row before right'

export interface Choice {
  readonly id: string
  readonly words: string
}

/** One question to the reader, with the answers that she can give. `unsure` is always one of them. */
export interface Question {
  readonly kind: QuestionKind
  readonly words: string
  readonly choices: readonly Choice[]
  /** Bits that an answer is expected to tell. */
  readonly worth: number
}

const rowEndOf = ({ over, short }: RowOutcome): string => (over > 0 ? 'over' : short > 0 ? 'short' : 'yes')

/** What a reader would answer if this mistake was made. */
export function replyOf(book: Casebook, evidence: Evidence, kind: QuestionKind, fitting: Fitting): string {
  const { trace, outcome, ago } = fitting
  switch (kind) {
    case 'which section': {
      const meant = book.plan.rows[evidence.row]?.makes ?? []
      const counts = trace.marked[ago]?.counts ?? outcome.counts
      const off = counts.flatMap((count, section) => (count === meant[section] ? [] : [section]))
      return off.length === 0 ? 'none' : off.length > 2 ? 'several' : String(off[0])
    }
    case 'what do you see':
      return looksNow(book, fitting)[0] ?? 'nothing'
    case 'did the words come out':
      return rowEndOf(outcome)
    case 'was the row before right': {
      const before = trace.marked[ago - 1]
      const meant = before && book.plan.rows[before.row]
      return meant && before.counts.some((count, section) => count !== meant.makes[section]) ? 'no' : 'yes'
    }
  }
}

/** Whether a mistake is still possible after a reply: of what there is to see, a reader may name any part. */
export function agrees(
  book: Casebook,
  evidence: Evidence,
  kind: QuestionKind,
  reply: string,
  fitting: Fitting,
): boolean {
  if (reply === 'unsure') return true
  if (kind === 'what do you see') {
    const seen = looksNow(book, fitting)
    return reply === 'nothing' ? seen.length === 0 : seen.includes(reply as Look)
  }
  if (kind === 'did the words come out') {
    // Whether she stopped at markers is not known, and the words may come out otherwise with them.
    const { trace, ago, outcome } = fitting
    return [outcome, trace.marked[ago], trace.unmarked[ago]].some((one) => one && rowEndOf(one) === reply)
  }
  return replyOf(book, evidence, kind, fitting) === reply
}

/** Whether a question asks for something that is not told yet. */
function isOpen(evidence: Evidence, kind: QuestionKind): boolean {
  if (kind === 'which section') return evidence.counts === undefined && evidence.step == null
  if (kind === 'did the words come out') return evidence.rowEnd === undefined && evidence.step == null
  if (kind === 'was the row before right') return evidence.rightUpTo === undefined
  return (evidence.looks ?? []).length === 0
}

const kinds: readonly QuestionKind[] = [
  'which section',
  'what do you see',
  'did the words come out',
  'was the row before right',
]

/** Bits that are not known yet about which of the groups it is. */
function bits(weights: Iterable<number>): number {
  const all = [...weights]
  const sum = all.reduce((total, weight) => total + weight, 0)
  return all.reduce(
    (total, weight) => (weight > 0 ? total - (weight / sum) * Math.log2(weight / sum) : total),
    0,
  )
}

const addTo = (map: Map<string, number>, key: string, weight: number): void => {
  map.set(key, (map.get(key) ?? 0) + weight)
}

const groupOf = ({ trace: { mistake, section } }: Fitting): string =>
  `${mistake.kind}|${mistake.row}|${section}|${mistake.everywhere}`

/** The expected information of a question: what is not known now, less what will not be known after the answer. */
function worthOf(
  book: Casebook,
  evidence: Evidence,
  kind: QuestionKind,
  fittings: readonly Fitting[],
): number {
  const now = new Map<string, number>()
  const after = new Map<string, Map<string, number>>()
  for (const fitting of fittings) {
    const reply = replyOf(book, evidence, kind, fitting)
    addTo(now, groupOf(fitting), fitting.weight)
    const then = after.get(reply) ?? new Map<string, number>()
    after.set(reply, then)
    addTo(then, groupOf(fitting), fitting.weight)
  }
  const sum = fittings.reduce((total, { weight }) => total + weight, 0)
  let left = 0
  for (const then of after.values()) {
    const share = [...then.values()].reduce((total, weight) => total + weight, 0) / sum
    left += share * bits(then.values())
  }
  return bits(now.values()) - left
}

/** The question that tells most about which of the mistakes it was; null where none tells anything. */
export function bestQuestion(
  book: Casebook,
  evidence: Evidence,
  fittings: readonly Fitting[],
  asked: readonly QuestionKind[],
): Question | null {
  const open = kinds.filter((kind) => isOpen(evidence, kind) && !asked.includes(kind))
  const ranked = open
    .map((kind) => ({ kind, worth: worthOf(book, evidence, kind, fittings) }))
    .sort((a, b) => b.worth - a.worth)
  const [best] = ranked
  if (!best || best.worth < 0.05) return null
  const replies = new Set(fittings.map((fitting) => replyOf(book, evidence, best.kind, fitting)))
  return {
    ...best,
    words: questionWords(book.plan, evidence, best.kind),
    choices: choicesFor(book.plan, best.kind, replies),
  }
}

function questionWords(plan: Plan, evidence: Evidence, kind: QuestionKind): string {
  const { number } = plan.rows[evidence.row] ?? { number: 0 }
  switch (kind) {
    case 'which section':
      return 'Count the stitches between the markers, one repeat after the other. Which is the first, from the right, that is wrong?'
    case 'what do you see':
      return evidence.counts === undefined && evidence.section == null
        ? 'Look along the row from the right side, one repeat after the other. What do you see where it differs?'
        : 'Look at that place from the right side. What do you see?'
    case 'did the words come out':
      return `When you came to the end of row ${number}, did its words come out?`
    case 'was the row before right':
      return 'Did you count after the row before, and was it right then?'
  }
}

const unsure: Choice = { id: 'unsure', words: 'I cannot tell.' }

function choicesFor(plan: Plan, kind: QuestionKind, replies: ReadonlySet<string>): Choice[] {
  const fixed: Record<string, string> = {
    none: 'All of them are right.',
    several: 'Nearly all of them.',
    nothing: 'Nothing looks wrong.',
    over: 'Stitches were left over.',
    short: 'There were too few stitches.',
    yes: 'Yes.',
    no: 'No.',
  }
  const words = (id: string): string =>
    fixed[id] ??
    (kind === 'what do you see' ? lookWords[id as Look] : capital(sectionWords(plan, Number(id))))
  const order = kind === 'what do you see' ? [...looks, 'nothing'] : [...replies].sort()
  const found = order.filter((id) => replies.has(id)).map((id) => ({ id, words: words(id) }))
  return [...found, unsure]
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
