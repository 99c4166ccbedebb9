import type { Consequence } from './consequence-facts.ts'
import { lookWords } from './look.ts'
import { type Plan, rowAfter } from './plan.ts'
import { low, off, rowName, stitches } from './words.ts'

/** What a mistake does, short enough to be said beside its stitch, and apart from the count, which each width has for itself. */
export interface Effect {
  /** Loops more (or fewer, negative) at the row's end. */
  readonly off: number
  /** Whether the count at the row's end is worth saying: not where the row does not come to its end. */
  readonly saysCount: boolean
  /** When it shows and what the eye sees. */
  readonly rest: string
}

/** The count at the end of a row that is meant to end with so many. */
export function effectCount(
  { off: by, saysCount }: Pick<Effect, 'off' | 'saysCount'>,
  meant: number,
): string {
  if (!saysCount) return ''
  if (by === 0) return `The row still ends with ${stitches(meant)}.`
  return `The row ends ${off(by)}, with ${stitches(meant + by)} instead of ${meant}.`
}

/** All of it, for a row that is meant to end with so many. */
export const effectWords = (effect: Effect, meant: number): string =>
  [effectCount(effect, meant), effect.rest].filter((words) => words !== '').join(' ')

/** The effect of a mistake, from what follows from it. */
export function effectOf(plan: Plan, known: Consequence): Effect {
  const { shows, mistake, total } = known
  const endsShort = shows.by === 'row end' && shows.row === mistake.row && !shows.nextTurn
  const rest = [endsShort ? null : stretchWords(known), showWords(plan, known, endsShort), eyeWords(known)]
  return {
    off: total.now - total.meant,
    saysCount: !endsShort,
    rest: rest.filter((words) => words !== null).join(' '),
  }
}

/** Where the whole count is right and its parts are not. */
function stretchWords({ counts, total }: Consequence): string | null {
  const [a, b] = counts.map(({ now, meant }) => now - meant)
  if (total.now !== total.meant || a === undefined || b === undefined || counts.length > 2) return null
  return `One stretch is ${off(a)} and the one beside it ${off(b)}.`
}

function showWords(plan: Plan, known: Consequence, endsShort: boolean): string | null {
  const { shows } = known
  if (shows.by === 'count')
    return known.settled.meant === known.settled.now
      ? 'Later the count is right again and hides it.'
      : 'Every later row can be worked all the same: only counting shows it.'
  if (shows.by !== 'row end' || shows.row === null) return null
  return endsShort ? ownRowWords(shows.off) : laterRowWords(plan, known, shows.row)
}

function ownRowWords(by: number): string {
  if (by === 0) return 'The row does not come out: one stretch is over and another short.'
  const much = stitches(Math.abs(by))
  return by > 0
    ? `The words of the row come to their end with ${much} left over.`
    : `Before the words of the row come to their end, ${much} ${by === -1 ? 'is' : 'are'} lacking.`
}

function laterRowWords(plan: Plan, { shows, mistake }: Consequence, row: number): string {
  const much = shows.off === 0 ? 'one stretch over and another short' : off(shows.off)
  const next = rowAfter(plan, mistake.row)
  const name = rowName(plan, row)
  if (next === row || next === null) return `${name} then does not come out: ${much}.`
  const when = shows.nextTurn ? `when you come to ${low(name)} again` : `in ${low(name)}`
  return `${rowName(plan, next)} can still be worked, but ${when} it does not come out: ${much}.`
}

function eyeWords({ shows, sights }: Consequence): string | null {
  const [sight] = sights
  if (!sight) return null
  return shows.by === 'eye' ? `Only the eye finds it: ${low(lookWords[sight.look])}` : lookWords[sight.look]
}
