import { stitch } from '../stitches/index.ts'
import type { Drawing, GroupNode, Node, Segment } from './display.ts'
import { loopNodes, measures, needleNode, yarn } from './needle-loops.ts'
import { type NeedleView, type SeenLoop, type SeenNeedles, seenNeedles } from './needle-state.ts'

export type { NeedleView }

/** Sizes in drawing units. A phone shows them at about 0.6: type of 22 is then 13 pixels high. */
const size = {
  width: 600,
  height: 232,
  /** The needles' tips meet here. */
  middle: 300,
  tipY: 100,
  /** From the middle to each tip, and to the loop nearest it. */
  tip: 15,
  first: 60,
  /** How much lower a needle lies at its far end, in parts of its length. */
  slope: 0.05,
  type: 22,
  /** Places for loops on each needle. */
  places: 6,
} as const

type Side = 'left' | 'right'

const turnOf = (side: Side): 1 | -1 => (side === 'left' ? -1 : 1)

/** Where the loop in a place of a needle hangs; half places lie between two loops. */
function placeOf(side: Side, place: number): { x: number; y: number } {
  const away = size.first + place * measures.pitch
  return { x: size.middle + turnOf(side) * away, y: size.tipY + (away - size.tip) * size.slope }
}

/** Loops of a needle that the picture has room for, from the tip on. */
export const drawnOn = (loops: readonly unknown[]): number => Math.min(loops.length, size.places)

/**
 * Both needles as the knitter sees them, the tips in the middle. Loops are keyed `loop-ID` and, for what lies behind the
 * needle, `back-ID`; loops that there is no room for are counted at the far end.
 */
export function needlesDrawing(view: NeedleView): Drawing {
  const seen = seenNeedles(view)
  const frame = { width: size.width, height: size.height, unit: 'px' } as const
  if (!seen) return { ...frame, title: 'Both needles', description: 'There is no such row.', nodes: [] }
  const loops = (['left', 'right'] as const).flatMap((side) => loopGroups(seen, side))
  return {
    ...frame,
    title: 'Both needles, as you see them',
    description: descriptionOf(seen),
    nodes: [
      {
        kind: 'group',
        className: 'needle-view',
        fill: 'none',
        stroke: 'currentColor',
        join: 'round',
        children: [
          ...loops.map(({ back }) => back),
          ...yarnNodes(seen, view.hold ?? 'English', 'behind'),
          needle('left'),
          needle('right'),
          ...loops.map(({ front }) => front),
          ...yarnNodes(seen, view.hold ?? 'English', 'before'),
          ...(['left', 'right'] as const).flatMap((side) => [
            ...lineNodes(seen, side),
            ...markerNodes(seen, side),
          ]),
          ...(['left', 'right'] as const).flatMap((side) => countNodes(seen, side)),
          ...endNodes(seen, view.worked.pattern.worked),
        ],
      },
    ],
  }
}

function needle(side: Side): Node {
  const turn = turnOf(side)
  const tilt = (Math.atan(size.slope) * 180) / Math.PI
  return needleNode(
    `needle-${side}`,
    side === 'left' ? 1 : -1,
    size.middle + turn * size.tip,
    size.tipY,
    turn * tilt,
    size.middle + 20,
  )
}

function loopGroups(seen: SeenNeedles, side: Side): { back: GroupNode; front: GroupNode }[] {
  const all = seen[side]
  return all.slice(0, size.places).map((loop, place) => {
    const [nearer, farther] = [place > 0 || side === 'right', place < all.length - 1]
    const ends = side === 'left' ? { left: farther, right: nearer } : { left: nearer, right: farther }
    const slope = (turnOf(side) * size.slope * measures.pitch) / 2
    const { behind, front } = loopNodes(loop.shape, { ...ends, slope })
    const at = placeOf(side, place)
    const className = `loop${loop.isNew ? ' is-new' : ''}${loop.order === null ? '' : ' is-next'}`
    return {
      back: { kind: 'group', key: `back-${loop.id}`, className, ...at, children: behind },
      front: {
        kind: 'group',
        key: `loop-${loop.id}`,
        className,
        data: { needle: side },
        ...at,
        children: [...front, ...markNodes(loop)],
      },
    }
  })
}

/** What is said about a loop beside it: its turn in the coming step, or that it is new. */
function markNodes({ order, isNew }: SeenLoop): Node[] {
  const text = (words: string, y: number, bold: boolean): Node => ({
    kind: 'text',
    className: 'mark-text',
    text: words,
    x: 0,
    y,
    size: bold ? 21 : 18,
    anchor: 'middle',
    bold,
    fill: 'currentColor',
    stroke: 'none',
  })
  if (order !== null) {
    return [
      {
        kind: 'rect',
        className: 'next-ring',
        x: -19,
        y: -29,
        width: 38,
        height: 98,
        corner: 19,
        strokeWidth: 2.5,
        dash: [7, 5],
      },
      { kind: 'circle', className: 'next-badge', x: 0, y: -45, radius: 14, fill: '#fff', strokeWidth: 2.5 },
      text(String(order), -37.6, true),
    ]
  }
  const tick: Node = {
    kind: 'path',
    className: 'new-tick',
    d: [
      ['M', -6, -36],
      ['L', 0, -28],
      ['L', 6, -36],
    ],
    strokeWidth: 3,
    cap: 'round',
  }
  return isNew ? [tick, text('new', -42, false)] : []
}

