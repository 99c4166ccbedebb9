import type { IssueCode } from '../base/index.ts'
import { prove } from '../counts/index.ts'
import { edited, rowSuggestions } from '../notation/index.ts'
import { type CastOn, type Item, type Pattern, type Row, takesAndMakes } from '../pattern/index.ts'
import type { Draft } from './draft.ts'
import { changed, type DraftChange, textAt } from './draft-change.ts'
import { checkDraft, type DraftChecked, type DraftPlace, type DraftProblem } from './read-draft.ts'
import { isMirrored, rowVariants } from './row-variants.ts'

/** A suggestion that was tried: with it the problem is gone, and none is new. */
export interface DraftMend {
  readonly words: string
  readonly change: DraftChange
  /** The row as it would read; null where no row changes. */
  readonly text: string | null
  /** Errors that would remain in the whole draft. */
  readonly remaining: number
}

const errorsOf = ({ problems }: Pick<DraftChecked, 'problems'>): number =>
  problems.filter(({ issue }) => issue.severity === 'error').length

/** Changes to rows offered for one problem. */
const most = 5

const countCodes: readonly IssueCode[] = [
  'row-leaves-stitches',
  'row-needs-stitches',
  'row-too-short',
  'repeat-does-not-fit',
  'count-not-back',
]

/** What can be done about a problem with one press: each suggestion was tried and proved before it is offered. */
export function mendsFor(draft: Draft, checked: DraftChecked, problem: DraftProblem): DraftMend[] {
  const counts = countCodes.includes(problem.issue.code)
  const wider = [
    ...(counts ? rowMends(draft, checked, problem) : []),
    ...castOnMends(draft, checked, problem),
    ...growingMend(draft, checked, problem),
  ]
  // Of changes to the count only those are offered that leave least to look at.
  const least = Math.min(...wider.map(({ remaining }) => remaining))
  const best = wider.filter(({ remaining, change }) => remaining === least || change.kind === 'growing')
  return [...wordMends(draft, checked, problem), ...best]
}

function wordMends(draft: Draft, checked: DraftChecked, { place, issue }: DraftProblem): DraftMend[] {
  const text = textAt(draft, place)
  if (text === null) return []
  return rowSuggestions(issue, text).flatMap(({ words, edit }) => {
    const change: DraftChange = { kind: 'text', place, edit }
    const again = checkDraft(changed(draft, change))
    const here = (one: DraftProblem): boolean =>
      one.issue.code === issue.code && JSON.stringify(one.place) === JSON.stringify(place)
    const fewer = again.problems.filter(here).length < checked.problems.filter(here).length
    return fewer ? [{ words, change, text: edited(text, edit), remaining: errorsOf(again) }] : []
  })
}

const ruleWords = (castOn: CastOn): string =>
  'fixed' in castOn
    ? `exactly ${castOn.fixed} stitches`
    : `a multiple of ${castOn.multiple}${castOn.plus > 0 ? ` plus ${castOn.plus}` : ''}`

/** The cast-on that the rows need, where with it all of them come out. */
function castOnMends(draft: Draft, checked: DraftChecked, { issue }: DraftProblem): DraftMend[] {
  const { derived } = checked
  const isOfIt = issue.code.startsWith('cast-on-') || countCodes.includes(issue.code)
  if (!derived || !isOfIt || issue.code === 'count-not-back') return []
  const change: DraftChange = { kind: 'castOn', castOn: derived }
  const again = checkDraft(changed(draft, change))
  const remaining = errorsOf(again)
  if (remaining >= errorsOf(checked) && issue.severity === 'error') return []
  return [{ words: `Cast on ${ruleWords(derived)}`, change, text: null, remaining }]
}

function growingMend(draft: Draft, checked: DraftChecked, { issue }: DraftProblem): DraftMend[] {
  if (issue.code !== 'count-not-back') return []
  const change: DraftChange = { kind: 'growing' }
  const remaining = errorsOf(checkDraft(changed(draft, change)))
  if (remaining >= errorsOf(checked)) return []
  return [{ words: 'The piece is meant to change its width', change, text: null, remaining }]
}

interface Tried extends DraftMend {
  readonly rank: readonly number[]
}

