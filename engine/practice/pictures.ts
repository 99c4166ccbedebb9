import { closeUpDrawing, type Drawing, fabricDrawing } from '../drawing/index.ts'
import { fabricOf, layOutFabric, yarnOf } from '../fabric/index.ts'
import type { Picture } from './exercise.ts'

/** Pixels a stitch at least: a piece as wide as a phone shows its loops, and a wider one is scrolled. */
const pixels = 16

/** Draws a picture of an exercise. A close-up's own title would tell what it is, so it has another. */
export function pictureOf(picture: Picture): Drawing {
  if (picture.form === 'close-up') {
    const { stitch, side } = picture
    const drawing = closeUpDrawing(stitch, { side, stitch: 84, units: 120 })
    return { ...drawing, title: `A stitch close up, ${side} side` }
  }
  const fabric = fabricOf(picture.piece)
  const yarn = yarnOf(fabric, layOutFabric(fabric, { state: 'blocked' }))
  return fabricDrawing(yarn, { title: picture.title, stitch: pixels })
}