/** The yarn from the newest loop up to the hand. After a purl it hangs before the needle, otherwise behind. */
function yarnNodes(
  { right, worked }: SeenNeedles,
  hold: 'English' | 'Continental',
  layer: 'behind' | 'before',
): Node[] {
  const newest = right[0]
  const isBefore = newest?.shape.seen === 'purl' && newest.shape.base === 'stitch' && worked !== null
  if (isBefore !== (layer === 'before')) return []
  const from = newest
    ? { x: placeOf('right', 0).x - measures.pitch / 2, y: placeOf('right', 0).y + 63 }
    : { x: size.middle, y: size.tipY + 70 }
  const lead = hold === 'English' ? 8 : -74
  const d: Segment[] = [
    ['M', from.x, from.y],
    ['C', from.x - 22, from.y, from.x - 24, from.y - 40, from.x - 21, from.y - 76],
    ['C', from.x - 18, from.y - 112, from.x - 14 + lead * 0.4, from.y - 132, from.x + lead, -8],
  ]
  return [
    {
      kind: 'group',
      key: 'working-yarn',
      className: 'working-yarn',
      children: yarn(d),
    },
  ]
}

/** A line between two loops of different repeats of the row. */
function lineNodes(seen: SeenNeedles, side: Side): Node[] {
  const loops = seen[side].slice(0, size.places)
  return loops.flatMap((loop, place): Node[] => {
    const before = loops[place - 1]
    if (!before || before.repeat === loop.repeat) return []
    const { x, y } = placeOf(side, place - 0.5)
    return [
      {
        kind: 'line',
        key: `line-${before.id}`,
        className: 'repeat-line',
        x1: x,
        x2: x,
        y1: y - 30,
        y2: y + 104,
        strokeWidth: 2,
        dash: [2, 6],
        cap: 'round',
      },
    ]
  })
}

function markerNodes(seen: SeenNeedles, side: Side): Node[] {
  return seen.markers[side]
    .filter((loops) => loops <= drawnOn(seen[side]))
    .map((loops): Node => {
      const { x, y } = placeOf(side, loops - 0.5)
      return {
        kind: 'group',
        key: `marker-${side}-${loops}`,
        className: 'marker',
        x,
        y,
        children: [{ kind: 'circle', x: 0, y: 3, radius: 13, strokeWidth: 4 }],
      }
    })
}

/** How many loops the needle holds, and at its far end how many of them are not drawn. */
function countNodes(seen: SeenNeedles, side: Side): Node[] {
  const loops = seen[side]
  const x = side === 'left' ? 10 : size.width - 10
  const anchor = side === 'left' ? 'start' : 'end'
  const look = { kind: 'text', anchor, size: size.type, fill: 'currentColor', stroke: 'none' } as const
  const more = loops.length - drawnOn(loops)
  const far = placeOf(side, size.places - 1)
  const count: Node = {
    ...look,
    className: 'count',
    text: `${loops.length} on the ${side}`,
    x: 0,
    y: 0,
    bold: true,
  }
  const rest: Node = {
    ...look,
    key: `more-${side}`,
    className: 'more',
    text: `+ ${more}`,
    x: side === 'left' ? 6 : size.width - 6,
    y: far.y - 36,
    bold: true,
  }
  return [
    { kind: 'group', key: `count-${side}`, className: 'count-group', x, y: 28, children: [count] },
    ...(more > 0 ? [rest] : []),
  ]
}

/** At a row's end, what comes before the next row. */
function endNodes({ coming }: SeenNeedles, worked: 'flat' | 'round'): Node[] {
  if (coming !== null) return []
  const text = worked === 'round' ? 'Round done' : 'Row done: turn'
  const { x, y } = placeOf('left', 2)
  return [
    {
      kind: 'text',
      key: 'row-end',
      className: 'row-end',
      text,
      x,
      y: y - 38,
      size: size.type,
      anchor: 'middle',
      bold: true,
      fill: 'currentColor',
      stroke: 'none',
    },
  ]
}

const loopsWords = (n: number): string => `${n} ${n === 1 ? 'loop' : 'loops'}`

/** The picture as sentences; the same numbers, from the same moment. */
function descriptionOf({ row, worked, coming, left, right }: SeenNeedles): string {
  const hidden = (loops: readonly unknown[]): string => {
    const more = loops.length - drawnOn(loops)
    return more > 0 ? `, ${more} of them counted only` : ''
  }
  const made = worked?.made.length ?? 0
  const newest =
    worked === null
      ? ''
      : made === 0
        ? ' None of them is new.'
        : ` The newest ${made === 1 ? 'one is' : `${made} are`} from: ${stitch(worked.stitch).name}.`
  const takes = coming?.taken.length ?? 0
  const next =
    coming === null
      ? ' The row is done.'
      : takes === 0
        ? ' The next stitch takes none of them.'
        : ` The next stitch takes the ${takes === 1 ? 'first' : `first ${takes}`}, ringed and numbered.`
  const face = row.side === 'RS' ? 'right side' : 'wrong side'
  return `You look at the ${face}. Left needle: ${loopsWords(left.length)}${hidden(left)}.${next} Right needle: ${loopsWords(right.length)}${hidden(right)}.${newest}`
}
