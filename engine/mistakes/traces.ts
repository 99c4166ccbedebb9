import type { WorkedPattern } from '../needles/index.ts'
import { actAt, type Edit, takesAlike } from './edits.ts'
import { courseOf, nextRow, type RowOutcome } from './follow.ts'
import type { Sight } from './look.ts'
import type { Mistake } from './mistake.ts'
import { editsOf, mistakesIn, modelOf } from './models.ts'
import { outcomes } from './outcomes.ts'
import { type Plan, planOf } from './plan.ts'
import { sightsOf } from './see.ts'

/** How many rows a mistake is followed, its own among them: past that a reader has met the row anew. */
export const rowsFollowed = 6

/** A mistake with all that counting and looking could find of it. */
export interface Trace {
  readonly mistake: Mistake
  readonly edits: readonly Edit[]
  /** Where the hands went wrong: index into the plan's sections; null for a whole row or the cast-on. */
  readonly section: number | null
  /** The counts from its row on, with markers heeded and by the words alone. */
  readonly marked: readonly RowOutcome[]
  readonly unmarked: readonly RowOutcome[]
  /** How often it is made, for ranking. */
  readonly weight: number
}

/** A pattern made ready for questions about mistakes. Rows are prepared when they are first asked for. */
export interface Casebook {
  readonly plan: Plan
  readonly rows: Map<number, readonly Trace[]>
  readonly sights: Map<string, readonly Sight[]>
}

const books = new WeakMap<WorkedPattern, Casebook>()

/** The casebook of a worked pattern: one for each, so that what was found once stays found. */
export function casebookOf(source: WorkedPattern | Casebook): Casebook {
  if ('plan' in source) return source
  const book = books.get(source) ?? { plan: planOf(source), rows: new Map(), sights: new Map() }
  books.set(source, book)
  return book
}

/** The share of learners' slips: each rank about half as common again as the one below. Common practice, no source. */
const commonness = [0, 1, 2, 3.5, 5.5, 8] as const

/** Misreading a row is rarer than a slip, and makes the same mistake everywhere at once. */
const misreading = 0.4

function weightOf({ kind, everywhere }: Mistake): number {
  return commonness[modelOf(kind).howOften] * (everywhere ? misreading : 1)
}

/** Whether the hands end up doing just what they should: a marker or the words caught the mistake before it was made. */
function changesNothing(plan: Plan, edits: readonly Edit[]): boolean {
  if (edits.some((edit) => edit.do === 'skip' || edit.do === 'flip' || edit.do === 'castOn')) return false
  // What takes as many loops and is another stitch is another fabric; else a marker may have caught it.
  const own = plan.rows[edits[0]?.do === 'castOn' ? 0 : (edits[0]?.row ?? 0)]
  if (own && takesAlike(own, edits)) return false
  const course = courseOf(plan, edits, 'markers')
  for (let rows = 0; rows < 2; rows++) {
    const done = nextRow(course)
    const right = done && plan.rows[done.row]
    if (!done || !right) return true
    const same =
      done.acts.length === right.acts.length &&
      done.acts.every((act, i) => {
        const meant = right.acts[i]
        if (act === meant) return true
        if (!meant || act.section !== meant.section || act.deed.do !== 'stitch' || meant.deed.do !== 'stitch')
          return false
        return act.deed.stitch === meant.deed.stitch && act.deed.motions === meant.deed.motions
      })
    if (!same) return false
    if (!edits.some((edit) => 'row' in edit && edit.row === done.row + 1)) return true
  }
  return true
}

/** Counts that differ tell by themselves that something was changed. */
const comesOutRight = (plan: Plan, first: RowOutcome | undefined): boolean =>
  first?.counts.every((count, section) => count === plan.rows[first.row]?.makes[section]) ?? true

function traceOf(plan: Plan, mistake: Mistake): Trace | null {
  const edits = editsOf(plan, mistake)
  if (!edits) return null
  const marked = outcomes(plan, edits, 'markers', rowsFollowed)
  if (comesOutRight(plan, marked[0]) && changesNothing(plan, edits)) return null
  let unmarked: readonly RowOutcome[] | null = null
  return {
    mistake,
    edits,
    section: actAt(plan, mistake.row, mistake.step)?.section ?? null,
    marked,
    // Seldom asked for: a reader who counts each stretch heeds her markers.
    get unmarked() {
      unmarked ??= outcomes(plan, edits, 'words', rowsFollowed)
      return unmarked
    },
    weight: weightOf(mistake),
  }
}

/** All mistakes that can be made in a row and change anything. */
export function tracesIn(book: Casebook, row: number): readonly Trace[] {
  const known = book.rows.get(row)
  if (known) return known
  const found = mistakesIn(book.plan, row).flatMap((mistake) => traceOf(book.plan, mistake) ?? [])
  book.rows.set(row, found)
  return found
}

/** Mistakes at the same written stitch look the same in all repeats but the outermost. */
function lookKey({ plan }: Casebook, { mistake, section }: Trace): string {
  const { kind, row, step, other, everywhere } = mistake
  const act = actAt(plan, row, step)
  const zone = section === null ? '' : (plan.sections[section] ?? '')
  const inner =
    zone.startsWith('repeat') && section !== null && section > 1 && section < plan.sections.length - 2
  const where = inner ? 'inner' : zone
  const place =
    act?.deed.do === 'stitch'
      ? `${act.deed.span.start} ${act.deed.position ?? ''} ${stepInSection(plan, row, step)}`
      : `${step}`
  const side =
    other !== null && section !== null && kind !== 'wrong row worked' && kind !== 'rows switched'
      ? other - section
      : other
  return `${kind}|${row}|${where}|${place}|${side}|${everywhere}`
}

/** How many acts of the same section come before a step. */
function stepInSection(plan: Plan, row: number, step: number | null): number {
  const acts = plan.rows[row]?.acts ?? []
  let before = 0
  for (let at = (step ?? 0) - 1; at >= 0 && acts[at]?.section === acts[step ?? 0]?.section; at--) before++
  return before
}

/** What there is to see of a mistake. Sections are told from the mistake's own, where it has one. */
export function sightsFor(book: Casebook, trace: Trace): readonly Sight[] {
  const key = lookKey(book, trace)
  const own = trace.section ?? 0
  const known = book.sights.get(key)
  if (known)
    return known.map((sight) => ({ ...sight, section: sight.section === null ? null : sight.section + own }))
  const found = sightsOf(book.plan, trace.mistake, trace.edits)
  book.sights.set(
    key,
    found.map((sight) => ({ ...sight, section: sight.section === null ? null : sight.section - own })),
  )
  return found
}

/**
 * Makes all rows ready bit by bit, so that the first answer is as quick as the others and whoever calls can do other
 * things in between. First the counts of each row, from `nearest` back to those under it; then what there is to see.
 */
export function* preparing(book: Casebook, nearest = 0): Generator<undefined, void> {
  const { rows } = book.plan
  const order = rows.map((_, i) => (nearest + rows.length - i) % rows.length)
  for (const row of order) {
    tracesIn(book, row)
    yield
  }
  for (const row of order)
    for (const trace of tracesIn(book, row)) {
      sightsFor(book, trace)
      yield
    }
}

/** Makes all rows ready at once, looks included. */
export function prepare(book: Casebook): void {
  for (const _ of preparing(book));
}

/** The plan of whatever knows it. */
export const planFrom = (source: WorkedPattern | Plan | Casebook): Plan =>
  'worked' in source ? source : casebookOf(source).plan
