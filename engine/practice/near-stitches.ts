import { findStitch, type StitchId, stitch } from '../stitches/index.ts'
import type { Table } from './table.ts'

/** Stitches that every learner of lace meets, to choose among where a row has few of its own. */
const common: readonly StitchId[] = ['yo', 'k2tog', 'ssk', 'k', 'p', 'sk2p', 's2kp', 'k3tog', 'k tbl']

/** Whether two stitches leave the same loops in the same way: then no eye tells them apart, only the hands. */
export function looksAlike(a: StitchId, b: StitchId): boolean {
  const look = (id: StitchId): string => {
    const { takes, makes, frontToBack, twisted, effect } = stitch(id)
    return JSON.stringify([
      takes,
      makes,
      frontToBack,
      twisted,
      effect.made.map(({ face, from }) => [face, from]),
    ])
  }
  return look(a) === look(b)
}

/** Stitches that a learner may take for this one, the likeliest first: of its family, its mirror, the pattern's own, common ones. */
export function nearStitches({ worked }: Table, id: StitchId): StitchId[] {
  const own = [...new Set(worked.rows.flatMap((row) => row.steps.map((step) => step.stitch)))]
  const { family, mirrorTwin } = stitch(id)
  const purled = stitch(id).effect.made[0]?.face === 'purl'
  const met = common.map((other) => (purled ? (stitch(other).wrongSideTwin ?? other) : other))
  const known = [...own, ...met]
  const kin = known.filter((other) => stitch(other).family === family)
  const mirror = known.filter((other) => other === mirrorTwin)
  return [...new Set([...mirror, ...kin, ...known])].filter(
    (other) => findStitch(other) !== null && stitch(other).family !== 'bind off' && !looksAlike(other, id),
  )
}
