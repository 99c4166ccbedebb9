import type { Diagnosis } from './diagnose.ts'
import type { Evidence } from './evidence.ts'
import { lookWords } from './look.ts'
import { modelOf } from './models.ts'
import type { Pair } from './pairs.ts'
import { type Plan, sectionWords } from './plan.ts'
import type { Suspect } from './suspects.ts'
import { capital, listed, low, numberWord, off, rowName, stitches } from './words.ts'

/** 'Row 3, repeat 2: a yarn over was left out'. */
export function headline(
  plan: Plan,
  { kind, row, section, everywhere }: Pick<Suspect, 'kind' | 'row' | 'section' | 'everywhere'>,
): string {
  const where = everywhere ? ', every repeat' : section === null ? '' : `, ${sectionWords(plan, section)}`
  return `${rowName(plan, row)}${where}: ${modelOf(kind).name}`
}

/** How the counts come to be what they are. */
function countSentence(plan: Plan, row: number, counts: readonly number[]): string {
  const meant = plan.rows[row]?.makes ?? []
  const differ = counts.flatMap((count, section) =>
    count === meant[section] ? [] : [{ section, by: count - (meant[section] ?? 0) }],
  )
  const [a, b] = differ
  if (!a) return 'All counts stay right.'
  if (differ.length > 3) {
    const alike = new Set(differ.map(({ by }) => by))
    return alike.size === 1
      ? `Each of them is ${off(a.by)}.`
      : `${capital(numberWord(differ.length))} stretches are off.`
  }
  if (b && differ.length === 2 && a.by + b.by === 0 && Math.abs(a.section - b.section) === 1)
    return `${capital(numberWord(Math.abs(a.by)))} ${a.by < 0 ? 'short' : 'over'} in ${sectionWords(plan, a.section)} and ${numberWord(Math.abs(b.by))} ${b.by < 0 ? 'short' : 'over'} next door in ${sectionWords(plan, b.section)}.`
  return `${capital(listed(differ.map(({ section, by }) => `${sectionWords(plan, section)} is ${off(by)}`)))}.`
}

/** The evidence for a suspect, in sentences. */
export function suspectWords(diagnosis: Diagnosis, suspect: Suspect): string[] {
  const { plan } = diagnosis.book
  const [first] = suspect.fittings
  if (!first) return []
  const { row } = diagnosis.evidence
  const words = [`${headline(plan, suspect)}.`]
  if (diagnosis.evidence.step == null) words.push(countSentence(plan, row, first.outcome.counts))
  if (suspect.looks.length > 0 && suspect.looks.every((look) => look === 'marker beside its place'))
    words.push('Nothing is knitted wrongly: move the marker.')
  else words.push(...suspect.looks.slice(0, 2).map((look) => lookWords[look]))
  if (first.ago > 0)
    words.push(
      `It happened ${first.ago === 1 ? 'in the row before' : `${numberWord(first.ago)} rows ago`} and shows in the count since then.`,
    )
  return words
}

export const pairWords = (plan: Plan, { first, second }: Pair): string =>
  `Two mistakes together: ${[first, second].map(({ mistake, section }) => headline(plan, { ...mistake, section })).join('; ')}.`

/** The answer's opening: whether the count is meant to change, and whether anything is wrong at all. */
export function openingWords(diagnosis: Diagnosis): string[] {
  const { right, suspects, pairs } = diagnosis
  const words = changeWords(diagnosis)
  if (right) {
    words.push(
      'These counts are just what they should be.',
      'A count cannot show everything: a lean, a twist or a shift leaves it as it is. If the picture looks wrong, say what you see.',
    )
  } else if (suspects.length === 0 && pairs.length === 0)
    words.push(
      'Neither one mistake nor two together give these counts. Count once more, each repeat by itself; else go back to the last row that you know to be right.',
    )
  return words
}

/** That the count is meant to change in this row, where it is: a reader may have found nothing else. */
function changeWords({ book: { plan }, evidence, meant, changes, right }: Diagnosis): string[] {
  if (!changes) return []
  const row = low(rowName(plan, evidence.row))
  const { total, totalBefore } = meant
  if (evidence.step != null)
    return [`The count is meant to change in ${row}: so far from ${totalBefore} to ${stitches(total)}.`]
  if (total === totalBefore)
    return [
      `In ${row} the count is meant to change between the markers, and to stay at ${stitches(total)} in all.`,
    ]
  const words = `The count is meant to change in ${row}: from ${totalBefore} to ${stitches(total)}.`
  return !right && toldTotal(evidence) === totalBefore
    ? [
        words,
        `You have as many as there were before the row. If it is not done yet, say how far you are in it.`,
      ]
    : [words]
}

/** What the reader counts in all; null where she left something out. */
function toldTotal({ total, counts }: Evidence): number | null {
  if (total !== undefined) return total
  return (
    counts?.reduce<number | null>((sum, count) => (sum === null || count === null ? null : sum + count), 0) ??
    null
  )
}
