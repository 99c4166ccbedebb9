import type { WorkedPattern } from '../needles/index.ts'
import { consequenceOf } from './consequence.ts'
import { actAt, lastRowOf } from './edits.ts'
import type { Look } from './look.ts'
import type { Mend, MendWay } from './mend.ts'
import { type Case, mendBy, rightUpTo } from './mend-case.ts'
import { cosmeticMends, otherLegMends } from './mend-next-row.ts'
import type { Mistake, MistakeKind } from './mistake.ts'
import { editsOf } from './models.ts'
import type { Plan } from './plan.ts'
import { type Rework, rework, unknitted } from './rework.ts'
import { sameFabric } from './same-fabric.ts'
import { type Casebook, planFrom } from './traces.ts'
import { type WrongPiece, workWrong } from './work-wrong.ts'

/** What the hands do to a column, by what went wrong: the same work on the loops, told as a knitter would tell it. */
const wayOf: Partial<Record<MistakeKind, MendWay>> = {
  'yarn over left out': 'lift the strand',
  'yarn over half made': 'lift the strand',
  'yarn over at the edge lost': 'lift the strand',
  'second wrap slipped off': 'lift the strand',
  'yarn over made twice': 'let it drop',
  'yarn over too many': 'let it drop',
  'yarn left in front': 'let it drop',
  'yarn over dropped on the return': 'pick up the loop',
  'double yarn over taken as one': 'pick up the loop',
  'slipped stitch dropped': 'pick up the loop',
  'stitch dropped': 'pick up the loop',
  'pass over forgotten': 'pass it over now',
}

/** Of what there is to see: what does not grow and does not stop later rows. */
const slight: ReadonlySet<Look> = new Set([
  'leans the other way',
  'middle not in front',
  'crossed decrease',
  'hole shut',
  'leg behind',
  'hole beside its place',
  'decrease beside its place',
  'hole and decrease changed sides',
  'other face',
  'made stitch',
])

/** More stitches than that side by side are not let down one by one. */
const widest = 6

function byRework(one: Case, later: 0 | 1 | 2, piece: WrongPiece, right: WorkedPattern): Mend[] {
  const found: Mend[] = []
  const add = (way: MendWay, done: Rework | null, most: number) => {
    if (done && done.wide <= most)
      found.push(mendBy(one, way, later, done.wide, done.piece, sameFabric(done.piece, right)))
  }
  const { kind } = one.mistake
  if (later === 0) {
    const back = unknitted(one.plan, piece)
    const steps = back ? piece.worked.rows.at(-1)?.steps.length : 0
    add(
      'un-knit to it',
      back && { ...back, wide: (steps ?? 0) - (back.stretches[0]?.from ?? 0) },
      Number.POSITIVE_INFINITY,
    )
  }
  const own = wayOf[kind] ?? 'work the column again'
  // In the same row a strand is lifted or a loop let go by un-knitting to it: the row above is not there yet.
  if (later > 0 || own === 'work the column again') add(own, rework(one.plan, piece), widest)
  return found
}

/** When nothing need be done. */
function leaving(one: Case): Mend[] {
  const { consequence } = one
  const { sights } = consequence
  const fits = consequence.laterRowsFit && consequence.settled.now === consequence.settled.meant
  if (!fits || one.mistake.everywhere || sights.length === 0 || !sights.every(({ look }) => slight.has(look)))
    return []
  return [mendBy(one, 'leave it', 2, 0, null, false)]
}

const markerOnly = ({ mistake }: Case): boolean =>
  mistake.kind === 'yarn over jumped the marker' || mistake.kind === 'marker not moved'

/** Ripped back to where all was right: always exact, and the last resort. */
function goingBack(one: Case, later: 0 | 1 | 2, wrong: WrongPiece): Mend[] {
  const { plan, edits } = one
  const upTo = (rows: WorkedPattern['rows']): WorkedPattern => ({
    ...wrong.worked,
    castOn: plan.worked.castOn,
    rows: rows.slice(0, wrong.from),
  })
  const [left, right] = [
    upTo(wrong.worked.rows),
    { ...plan.worked, rows: plan.worked.rows.slice(0, wrong.from) },
  ]
  if (edits.some((edit) => edit.do === 'castOn'))
    return later === 0 ? [mendBy(one, 'cast on again', 0, 0, right, true)] : []
  if (later === 0 && wrong.rows[0]?.row === one.mistake.row && !edits.some((edit) => edit.do === 'flip'))
    return []
  return [
    mendBy(
      one,
      'go back to the row',
      later,
      plan.worked.rows[one.mistake.row]?.steps.length ?? 0,
      left,
      sameFabric(left, right),
    ),
  ]
}

function mendsAt(one: Case, later: 0 | 1 | 2): Mend[] {
  const piece = workWrong(one.plan, one.edits, later + 1, { unnoticed: true })
  if (piece.rows.length < later + 1) return []
  const right = rightUpTo(one.plan, piece)
  const whole = one.edits.some((edit) => edit.do === 'castOn' || edit.do === 'skip' || edit.do === 'flip')
  if (markerOnly(one) && right && sameFabric(piece.worked, right))
    return [mendBy(one, 'move the marker', later, 0, piece.worked, true)]
  return [
    ...(later === 1 ? otherLegMends(one) : []),
    ...(whole || !right || later < lastRowOf(one.edits) - one.mistake.row
      ? []
      : byRework(one, later, piece, right)),
    ...(later === 1 ? cosmeticMends(one) : []),
    ...goingBack(one, later, piece),
  ]
}

/**
 * The ways to mend a mistake in its own row, one row later and two rows later, the least work first, and whether it may be
 * left. Each is done on the loops of the wrong piece, and compared with the right one: `exact` is what came of it.
 */
export function mendsFor(source: WorkedPattern | Plan | Casebook, mistake: Mistake): readonly Mend[] {
  const plan = planFrom(source)
  const edits = editsOf(plan, mistake)
  const consequence = consequenceOf(plan, mistake)
  if (!edits || !consequence) return []
  const one: Case = {
    plan,
    mistake,
    edits,
    consequence,
    section: actAt(plan, mistake.row, mistake.step)?.section ?? null,
  }
  return [...([0, 1, 2] as const).flatMap((later) => mendsAt(one, later)), ...leaving(one)]
}
