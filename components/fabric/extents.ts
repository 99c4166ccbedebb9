import type { Pattern } from '../../engine/pattern/index.ts'
import { type ProvedEntry, workedOf } from '../../site/library.ts'
import { shownRepeats } from '../pattern-facts.ts'
import { type Cloth, clothOf, type Extent, extentFor } from './cloth.ts'

/** A lesson's own picture: the repeats that its chart shows, or more where those are narrow, and rows enough for lace. */
export function lessonExtent(entry: ProvedEntry): Extent {
  const shown = widthOf(entry.pattern, shownRepeats(entry))
  return extentFor(entry.pattern, { stitches: Math.max(14, shown), rows: 12 })
}

/** A small picture to know the pattern by. */
export const thumbnailExtent = ({ pattern }: ProvedEntry): Extent =>
  extentFor(pattern, { stitches: 13, rows: 8 })

const widthOf = ({ castOn }: Pattern, repeats: number): number =>
  'fixed' in castOn ? castOn.fixed : castOn.multiple * repeats + castOn.plus

/** No picture is offered wider than this, unless the lesson's own is: it would move by jerks. */
const widest = 60

/** The numbers of repeats that a reader may choose from; none for a piece of fixed width. */
export function repeatChoices(entry: ProvedEntry): readonly number[] {
  const { pattern } = entry
  if ('fixed' in pattern.castOn) return []
  const { repeats } = lessonExtent(entry)
  const most = Math.floor((widest - pattern.castOn.plus) / pattern.castOn.multiple)
  return Array.from({ length: Math.max(repeats, most) }, (_, i) => i + 1)
}

/** A pattern's cloth over so many repeats, its rows worked so often: laid out once a build. */
export const clothFor = (entry: ProvedEntry, { repeats, times }: Extent): Cloth =>
  clothOf(workedOf(entry, repeats, times))
