import type { Drawing, GroupNode, Node, Segment } from './display.ts'
import { bothSides, type NeedleSide, placeOf, size, turnOf } from './needle-frame.ts'
import { loopNodes, measures, needleNode, yarn } from './needle-loops.ts'
import { countNodes, endNodes, lineNodes, markerNodes, markNodes, wordsFor } from './needle-notes.ts'
import { type NeedleView, type SeenNeedles, seenNeedles } from './needle-state.ts'

export type { NeedleView }

/**
 * Both needles as the knitter sees them, the tips in the middle. Loops are keyed `loop-ID` and, for what lies behind the
 * needle, `back-ID`; loops that there is no room for are counted at the far end.
 */
export function needlesDrawing(view: NeedleView): Drawing {
  const seen = seenNeedles(view)
  const frame = {
    width: size.width,
    height: size.height,
    unit: 'px',
    title: 'Both needles, as you see them',
  } as const
  if (!seen) return { ...frame, description: 'There is no such row.', nodes: [] }
  const look = { className: 'needle-view', fill: 'none', stroke: 'currentColor', join: 'round' } as const
  return {
    ...frame,
    description: wordsFor(seen),
    nodes: [{ kind: 'group', ...look, children: layers(seen, view) }],
  }
}

/** From the back to the front. */
function layers(seen: SeenNeedles, { worked, hold = 'English' }: NeedleView): Node[] {
  const loops = bothSides.flatMap((side) => loopGroups(seen, side))
  const isBefore = yarnHangsBefore(seen)
  const working = yarnNode(seen, hold)
  return [
    ...loops.map(({ back }) => back),
    ...(isBefore ? [] : [working]),
    ...bothSides.map(needle),
    ...loops.map(({ front }) => front),
    ...(isBefore ? [working] : []),
    ...bothSides.flatMap((side) => [
      ...lineNodes(seen, side),
      ...markerNodes(seen, side),
      ...countNodes(seen, side),
    ]),
    ...endNodes(seen, worked.pattern.worked),
  ]
}

function needle(side: NeedleSide): Node {
  const turn = turnOf(side)
  const tilt = (Math.atan(size.slope) * 180) / Math.PI
  const at = { x: size.middle + turn * size.tip, y: size.tipY, rotate: turn * tilt }
  return needleNode(`needle-${side}`, side === 'left' ? 1 : -1, at, size.middle + 20)
}

function loopGroups(seen: SeenNeedles, side: NeedleSide): { back: GroupNode; front: GroupNode }[] {
  const all = seen[side]
  return all.slice(0, size.places).map((loop, place) => {
    const [nearer, farther] = [place > 0 || side === 'right', place < all.length - 1]
    const ends = side === 'left' ? { left: farther, right: nearer } : { left: nearer, right: farther }
    const slope = (turnOf(side) * size.slope * measures.pitch) / 2
    const { behind, front } = loopNodes(loop.shape, { ...ends, slope })
    const className = `loop${loop.isNew ? ' is-new' : ''}${loop.order === null ? '' : ' is-next'}`
    const look = { kind: 'group', className, ...placeOf(side, place) } as const
    return {
      back: { ...look, key: `back-${loop.id}`, children: behind },
      front: {
        ...look,
        key: `loop-${loop.id}`,
        data: { needle: side },
        children: [...front, ...markNodes(loop)],
      },
    }
  })
}

/** After a purl the yarn hangs before the needle, otherwise behind it. */
function yarnHangsBefore({ right: [newest], worked }: SeenNeedles): boolean {
  return worked !== null && newest?.shape.base === 'stitch' && newest.shape.seen === 'purl'
}

/** The yarn from the newest loop up to the hand that carries it. */
function yarnNode({ right }: SeenNeedles, hold: 'English' | 'Continental'): GroupNode {
  const newest = placeOf('right', 0)
  const from =
    right.length > 0
      ? { x: newest.x - measures.pitch / 2, y: newest.y + 63 }
      : { x: size.middle, y: size.tipY + 70 }
  const lead = hold === 'English' ? 8 : -74
  const d: Segment[] = [
    ['M', from.x, from.y],
    ['C', from.x - 22, from.y, from.x - 24, from.y - 40, from.x - 21, from.y - 76],
    ['C', from.x - 18, from.y - 112, from.x - 14 + lead * 0.4, from.y - 132, from.x + lead, -8],
  ]
  return { kind: 'group', key: 'working-yarn', className: 'working-yarn', children: yarn(d) }
}
