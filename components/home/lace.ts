import type { Drawing } from '../../engine/drawing/index.ts'
import { type ProvedEntry, provedEntry } from '../../site/library.ts'
import { type Cloth, type Extent, extentFor } from '../fabric/cloth.ts'
import { clothFor } from '../fabric/extents.ts'
import { pieceOf } from '../fabric/files.ts'

/** What the first page is opened with. */
export const openingPattern = (): ProvedEntry => provedEntry('old-shale')

/** As wide as a large screen, and high enough for the rows to come round several times. */
const laceExtent = ({ pattern }: ProvedEntry): Extent => extentFor(pattern, { stitches: 86, rows: 16 })

/** The long piece of lace on the first page. */
export const laceOf = (entry: ProvedEntry): Drawing =>
  pieceOf(entry, laceExtent(entry), { stitch: 22, units: 40 })

export function laceCloth(entry: ProvedEntry): { readonly cloth: Cloth; readonly times: number } {
  const extent = laceExtent(entry)
  return { cloth: clothFor(entry, extent), times: extent.times }
}
