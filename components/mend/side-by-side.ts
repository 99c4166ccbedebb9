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

/** The same mistake in the second turn of the pattern, where it would lie at the cast-on edge in the first. */
function higherUp(plan: Plan, mistake: Mistake): { plan: Plan; mistake: Mistake } {
  const { pattern, repeats } = plan.worked
  const below = mistake.row - pattern.setUp.length
  if (below < 0 || below >= rowsBelow || pattern.growing || mistake.other !== null || mistake.step === null)
    return { plan, mistake }
  const { worked } = work(workedAgain(pattern, 2), repeats)
  return worked
    ? { plan: planOf(worked), mistake: { ...mistake, row: mistake.row + pattern.rows.length } }
    : { plan, mistake }
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

/** The fabric as it should be and with a mistake in it, for some rows above and below the place. */
export function sideBySide(
  shown: Plan,
  made: Mistake,
  section: number | null,
  idPrefix: string,
): SideBySide | null {
  const { plan, mistake } = higherUp(shown, made)
  const edits = editsOf(plan, mistake)
  if (!edits) return null
  const most = Math.min(rowsAbove, plan.rows.length - mistake.row)
  const wrong = workWrong(plan, edits, most, { unnoticed: true })
  const own = wrong.rows.find(({ row }) => row === mistake.row)
  const place = mistake.everywhere || !own ? null : section
  const rows = wrong.worked.rows.length
  const right: WorkedPattern = { ...plan.worked, rows: plan.worked.rows.slice(0, rows) }
  const meant = plan.rows[mistake.row]?.makes ?? []
  return {
    right: svgOf(
      { worked: right, here: loopsIn(plan, right, mistake.row, meant, place) },
      `${idPrefix}-right`,
      'The fabric as it should be',
    ),
    wrong: svgOf(
      { worked: wrong.worked, here: loopsIn(plan, wrong.worked, own?.index ?? 0, own?.counts ?? [], place) },
      `${idPrefix}-wrong`,
      'The fabric with the mistake in it',
    ),
    marked: place !== null,
  }
}
