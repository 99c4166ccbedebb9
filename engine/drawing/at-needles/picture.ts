import type { Drawing, GroupNode, Node } from '../display.ts'
import type { Frame, Frames, Piece } from './frames.ts'
import type { Curve } from './geometry.ts'
import { markNodes } from './mark-nodes.ts'
import { frameSize, toX, toY } from './places.ts'
import { joinedRuns, plainSegments, type Run, tenth, yarnSegments } from './runs.ts'
import { sizes } from './sizes.ts'

export const pictureTitle = 'Both needles, as you see them'

export interface PictureOptions {
  /** With an element for every piece of the step, also for those that this frame does not show, so that a script can move them. */
  readonly all?: boolean
}

/** A frame as it is drawn by itself. */
export function frameDrawing(frames: Frames, frame: Frame, { all = false }: PictureOptions = {}): Drawing {
  const look = { className: 'needle-view', fill: 'none', stroke: 'currentColor', join: 'round' } as const
  return {
    ...frameSize,
    unit: 'px',
    title: pictureTitle,
    description: frame.description,
    nodes: [{ kind: 'group', ...look, children: [...pieceNodes(frames, frame, all), ...markNodes(frame)] }],
  }
}

interface Drawn {
  readonly piece: Piece
  readonly run: Run
}

/** From the back to the front. */
function pieceNodes(frames: Frames, frame: Frame, all: boolean): Node[] {
  const layers = new Map<number, Drawn[]>()
  const add = (piece: Piece, run: Run): void => {
    const layer = layers.get(piece.layer) ?? []
    layers.set(piece.layer, layer)
    layer.push({ piece, run })
  }
  for (const [i, piece] of frames.fabric.entries()) {
    add(piece, placed(frame.fabric.subarray(frames.from[i], frames.from[i + 1])))
  }
  for (const [i, piece] of frames.pieces.entries()) {
    if (frame.shown[i]) add(piece, placed(frame.curves[i] ?? []))
    else if (all) add(piece, [])
  }
  return [...layers].sort(([a], [b]) => a - b).flatMap(([layer, drawn]) => layerNodes(frame, layer, drawn))
}

/** In drawing units. */
function placed(curve: Curve | Float64Array): Run {
  const run: number[] = []
  for (let i = 0; i < curve.length; i++) {
    const value = curve[i] as number
    run.push(tenth(i % 2 === 0 ? toX(value) : toY(value)))
  }
  return run
}

const yarnWidth = sizes.yarn * sizes.stitch
const edgeWidth = yarnWidth + 2 * sizes.line * sizes.stitch

/** Lines of yarn in one layer: all outlines first, and the yarn over them. */
function yarnPaths(pieces: readonly Drawn[], more: string): Node[] {
  const d = yarnSegments(joinedRuns(pieces.map(({ run }) => run)))
  return [
    { kind: 'path', className: `yarn-edge${more}`, d, strokeWidth: edgeWidth },
    { kind: 'path', className: `yarn-body${more}`, d, stroke: '#fff', strokeWidth: yarnWidth, cap: 'square' },
  ]
}

function layerNodes(frame: Frame, layer: number, drawn: readonly Drawn[]): Node[] {
  const still = drawn.filter(({ piece }) => piece.look === 'below')
  const own = drawn.filter(({ piece }) => piece.look !== 'below')
  const groups = Map.groupBy(own, ({ piece }) => groupName(piece))
  return [
    ...(still.length > 0 ? yarnPaths(still, ' below') : []),
    ...[...groups].map(([name, pieces]) => groupOf(frame, `${name}-${layer}`, pieces)),
  ]
}

const isNeedle = ({ look }: Piece): boolean => look === 'needle' || look === 'line' || look === 'gleam'

/** Pieces of one needle or one loop that lie in one layer move together. */
function groupName(piece: Piece): string {
  if (isNeedle(piece)) return piece.key.split(' ')[0] ?? piece.key
  return piece.loop === null ? `yarn-${piece.look}` : `loop-${piece.loop}-${piece.look}`
}

const classes: Readonly<Partial<Record<Piece['look'], string>>> = {
  next: ' is-next',
  new: ' is-new',
  working: ' working-yarn',
}

function groupOf({ on, shown }: Frame, key: string, pieces: readonly Drawn[]): GroupNode {
  const [first] = pieces
  if (first !== undefined && isNeedle(first.piece)) {
    return { kind: 'group', className: 'needle', key, children: pieces.map(needlePath) }
  }
  const { look = 'yarn', loop = null, front = false } = first?.piece ?? {}
  const isOn = (side: 'left' | 'right'): boolean => loop !== null && front && shown.length > 0 && on[side].includes(loop)
  const side = isOn('left') ? 'left' : isOn('right') ? 'right' : null
  return {
    kind: 'group',
    className: `loop${classes[look] ?? ''}`,
    key,
    ...(side === null ? {} : { data: { needle: side } }),
    children: yarnPaths(pieces, ''),
  }
}

function needlePath({ piece: { look }, run }: Drawn): Node {
  const d = plainSegments(run)
  if (look === 'needle') return { kind: 'path', className: 'needle-body', d, fill: '#fff', stroke: 'none' }
  if (look === 'line') return { kind: 'path', className: 'needle-line', d, strokeWidth: 1.6, cap: 'round' }
  return { kind: 'path', className: 'needle-gleam', d, strokeWidth: 1.6, opacity: 0.5 }
}
