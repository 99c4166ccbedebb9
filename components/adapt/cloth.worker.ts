import { toSvg } from '../../engine/drawing/index.ts'
import { work } from '../../engine/needles/index.ts'
import { type Pattern, workedAgain } from '../../engine/pattern/index.ts'
import { clothOf, extentFor } from '../fabric/cloth.ts'
import { clothDrawing, firstSight } from '../fabric/picture.ts'
import { extentWords } from '../fabric/words.ts'

/** A fabric to draw; `name` begins the ids in its drawing. */
export interface ClothAsked {
  readonly id: number
  readonly name: string
  readonly pattern: Pattern
}

/** The blocked fabric with the words under it; null where it would be too large to lay out. */
export interface ClothTold {
  readonly svg: string
  readonly width: number
  readonly words: string
}

/** More loops than this are not laid out: it would take too long to wait for. */
const mostLoops = 2400

function told({ name, pattern }: ClothAsked): ClothTold | null {
  const { repeats, times } = extentFor(pattern, { stitches: 16, rows: 12 })
  const { worked } = work(workedAgain(pattern, times), repeats)
  if (!worked || worked.loops.length > mostLoops) return null
  const drawing = clothDrawing(clothOf(worked), firstSight, 40)
  return {
    svg: toSvg(drawing, { idPrefix: name }),
    width: drawing.width,
    words: extentWords(worked, times),
  }
}

addEventListener('message', ({ data }: MessageEvent<ClothAsked>) => {
  postMessage({ id: data.id, told: told(data) })
})
