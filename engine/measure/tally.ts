import { type Fabric, fabricOf } from '../fabric/index.ts'
import { type WorkedPattern, type WorkedRow, work } from '../needles/index.ts'
import { type Pattern, workedAgain } from '../pattern/index.ts'

/** What the yarn does in a piece, counted loop by loop. */
export interface Tally {
  /** Loops cast on. */
  readonly castOn: number
  /** Loops drawn through another: knits, purls, decreases (one loop each, however many they take), increases. */
  readonly drawn: number
  /** Yarn overs. */
  readonly over: number
  /** Loops slipped: the yarn only passes them. */
  readonly slipped: number
  /** Loops bound off, those at the end of the piece with them. */
  readonly bound: number
  /** Stitches that the hands work, the bind-off at the end with them and the cast-on left out. */
  readonly worked: number
}

/** How large a piece is. */
export interface Piece {
  readonly repeats: number
  /** Times through the rows. */
  readonly through: number
  /** Plain edge stitches added to every row, both sides together. */
  readonly added: number
}

/**
 * What the yarn does in a piece of that size, from a few repeats and times through that are worked: each row's stitches
 * are perRepeat · n + plus, and in a growing piece every time through gains what the one before it gained.
 * Null where the rows cannot be worked so often, or do not gain evenly.
 */
export function tallyOf(pattern: Pattern, piece: Piece): Tally | null {
  const inner = pattern.growing ? growingTally(pattern, piece) : linearTally(pattern, piece)
  if (!inner) return null
  const { tally, live } = inner
  const { added, through } = piece
  const rows = pattern.setUp.length + pattern.rows.length * through
  const ends = live + added
  return {
    ...tally,
    castOn: tally.castOn + added,
    drawn: tally.drawn + added * rows,
    bound: tally.bound + ends,
    worked: tally.worked + added * rows + ends,
  }
}

interface Counted {
  readonly tally: Tally
  /** Loops still on the needles, to be bound off. */
  readonly live: number
}

/** Three times through show how much each adds to the one before it. */
function growingTally(pattern: Pattern, { repeats, through }: Piece): Counted | null {
  const shown = Math.min(through, 3)
  const { worked } = work(workedAgain(pattern, shown), repeats)
  if (!worked) return null
  const lines = lineTallies(worked)
  const start = pattern.setUp.length + 1
  const times = Array.from({ length: shown }, (_, i) => {
    const from = start + i * pattern.rows.length
    const ends = worked.rows[from + pattern.rows.length - 2]
    return { tally: sum(lines.slice(from, from + pattern.rows.length)), live: ends ? leftBy(ends) : 0 }
  })
  return grown({ tally: sum(lines.slice(0, start)), live: 0 }, times, through)
}

/** What comes before the first time through, and all times, when each gains as much as the one before. */
function grown(start: Counted, times: readonly Counted[], through: number): Counted | null {
  const [one, two = one, three] = times
  if (!one || !two) return null
  const gain = difference(two, one)
  if (three && !isSame(difference(three, two), gain)) return null
  // 1 + 2 + … up to the time before the last.
  const gains = (through * (through - 1)) / 2
  const passes = combine(one.tally, gain.tally, (once, more) => once * through + more * gains)
  return {
    tally: combine(start.tally, passes, (a, b) => a + b),
    live: one.live + gain.live * (through - 1),
  }
}

const difference = (a: Counted, b: Counted): Counted => ({
  tally: combine(a.tally, b.tally, (x, y) => x - y),
  live: a.live - b.live,
})

const isSame = (a: Counted, b: Counted): boolean =>
  a.live === b.live && names.every((name) => a.tally[name] === b.tally[name])

function linearTally(pattern: Pattern, { repeats, through }: Piece): Counted | null {
  const [one, two] = [work(pattern, 1).worked, work(pattern, 2).worked]
  if (!one || !two) return null
  const along = (a: number, b: number): number => a + (b - a) * (repeats - 1)
  const onceWorked = pattern.setUp.length + 1
  const part = (from: number, to?: number): Tally =>
    combine(sum(lineTallies(one).slice(from, to)), sum(lineTallies(two).slice(from, to)), along)
  const tally = combine(part(0, onceWorked), part(onceWorked), (start, pass) => start + pass * through)
  return { tally, live: along(liveIn(one), liveIn(two)) }
}

const names = ['castOn', 'drawn', 'over', 'slipped', 'bound', 'worked'] as const
const none: Tally = { castOn: 0, drawn: 0, over: 0, slipped: 0, bound: 0, worked: 0 }

function combine(a: Tally, b: Tally, by: (a: number, b: number) => number): Tally {
  return {
    castOn: by(a.castOn, b.castOn),
    drawn: by(a.drawn, b.drawn),
    over: by(a.over, b.over),
    slipped: by(a.slipped, b.slipped),
    bound: by(a.bound, b.bound),
    worked: by(a.worked, b.worked),
  }
}

const sum = (tallies: readonly Tally[]): Tally =>
  tallies.reduce((all, one) => combine(all, one, (a, b) => a + b), none)

const leftBy = ({ after, unworked }: WorkedRow): number => after.length + unworked.length

const liveIn = (worked: WorkedPattern): number => {
  const last = worked.rows.at(-1)
  return last ? leftBy(last) : worked.castOn
}

/** The cast-on, then each worked row. */
function lineTallies(worked: WorkedPattern): Tally[] {
  const fabric = fabricOf(worked)
  return fabric.courses.map((course, i) => ({
    ...courseTally(fabric, course),
    slipped: fabric.lines[i]?.slipped.length ?? 0,
    worked: worked.rows[i - 1]?.steps.length ?? 0,
  }))
}

function courseTally(fabric: Fabric, course: readonly number[]): Tally {
  const kinds = course.map((id) => fabric.loops[id]?.kind)
  const many = (kind: string): number => kinds.filter((one) => one === kind).length
  const [castOn, over, bound] = [many('cast on'), many('over'), many('chain')]
  return { ...none, castOn, over, bound, drawn: kinds.length - castOn - over - bound }
}