/** Small changes to the row, or to a row before it, after which it comes out. */
function rowMends(draft: Draft, checked: DraftChecked, { issue }: DraftProblem): DraftMend[] {
  const { pattern } = checked
  const all = [...pattern.setUp, ...pattern.rows]
  const at = all.findIndex((row) => row.number === issue.row)
  const rows = issue.code === 'count-not-back' ? pattern.rows : [all[at], all[at - 1]]
  const room = { left: Math.ceil(mostProved / Math.max(1, all.length)) }
  const tried = rows.flatMap((row, i) =>
    row ? variantsOf(draft, checked, row, { issue, away: i, room }) : [],
  )
  const better = tried.filter(({ remaining }) => remaining < errorsOf(checked))
  return better
    .sort(byRank)
    .slice(0, most)
    .map(({ words, change, text, remaining }) => ({ words, change, text, remaining }))
}

function byRank(a: Tried, b: Tried): number {
  for (const [i, rank] of a.rank.entries()) if (rank !== b.rank[i]) return rank - (b.rank[i] ?? 0)
  return 0
}

/** Rows that are proved over again for all suggestions to one problem: what takes longer keeps a writer waiting. */
const mostProved = 8000

/** What a row takes and makes, its repeat once. */
function onceOver(items: readonly Item[]): { takes: number; makes: number } {
  const inside = items.flatMap((item) => (item.kind === 'repeat' ? item.items : [item]))
  return takesAndMakes(inside.filter(({ kind }) => kind !== 'across')) ?? { takes: 0, makes: 0 }
}

/** Whether a change to a row can mend the problem at all: told without a proof, since most cannot. */
function canMend(code: IssueCode, away: number, old: readonly Item[], fresh: readonly Item[]): boolean {
  const [before, after] = [onceOver(old), onceOver(fresh)]
  if (code === 'count-not-back') return before.makes - before.takes !== after.makes - after.takes
  return away === 0 || before.makes - before.takes !== after.makes - after.takes
}

interface Blame {
  readonly issue: DraftProblem['issue']
  /** How many rows before the one that is blamed. */
  readonly away: number
  readonly room: { left: number }
}

function variantsOf(draft: Draft, checked: DraftChecked, row: Row, { issue, away, room }: Blame): Tried[] {
  const place: DraftPlace = { part: 'row', row: row.number }
  const text = textAt(draft, place)
  if (text === null || checked.unread.has(row.number) || row.items.some(isAcrossAll)) return []
  const { doubleYarnOver, bindOffLeaves } = draft
  const plain = row.side === 'RS' ? 'k1' : 'p1'
  const variants = rowVariants(row.items, text, { doubleYarnOver, bindOffLeaves }, plain)
  const name = row.number === issue.row ? '' : `Row ${row.number}: `
  const likely = variants
    .filter(({ items }) => canMend(issue.code, away, row.items, items))
    .slice(0, room.left)
  room.left -= likely.length
  return likely.flatMap(({ words, edit, text: fresh, items }) => {
    const proof = prove(withItems(checked.pattern, row.number, items), { unread: checked.unread })
    if (proof.issues.some((one) => one.row === issue.row && one.severity === 'error')) return []
    const remaining =
      proof.issues.filter(({ severity }) => severity === 'error').length + unreadErrors(checked)
    const rank = [remaining, isMirrored(items) ? 0 : 1, keepsCount(items) ? 0 : 1, away]
    const change: DraftChange = { kind: 'text', place, edit }
    return [{ words: name + words, change, text: fresh, remaining, rank }]
  })
}

/** Errors in the words, which no count changes. */
const unreadErrors = ({ problems, proof }: DraftChecked): number =>
  problems.filter(({ issue }) => issue.severity === 'error' && !proof?.issues.includes(issue)).length

const isAcrossAll = (item: Item, _: number, all: readonly Item[]): boolean =>
  all.length === 1 && item.kind === 'across'

const keepsCount = (items: readonly Item[]): boolean => {
  const repeat = items.find((item) => item.kind === 'repeat')
  const totals = takesAndMakes(repeat?.kind === 'repeat' ? repeat.items : items)
  return totals !== null && totals.takes === totals.makes
}

function withItems(pattern: Pattern, number: number, items: readonly Item[]): Pattern {
  const put = (row: Row): Row => (row.number === number ? { ...row, items } : row)
  return { ...pattern, setUp: pattern.setUp.map(put), rows: pattern.rows.map(put) }
}
