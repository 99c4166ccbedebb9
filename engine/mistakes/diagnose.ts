import type { WorkedPattern } from '../needles/index.ts'
import { type Evidence, type MeantCounts, meantCounts } from './evidence.ts'
import { type Fitting, fittingMistakes } from './match.ts'
import { fittingPairs, type Pair } from './pairs.ts'
import { agrees, bestQuestion, type Question, type QuestionKind } from './question.ts'
import { type Suspect, suspectsOf } from './suspects.ts'
import { type Casebook, casebookOf } from './traces.ts'

export interface DiagnoseOptions {
  /** How many suspects are listed. */
  readonly most?: number
  /** Pairs are searched where no single mistake explains the counts. */
  readonly pairs?: boolean
}

/** What the evidence may mean. */
export interface Diagnosis {
  readonly book: Casebook
  readonly evidence: Evidence
  /** The count as it should be now, and before the row. */
  readonly meant: MeantCounts
  /** The counts told are the right ones. */
  readonly right: boolean
  /** The count is meant to change in this row. */
  readonly changes: boolean
  /** Likeliest first, at most `most`. */
  readonly suspects: readonly Suspect[]
  /** How many there are in all. */
  readonly found: number
  /** Two mistakes together, where no single one explains it. */
  readonly pairs: readonly Pair[]
  /** Null where nothing that could be asked would tell the suspects apart. */
  readonly question: Question | null
  readonly fittings: readonly Fitting[]
  /** Questions that were answered already. */
  readonly asked: readonly QuestionKind[]
  readonly most: number
}

/** What a reader would find if nothing was wrong. */
function isRight(evidence: Evidence, meant: MeantCounts): boolean {
  if ((evidence.looks ?? []).length > 0) return false
  if (evidence.total !== undefined && evidence.total !== meant.total) return false
  if (evidence.rowEnd !== undefined && evidence.rowEnd !== 0) return false
  return (
    evidence.counts?.every((count, section) => count === null || count === meant.sections[section]) ?? true
  )
}

/**
 * Finds what may have gone wrong: single mistakes in this row and the rows before it, then pairs. Pass a casebook to
 * ask about the same pattern again and again.
 */
export function diagnose(
  source: WorkedPattern | Casebook,
  evidence: Evidence,
  { most = 6, pairs = true }: DiagnoseOptions = {},
): Diagnosis {
  const book = casebookOf(source)
  const meant = meantCounts(book.plan, evidence.row, evidence.step ?? null)
  const right = isRight(evidence, meant)
  const fittings = right && !uncounted(evidence) ? [] : fittingMistakes(book, evidence)
  const two = pairs && fittings.length < 3 && !right ? fittingPairs(book, evidence, most) : []
  const changes = book.plan.rows[evidence.row]?.makes.some(
    (count, section) => count !== meant.before[section],
  )
  return concluded(
    { book, evidence, meant, right, changes: changes ?? false, pairs: two, most },
    fittings,
    [],
  )
}

/** Nothing was told but the place: everything is possible. */
const uncounted = ({ counts, total, rowEnd, looks }: Evidence): boolean =>
  counts === undefined && total === undefined && rowEnd === undefined && (looks ?? []).length === 0

type Known = Pick<Diagnosis, 'book' | 'evidence' | 'meant' | 'right' | 'changes' | 'pairs' | 'most'>

function concluded(known: Known, fittings: readonly Fitting[], asked: readonly QuestionKind[]): Diagnosis {
  const { book, evidence, most } = known
  const suspects = suspectsOf(book, fittings)
  return {
    ...known,
    suspects: suspects.slice(0, most),
    found: suspects.length,
    question: suspects.length > 1 ? bestQuestion(book, evidence, fittings, asked) : null,
    fittings,
    asked,
  }
}

/** The diagnosis after the reader's reply to its question: one of the choices' ids. */
export function answer(diagnosis: Diagnosis, reply: string): Diagnosis {
  const { book, evidence, question, fittings, asked } = diagnosis
  if (!question) return diagnosis
  const left = fittings.filter((fitting) => agrees(book, evidence, question.kind, reply, fitting))
  return concluded(diagnosis, left.length > 0 ? left : fittings, [...asked, question.kind])
}
