import type { WorkedPattern } from '../needles/index.ts'
import { consequenceOf } from './consequence.ts'
import type { RowOutcome } from './follow.ts'
import { type Effect, effectOf, effectWords } from './likely-words.ts'
import type { Mistake, MistakeKind } from './mistake.ts'
import { type Casebook, casebookOf, sightsFor, type Trace, tracesIn } from './traces.ts'
import { capital } from './words.ts'

/** A mistake that is to be expected at a step, with what it would do. */
export interface LikelyMistake {
  readonly mistake: Mistake
  readonly kind: MistakeKind
  readonly name: string
  /** Loops at the row's end if it happened. */
  readonly rowEnds: number
  readonly effect: Effect
  readonly words: string
  /** How often learners make it times how much it harms here. */
  readonly weight: number
}

/** Things that cannot be seen or counted soon do the most harm: the farther the work goes on, the more must come out. */
function harmOf(book: Casebook, trace: Trace): number {
  const sights = sightsFor(book, trace)
  if (sights.every(({ look }) => look === 'marker beside its place')) return 1
  const { marked } = trace
  const misfit = marked.findIndex((outcome) => outcome.at !== null)
  const counted = marked.findIndex((outcome) => offBy(book, outcome) !== 0)
  const rowsLost = misfit >= 0 ? misfit : marked.length
  // A ladder goes on running, and a count that is right hides what is wrong.
  const runs = sights.some(({ look }) => look === 'free loop' || look === 'loose bar') ? 2 : 0
  return 2 + rowsLost / 2 + runs + (counted < 0 ? 1 : 2)
}

function offBy(book: Casebook, { row, total }: RowOutcome): number {
  const meant = book.plan.rows[row]?.makes ?? []
  return total - meant.reduce((sum, count) => sum + count, 0)
}

/** What goes wrong at a step: by how often learners do it and how much it harms here; at most `most`, each kind once. `counts` leaves some out. */
export function likelyMistakesAt(
  source: WorkedPattern | Casebook,
  rowIndex: number,
  stepIndex: number,
  most = 2,
  counts: (kind: MistakeKind, weight: number) => boolean = () => true,
): LikelyMistake[] {
  const book = casebookOf(source)
  const here = tracesIn(book, rowIndex).filter(
    ({ mistake }) => mistake.step === stepIndex && !mistake.everywhere,
  )
  const ranked = here
    .map((trace) => ({ trace, weight: trace.weight * harmOf(book, trace) }))
    .filter(({ trace, weight }) => counts(trace.mistake.kind, weight))
    .sort((a, b) => b.weight - a.weight)
  const kinds = new Set<MistakeKind>()
  return ranked
    .filter(({ trace }) => !kinds.has(trace.mistake.kind) && kinds.add(trace.mistake.kind))
    .slice(0, most)
    .flatMap(({ trace, weight }) => likely(book, trace, weight) ?? [])
}

function likely(book: Casebook, { mistake }: Trace, weight: number): LikelyMistake | null {
  const known = consequenceOf(book, mistake)
  if (!known) return null
  const effect = effectOf(book.plan, known)
  const { kind } = mistake
  const words = `${capital(known.name)}? ${effectWords(effect, known.total.meant)}`
  return { mistake, kind, name: known.name, rowEnds: known.total.now, effect, words, weight }
}
