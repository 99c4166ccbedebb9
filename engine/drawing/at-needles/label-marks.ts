import { stitch } from '../../stitches/index.ts'
import { heightAt, type Point } from './geometry.ts'
import type { LoopLabel, Mark } from './mark.ts'
import { onNeedle } from './marks.ts'
import { sizes } from './sizes.ts'
import { loopIdOf, type Staged } from './staged.ts'
import { middleOf } from './yarns.ts'

/** Loops pointed out with words: those asked for, and one that is easily mistaken for another. */
export function labelMarks(shot: Staged, labels: readonly LoopLabel[]): Mark[] {
  const wanted = [...labels, ...easilyMistaken(shot)]
  const marks: Mark[] = []
  for (const { loop, label } of wanted) {
    const at = placeOf(shot, loop)
    if (at === null || marks.some(({ key }) => key === `label-${loop}`)) continue
    marks.push({ kind: 'label', key: `label-${loop}`, at, text: label, box: boxFor(shot, at) })
  }
  return marks
}

/** Where a loop hangs in this scene; null where it is not to be seen. */
function placeOf(shot: Staged, id: number): Point | null {
  const hanging = shot.loops.find(({ loop }) => loopIdOf(shot, loop) === id)
  if (hanging !== undefined) return Math.abs(hanging.x) > sizes.reach ? null : onNeedle(shot, hanging)
  const number = shot.context.before.sheet.after.fabric.loops.find(({ loop }) => loop === id)?.id ?? -1
  const half = shot.hung.curve(`${number} half-left`)
  const other = shot.hung.curve(`${number} half-right`)
  if (half === null || other === null) return null
  const [top, foot] = [
    [half.at(-2) ?? 0, half.at(-1) ?? 0] as const,
    middleOf([half[0] ?? 0, half[1] ?? 0], [other.at(-2) ?? 0, other.at(-1) ?? 0]),
  ]
  const place = middleOf(top, foot)
  const { side, below } = sizes.picture
  return Math.abs(place[0]) > side - 0.3 || place[1] < 0.4 - below ? null : place
}

/** Where words about a loop on the right needle stand, clear of numbers, yarn and counts; and how far from the sides. */
const free = { x: 3.4, y: 1.02, side: sizes.picture.side - 1.5 } as const

/** Above a loop on a needle; beside one in the fabric, toward the nearer edge. */
function boxFor({ stage }: Staged, [x, y]: Point): Point {
  const inside = Math.min(free.side, Math.max(-free.side, x))
  if (y > heightAt(x < 0 ? stage.left.line : stage.right.line, x) - 0.5) {
    return x < 0 ? [inside, sizes.picture.above - 1.05] : [Math.max(free.x, inside), free.y]
  }
  const outward = x < 0 ? 0.4 : -0.4
  return [
    Math.min(free.side, Math.max(-free.side, x + outward)),
    Math.max(0.35 - sizes.picture.below, y - 1.05),
  ]
}

/** A yarn over right beside a slipped stitch that is about to be passed over: it is the wrong one to lift. */
function easilyMistaken({ context, isLast }: Staged): LoopLabel[] {
  const passes = stitch(context.step.stitch).motions.some(
    (motion) => motion.do === 'pass' && motion.from === 'right',
  )
  const [newest] = context.before.right
  if (!passes || isLast || newest === undefined || newest.id === null) return []
  const loop = context.worked.loops[newest.id]
  return loop !== undefined && stitch(loop.stitch).family === 'yarn over'
    ? [{ loop: newest.id, label: 'yarn over: stays' }]
    : []
}
