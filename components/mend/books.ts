import { type Casebook, casebookOf } from '../../engine/mistakes/index.ts'
import { type ProvedEntry, workedOf } from '../../site/library.ts'

const known = new Map<string, Casebook>()

/** A pattern's casebook as its static pages show it: over two repeats, or as wide as it is. Once a build. */
export function shownBook(entry: ProvedEntry): Casebook {
  const before = known.get(entry.slug)
  if (before) return before
  const book = casebookOf(workedOf(entry, 'fixed' in entry.pattern.castOn ? 1 : 2))
  known.set(entry.slug, book)
  return book
}
