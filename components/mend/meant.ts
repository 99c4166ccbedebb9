import {
  type MeantCounts,
  meantCounts,
  type Plan,
  rowName,
  sectionWords,
} from '../../engine/mistakes/index.ts'

/** Stretches between markers that are named together: the repeats where all of them have the same count. */
export interface Stretch {
  readonly name: string
  readonly before: number
  readonly after: number
}

const isRepeat = (plan: Plan, section: number): boolean => (plan.sections[section] ?? '').startsWith('repeat')

export const stitchWords = (count: number): string => `${count} ${count === 1 ? 'stitch' : 'stitches'}`

/** A section's name to stand before a number: 'Repeat 2', 'Right edge'. */
export function sectionLabel(plan: Plan, section: number): string {
  const words = sectionWords(plan, section).replace(/^the /, '')
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** What lies between the markers before and after a row, the repeats as one where they are alike. */
export function stretchesOf(plan: Plan, { before, sections }: MeantCounts): Stretch[] {
  const repeats = sections.flatMap((_, section) => (isRepeat(plan, section) ? [section] : []))
  const [first] = repeats
  const alike =
    first !== undefined &&
    repeats.length > 1 &&
    repeats.every((section) => sections[section] === sections[first] && before[section] === before[first])
  return sections.flatMap((after, section) => {
    const was = before[section] ?? 0
    if (after === 0 && was === 0) return []
    if (!alike || !isRepeat(plan, section)) return [{ name: sectionLabel(plan, section), before: was, after }]
    return section === first ? [{ name: 'Each repeat', before: was, after }] : []
  })
}

/** Stitches cross the markers in this row: a decrease takes loops from both sides of one. */
export function markersMove(plan: Plan, row: number): boolean {
  const [now, then] = [plan.rows[row]?.takes, plan.rows[row - 1]?.makes]
  return now !== undefined && then !== undefined && now.some((count, section) => count !== then[section])
}

export interface MeantWords {
  /** Whether the count is meant to change. */
  readonly changes: boolean
  readonly headline: string
  readonly sentences: readonly string[]
  readonly stretches: readonly Stretch[]
  readonly total: number
}

/** What the count should be after a row, or when so many of its stitches are done. */
export function meantWords(plan: Plan, row: number, step: number | null): MeantWords {
  const meant = meantCounts(plan, row, step)
  const stretches = stretchesOf(plan, meant)
  const after = meantCounts(plan, row)
  const changes = after.sections.some((count, section) => count !== after.before[section])
  const name = rowName(plan, row)
  const sentences: string[] = []
  if (!changes) sentences.push(`It begins and ends with ${stitchWords(after.total)}.`)
  else if (after.total === after.totalBefore)
    sentences.push(`In all it stays at ${stitchWords(after.total)}; between the markers it changes.`)
  else
    sentences.push(
      `It goes from ${after.totalBefore} to ${stitchWords(after.total)}. If that is what you have found, nothing is wrong.`,
    )
  if (step !== null)
    sentences.push(
      `So far, ${step} of its ${stitchWords(plan.rows[row]?.acts.length ?? 0)} done, there should be ${meant.total} on both needles together.`,
    )
  if (markersMove(plan, row))
    sentences.push(
      'The markers move here: stitches from both sides of one are worked together. Put each marker back so that the counts below come out.',
    )
  return {
    changes,
    headline: changes ? `The count is meant to change in ${name.toLowerCase()}` : `${name} keeps its count`,
    sentences,
    stretches,
    total: meant.total,
  }
}
