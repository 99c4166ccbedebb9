import {
  add,
  constant,
  type Issue,
  type IssueCode,
  type LinearCount,
  type Severity,
  type Span,
  same,
  subtract,
} from '../base/index.ts'
import { type CastOn, type Item, type Pattern, type Row, type Side, takesAndMakes } from '../pattern/index.ts'
import { type Derived, deriveCastOn } from './derive.ts'
import { type Fit, fitRow } from './fit.ts'
import { misfitIssue } from './misfit.ts'

export interface RowCount {
  readonly row: number
  readonly side: Side
  /** Loops on both needles before and after the row, edge stitches included. */
  readonly before: LinearCount
  readonly after: LinearCount
  /** How often the row's own repeat is worked; null where it has none. */
  readonly repeats: LinearCount | null
}

export interface Proof {
  readonly castOn: CastOn
  /** The rule as the rows alone have it; null where no cast-on lets every row come out. */
  readonly derived: CastOn | null
  readonly setUp: readonly RowCount[]
  readonly rows: readonly RowCount[]
  /** Edge stitches in one row, both sides together. */
  readonly edges: number
  readonly issues: readonly Issue[]
  /** No error: the counts hold for every number of repeats. */
  readonly sound: boolean
}

export interface ProveOptions {
  /** Where the file states the cast-on, for problems with it. */
  readonly castOnSpan?: Span | null
  /** Rows of which not everything could be read: they are taken to keep the count, and no count is blamed on them. */
  readonly unread?: ReadonlySet<number>
}

/** The cast-on as a count for n repeats, edges left out. */
export const castOnCount = (castOn: CastOn): LinearCount =>
  'fixed' in castOn ? constant(castOn.fixed) : { perRepeat: castOn.multiple, plus: castOn.plus }

/** What the edge stitches of one row take and make. */
export function edgeTotals(pattern: Pattern): { takes: number; makes: number } {
  const both = takesAndMakes([...pattern.edges.before, ...pattern.edges.after])
  return both ?? { takes: 0, makes: 0 }
}

/**
 * Proves a pattern's counts for every number of repeats n ≥ 1, by exact integer arithmetic on perRepeat·n + plus:
 * each row takes exactly the loops that it meets, and the count is back after the last row unless the piece grows.
 * The stated cast-on is checked first; the rule that the rows alone give is compared with it afterwards.
 */
export function prove(pattern: Pattern, options: ProveOptions = {}): Proof {
  const edges = edgeTotals(pattern)
  const issues: Issue[] = []
  const start = add(castOnCount(pattern.castOn), constant(edges.takes))
  const unread = options.unread ?? new Set()
  const state: State = { ahead: start, behind: constant(0), held: constant(pattern.held), issues, unread }
  const setUp = pattern.setUp.map((row) => proveRow(row, state, pattern, edges))
  const beforeRowOne = add(state.ahead, state.behind)
  const rows = pattern.rows.map((row) => proveRow(row, state, pattern, edges))
  checkReturn(pattern, beforeRowOne, state, issues)
  const derived = deriveCastOn(pattern, edges)
  const comparable = pattern.rows.length > 0 && unread.size === 0
  if (comparable) compareRules(pattern.castOn, derived, options.castOnSpan ?? null, issues)
  return {
    castOn: pattern.castOn,
    derived: derived?.castOn ?? null,
    setUp,
    rows,
    edges: edges.takes,
    issues,
    sound: !issues.some((issue) => issue.severity === 'error'),
  }
}

interface State {
  /** Loops on the left needle when the next row begins, and those left on the right one by a turn. */
  ahead: LinearCount
  behind: LinearCount
  /** Loops of another piece that still wait. */
  held: LinearCount
  readonly issues: Issue[]
  readonly unread: ReadonlySet<number>
}

