import type { Frame, Frames } from './frames.ts'
import type { Curve, Point } from './geometry.ts'
import type { Mark } from './mark.ts'
import { mirroredWords } from './words.ts'

/** The same for a knitter who works from the right needle to the left one: pictures and words the other way round. */
export const mirrored = (frames: Frames): Frames => ({
  ...frames,
  hand: 'left',
  told: frames.told.map(({ words, stop }) => ({ words: mirroredWords(words), stop })),
  frames: frames.frames.map(mirroredFrame),
})

const flipped = (curve: Curve): Curve => curve.map((n, i) => (i % 2 === 0 ? -n : n))
const flip = ([x, y]: Point): Point => [-x, y]

const mirroredFrame = (frame: Frame): Frame => ({
  ...frame,
  words: mirroredWords(frame.words),
  description: mirroredWords(frame.description),
  fabric: frame.fabric.map((n, i) => (i % 2 === 0 ? -n : n)),
  curves: frame.curves.map(flipped),
  on: { left: frame.on.right, right: frame.on.left },
  marks: frame.marks.map(mirroredMark),
})

const otherEdge = { left: 'right', right: 'left', middle: 'middle' } as const

function mirroredMark(mark: Mark): Mark {
  const at = flip(mark.at)
  if (mark.kind === 'label') return { ...mark, at, box: flip(mark.box) }
  if (!('edge' in mark)) return { ...mark, at }
  return { ...mark, at, edge: otherEdge[mark.edge], text: mirroredWords(mark.text) }
}
