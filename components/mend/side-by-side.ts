import { fabricDrawing, toSvg } from '../../engine/drawing/index.ts'
import { fabricOf, layOutFabric, yarnOf } from '../../engine/fabric/index.ts'
import { editsOf, type Mistake, type Plan, planOf, workWrong } from '../../engine/mistakes/index.ts'
import { type LoopId, type WorkedPattern, work } from '../../engine/needles/index.ts'
import { workedAgain } from '../../engine/pattern/index.ts'

export interface SideBySide {
  readonly right: string
  readonly wrong: string
  /** Whether a bracket shows the place. */
  readonly marked: boolean
}

/** Rows that lie under a mistake before a reader sees what it stands on. */
const rowsBelow = 4
/** Rows that are worked on top of it. */
const rowsAbove = 4

interface Piece {
  readonly worked: WorkedPattern
  /** Loops to be marked. */
  readonly here: readonly LoopId[]
}

function svgOf({ worked, here }: Piece, idPrefix: string, title: string): string {
  const fabric = fabricOf(worked)
  const loops = new Set(here)
  const marked = fabric.loops.filter(({ loop }) => loop !== null && loops.has(loop)).map(({ id }) => id)
  const yarn = yarnOf(fabric, layOutFabric(fabric, { state: 'blocked' }))
  return toSvg(fabricDrawing(yarn, { title, mark: { repeat: marked } }), { idPrefix })
}

/** A mistake with the stretch that it lies in. */
export interface Made {
  readonly mistake: Mistake
  /** Index into the plan's sections; null where it is a whole row. */
  readonly section: number | null
}

/** The same mistakes in the second turn of the pattern, where they would lie at the cast-on edge in the first. */
function higherUp(plan: Plan, made: readonly Made[]): { plan: Plan; made: readonly Made[] } {
  const { pattern, repeats } = plan.worked
  const low = made.some(({ mistake: { row } }) => row - pattern.setUp.length < rowsBelow)
  const movable = made.every(
    ({ mistake: { row, other, step } }) => row >= pattern.setUp.length && other === null && step !== null,
  )
  if (!low || !movable || pattern.growing) return { plan, made }
  const { worked } = work(workedAgain(pattern, 2), repeats)
  if (!worked) return { plan, made }
  const by = pattern.rows.length
  return {
    plan: planOf(worked),
    made: made.map(({ mistake, section }) => ({ mistake: { ...mistake, row: mistake.row + by }, section })),
  }
}

/** The loops that a row leaves between two markers. */
function loopsIn(
  plan: Plan,
  worked: WorkedPattern,
  row: number,
  counts: readonly number[],
  section: number | null,
): readonly LoopId[] {
  const after = worked.rows[row]?.after ?? []
  if (section === null) return []
  const fromRight = plan.rows[row]?.leftward ? after : after.toReversed()
  const start = counts.slice(0, section).reduce((sum, count) => sum + count, 0)
  return fromRight.slice(start, start + (counts[section] ?? 0))
}

/** The fabric as it should be and with one or more mistakes in it, for some rows above and below the place. */
export function sideBySide(shown: Plan, mistakes: readonly Made[], idPrefix: string): SideBySide | null {
  const { plan, made } = higherUp(shown, mistakes)
  const edits = made.map(({ mistake }) => editsOf(plan, mistake))
  const lowest = Math.min(...made.map(({ mistake }) => mistake.row))
  const highest = Math.max(...made.map(({ mistake }) => mistake.row))
  if (edits.some((one) => one === null)) return null
  const most = Math.min(highest - lowest + rowsAbove, plan.rows.length - lowest)
  const wrong = workWrong(
    plan,
    edits.flatMap((one) => one ?? []),
    most,
    { unnoticed: true },
  )
  const right: WorkedPattern = { ...plan.worked, rows: plan.worked.rows.slice(0, wrong.worked.rows.length) }
  const marked = made.filter(
    ({ mistake, section }) =>
      section !== null && !mistake.everywhere && wrong.rows.some(({ row }) => row === mistake.row),
  )
  const rightLoops = marked.flatMap(({ mistake: { row }, section }) =>
    loopsIn(plan, right, row, plan.rows[row]?.makes ?? [], section),
  )
  const wrongLoops = marked.flatMap(({ mistake: { row }, section }) => {
    const own = wrong.rows.find((one) => one.row === row)
    return own ? loopsIn(plan, wrong.worked, own.index, own.counts, section) : []
  })
  const title = made.length > 1 ? 'The fabric with both mistakes in it' : 'The fabric with the mistake in it'
  return {
    right: svgOf({ worked: right, here: rightLoops }, `${idPrefix}-right`, 'The fabric as it should be'),
    wrong: svgOf({ worked: wrong.worked, here: wrongLoops }, `${idPrefix}-wrong`, title),
    marked: marked.length > 0,
  }
}
