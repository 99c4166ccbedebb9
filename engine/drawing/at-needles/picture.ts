import type { Drawing, GroupNode, Node, Segment } from '../display.ts'
import type { Frame, Frames, Piece } from './frames.ts'
import { at, type Curve } from './geometry.ts'
import { markNodes } from './mark-nodes.ts'
import { sizes } from './sizes.ts'

/** Drawing units. */
export const frameSize = {
  width: Math.round(2 * sizes.picture.side * sizes.stitch),
  height: Math.round((sizes.picture.above + sizes.picture.below) * sizes.stitch),
} as const

export const pictureTitle = 'Both needles, as you see them'

/** A frame as it is drawn by itself. `all`: with an element for every piece of the step, so that a script can move them. */
export function frameDrawing(frames: Frames, frame: Frame, { all = false } = {}): Drawing {
  const look = { className: 'needle-view', fill: 'none', stroke: 'currentColor', join: 'round' } as const
  return {
    ...frameSize,
    unit: 'px',
    title: pictureTitle,
    description: frame.description,
    nodes: [
      { kind: 'group', ...look, children: [...pieceNodes(frames, frame, all), ...markNodes(frames, frame)] },
    ],
  }
}

interface Drawn {
  readonly piece: Piece
  readonly d: readonly Segment[]
}

/** From the back to the front. In a layer all outlines come first, and the yarn over them. */
function pieceNodes(frames: Frames, frame: Frame, all: boolean): Node[] {
  const layers = new Map<number, Drawn[]>()
  const add = (piece: Piece, d: readonly Segment[]): void => {
    const layer = layers.get(piece.layer) ?? []
    layers.set(piece.layer, layer)
    layer.push({ piece, d })
  }
  for (const [i, piece] of frames.fabric.entries()) {
    add(piece, segments(frame.fabric.subarray(frames.from[i], frames.from[i + 1])))
  }
  for (const [i, piece] of frames.pieces.entries()) {
    if (frame.shown[i]) add(piece, segments(frame.curves[i] ?? []))
    else if (all) add(piece, [])
  }
  return [...layers]
    .sort(([a], [b]) => a - b)
    .flatMap(([layer, drawn]) => layerNodes(frames, frame, layer, drawn))
}

const half = frameSize.width / 2
export const toX = (x: number): number => half + x * sizes.stitch
export const toY = (y: number): number => (sizes.picture.above - y) * sizes.stitch

function segments(curve: Curve | Float64Array): Segment[] {
  if (curve.length < 8) return []
  const x = (i: number): number => tenth(toX(at(curve, i)))
  const y = (i: number): number => tenth(toY(at(curve, i + 1)))
  const all: Segment[] = [['M', x(0), y(0)]]
  for (let i = 2; i + 5 < curve.length; i += 6)
    all.push(['C', x(i), y(i), x(i + 2), y(i + 2), x(i + 4), y(i + 4)])
  return all
}

const tenth = (n: number): number => Math.round(n * 10) / 10

const yarnWidth = sizes.yarn * sizes.stitch
const edgeWidth = yarnWidth + 2 * sizes.line * sizes.stitch

function layerNodes(frames: Frames, frame: Frame, layer: number, drawn: readonly Drawn[]): Node[] {
  const still = drawn.filter(({ piece }) => piece.look === 'below')
  const own = drawn.filter(({ piece }) => piece.look !== 'below')
  const batch = (className: string, stroke: object): Node[] => {
    const d = runsOf(still)
    return d.length === 0 ? [] : [{ kind: 'path', className, d, ...stroke }]
  }
  const loops = Map.groupBy(own, ({ piece }) => groupName(frames, frame, piece))
  return [
    ...batch('yarn-edge below', { strokeWidth: edgeWidth }),
    ...batch('yarn-body below', { stroke: '#fff', strokeWidth: yarnWidth, cap: 'square' }),
    ...[...loops].map(([name, pieces]) => loopGroup(frames, frame, name, layer, pieces)),
  ]
}

/** Pieces of one loop that lie in one layer are one group. */
const groupName = (_frames: Frames, _frame: Frame, { look, loop, key }: Piece): string =>
  look === 'needle' || look === 'line' || look === 'gleam'
    ? (key.split(' ')[0] ?? key)
    : loop === null
      ? 'yarn'
      : `loop ${loop} ${look}`

function loopGroup(
  _frames: Frames,
  frame: Frame,
  name: string,
  layer: number,
  pieces: readonly Drawn[],
): GroupNode {
  const [first] = pieces
  const { look = 'yarn', loop = null } = first?.piece ?? {}
  const isNeedle = name.startsWith('needle')
  const d = runsOf(pieces)
  const children: Node[] = isNeedle
    ? pieces.map(({ piece, d: part }) => needlePath(piece, part))
    : [
        { kind: 'path', className: 'yarn-edge', d, strokeWidth: edgeWidth },
        { kind: 'path', className: 'yarn-body', d, stroke: '#fff', strokeWidth: yarnWidth, cap: 'square' },
      ]
  const side = loop !== null && first?.piece.key.includes('half') ? sideOf(frame, loop) : null
  return {
    kind: 'group',
    className: isNeedle ? 'needle' : `loop${classes[look] ?? ''}`,
    key: isNeedle
      ? `${name}-${layer}`
      : loop === null
        ? `yarn-${layer}-${look}`
        : `loop-${loop}-${layer}-${look}`,
    ...(side !== null && isFrontLayer(layer) ? { data: { needle: side, loop: String(loop) } } : {}),
    children,
  }
}

const classes: Readonly<Record<string, string>> = {
  next: ' is-next',
  new: ' is-new',
  working: ' working-yarn',
}

const sideOf = ({ on }: Frame, loop: number): 'left' | 'right' | null =>
  on.left.includes(loop) ? 'left' : on.right.includes(loop) ? 'right' : null

/** The half in front of a needle stands for its loop. */
const isFrontLayer = (layer: number): boolean => layer > 7

function needlePath({ look }: Piece, d: readonly Segment[]): Node {
  if (look === 'needle') return { kind: 'path', className: 'needle-body', d, fill: '#fff', stroke: 'none' }
  if (look === 'line') return { kind: 'path', className: 'needle-line', d, strokeWidth: 1.6, cap: 'round' }
  return { kind: 'path', className: 'needle-gleam', d, strokeWidth: 1.6, opacity: 0.5 }
}

/** Pieces that follow each other are one line, so that nothing shows where they meet. */
function runsOf(drawn: readonly Drawn[]): Segment[] {
  const all: Segment[] = []
  for (const { d } of drawn) {
    const [start, ...rest] = d
    const last = all.at(-1)
    const meets = last?.[0] === 'C' && start?.[0] === 'M' && last[5] === start[1] && last[6] === start[2]
    if (start !== undefined) all.push(...(meets ? rest : d))
  }
  return all
}
