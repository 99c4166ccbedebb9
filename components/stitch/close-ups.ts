import { closeUpDrawing, type Drawing } from '../../engine/drawing/index.ts'
import type { StitchId } from '../../engine/stitches/index.ts'

const drawn = new Map<string, Drawing>()

/** Draws each picture once a build. */
function remembered(key: string, draw: () => Drawing): Drawing {
  const drawing = drawn.get(key) ?? draw()
  drawn.set(key, drawing)
  return drawing
}

/** A stitch close up, large. */
export const closeUpOf = (id: StitchId, side: 'right' | 'wrong'): Drawing =>
  remembered(`${side} ${id}`, () => closeUpDrawing(id, { side, stitch: 110 }))

/** The same for a list of many: seen from the right side. */
export const smallCloseUpOf = (id: StitchId): Drawing =>
  remembered(`small ${id}`, () => closeUpDrawing(id, { stitch: 60, units: 60 }))
