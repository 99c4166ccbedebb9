import type { About, Correction } from '../pattern/index.ts'
import type { Evidence } from './evidence.ts'
import type { Plan } from './plan.ts'
import { listed, rowName } from './words.ts'

/** A copy on paper beside the page of today: the page itself may be the mistake. */
export interface PageCheck {
  /** The version on the reader's copy. */
  readonly printed: string
  /** The version of the page; null where it has none yet. */
  readonly now: string | null
  readonly is: 'the same' | 'older' | 'newer' | 'another'
  /** What was corrected after that version, the newest last. */
  readonly corrections: readonly Correction[]
  /** Numbers of the rows that were changed since, as far as the record tells. */
  readonly rows: readonly number[]
  /** A correction does not say which rows it changed, or the page is newer and no record tells why. */
  readonly gaps: boolean
}

/** What a copy says that was printed before the pattern had a version. */
const draft = 'draft'

/** Compares a copy with the page of today. */
export function checkPage({ version, corrections }: About, printed: string): PageCheck {
  const now = version ?? null
  const order = orderOf(printed, now ?? draft)
  const is = order === null ? 'another' : order === 0 ? 'the same' : order < 0 ? 'older' : 'newer'
  const since = is === 'older' ? corrections.filter((one) => (orderOf(printed, one.version) ?? -1) < 0) : []
  const rows = [...new Set(since.flatMap((one) => one.rows ?? []))].sort((a, b) => a - b)
  const gaps = is === 'older' && (since.length === 0 || since.some((one) => (one.rows ?? []).length === 0))
  return { printed, now, is, corrections: since, rows, gaps }
}

/** Less than 0 where the first is the older; null where they cannot be compared. */
function orderOf(a: string, b: string): number | null {
  const [x, y] = [numbersOf(a), numbersOf(b)]
  if (!x || !y) return a.toLowerCase() === b.toLowerCase() ? 0 : null
  for (let i = 0; i < Math.max(x.length, y.length); i++) {
    const by = (x[i] ?? 0) - (y[i] ?? 0)
    if (by !== 0) return by
  }
  return 0
}

/** '1.2' as numbers; a draft comes before all versions. Null for a version that is no row of numbers. */
function numbersOf(version: string): number[] | null {
  if (version === draft) return [-1]
  return /^\d{1,9}(\.\d{1,9})*$/.test(version) ? version.split('.').map(Number) : null
}

/** What the comparison says to a reader who is looking for a mistake made in a row, or before it. */
export function pageWords(plan: Plan, check: PageCheck): string[] {
  const { printed, now, is, corrections, rows, gaps } = check
  const [copy, page] = [`Your copy is ${versionWords(printed)}`, `this page is ${versionWords(now ?? draft)}`]
  switch (is) {
    case 'the same':
      return now === null
        ? [`${copy}, and so is this page. A draft may change without a record: compare the rows.`]
        : [`${copy}, and so is this page: your paper is up to date, and is not to blame.`]
    case 'newer':
      return [`${copy}, and ${page}: the paper is newer. Go by the paper, or load this page anew.`]
    case 'another':
      return [
        `${copy}, ${page}, and which is the newer is not known. Compare the rows before you take anything back.`,
      ]
    case 'older':
      return [
        `${copy}, and ${page}. ${corrections.length === 0 ? 'No record is kept of what was changed between the two: compare the rows.' : rowsWords(plan, rows, gaps)}`,
        ...corrections.map(({ version, date, change }) => `Version ${version}, ${date}: ${change}`),
      ]
  }
}

const versionWords = (version: string): string => (version === draft ? 'a draft' : `version ${version}`)

function rowsWords(plan: Plan, rows: readonly number[], gaps: boolean): string {
  if (rows.length === 0) return 'Which rows were changed since then is told in words only:'
  const names = rows.map((number) => {
    const row = plan.rows.find((one) => one.number === number)
    return row ? rowName(plan, row.index).toLowerCase() : `row ${number}`
  })
  const [were, more] = [rows.length === 1 ? 'was' : 'were', gaps ? ', and perhaps more:' : ':']
  return `Since then ${listed(names)} ${were} corrected${more}`
}

/** By how many loops each repeat is off, where it is the same in all of them: then the words are wrong, not the hands. Null otherwise. */
export function sameInEveryRepeat(plan: Plan, { counts, row, step }: Evidence): number | null {
  const makes = plan.rows[row]?.makes
  if (!counts || !makes || step != null) return null
  const offs = makes.flatMap((count, section) =>
    plan.sections[section]?.startsWith('repeat') ? [(counts[section] ?? count) - count] : [],
  )
  const [first] = offs
  return offs.length > 1 && first !== undefined && first !== 0 && offs.every((by) => by === first)
    ? first
    : null
}

/** What the same difference in every repeat suggests. */
export function everyRepeatWords(now: string | null, check: PageCheck | null): string {
  const same =
    'The same difference stands in every repeat, so it is hardly a slip of the hands: a word of the row was read otherwise, or the page that you knit from is wrong.'
  if (check?.is === 'the same')
    return `${same} Your copy is up to date: read the row once more, word by word.`
  if (check?.is === 'older') return same
  return `${same} If you knit from paper, see which version is printed on it: this page is ${versionWords(now ?? draft)}.`
}
