import { type Drawing, fabricDrawing, toSvg } from '../../engine/drawing/index.ts'
import type { ProvedEntry } from '../../site/library.ts'
import { type Extent, yarnAt } from './cloth.ts'
import { clothFor, lessonExtent, thumbnailExtent } from './extents.ts'
import { clothDrawing, firstSight, type Sight } from './picture.ts'

/** A pattern's lace as a piece by itself, blocked: a stitch in CSS pixels, and in the whole units that it is drawn in. */
export function pieceOf(
  entry: ProvedEntry,
  extent: Extent,
  size: { stitch: number; units: number },
): Drawing {
  const title = `${entry.title}: the fabric, right side, blocked`
  return fabricDrawing(yarnAt(clothFor(entry, extent), 1), { ...size, title })
}

/** The picture of a lesson's page as it comes, before any script. */
export const lessonPicture = (entry: ProvedEntry, sight: Sight): Drawing =>
  clothDrawing(clothFor(entry, lessonExtent(entry)), sight, 40)

const thumbnails = new WeakMap<ProvedEntry, Drawing>()

/** The small picture that a pattern is known by, drawn once a build. */
export function thumbnailOf(entry: ProvedEntry): Drawing {
  const known = thumbnails.get(entry)
  if (known) return known
  const drawing = pieceOf(entry, thumbnailExtent(entry), { stitch: 12, units: 32 })
  thumbnails.set(entry, drawing)
  return drawing
}

/** A pattern's pictures as files. */
export const fabricFiles = {
  fabric: thumbnailOf,
  'as-knitted': (entry) => lessonPicture(entry, { ...firstSight, blocking: 0 }),
} as const satisfies Record<string, (entry: ProvedEntry) => Drawing>

export type FabricFile = keyof typeof fabricFiles

export const svgFile = (drawing: Drawing): Response =>
  new Response(toSvg(drawing, { standalone: true }), { headers: { 'Content-Type': 'image/svg+xml' } })
