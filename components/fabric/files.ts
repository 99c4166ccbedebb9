import { type Drawing, toSvg } from '../../engine/drawing/index.ts'
import type { ProvedEntry } from '../../site/library.ts'
import { clothFor, lessonExtent, thumbnailExtent } from './extents.ts'
import { clothDrawing, firstSight } from './picture.ts'
import { thumbnailDrawing } from './thumbnail.ts'

const thumbnails = new WeakMap<ProvedEntry, Drawing>()

/** The pattern's small picture, drawn once a build. */
export function thumbnailOf(entry: ProvedEntry): Drawing {
  const known = thumbnails.get(entry)
  if (known) return known
  const drawing = thumbnailDrawing(clothFor(entry, thumbnailExtent(entry)), 12)
  thumbnails.set(entry, drawing)
  return drawing
}

/** The lesson's picture before blocking, for readers without script. */
const looseOf = (entry: ProvedEntry): Drawing =>
  clothDrawing(clothFor(entry, lessonExtent(entry)), { ...firstSight, blocking: 0 })

/** A pattern's pictures as files. */
export const fabricFiles = {
  fabric: thumbnailOf,
  'as-knitted': looseOf,
} as const satisfies Record<string, (entry: ProvedEntry) => Drawing>

export type FabricFile = keyof typeof fabricFiles

export const svgFile = (drawing: Drawing): Response =>
  new Response(toSvg(drawing, { standalone: true }), { headers: { 'Content-Type': 'image/svg+xml' } })
