import type { Evidence } from './evidence.ts'
import { countsAgree, type Fitting, habitOf, outcomesBy, rowsToSearch } from './match.ts'
import { outcomes } from './outcomes.ts'
import { type Suspect, suspectsOf } from './suspects.ts'
import { type Casebook, rowsFollowed, type Trace, tracesIn } from './traces.ts'

/** Two mistakes that together give what the reader found. */
export interface Pair {
  readonly first: Trace
  readonly second: Trace
  readonly weight: number
}

interface Difference {
  readonly by: readonly number[]
  readonly trace: Trace
  readonly weight: number
}

/** Of all mistakes that change the counts alike, the likeliest stands for the rest. */
function differences(book: Casebook, evidence: Evidence): Map<string, Difference> {
  const marked = habitOf(evidence) === 'markers'
  const meant = book.plan.rows[evidence.row]?.makes ?? []
  const total = meant.reduce((sum, count) => sum + count, 0)
  const found = new Map<string, Difference>()
  for (const row of rowsToSearch(book, evidence)) {
    for (const trace of tracesIn(book, row)) {
      const list = outcomesBy(trace, habitOf(evidence))
      const ago = list.findIndex((outcome) => outcome.row === evidence.row)
      const outcome = list[ago]
      if (!outcome || trace.mistake.everywhere || trace.edits.some((edit) => edit.do !== 'change')) continue
      const by = marked
        ? outcome.counts.map((count, section) => count - (meant[section] ?? 0))
        : [outcome.total - total]
      const weight = trace.weight * 0.55 ** ago
      const key = by.join()
      if ((found.get(key)?.weight ?? 0) < weight) found.set(key, { by, trace, weight })
    }
  }
  return found
}

/** What the reader counted, against what should be; null where she did not count everything. */
function wanted(book: Casebook, evidence: Evidence): number[] | null {
  const meant = book.plan.rows[evidence.row]?.makes ?? []
  if (evidence.counts) {
    if (evidence.counts.length !== meant.length || evidence.counts.some((count) => count === null))
      return null
    return evidence.counts.map((count, section) => (count ?? 0) - (meant[section] ?? 0))
  }
  return evidence.total === undefined ? null : [evidence.total - meant.reduce((sum, count) => sum + count, 0)]
}

/** Whether both together, worked in truth, give the counts: one may hide what the other does. */
function both(book: Casebook, evidence: Evidence, first: Trace, second: Trace): boolean {
  const edits = [...first.edits, ...second.edits]
  const list = outcomes(book.plan, edits, habitOf(evidence), rowsFollowed + 1)
  const outcome = list.find((one) => one.row === evidence.row)
  return outcome !== undefined && countsAgree(evidence, outcome)
}

/** Pairs of mistakes that explain counts which no single one does, likeliest first. */
export function fittingPairs(book: Casebook, evidence: Evidence, most: number): Pair[] {
  const want = wanted(book, evidence)
  if (!want || evidence.step != null) return []
  const known = differences(book, evidence)
  const found: Pair[] = []
  const seen = new Set<string>()
  for (const { by, trace, weight } of known.values()) {
    const rest = want.map((count, section) => count - (by[section] ?? 0))
    const other = known.get(rest.join())
    if (!other || rest.every((count) => count === 0)) continue
    const key = [by.join(), rest.join()].sort().join('|')
    if (seen.has(key)) continue
    seen.add(key)
    found.push({ first: trace, second: other.trace, weight: weight * other.weight })
  }
  const ranked = found.sort((a, b) => b.weight - a.weight)
  return ranked
    .slice(0, 4 * most)
    .filter(({ first, second }) => both(book, evidence, first, second))
    .slice(0, most)
}

/**
 * Each of the two by itself, as a suspect with the counts that it alone gives. The one that was made last comes first: so
 * the hands meet them on the way back.
 */
export function partsOfPair(book: Casebook, evidence: Evidence, { first, second, weight }: Pair): Suspect[] {
  const fittings = [first, second].flatMap((trace) => {
    const outcomes = outcomesBy(trace, habitOf(evidence))
    const ago = outcomes.findIndex(({ row }) => row === evidence.row)
    const outcome = outcomes[ago]
    return outcome ? [{ trace, outcome, ago, weight }] : []
  })
  const stepOf = ({ trace: { mistake } }: Fitting): number => mistake.step ?? 0
  return fittings
    .sort((a, b) => a.ago - b.ago || stepOf(b) - stepOf(a))
    .flatMap((fitting) => suspectsOf(book, [fitting]))
}
