import type { Mark } from './mark.ts'
import { sizes } from './sizes.ts'
import type { Staged } from './staged.ts'

/** How many loops each needle holds, and how many of them lie beyond the picture's edge. */
export function countMarks(shot: Staged): Mark[] {
  const { context, isFirst, isLast } = shot
  const moment = isLast ? context.after : context.before
  const marks: Mark[] = []
  for (const side of ['left', 'right'] as const) {
    const loops = moment[side].filter(({ id }) => id !== null)
    const out = sizes.picture.side - 0.15
    const [edge, x] = side === 'left' ? (['left', -out] as const) : (['right', out] as const)
    const place = { edge, at: [x, sizes.picture.above - 0.62] } as const
    marks.push({ kind: 'count', key: `count-${side}`, ...place, text: `${loops.length} on the ${side}` })
    const more = loops.filter((loop) => Math.abs(loop.x) > sizes.reach).length
    if (more === 0 || (!isFirst && !isLast)) continue
    marks.push({
      kind: 'more',
      key: `more-${side}`,
      edge,
      at: [x, sizes.picture.above - 1.24],
      text: `+ ${more}`,
    })
  }
  const { yarn } = moment
  if (isFirst || isLast) {
    // Beside the yarn, on the side that it does not lean to.
    const isEnglish = context.hold === 'English'
    const place = isEnglish
      ? ({ edge: 'right', at: [0.75, 1.73] } as const)
      : ({ edge: 'left', at: [0.5, 1.5] } as const)
    marks.push({
      kind: 'note',
      key: 'note-yarn',
      ...place,
      text: yarn === 'front' ? 'yarn in front' : 'yarn behind',
    })
  }
  if (isLast && moment.left.length === 0) {
    const text = context.worked.pattern.worked === 'round' ? 'Round done' : 'Row done: turn'
    marks.push({ kind: 'end', key: 'row-end', edge: 'middle', at: [-3.2, 0.75], text })
  }
  return marks
}
