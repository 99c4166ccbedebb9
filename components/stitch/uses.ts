import { stitchesUsed } from '../../engine/pattern/index.ts'
import type { StitchId } from '../../engine/stitches/index.ts'
import { type ProvedEntry, provedEntries } from '../../site/library.ts'

const stitchesOf = ({ pattern: { setUp, rows, edges } }: ProvedEntry): ReadonlySet<StitchId> =>
  stitchesUsed([...setUp, ...rows].flatMap((row) => row.items).concat(edges.before, edges.after))

const used = new Map<StitchId, ProvedEntry[]>()
for (const entry of provedEntries) {
  for (const id of stitchesOf(entry)) used.set(id, [...(used.get(id) ?? []), entry])
}

/** The patterns of the library in whose rows a stitch is written. */
export const patternsWith = (id: StitchId): readonly ProvedEntry[] => used.get(id) ?? []
