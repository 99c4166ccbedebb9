import { curvesData } from '../curves-data.ts'
import type { CurvesNode, Drawing, GroupNode, Node } from '../display.ts'
import type { Frame, Frames, Piece } from './frames.ts'
import type { Curve } from './geometry.ts'
import { markNodes } from './mark-nodes.ts'
import { frameSize, inUnits, unitSize } from './places.ts'
import { joinedRuns, longerRuns, type Run } from './runs.ts'
import { sizes } from './sizes.ts'

export const needlesTitle = 'Both needles, as you see them'

/** A frame as it is drawn by itself. */
export const frameDrawing = (frames: Frames, frame: Frame): Drawing =>
  drawingOf(frame.description, [
    ...layersOf(frames, frame, false).flatMap(({ still, groups }) => [
      ...(still === null ? [] : [painted(still)]),
      ...groups.map((group) => groupNode(group, [painted(group)])),
    ]),
  ], markNodes(frame))

/** The same with an element for every piece of the step, in one order for all its frames, so that a script can move them. */
export const movingDrawing = (frames: Frames, frame: Frame): Drawing =>
  drawingOf(frame.description, [
    ...layersOf(frames, frame, true).flatMap(({ still, groups }) => [
      ...(still === null ? [] : coatByCoat(still)),
      ...groups.map((group) => groupNode(group, coatByCoat(group))),
    ]),
  ], markNodes(frame))

/** Path data for every path of a moving drawing, in its order: an empty one where nothing is shown. */
export const movingPaths = (frames: Frames, frame: Frame): string[] =>
  layersOf(frames, frame, true).flatMap(({ still, groups }) =>
    [...(still === null ? [] : [still]), ...groups].flatMap((group) => {
      const needle = group.pieces.filter(isNeedlePart)
      if (needle.length > 0) return needle.map(({ run }) => (run.length < 8 ? '' : curvesData([run])))
      const d = curvesData(yarnRuns(group.pieces))
      return [d, d]
    }),
  )

function drawingOf(description: string, pieces: readonly Node[], marks: readonly Node[]): Drawing {
  const look = { className: 'needle-view', fill: 'none', stroke: 'currentColor', join: 'round' } as const
  const yarn: GroupNode = { kind: 'group', className: 'needle-yarn', x: frameSize.width / 2, y: frameSize.above, scale: unitSize, children: pieces }
  return { width: frameSize.width, height: frameSize.height, unit: 'px', title: needlesTitle, description, nodes: [{ kind: 'group', ...look, children: [yarn, ...marks] }] }
}

interface Drawn {
  readonly piece: Piece
  readonly run: Run
}

/** Pieces of one needle or one loop that lie in one layer. */
interface Group {
  readonly key: string
  readonly pieces: readonly Drawn[]
  /** The needle that a loop hangs on, for the half of it that stands for it. */
  readonly side: 'left' | 'right' | null
}

interface Layer {
  readonly still: Group | null
  readonly groups: readonly Group[]
}

/** From the back to the front. `all`: also what the frame does not show, as empty pieces. */
function layersOf(frames: Frames, frame: Frame, all: boolean): Layer[] {
  const layers = new Map<number, Drawn[]>()
  const add = (piece: Piece, run: Run): void => {
    const layer = layers.get(piece.layer) ?? []
    layers.set(piece.layer, layer)
    layer.push({ piece, run })
  }
  const { fabric, from, pieces } = frames
  for (const [i, piece] of fabric.entries()) add(piece, placed(frame.fabric.subarray(from[i], from[i + 1])))
  for (const [i, piece] of pieces.entries()) {
    if (frame.shown[i]) add(piece, placed(frame.curves[i] ?? []))
    else if (all) add(piece, [])
  }
  return [...layers]
    .sort(([a], [b]) => a - b)
    .map(([layer, drawn]) => {
      const still = drawn.filter(({ piece }) => piece.look === 'below')
      const groups = Map.groupBy(drawn.filter(({ piece }) => piece.look !== 'below'), ({ piece }) => nameOf(piece))
      return {
        still: still.length === 0 ? null : { key: `fabric-${layer}`, pieces: still, side: null },
        groups: [...groups].map(([name, own]) => ({ key: `${name}-${layer}`, pieces: own, side: sideOf(frame, own) })),
      }
    })
}

function placed(curve: Curve | Float64Array): Run {
  const run: number[] = []
  for (let i = 0; i < curve.length; i++) run.push(inUnits(curve[i] as number, i))
  return run
}

const isNeedlePart = ({ piece: { look } }: Drawn): boolean => look === 'needle' || look === 'line' || look === 'gleam'

function nameOf(piece: Piece): string {
  if (piece.look === 'needle' || piece.look === 'line' || piece.look === 'gleam') return piece.key.split(' ')[0] ?? piece.key
  return piece.loop === null ? `yarn-${piece.look}` : `loop-${piece.loop}-${piece.look}`
}

function sideOf({ on }: Frame, pieces: readonly Drawn[]): 'left' | 'right' | null {
  const front = pieces.find(({ piece, run }) => piece.front && run.length > 0)?.piece.loop ?? null
  if (front === null) return null
  return on.left.includes(front) ? 'left' : on.right.includes(front) ? 'right' : null
}

const yarnWidth = sizes.yarn * 100
const edgeWidth = yarnWidth + 2 * sizes.line * 100
const classes: Readonly<Partial<Record<Piece['look'], string>>> = { next: ' is-next', new: ' is-new', working: ' working-yarn' }

const yarnRuns = (pieces: readonly Drawn[]): Run[] => longerRuns(joinedRuns(pieces.map(({ run }) => run)))

/** The yarn's outline and the yarn over it. */
function coatsOf({ pieces: [first] }: Group): CurvesNode['coats'] {
  const more = first?.piece.look === 'below' ? ' below' : ''
  return [
    { className: `yarn-edge${more}`, strokeWidth: edgeWidth },
    { className: `yarn-body${more}`, stroke: '#fff', strokeWidth: yarnWidth, cap: 'square' },
  ]
}

function painted(group: Group): Node {
  const { pieces } = group
  if (pieces.some(isNeedlePart)) return { kind: 'group', children: pieces.map(needlePath) }
  return { kind: 'curves', runs: yarnRuns(pieces), coats: coatsOf(group) }
}

/** Elements of their own for all that a script has to move. */
function coatByCoat(group: Group): Node[] {
  const { pieces } = group
  if (pieces.some(isNeedlePart)) return pieces.map(needlePath)
  const runs = yarnRuns(pieces)
  return coatsOf(group).map((coat) => ({ kind: 'curves', runs, coats: [coat] }))
}

function groupNode({ key, side, pieces: [first] }: Group, children: readonly Node[]): GroupNode {
  const look = first?.piece.look ?? 'yarn'
  const isNeedle = first !== undefined && isNeedlePart(first)
  const className = isNeedle ? 'needle' : `loop${classes[look] ?? ''}`
  return { kind: 'group', className, key, ...(side === null ? {} : { data: { needle: side } }), children }
}

function needlePath({ piece: { look }, run }: Drawn): CurvesNode {
  const bare = { kind: 'curves', runs: run.length < 8 ? [] : [run] } as const
  if (look === 'needle') return { ...bare, coats: [{ className: 'needle-body', fill: '#fff', stroke: 'none' }] }
  if (look === 'line') return { ...bare, coats: [{ className: 'needle-line', strokeWidth: 3.6, cap: 'round' }] }
  return { ...bare, coats: [{ className: 'needle-gleam', strokeWidth: 3.6, opacity: 0.5 }] }
}
