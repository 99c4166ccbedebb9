import { type Mend, mendsFor, type Plan, type Suspect } from '../../engine/mistakes/index.ts'
import { el } from './dom.ts'

export interface MendsShown {
  readonly rowIsDone: boolean
  /** What is right again once it is mended. */
  readonly what: string
  /** What is told elsewhere. */
  readonly without?: Mend['way'] | null
}

/** The ways to mend a mistake from where the reader is, in this row and in the next. */
export function mendsOf(plan: Plan, suspect: Suspect, shown: MendsShown): HTMLElement[] {
  const [first] = suspect.fittings
  if (!first) return []
  const { ago, trace } = first
  const mends = mendsNow(mendsFor(plan, trace.mistake), ago, shown.rowIsDone).filter(
    ({ way }) => way !== shown.without,
  )
  return mends.length === 0
    ? []
    : [el('ul', { class: 'mends' }, ...mends.map((mend) => el('li', {}, ...mendOf(mend, ago, shown.what))))]
}

function mendOf(mend: Mend, ago: number, what: string): HTMLElement[] {
  const when = mend.way === 'leave it' ? 'Or leave it' : mend.later > ago ? 'On the next row' : 'In this row'
  const effect = mend.way === 'leave it' ? '' : effectOf(mend, what)
  return [
    el('p', {}, el('b', {}, `${when}: ${mend.way}`), effect),
    el('ol', { class: 'steps' }, ...mend.steps.map((step) => el('li', {}, step))),
    ...(mend.caution === null ? [] : [el('p', { class: 'caution' }, mend.caution)]),
  ]
}

/** What does not depend on how many rows lie above the mistake. */
const atAnyTime: ReadonlySet<Mend['way']> = new Set([
  'leave it',
  'go back to the row',
  'move the marker',
  'cast on again',
])

function mendsNow(mends: readonly Mend[], ago: number, rowIsDone: boolean): readonly Mend[] {
  const latest = Math.max(...mends.map(({ later }) => later))
  const now = (later: number): boolean => later === ago || (rowIsDone && later === ago + 1)
  const found = mends.filter(
    (mend) =>
      mend.way === 'leave it' ||
      now(mend.later) ||
      (ago > latest && mend.later === latest && atAnyTime.has(mend.way)),
  )
  // Ripping back is told once.
  return found.filter(
    (mend, i) => found.findIndex((other) => other.way === mend.way) === i || !atAnyTime.has(mend.way),
  )
}

const effectOf = ({ exact, cosmetic }: Mend, what: string): string =>
  exact
    ? ` (${what} is then right, loop for loop)`
    : cosmetic
      ? ' (mends the count only, not the fabric)'
      : ` (${what} is then not quite the right one)`
