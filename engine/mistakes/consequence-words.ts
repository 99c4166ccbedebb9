import type { Consequence } from './consequence-facts.ts'
import { type Plan, sectionWords } from './plan.ts'
import { listed, low, off, rowName, stitches } from './words.ts'

type Known = Omit<Consequence, 'words'>

function countWords(plan: Plan, { counts, total, mistake, knittedRightly }: Known): string {
  const row = rowName(plan, mistake.row)
  const where = counts.map(
    ({ section, meant, now }) => `${sectionWords(plan, section)} has ${now} instead of ${meant}`,
  )
  if (counts.length === 0)
    return `${row} still ends with ${stitches(total.now)}, as it should: counting does not show it.`
  if (total.now === total.meant) {
    const nothing = knittedRightly ? ' Nothing is knitted wrongly.' : ''
    return `${row} still ends with ${stitches(total.now)}, but ${listed(where)}.${nothing}`
  }
  const much = counts.length > 4 ? '' : `: ${listed(where)}`
  return `${row} ends with ${total.now} instead of ${stitches(total.meant)}${much}.`
}

const hides = ({ settled }: Known): boolean => settled.meant === settled.now

function showWords(plan: Plan, known: Known): string | null {
  const { shows, mistake } = known
  if (shows.row === null) return null
  const [row, own] = [low(rowName(plan, shows.row)), low(rowName(plan, mistake.row))]
  const much = shows.off === 0 ? 'one stretch over and another short' : off(shows.off)
  switch (shows.by) {
    case 'row end':
      if (shows.nextTurn)
        return `It shows when you come to ${row} again: there the words do not come out, ${much}.`
      return shows.row === mistake.row
        ? `It shows at the end of the row: the words do not come out, ${much}.`
        : `It shows in ${row} at the latest: there the words do not come out, ${much}.`
    case 'count':
      return hides(known)
        ? `Only a count in ${own} shows it: later the count is right again and hides it.`
        : `Every later row can be worked all the same: only counting shows it, from ${own} on.`
    default:
      return `Only the eye finds it, at the latest when you ${shows.nextTurn ? `come to ${row} again` : `work ${row}`} and the next lace stands on it.`
  }
}

/** A consequence in sentences: the count, when it shows, what the eye sees. */
export function consequenceWords(plan: Plan, known: Known, section: number | null): string[] {
  const place = section === null ? '' : `, ${sectionWords(plan, section)}`
  const every = known.mistake.everywhere ? ', in every repeat' : ''
  const what = `${rowName(plan, known.mistake.row)}${every === '' ? place : ''}: ${known.name}${every}.`
  const shows = showWords(plan, known)
  return [what, countWords(plan, known), ...(shows ? [shows] : []), ...known.eye]
}
