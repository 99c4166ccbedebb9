import { backwards, inCubics, joined, shared } from './geometry.ts'
import { layers } from './layers.ts'
import { pinShapes } from './needle-shapes.ts'
import { keyOf, type Shape } from './shape.ts'
import type { SheetPiece, StrandPart } from './sheet.ts'
import { depthOf, type Staged } from './staged.ts'
import { isPainted } from './still.ts'

const parts: readonly StrandPart[] = ['leg-left', 'half-left', 'half-right', 'leg-right']

/** What a stitch deals with while it is on neither needle. */
export const offNeedleShapes = (shot: Staged): Shape[] => [
  ...fallenShapes(shot),
  ...strandShapes(shot),
  ...besideShapes(shot),
  ...parkedShapes(shot),
]

/** Loops of the stitch that hang in the fabric: dropped, passed over, or of a lower row. */
function fallenShapes(shot: Staged): Shape[] {
  const { context, hung, isLast } = shot
  const onNeedles = new Set(shot.loops.map(({ loop, name }) => keyOf(loop, name)))
  const fallen = [...context.numbers].filter(
    ([name, loop]) => !name.startsWith('new') && name !== 'strand 0' && !onNeedles.has(`${loop}`),
  )
  return fallen.flatMap(([, loop]) =>
    parts.flatMap((part): Shape[] => {
      const key = `${loop} ${part}`
      const curve = hung.curve(key)
      const look = isLast ? 'below' : 'next'
      return curve === null ? [] : [{ key, curve, loop, layer: depthOf(shot, key), look }]
    }),
  )
}

/** The running strand that an increase lifts: between its loops before, and twisted round the feet of the new one after. */
function strandShapes(shot: Staged): Shape[] {
  const { context, hung, loops, scene, isLast } = shot
  const lifter = context.numbers.get('strand 0')
  if (lifter === undefined || loops.some(({ name }) => name === 'strand 0')) return []
  const isMade = isLast || scene.hands.right.some((name) => name.startsWith('new'))
  const isIts = ({ part, loop, until }: SheetPiece): boolean =>
    isMade ? part === 'strand' && loop === lifter : until === lifter
  const pieces = context.cloth.pieces.slice(context.cloth.still).filter(isIts)
  const run = joined(pieces.flatMap(({ key }) => [hung.curve(key) ?? []]).filter((curve) => curve.length > 0))
  if (run.length === 0) return []
  const isForward = (run[0] ?? 0) <= (run.at(-2) ?? 0)
  const curves = shared(inCubics(isForward ? run : backwards(run), 4), [1, 1, 1, 1])
  const layer = depthOf(shot, pieces[0]?.key ?? '')
  return parts.map((part, i) => ({
    key: `strand 0 ${part}`,
    curve: curves[i] ?? [],
    loop: lifter,
    layer,
    look: isLast ? 'below' : 'next',
  }))
}

/** A pin through every loop that was put aside. */
function parkedShapes({ context, hung, loops }: Staged): Shape[] {
  const { fabric, order } = context.before.sheet.after
  const apart = fabric.loops.filter(
    ({ id, live }) => live && !order.includes(id) && !loops.some(({ loop }) => loop === id),
  )
  return apart.flatMap(({ id }): Shape[] => {
    const half = hung.curve(`${id} half-left`)
    if (half === null) return []
    const [x, y] = [half.at(-2) ?? 0, (half.at(-1) ?? 0) - 0.26]
    return pinShapes(`holder-${id}`, [x - 0.7, y - 0.05], [x + 0.7, y + 0.05], layers.frontLeft)
  })
}

/** The yarn beside a loop that the step before has made, painted as new with it. */
function besideShapes(shot: Staged): Shape[] {
  const { context, hung, isFirst } = shot
  const { before, cloth, worked, rowIndex, step } = context
  const last = worked.rows[rowIndex]?.steps[step.step - 2]?.made ?? []
  const painted = cloth.pieces.slice(cloth.still).filter((piece) => isPainted(before, piece, last))
  return painted.flatMap(({ key, loop }): Shape[] => {
    const curve = hung.curve(key)
    return curve === null
      ? []
      : [{ key, curve, loop, layer: depthOf(shot, key), look: isFirst ? 'new' : 'below' }]
  })
}
