import { sentenceOf } from '../../engine/base/index.ts'
import type { RowCount } from '../../engine/counts/index.ts'
import {
  checkDraft,
  type Draft,
  type DraftChecked,
  type DraftProblem,
  mendsFor,
  textAt,
} from '../../engine/intake/index.ts'
import { castOnWords, countText } from '../../engine/lesson/index.ts'
import type { Answer, Marked, MendView, ProblemView, RowView, Summary } from './answer.ts'
import { chartPieces } from './chart-pieces.ts'
import { countsOf, misfitRows, rowsOf, type Segments, segmentsOf, usualRepeats } from './segments.ts'
import { stripsOf } from './strips.ts'
import { tallyWords } from './tally.ts'

/** A draft that was worked, with all that is asked of it afterwards. */
export interface WorkedDraft {
  readonly draft: Draft
  readonly checked: DraftChecked
  readonly segments: Segments
  readonly repeats: number
}

/** Reads, proves and works a draft over so many repeats (its usual number where nobody chose). */
export function workedDraft(draft: Draft, repeats: number | null): WorkedDraft {
  const checked = checkDraft(draft)
  const isFixed = 'fixed' in checked.pattern.castOn
  const shown = isFixed ? 1 : (repeats ?? usualRepeats(checked.pattern))
  return { draft, checked, segments: segmentsOf(checked, shown), repeats: shown }
}

/** What the page shows of it. */
export function answerOf(worked: WorkedDraft): Answer {
  const { draft, checked, segments } = worked
  const all = rowsOf(checked.pattern).length
  const longest = segments.all.toSorted((a, b) => b.worked.rows.length - a.worked.rows.length)[0]
  return {
    rows: rowViews(worked),
    marks: marksOf(draft, checked),
    problems: checked.problems.map((problem) => problemView(problem, checked)),
    summary: summaryOf(worked),
    chart: longest ? chartPieces(longest, all) : null,
    pattern: checked.sound ? checked.pattern : null,
  }
}

/** 'Row 3', 'Set-up round 1'. */
export function rowName({ pattern }: Pick<DraftChecked, 'pattern'>, row: number): string {
  const word = pattern.worked === 'round' ? 'Round' : 'Row'
  return row >= 1 ? `${word} ${row}` : `Set-up ${word.toLowerCase()} ${row + pattern.setUp.length}`
}

function rowViews(worked: WorkedDraft): RowView[] {
  const { checked } = worked
  const { pattern, proof, unread } = checked
  const misfit = misfitRows(checked)
  const counts = proof ? countsOf(proof) : []
  const strips = stripsOf(worked)
  return rowsOf(pattern).map((row, index): RowView => {
    const count = counts[index]
    const state = unread.has(row.number) ? 'unread' : misfit.has(row.number) ? 'misfit' : 'fits'
    const strip = strips.get(index)
    return {
      number: row.number,
      name: rowName(checked, row.number),
      side: sideWords(pattern.worked, row.side),
      rightToLeft: pattern.worked === 'round' || row.side === 'RS',
      state,
      strip: strip?.svg ?? '',
      before: count && state !== 'unread' ? countText(count.before) : '',
      after: count && state === 'fits' ? countText(count.after) : '',
      changes: count !== undefined && isChanged(count),
      tally: state === 'unread' ? '' : tallyWords(row.items),
      picture: strip?.words ?? '',
      spans: strip?.spans ?? [],
    }
  })
}

const isChanged = ({ before, after }: RowCount): boolean =>
  before.perRepeat !== after.perRepeat || before.plus !== after.plus

const sideWords = (worked: 'flat' | 'round', side: 'RS' | 'WS'): string =>
  worked === 'round' ? '' : side === 'RS' ? 'right side' : 'wrong side'

function marksOf(draft: Draft, { problems, pattern }: DraftChecked): Answer['marks'] {
  const rows: Marked[][] = rowsOf(pattern).map(() => [])
  const edges: Record<'before' | 'after', Marked[]> = { before: [], after: [] }
  for (const { place, issue } of problems) {
    const span = issue.span
    const text = textAt(draft, place)
    if (!span || text === null) continue
    const mark = { start: span.start, end: Math.min(text.length, span.end), severity: issue.severity }
    if (place.part === 'row') rows[place.row - 1 + pattern.setUp.length]?.push(mark)
    else if (place.part !== 'castOn') edges[place.part].push(mark)
  }
  return { ...edges, rows }
}

