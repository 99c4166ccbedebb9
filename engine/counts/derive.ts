import {
  add,
  at,
  constant,
  type LinearCount,
  modulo,
  scale,
  solveCongruence,
  subtract,
} from '../base/index.ts'
import { type CastOn, type Item, type Pattern, takesAndMakes } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'

/** The cast-on rule as the rows alone have it. */
export interface Derived {
  readonly castOn: CastOn
  /** The fewest stitches on which every row comes out. */
  readonly least: number
  /** The fewest on which every row of the pattern works its own repeat at least once. */
  readonly leastWithEveryRepeat: number
}

/** Counts as functions of a whole number t ≥ least, narrowed row by row until every row comes out. */
interface Search {
  castOn: LinearCount
  ahead: LinearCount
  behind: LinearCount
  left: LinearCount
  made: LinearCount
  least: number
  /** How often each row's own repeat is worked. */
  repeats: LinearCount[]
}

type Counts = 'castOn' | 'ahead' | 'behind' | 'left' | 'made'

/** Only every `step`-th t, from `first` on, still fits: put first + step·t in place of t everywhere. */
function narrow(s: Search, first: number, step: number): void {
  const within = (c: LinearCount): LinearCount => ({
    perRepeat: c.perRepeat * step,
    plus: c.perRepeat * first + c.plus,
  })
  for (const name of ['castOn', 'ahead', 'behind', 'left', 'made'] as Counts[]) s[name] = within(s[name])
  s.repeats = s.repeats.map(within)
  s.least = step === 0 ? 0 : Math.max(0, Math.ceil((s.least - first) / step))
}

/** Keeps only the t at which `count` is zero. */
function requireZero(s: Search, count: LinearCount): boolean {
  if (count.perRepeat === 0) return count.plus === 0
  const t = -count.plus / count.perRepeat
  if (!Number.isInteger(t) || t < s.least) return false
  narrow(s, t, 0)
  return true
}

/** Keeps only the t at which `count` is not negative. */
function requireNotNegative(s: Search, count: LinearCount): boolean {
  if (count.perRepeat === 0) return count.plus >= 0
  const bound = -count.plus / count.perRepeat
  if (count.perRepeat > 0) s.least = Math.max(s.least, Math.ceil(bound))
  return count.perRepeat > 0
}

function walkOpenEnded(
  s: Search,
  item: Item & { kind: 'repeat' | 'across' },
  takes: number,
  makes: number,
): boolean {
  if (takes === 0) return false
  const keep = constant(item.until.kind === 'last' ? item.until.stitches : 0)
  const loops = subtract(s.left, keep)
  const found = solveCongruence(loops.perRepeat, -loops.plus, takes)
  if (!found) return false
  if (s.left.perRepeat !== 0) narrow(s, found.first, found.step)
  const repeats = scale(subtract(s.left, keep), 1 / takes)
  if (
    !Number.isInteger(repeats.perRepeat) ||
    !Number.isInteger(repeats.plus) ||
    !requireNotNegative(s, repeats)
  )
    return false
  s.left = keep
  s.made = add(s.made, scale(repeats, makes))
  if (item.kind === 'repeat') s.repeats.push(repeats)
  return true
}

function walkItem(s: Search, item: Item): boolean {
  if (item.kind === 'across') return walkOpenEnded(s, item, 1, 1)
  if (item.kind === 'repeat' && item.until.kind !== 'times') {
    const inner = takesAndMakes(item.items)
    return inner !== null && walkOpenEnded(s, item, inner.takes, inner.makes)
  }
  if (item.kind === 'resume') s.left = add(s.left, constant(item.count))
  else if (item.kind === 'bindOff' && item.count === 'all') s.left = constant(0)
  else {
    const totals = takesAndMakes([item])
    if (!totals) return false
    s.left = subtract(s.left, constant(totals.takes))
    s.made = add(s.made, constant(totals.makes))
  }
  return true
}

/** Narrows the search to the cast-ons that this row fits. */
function walkRow(s: Search, items: readonly Item[], edges: { takes: number; makes: number }): boolean {
  s.left = subtract(s.ahead, constant(edges.takes))
  s.made = constant(edges.makes)
  let turned = false
  for (const item of items) {
    if (item.kind === 'turn') turned = true
    if (turned) break
    if (!walkItem(s, item)) return false
  }
  const fits = turned ? requireNotNegative(s, s.left) : requireZero(s, s.left)
  const [left, made] = [s.left, s.made]
  s.ahead = add(s.behind, made)
  s.behind = left
  return fits
}

const isPlain = (item: Item): boolean =>
  (item.kind === 'stitch' && stitch(item.stitch).family === 'plain') ||
  ['marker', 'yarn', 'across', 'joinRound', 'turn'].includes(item.kind)

/**
 * Finds every cast-on (edges aside) on which all rows come out, by solving each row's congruence exactly in turn.
 * Null where there is none. Takes no notice of the stated rule.
 */
export function deriveCastOn(pattern: Pattern, edges: { takes: number; makes: number }): Derived | null {
  const s: Search = {
    castOn: { perRepeat: 1, plus: 0 },
    ahead: { perRepeat: 1, plus: edges.takes },
    behind: constant(0),
    left: constant(0),
    made: constant(0),
    least: 0,
    repeats: [],
  }
  let laceInEnds = false
  for (const row of [...pattern.setUp, ...pattern.rows]) {
    if (!walkRow(s, row.items, edges)) return null
    laceInEnds ||= row.items.some((item) => item.kind !== 'repeat' && !isPlain(item))
  }
  const edge = s.castOn.perRepeat === 0 ? { castOn: { fixed: s.castOn.plus } } : null
  if (edge) return { ...edge, least: s.castOn.plus, leastWithEveryRepeat: s.castOn.plus }
  return ruleOf(s, laceInEnds)
}

/**
 * Multiple and plus. With n = 1 some row works its lace: its own repeat once, or lace in its ends. So faggoting between
 * two edge stitches is a multiple of 2 plus 2, as the trade states it, and not plus 0.
 */
function ruleOf(s: Search, laceInEnds: boolean): Derived {
  const multiple = s.castOn.perRepeat
  const positive = Math.max(s.least, Math.ceil((1 - s.castOn.plus) / multiple))
  const once = s.repeats
    .filter((r) => r.perRepeat > 0)
    .map((r) => Math.max(positive, Math.ceil((1 - r.plus) / r.perRepeat)))
  const first = laceInEnds || once.length === 0 ? positive : Math.min(...once)
  const every = once.length === 0 ? positive : Math.max(...once)
  const plus = at(s.castOn, first) - multiple
  return {
    castOn: { multiple, plus: plus < 0 ? modulo(plus, multiple) : plus },
    least: at(s.castOn, positive),
    leastWithEveryRepeat: at(s.castOn, every),
  }
}
