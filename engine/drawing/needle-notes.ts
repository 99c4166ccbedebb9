import { stitch } from '../stitches/index.ts'
import type { Node, TextNode } from './display.ts'
import { drawnOn, type NeedleSide, placeOf, size } from './needle-frame.ts'
import type { SeenLoop, SeenNeedles } from './needle-state.ts'

type Written = Pick<TextNode, 'text' | 'x' | 'y' | 'size' | 'anchor'> & Partial<TextNode>

const written = (node: Written): TextNode => ({ kind: 'text', fill: 'currentColor', stroke: 'none', ...node })

/** What is said about a loop beside it: its turn in the coming step, or that it is new. */
export function markNodes({ order, isNew }: SeenLoop): Node[] {
  const look = { x: 0, anchor: 'middle' } as const
  if (order !== null) {
    const ring = { x: -19, y: -29, width: 38, height: 98, corner: 19, strokeWidth: 2.5, dash: [7, 5] }
    return [
      { kind: 'rect', className: 'next-ring', ...ring },
      { kind: 'circle', className: 'next-badge', x: 0, y: -45, radius: 15, fill: '#fff', strokeWidth: 2.5 },
      written({ ...look, className: 'mark-text', text: String(order), y: -36.8, size: 23, bold: true }),
    ]
  }
  if (!isNew) return []
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
  return [tick, written({ ...look, className: 'mark-text', text: 'new', y: -42, size: 20 })]
}

/** A line between two loops of different repeats of the row. */
export function lineNodes(seen: SeenNeedles, side: NeedleSide): Node[] {
  const loops = seen[side].slice(0, size.places)
  return loops.flatMap((loop, place): Node[] => {
    const before = loops[place - 1]
    if (!before || before.repeat === loop.repeat) return []
    const { x, y } = placeOf(side, place - 0.5)
    const line = {
      x1: x,
      x2: x,
      y1: y - 30,
      y2: y + 104,
      strokeWidth: 2,
      dash: [2, 6],
      cap: 'round',
    } as const
    return [{ kind: 'line', key: `line-${before.id}`, className: 'repeat-line', ...line }]
  })
}

export function markerNodes(seen: SeenNeedles, side: NeedleSide): Node[] {
  return seen.markers[side]
    .filter((loops) => loops <= drawnOn(seen[side]))
    .map((loops): Node => {
      const children: Node[] = [{ kind: 'circle', x: 0, y: 3, radius: 13, strokeWidth: 4 }]
      return {
        kind: 'group',
        key: `marker-${side}-${loops}`,
        className: 'marker',
        ...placeOf(side, loops - 0.5),
        children,
      }
    })
}

/** How many loops the needle holds, and at its far end how many of them are not drawn. */
export function countNodes(seen: SeenNeedles, side: NeedleSide): Node[] {
  const loops = seen[side]
  const [anchor, x, edge] =
    side === 'left' ? (['start', 10, 6] as const) : (['end', size.width - 10, size.width - 6] as const)
  const look = { anchor, size: size.type, bold: true } as const
  const more = loops.length - drawnOn(loops)
  const count = written({
    ...look,
    className: 'needle-count',
    text: `${loops.length} on the ${side}`,
    x: 0,
    y: 0,
  })
  const rest = {
    key: `more-${side}`,
    className: 'needle-more',
    text: `+ ${more}`,
    x: edge,
    y: placeOf(side, size.places - 1).y - 36,
  }
  return [
    { kind: 'group', key: `count-${side}`, x, y: 28, children: [count] },
    ...(more > 0 ? [written({ ...look, ...rest })] : []),
  ]
}

/** At a row's end, what comes before the next row. */
export function endNodes({ coming }: SeenNeedles, worked: 'flat' | 'round'): Node[] {
  if (coming !== null) return []
  const { x, y } = placeOf('left', 2)
  const text = worked === 'round' ? 'Round done' : 'Row done: turn'
  return [written({ key: 'row-end', text, x, y: y - 38, size: size.type, anchor: 'middle', bold: true })]
}

const loopsWords = (n: number): string => `${n} ${n === 1 ? 'loop' : 'loops'}`

function needleWords(loops: readonly unknown[]): string {
  const more = loops.length - drawnOn(loops)
  return `${loopsWords(loops.length)}${more > 0 ? `, ${more} of them counted only` : ''}.`
}

function newWords({ worked }: SeenNeedles): string {
  if (worked === null) return ''
  const made = worked.made.length
  if (made === 0) return ' None of them is new.'
  return ` The newest ${made === 1 ? 'one is' : `${made} are`} from: ${stitch(worked.stitch).name}.`
}

function nextWords({ coming }: SeenNeedles): string {
  if (coming === null) return 'The row is done.'
  const takes = coming.taken.length
  if (takes === 0) return 'The next stitch takes none of them.'
  return `The next stitch takes the ${takes === 1 ? 'first' : `first ${takes}`}, ringed and numbered.`
}

/** The picture as sentences; the same numbers, from the same moment. */
export function wordsFor(seen: SeenNeedles): string {
  const face = seen.row.side === 'RS' ? 'right side' : 'wrong side'
  const left = `Left needle: ${needleWords(seen.left)} ${nextWords(seen)}`
  return `You look at the ${face}. ${left} Right needle: ${needleWords(seen.right)}${newWords(seen)}`
}
