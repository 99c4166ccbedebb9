import { type Table, tableOf } from '../../engine/practice/index.ts'
import type { ProvedEntry } from '../../site/library.ts'

/** A proved pattern laid out to practise with. Throws where it cannot be: the library holds only what can be worked. */
export function tableFor(entry: ProvedEntry): Table {
  const table = tableOf(entry.pattern)
  if (!table) throw new Error(`'${entry.slug}' cannot be worked for its exercises`)
  return table
}
