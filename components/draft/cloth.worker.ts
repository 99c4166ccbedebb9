import { toSvg } from '../../engine/drawing/index.ts'
import { work } from '../../engine/needles/index.ts'
import { type Pattern, workedAgain } from '../../engine/pattern/index.ts'
import { type Cloth, clothOf, extentFor } from '../fabric/cloth.ts'
import { clothDrawing, type Sight } from '../fabric/picture.ts'
import { extentWords } from '../fabric/words.ts'

/** A picture of the fabric with the words under it; null where it would be too large to lay out at once. */
export interface ClothTold {
  readonly svg: string
  readonly words: string
  readonly description: string
}

/** More loops than this are not laid out: it would take too long to wait for. */
const mostLoops = 2400

let last: { readonly key: string; readonly cloth: Cloth; readonly times: number } | null = null

function clothFor(pattern: Pattern): typeof last {
  const key = JSON.stringify(pattern)
  if (last?.key === key) return last
  const { repeats, times } = extentFor(pattern, { stitches: 14, rows: 12 })
  const { worked } = work(workedAgain(pattern, times), repeats)
  if (!worked || worked.loops.length > mostLoops) return null
  last = { key, cloth: clothOf(worked), times }
  return last
}

addEventListener('message', ({ data }: MessageEvent<{ id: number; pattern: Pattern; sight: Sight }>) => {
  const found = clothFor(data.pattern)
  const drawing = found && clothDrawing(found.cloth, data.sight)
  const told: ClothTold | null = drawing && {
    svg: toSvg(drawing, { idPrefix: 'draft-fabric' }),
    words: extentWords(found.cloth.worked, found.times),
    description: drawing.description,
  }
  postMessage({ id: data.id, told })
})
