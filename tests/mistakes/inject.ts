import { globSync } from 'node:fs'
import { seededRandom } from '../../engine/base/index.ts'
import {
  answer,
  type Casebook,
  casebookOf,
  diagnose,
  type Evidence,
  type Fitting,
  type RowOutcome,
  replyOf,
  sightsFor,
  type Trace,
} from '../../engine/mistakes/index.ts'
import { allTraces, bookOf, fromRows } from './support.ts'

/** What a reader tells: counts between the markers, only the total, the total and how the row ended, or what she sees. */
export type EvidenceKind = 'counts' | 'total' | 'total and row end' | 'look'

export const evidenceKinds: readonly EvidenceKind[] = ['counts', 'total', 'total and row end', 'look']

export interface Score {
  /** Mistakes that this evidence can tell from a right row. */
  asked: number
  first: number
  firstThree: number
  absent: number
  /** In the first three before any question was asked. */
  threeAtOnce: number
  /** For each kind of mistake: how many were asked, and how many were in the first three. */
  readonly kinds: Map<string, { asked: number; firstThree: number }>
}

const noScore = (): Score => ({
  asked: 0,
  first: 0,
  firstThree: 0,
  absent: 0,
  threeAtOnce: 0,
  kinds: new Map(),
})

export interface Injection {
  readonly injected: number
  readonly patterns: number
  readonly kinds: ReadonlySet<string>
  readonly scores: Readonly<Record<EvidenceKind, Score>>
  /** Mistakes that no count shows. */
  readonly uncounted: number
}

const folder = new URL('../../content/patterns/', import.meta.url)

/** Every pattern of the library, and a rib with a yarn over between knit and purl, which none of them has. */
function books(): Casebook[] {
  const slugs = globSync('*.yaml', { cwd: folder })
    .sort()
    .map((file) => file.replace(/\.yaml$/, ''))
  const rib = fromRows('{ multiple: 6, plus: 0 }', [
    '*k2, yo, p2tog, p2; rep from * to end',
    '*k3, p3; rep from * to end',
  ])
  return [...slugs.map((slug) => bookOf(slug)), casebookOf(rib)]
}

const rightTotal = (book: Casebook, row: number): number =>
  book.plan.rows[row]?.makes.reduce((sum, count) => sum + count, 0) ?? 0

/** Whether a reader finds anything with this kind of evidence after a row. */
function tells(book: Casebook, kind: EvidenceKind, trace: Trace, outcome: RowOutcome, ago: number): boolean {
  switch (kind) {
    case 'counts':
      return outcome.counts.some((count, section) => count !== book.plan.rows[outcome.row]?.makes[section])
    case 'total':
      return outcome.total !== rightTotal(book, outcome.row)
    case 'total and row end':
      return outcome.at !== null || outcome.total !== rightTotal(book, outcome.row)
    case 'look':
      return sightsFor(book, trace).some(({ later }) => later <= ago)
  }
}

function evidenceOf(
  book: Casebook,
  kind: EvidenceKind,
  trace: Trace,
  { row, counts, total, over, short }: RowOutcome,
  ago: number,
): Evidence {
  switch (kind) {
    case 'counts':
      return { row, counts }
    case 'total':
      return { row, total }
    case 'total and row end':
      return { row, total, rowEnd: over - short }
    case 'look': {
      const sight = sightsFor(book, trace).find(({ later }) => later <= ago)
      return { row, looks: sight ? [sight.look] : [], section: sight?.section ?? null }
    }
  }
}

/** The first row in which the evidence tells anything, once all that the mistake does is done. */
function firstTold(book: Casebook, kind: EvidenceKind, trace: Trace): Fitting | null {
  const outcomes = kind === 'counts' || kind === 'look' ? trace.marked : trace.unmarked
  const last = Math.max(...trace.edits.map((edit) => ('row' in edit ? edit.row : 0)))
  const ago = outcomes.findIndex(
    (outcome, i) => i >= last - trace.mistake.row && tells(book, kind, trace, outcome, i),
  )
  const outcome = outcomes[ago]
  return outcome ? { trace, outcome, ago, weight: 0 } : null
}

/** Tells the diagnosis what a reader would tell, answers its one question truly, and sees where the true mistake stands. */
function ask(book: Casebook, kind: EvidenceKind, trace: Trace, score: Score): boolean {
  const told = firstTold(book, kind, trace)
  if (!told) return false
  const evidence = evidenceOf(book, kind, trace, told.outcome, told.ago)
  const place = (diagnosis: ReturnType<typeof diagnose>): number =>
    diagnosis.suspects.findIndex(
      (suspect) =>
        suspect.kind === trace.mistake.kind &&
        suspect.section === trace.section &&
        suspect.everywhere === trace.mistake.everywhere,
    )
  const atOnce = diagnose(book, evidence, { most: Number.POSITIVE_INFINITY, pairs: false })
  const { question } = atOnce
  const after = question ? answer(atOnce, replyOf(book, evidence, question.kind, told)) : atOnce
  const [before, now] = [place(atOnce), place(after)]
  const kinds = score.kinds.get(trace.mistake.kind) ?? { asked: 0, firstThree: 0 }
  score.kinds.set(trace.mistake.kind, kinds)
  score.asked++
  kinds.asked++
  if (now === 0) score.first++
  if (now >= 0 && now < 3) {
    score.firstThree++
    kinds.firstThree++
  }
  if (now < 0) score.absent++
  if (before >= 0 && before < 3) score.threeAtOnce++
  return true
}

/** Makes every mistake at every possible place, or a share of them drawn by a seed, and scores the diagnosis. */
export function inject(share: number, seed: number): Injection {
  const random = seededRandom(seed)
  const scores = { counts: noScore(), total: noScore(), 'total and row end': noScore(), look: noScore() }
  const kinds = new Set<string>()
  let [injected, patterns, uncounted] = [0, 0, 0]
  for (const book of books()) {
    patterns++
    for (const trace of allTraces(book)) {
      // A kind that was never drawn is taken the first time that it can happen.
      if (share < 1 && random() >= share && kinds.has(trace.mistake.kind)) continue
      injected++
      kinds.add(trace.mistake.kind)
      const counted = ask(book, 'counts', trace, scores.counts)
      if (!counted) uncounted++
      for (const kind of evidenceKinds.slice(1)) ask(book, kind, trace, scores[kind])
    }
  }
  return { injected, patterns, kinds, scores, uncounted }
}
