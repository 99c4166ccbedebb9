import type { Adapted } from '../../engine/adapt/index.ts'
import { draftOf, draftToLink, longestLink } from '../../engine/intake/index.ts'
import { printRow } from '../../engine/notation/index.ts'
import { type Pattern, withEdges } from '../../engine/pattern/index.ts'
import { download, fileName } from '../draft/files.ts'
import { browserPacking } from '../draft/packing.ts'
import { askOfFile } from '../draft/reckoner.ts'
import { siteRoot } from '../pattern-facts.ts'

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

/** Hands the pattern to the reader as a file; whether that could be done. */
export async function saveFile(pattern: Pattern): Promise<boolean> {
  const draft = draftOf(pattern)
  const told = await askOfFile({ ask: 'write', draft })
  if (told) download(fileName(draft), told.text)
  return told !== null
}

/** The drafting page with the pattern laid out in it; null where it is too long to stand in an address. */
export async function draftAddress(pattern: Pattern): Promise<string | null> {
  const payload = await draftToLink(draftOf(pattern), browserPacking)
  return payload.length > longestLink ? null : `${siteRoot()}draft/#draft=${payload}`
}
