import type { Adapted } from '../../engine/adapt/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import { type Pattern, withEdges } from '../../engine/pattern/index.ts'

const longestTitle = 200
const longestNotes = 4000

/**
 * The pattern as its file says it: under a name that tells what was done. What was said of the pattern that it was made
 * of, and holds of that one only, stays with it.
 */
export function filed({ pattern, closing }: Adapted, was: Pattern, steps: readonly string[]): Pattern {
  if (steps.length === 0) return pattern
  const { source, contributor, licence, tradition, notToConfuseWith, teaches, yarn, needle, tested } =
    pattern.about
  const last = closing.map((row) => printRow(withEdges(row, pattern)))
  const version = was.about.version === undefined ? '' : `, version ${was.about.version}`
  const notes = [
    `Made over from ${was.title}${version}: ${steps.join('; ')}.`,
    last.length === 0 ? '' : `After the last time of the rows, work once: ${last.join('; ')}.`,
  ]
  const about = {
    also: [],
    corrections: [],
    notToConfuseWith,
    teaches,
    notes: notes
      .filter((one) => one !== '')
      .join('\n')
      .slice(0, longestNotes),
    ...given({ source, contributor, licence, tradition, yarn, needle, tested }),
  }
  return { ...pattern, title: `${was.title}, ${steps.join(', ')}`.slice(0, longestTitle), about }
}

function given<T extends object>(values: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as never
}
