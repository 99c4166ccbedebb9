import { type Drawing, type FabricMarks, fabricDrawing } from '../../engine/drawing/index.ts'
import { type Cloth, yarnAt } from './cloth.ts'
import { sightWords } from './words.ts'

export type MarkName = keyof FabricMarks

export const markNames = ['yarnOvers', 'decreases', 'edges', 'repeat'] as const satisfies readonly MarkName[]

/** What can be marked, with the sign that marks it. */
export const markWords: Readonly<Record<MarkName, { readonly name: string; readonly sign: string }>> = {
  yarnOvers: { name: 'yarn overs', sign: 'dotted, a ring in the hole' },
  decreases: { name: 'decreases', sign: 'bars across the loop on top' },
  edges: { name: 'edge stitches', sign: 'a thread along them' },
  repeat: { name: 'one repeat', sign: 'a bracket beneath' },
}

/** How a reader looks at a cloth. */
export interface Sight {
  /** From 0, as knitted, to 1, blocked. */
  readonly blocking: number
  readonly side: 'right' | 'wrong'
  readonly marked: readonly MarkName[]
}

export const firstSight: Sight = { blocking: 1, side: 'right', marked: [] }

/**
 * The cloth as it is looked at. Whatever the sight, the drawing is of one size: so the cloth grows in its frame, its
 * cast-on edge at the bottom, and the page round it keeps still. Fewer `units` a stitch are smaller to send.
 */
export function clothDrawing(cloth: Cloth, sight: Sight, units?: number): Drawing {
  const { side, blocking, marked } = sight
  const mark = Object.fromEntries(marked.map((name) => [name, cloth.marks[name]]))
  const drawing = fabricDrawing(yarnAt(cloth, blocking), {
    side,
    mark,
    ...(units !== undefined && { units }),
  })
  const frame = frameOf(cloth)
  const beneath = marked.includes('repeat') ? 0 : frame.beneath
  return {
    ...drawing,
    ...frame.size,
    title: `${cloth.worked.pattern.title}: the fabric, ${sightWords(sight)}`,
    nodes: [
      {
        kind: 'group',
        x: (frame.size.width - drawing.width) / 2,
        y: frame.size.height - beneath - drawing.height,
        children: drawing.nodes,
      },
    ],
  }
}

interface Frame {
  readonly size: Pick<Drawing, 'width' | 'height'>
  /** Room for the bracket of the repeat. */
  readonly beneath: number
}

const frames = new WeakMap<Cloth, Frame>()

/** Large enough for both states and for every mark. */
function frameOf(cloth: Cloth): Frame {
  const before = frames.get(cloth)
  if (before) return before
  const [loose, pinned] = [yarnAt(cloth, 0), yarnAt(cloth, 1)]
  const { repeat } = cloth.marks
  const plain = fabricDrawing(pinned)
  const all = [fabricDrawing(loose, { mark: { repeat } }), fabricDrawing(pinned, { mark: { repeat } })]
  const most = (of: 'width' | 'height'): number => Math.max(...all.map((drawing) => drawing[of]))
  const frame = {
    size: { width: most('width'), height: most('height') },
    beneath: (all[1]?.height ?? plain.height) - plain.height,
  }
  frames.set(cloth, frame)
  return frame
}
