import type { GroupNode, Node, TextNode } from '../display.ts'
import type { Frame } from './frames.ts'
import type { Mark } from './mark.ts'
import { frameSize, tenth, toX, toY } from './places.ts'

/** Sizes in drawing units. A phone shows them at about 0.6: type of 23 is then 14 pixels high. */
const type = { count: 25, badge: 23, note: 21 } as const

type Written = Pick<TextNode, 'text' | 'x' | 'y' | 'size' | 'anchor'> & Partial<TextNode>

const written = (node: Written): TextNode => ({ kind: 'text', fill: 'currentColor', stroke: 'none', ...node })

/** Everything that is said in a frame, each in a group that moves as a whole. */
export const markNodes = ({ marks }: Frame): GroupNode[] =>
  marks.map((mark) => ({
    kind: 'group',
    key: mark.key,
    className: `mark mark-${mark.kind}`,
    x: tenth(toX(mark.at[0])),
    y: tenth(toY(mark.at[1])),
    children: nodesFor(mark),
  }))

function nodesFor(mark: Mark): Node[] {
  switch (mark.kind) {
    case 'ring':
      return [
        {
          kind: 'rect',
          className: 'next-ring',
          x: -19,
          y: -22,
          width: 38,
          height: 82,
          corner: 19,
          strokeWidth: 2.5,
          dash: [7, 5],
        },
      ]
    case 'badge':
      return [
        { kind: 'circle', className: 'next-badge', x: 0, y: 0, radius: 15, fill: '#fff', strokeWidth: 2.5 },
        written({
          className: 'mark-text',
          text: mark.text,
          x: 0,
          y: 8.2,
          size: type.badge,
          anchor: 'middle',
          bold: true,
        }),
      ]
    case 'new':
      return newNodes(mark)
    case 'marker':
      return [{ kind: 'circle', className: 'marker', x: 0, y: 3, radius: 13, strokeWidth: 4 }]
    case 'line':
      return [
        {
          kind: 'line',
          className: 'repeat-line',
          x1: 0,
          x2: 0,
          y1: -24,
          y2: 112,
          strokeWidth: 2,
          dash: [2, 6],
          cap: 'round',
        },
      ]
    case 'bead':
      return [{ kind: 'circle', className: 'bead', x: 0, y: 0, radius: 9, fill: '#fff', strokeWidth: 2.5 }]
    case 'label':
      return labelNodes(mark)
    default:
      return [
        written({
          className:
            mark.kind === 'more' ? 'needle-more' : mark.kind === 'count' ? 'needle-count' : 'needle-note',
          text: mark.text,
          x: 0,
          y: 0,
          size: mark.kind === 'note' ? type.note : type.count,
          anchor: mark.edge === 'left' ? 'start' : mark.edge === 'right' ? 'end' : 'middle',
          bold: mark.kind !== 'note',
        }),
      ]
  }
}

function newNodes({ text, edge }: Mark & { kind: 'new' }): Node[] {
  const tick: Node = {
    kind: 'path',
    className: 'new-tick',
    d: [
      ['M', -6, -8],
      ['L', 0, 0],
      ['L', 6, -8],
    ],
    strokeWidth: 3,
    cap: 'round',
  }
  // The yarn rises on the other side.
  const side = edge === 'left' ? ({ x: 2, anchor: 'start' } as const) : ({ x: -2, anchor: 'end' } as const)
  return text === ''
    ? [tick]
    : [tick, written({ className: 'mark-text', text, ...side, y: -14, size: type.note })]
}

/** Letters are about this wide, in parts of their size. */
const letter = 0.53

function labelNodes({ at, box, text }: Mark & { kind: 'label' }): Node[] {
  const half = (text.length * letter * type.note) / 2 + 8
  const middle = frameSize.width / 2
  const reach = middle - half - 4
  const centre = middle + Math.min(reach, Math.max(-reach, toX(box[0]) - middle))
  const [x, y] = [tenth(centre - toX(at[0])), tenth(toY(box[1]) - toY(at[1]))]
  const end = y < 0 ? y + tall / 2 : y - tall / 2
  const length = Math.max(spot, Math.hypot(x, end))
  const line = { x1: tenth((x / length) * spot), y1: tenth((end / length) * spot), x2: x, y2: end }
  const bubble = { x: x - half, y: y - tall / 2, width: 2 * half, height: tall, corner: 4 }
  return [
    { kind: 'circle', className: 'label-spot', x: 0, y: 0, radius: spot, strokeWidth: 2.5, dash: [4, 4] },
    { kind: 'line', className: 'label-line', ...line, strokeWidth: 2 },
    { kind: 'rect', className: 'label-box', ...bubble, fill: '#fff', strokeWidth: 2 },
    written({ className: 'mark-text', text, x, y: y + 7, size: type.note, anchor: 'middle' }),
  ]
}

/** The ring round a loop that is pointed out, and the height of the box with its words. */
const spot = 15
const tall = 32
