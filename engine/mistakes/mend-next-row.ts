import { type Act, instead, stitchOf } from './acts.ts'
import type { Edit } from './edits.ts'
import { lastRowOf } from './edits.ts'
import { isPlain, showsKnit, throughBack, wider } from './kin.ts'
import type { Mend, MendWay } from './mend.ts'
import { type Case, mendBy, rightUpTo } from './mend-case.ts'
import { outcomes } from './outcomes.ts'
import type { RowPlan } from './plan.ts'
import { rework } from './rework.ts'
import { sameFabric } from './same-fabric.ts'
import { workWrong } from './work-wrong.ts'

/** Mends that are nothing but another stitch in the row after the mistake's. */

/** The wrong acts of the next row, with one of them done otherwise. */
const otherwise = (row: RowPlan, acts: readonly Act[]): Edit => ({
  do: 'acts',
  row: row.index,
  acts: acts.map((one) => ({ ...one, open: false })),
  blind: false,
  like: null,
})

/** Works the mistake and the mending row, and compares what comes of it. */
function tried(one: Case, way: MendWay, mending: Edit): Mend[] {
  const piece = workWrong(one.plan, [...one.edits, mending], 2, { unnoticed: true })
  const right = rightUpTo(one.plan, piece)
  return right ? [mendBy(one, way, 1, 1, piece.worked, sameFabric(piece.worked, right))] : []
}

const plainPairAt = (acts: readonly Act[], i: number): boolean => {
  const [a, b] = [stitchOf(acts[i]), stitchOf(acts[i + 1])]
  return a !== null && b !== null && isPlain(a) && isPlain(b)
}

/** The next row's acts with one made, or two worked together, from a place on; null where that cannot be. */
function recounted(acts: readonly Act[], from: number, off: number): Act[] | null {
  const at = off < 0 ? from : acts.findIndex((_, i) => i >= from && plainPairAt(acts, i))
  const act = acts[at] ?? acts[at - 1]
  const id = stitchOf(act)
  if (!act || id === null || at < 0) return null
  const put = off < 0 ? (showsKnit(id) ? 'm1' : 'm1p') : wider(id)
  return put === null ? null : [...acts.slice(0, at), instead(act, put), ...acts.slice(off < 0 ? at : at + 2)]
}

/** The count mended in the next row and nothing else. */
export function cosmeticMends(one: Case): Mend[] {
  const { plan, edits, consequence, mistake } = one
  const off = consequence.total.now - consequence.total.meant
  const wrong = workWrong(plan, edits, 2, { unnoticed: true })
  const stretch =
    Math.abs(off) === 1 && wrong.rows.length === 2 ? rework(plan, wrong)?.stretches[1] : undefined
  const next = plan.rows[mistake.row + 1]
  if (!stretch || !next || lastRowOf(edits) > mistake.row) return []
  const acts = recounted(wrong.rows[1]?.acts ?? [], stretch.from, off)
  if (!acts) return []
  const mending = otherwise(next, acts)
  const after = outcomes(plan, [...edits, mending], 'markers', 2)[1]
  if (after?.total !== next.makes.reduce((sum, count) => sum + count, 0)) return []
  return tried(one, off < 0 ? 'make one beside it' : 'work two together beside it', mending)
}

/** A yarn over that sits the other way round is worked through the leg that leads. */
export function otherLegMends(one: Case): Mend[] {
  const { plan, mistake } = one
  if (mistake.kind !== 'yarn over wrapped backwards' || mistake.everywhere || mistake.step === null) return []
  const [over] = plan.worked.rows[mistake.row]?.steps[mistake.step]?.made ?? []
  const next = over === undefined ? undefined : plan.takenBy.get(over)
  const row = next && plan.rows[next.row]
  const act = next && row?.acts[next.step]
  const id = stitchOf(act)
  const back = id === null ? null : throughBack(id)
  if (!row || !act || back === null || row.index !== mistake.row + 1) return []
  return tried(
    one,
    'work the other leg',
    otherwise(
      row,
      row.acts.map((meant) => (meant === act ? instead(act, back) : meant)),
    ),
  ).filter((mend) => mend.exact)
}