function proveRow(
  row: Row,
  state: State,
  pattern: Pattern,
  edges: { takes: number; makes: number },
): RowCount {
  const before = add(state.ahead, state.behind)
  if (state.unread.has(row.number))
    return { row: row.number, side: row.side, before, after: before, repeats: null }
  const inside = subtract(state.ahead, constant(edges.takes))
  const fit = fitRow(row.items, inside)
  if (fit.misfit) state.issues.push(misfitIssue(row, fit.misfit, inside, pattern))
  checkHeld(row, fit, state)
  const [made, rest] = fit.misfit ? asMeant(fit, inside) : [fit.made, fit.rest]
  state.ahead = add(state.behind, add(made, constant(edges.makes)))
  state.behind = fit.turned ? rest : constant(0)
  return {
    row: row.number,
    side: row.side,
    before,
    after: add(state.ahead, state.behind),
    repeats: fit.repeats,
  }
}

/** After a row that does not fit, the count goes on as if it had fitted, so that one slip is told once. */
function asMeant(fit: Fit, inside: LinearCount): [LinearCount, LinearCount] {
  const change = subtract(fit.made, subtract(inside, fit.rest))
  return [add(inside, change), constant(0)]
}

/** Loops put on a holder are there for later rows; a join takes one that waits. */
function checkHeld(row: Row, fit: Fit, state: State): void {
  const parked = countOf(row.items, 'hold')
  const resumed = row.items.reduce((sum, item) => sum + (item.kind === 'resume' ? item.count : 0), 0)
  state.held = subtract(add(state.held, constant(parked)), add(fit.held, constant(resumed)))
  if (state.held.plus >= 0 || state.held.perRepeat !== 0) return
  const values = { short: -state.held.plus }
  state.issues.push({
    code: 'held-loops-missing',
    severity: 'error',
    span: row.span,
    row: row.number,
    values,
  })
  state.held = constant(0)
}

const countOf = (items: readonly Item[], id: string): number =>
  items.reduce((sum, item) => {
    if (item.kind === 'stitch') return sum + (item.stitch === id ? item.times : 0)
    if (item.kind === 'group') return sum + item.times * countOf(item.items, id)
    return sum
  }, 0)

function checkReturn(pattern: Pattern, before: LinearCount, state: State, issues: Issue[]): void {
  const last = pattern.rows.at(-1)
  const after = add(state.ahead, state.behind)
  if (!last || pattern.growing || state.unread.size > 0 || issues.some((issue) => issue.severity === 'error'))
    return
  if (same(after, before) && same(state.behind, constant(0))) return
  const values = {
    last: last.number,
    ...describe('after', after),
    ...describe('before', before),
    ...describe('more', subtract(after, before)),
  }
  issues.push({ code: 'count-not-back', severity: 'error', span: last.span, row: last.number, values })
}

const describe = (name: string, count: LinearCount): Record<string, number> => ({
  [`${name}PerRepeat`]: count.perRepeat,
  [`${name}Plus`]: count.plus,
})

function compareRules(stated: CastOn, derived: Derived | null, span: Span | null, issues: Issue[]): void {
  if (!derived) return
  const tell = (code: IssueCode, severity: Severity): void => {
    const rule = derived.castOn
    const values = 'fixed' in rule ? { multiple: 0, plus: rule.fixed } : rule
    issues.push({ code, severity, span, row: null, values: { ...values, least: derived.least } })
  }
  if (!covers(derived, stated)) {
    if (believable(derived.castOn, stated)) tell('cast-on-too-weak', 'error')
  } else if ('multiple' in stated && 'multiple' in derived.castOn) {
    const same = stated.multiple === derived.castOn.multiple
    const first = stated.multiple + stated.plus
    if (
      !same ||
      first > Math.max(derived.leastWithEveryRepeat, derived.castOn.multiple + derived.castOn.plus)
    ) {
      tell('cast-on-too-strong', 'warning')
    }
  }
}

/** Whether every cast-on that the stated rule allows lets all rows come out. */
function covers(derived: Derived, stated: CastOn): boolean {
  const rule = derived.castOn
  const first = 'fixed' in stated ? stated.fixed : stated.multiple + stated.plus
  const step = 'fixed' in stated ? 0 : stated.multiple
  if ('fixed' in rule) return step === 0 && first === rule.fixed
  return first >= derived.least && (first - rule.plus) % rule.multiple === 0 && step % rule.multiple === 0
}

/** Two slips in different rows can give a rule like 'multiple of 420', which nobody meant. */
const believable = (rule: CastOn, stated: CastOn): boolean =>
  'fixed' in rule || 'fixed' in stated || rule.multiple <= 4 * stated.multiple
