import { type StitchId, stitch, twinsOf } from '../stitches/index.ts'
import { type Refused, refuse } from './refusal.ts'
import type { ShownRow, Word } from './shown.ts'

/** The same look worked on the other side; refused where the catalogue has no stitch for one of them. */
export function turnedOver(word: Word, row: ShownRow): Word | Refused {
  const missing = word.find((id) => stitch(id).wrongSideTwin === null)
  if (missing !== undefined) return noTwin(missing, row)
  return word.map((id) => stitch(id).wrongSideTwin ?? id)
}

function noTwin(id: StitchId, { number }: ShownRow): Refused {
  return refuse(
    'no-twin',
    `Row ${number} works \`${stitch(id).us}\` (${stitch(id).name}), and no stitch of the other side looks like it.`,
    { row: number, stitch: id, hint: 'change that stitch for another first' },
  )
}

/** Stitches of the words whose twin on the other side is only nearly alike, each once, with how alike it is. */
export function nearlyAlike(
  words: readonly Word[],
): { readonly stitch: StitchId; readonly twin: StitchId; readonly likeness: string }[] {
  return [...new Set(words.flat())].flatMap((id) => {
    const twin = twinsOf(id).wrongSide
    return twin === null || twin.likeness === 'exact'
      ? []
      : [{ stitch: id, twin: twin.stitch, likeness: twin.likeness }]
  })
}

/** What a plainer stitch changes for the eye, seen from the right side. */
export interface Plainer {
  readonly stitch: StitchId
  readonly look: string
}

/**
 * Wrong-side stitches that the hands find awkward, and the plain purl decrease that takes as many loops.
 * Common practice, no source; how each looks follows from the catalogue.
 */
const plainForms: Readonly<Record<StitchId, StitchId>> = {
  ssp: 'p2tog',
  spp: 'p2tog',
  'p2tog tbl': 'p2tog',
  sssp: 'p3tog',
  p2sp: 'p3tog',
  s2pp: 'p3tog',
  sp2p: 'p3tog',
  'sl1 ssp psso': 'p3tog',
  'p3tog tbl': 'p3tog',
  p3sp: 'p4tog',
}

/** The plainer stitch for an awkward one worked on the wrong side; null where it is plain enough. */
export function plainerOf(id: StitchId): StitchId | null {
  return plainForms[id] ?? null
}

/** How a stitch leans on the right side when it is worked on the wrong one. */
export const leanFromBehind = (id: StitchId): string | null => stitch(stitch(id).wrongSideTwin ?? id).lean

/** Whether two wrong-side stitches make the same fabric: their loops lie alike, and alike twisted. */
export function sameFromBehind(a: StitchId, b: StitchId): boolean {
  const [one, other] = [stitch(a), stitch(b)]
  return one.frontToBack.join() === other.frontToBack.join() && one.twisted === other.twisted
}
