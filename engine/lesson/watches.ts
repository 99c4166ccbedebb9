import { work } from '../needles/index.ts'
import type { Pattern } from '../pattern/index.ts'
import type { CallOut } from './call-out.ts'
import { lessonOf } from './lesson.ts'

/**
 * For each row, set-up rows first, one wrong count that a learner may come to and its cause: 'Count 12? A yarn over was
 * left out.' Each cause is said at the first row where it can come about; null where nothing new does.
 */
export function watchesOf(pattern: Pattern, repeats: number): (string | null)[] {
  const { worked } = work(pattern, repeats)
  if (!worked) return []
  const lesson = lessonOf(worked)
  const said = new Set<string>()
  return worked.rows.map(({ steps, after, unworked }, row) => {
    const meant = after.length + unworked.length
    const isNew = ({ kind, rowEnds }: CallOut): boolean =>
      rowEnds !== null && rowEnds !== meant && !said.has(kind)
    const first = steps.flatMap((_, step) => lesson.callOuts(row, step)).find(isNew)
    if (!first) return null
    said.add(first.kind)
    return `Count ${first.rowEnds}? ${first.title}.`
  })
}