const placeNames = {
  before: 'Edge stitches, first',
  after: 'Edge stitches, last',
  castOn: 'Cast on',
} as const

function problemView({ place, issue }: DraftProblem, checked: DraftChecked): ProblemView {
  const { message, hint } = sentenceOf(issue)
  return {
    place,
    severity: issue.severity,
    code: issue.code,
    name: place.part === 'row' ? rowName(checked, place.row) : placeNames[place.part],
    message: asSentence(message),
    hint: hint === null ? null : asSentence(hint),
    start: issue.span?.start ?? 0,
  }
}

function asSentence(words: string): string {
  const ended = /[.?!]$/.test(words) ? words : `${words}.`
  return ended.charAt(0).toUpperCase() + ended.slice(1)
}

function summaryOf({ checked, repeats }: WorkedDraft): Summary {
  const { pattern, stated, derived, sound } = checked
  const same = JSON.stringify(stated) === JSON.stringify(derived)
  return {
    sound,
    rows: pattern.rows.length,
    headline: headlineOf(checked),
    first: wrongRows(checked)[0] ?? null,
    stated: stated && castOnWords(stated),
    derived: derived && castOnWords(derived),
    take: derived && !same ? { kind: 'castOn', castOn: derived } : null,
    castOnWords: castOnWords(pattern.castOn),
    repeats,
    isFixed: 'fixed' in pattern.castOn,
    worked: pattern.worked,
  }
}

/** How the draft stands, in a sentence. */
function headlineOf(checked: DraftChecked): string {
  const { pattern, problems, sound, unread } = checked
  const word = pattern.worked === 'round' ? 'round' : 'row'
  const many = pattern.rows.length + pattern.setUp.length
  if (pattern.rows.length === 0) return `Nothing to count yet. Write ${word} 1.`
  const rows = many === 1 ? `The ${word} comes` : `All ${many} ${word}s come`
  const forAll = 'fixed' in pattern.castOn ? '' : ', for every number of repeats'
  if (sound) return `${rows} out${forAll}.`
  const errors = problems.filter(({ issue }) => issue.severity === 'error')
  const wrong = wrongRows(checked)
  if (wrong.length === 0) return `${rows} out, but not on the cast-on that is stated.`
  const [first] = wrong
  const name = rowName(checked, first ?? 0)
  const what = unread.has(first ?? 0) ? 'is not understood yet' : whyNot(errors, first)
  const more = wrong.length > 1 ? ` ${wrong.length - 1} more to look at.` : ''
  return `${name} ${what}.${more}`
}

/** Rows with an error, by their numbers, the first first. */
function wrongRows({ problems }: DraftChecked): number[] {
  const errors = problems.filter(({ issue }) => issue.severity === 'error')
  const rows = new Set(errors.flatMap(({ place }) => (place.part === 'row' ? [place.row] : [])))
  return [...rows].sort((a, b) => a - b)
}

const whyNot = (errors: readonly DraftProblem[], row: number | undefined): string =>
  errors.some(({ issue }) => issue.row === row && issue.code === 'count-not-back')
    ? 'does not end on the count that row 1 begins with'
    : 'does not come out'

/** Suggestions for every problem, each tried before it is offered. */
export function mendsOf({ draft, checked }: WorkedDraft): MendView[] {
  return checked.problems.slice(0, mostMended).flatMap((problem, index) =>
    mendsFor(draft, checked, problem).map(({ words, change, text, remaining }) => ({
      problem: index,
      words,
      change,
      shown: text === null || change.kind !== 'text' ? null : pieces(text, change.edit),
      remaining,
    })),
  )
}

/** Beyond so many problems the first ones are looked at first. */
const mostMended = 4

/** The row with a change made, cut round what is new, with a few words on either side. */
function pieces(text: string, edit: { start: number; text: string }): [string, string, string] {
  const end = edit.start + edit.text.length
  const [before, after] = [text.slice(0, edit.start), text.slice(end)]
  const lead = before.length > 24 ? `…${before.slice(-22)}` : before
  return [lead, edit.text, after.length > 24 ? `${after.slice(0, 22)}…` : after]
}
