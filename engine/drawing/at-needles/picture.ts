import { curvesData } from '../curves-data.ts'
import type { CurvesNode, Drawing, GroupNode, Node } from '../display.ts'
import type { Frame, Frames, Piece } from './frames.ts'
import type { Mark } from './mark.ts'
import { markNodes } from './mark-nodes.ts'
import { frameSize, inUnits, tenth, toX, toY, unitSize } from './places.ts'
import { type Group, planOf } from './plan.ts'
import { joinedRuns, longerRuns, type Run } from './runs.ts'
import { sizes } from './sizes.ts'

export const needlesTitle = 'Both needles, as you see them'

/** A frame as it is drawn by itself. */
export function frameDrawing(frames: Frames, frame: Frame): Drawing {
  const nodes = planOf(frames).flatMap((group): Node[] => {
    if (group.kind === 'needle')
      return groupNode(frames, frame, group, needlePaths(frames, frame, group, false))
    const runs = yarnRuns(frames, frame, group)
    if (runs.length === 0) return []
    const coats = coatNodes(group, runs, isLong(runs))
    return group.kind === 'fabric' ? coats : groupNode(frames, frame, group, coats)
  })
  return drawingOf(frame, nodes)
}

/** The same with elements for every piece of the step, in one order for all its frames, so that a script can move them. */
export function movingDrawing(frames: Frames, frame: Frame): Drawing {
  const nodes = planOf(frames).flatMap((group): Node[] => {
    if (group.kind === 'needle')
      return groupNode(frames, frame, group, needlePaths(frames, frame, group, true))
    const runs = yarnRuns(frames, frame, group)
    const coats = coatNodes(group, runs, false)
    return group.kind === 'fabric' ? coats : groupNode(frames, frame, group, coats)
  })
  return drawingOf(frame, nodes)
}

/** Path data for every path of a moving drawing's yarn and needles, in its order: empty where nothing is shown. */
export function movingPaths(frames: Frames, frame: Frame): string[] {
  return planOf(frames).flatMap((group) => {
    if (group.kind === 'needle') return group.places.map((place) => dataOf(ownRun(frame, place)))
    const d = curvesData(yarnRuns(frames, frame, group))
    return [d, d]
  })
}

const dataOf = (run: Run): string => (run.length < 8 ? '' : curvesData([run]))

/** What is said in a frame, by itself: for a script that moves the needles under it. */
export const marksDrawing = (frame: Frame): Drawing => drawingOf(frame, [])

function drawingOf(frame: Frame, pieces: readonly Node[]): Drawing {
  const { width, height, above } = frameSize
  const place = { x: width / 2, y: above, scale: unitSize } as const
  const look = { className: 'needle-view', fill: 'none', stroke: 'currentColor', join: 'round' } as const
  const children: Node[] = [
    { kind: 'group', className: 'needle-yarn', strokeWidth: edgeWidth, ...place, children: pieces },
    { kind: 'group', className: 'needle-marks', children: markNodes(frame) },
  ]
  const { description } = frame
  return {
    width,
    height,
    unit: 'px',
    title: needlesTitle,
    description,
    nodes: [{ kind: 'group', ...look, children }],
  }
}

/** Where a mark's group stands, in drawing units, as its transform attribute has it. */
export const markPlace = ({ at }: Mark): string => `translate(${tenth(toX(at[0]))} ${tenth(toY(at[1]))})`

/** A piece in units; empty where it is not shown. */
const ownRun = ({ shown, curves }: Frame, place: number): Run =>
  shown[place] ? (curves[place] ?? []).map(inUnits) : []

/** A piece of the fabric in units; empty where it lies out of the picture. */
function fabricRun({ from }: Frames, { fabric }: Frame, place: number): Run {
  const run: number[] = []
  const start = from[place] ?? 0
  if (isOut(fabric, start, from[place + 1] ?? start)) return run
  for (let i = start; i < (from[place + 1] ?? start); i++) run.push(inUnits(fabric[i] as number, i - start))
  return run
}

const { side, below } = sizes.picture
/** So far from its middle yarn reaches with its outline. */
const halfYarn = sizes.yarn / 2 + 2 * sizes.line

function isOut(numbers: Float64Array, start: number, end: number): boolean {
  let [left, right, high] = [true, true, false]
  for (let i = start; i < end; i += 2) {
    const [x, y] = [numbers[i] as number, numbers[i + 1] as number]
    if (x < side + halfYarn) right = false
    if (x > -side - halfYarn) left = false
    if (y > -below - halfYarn) high = true
  }
  return left || right || !high
}

const yarnRuns = (frames: Frames, frame: Frame, { kind, places }: Group): Run[] =>
  longerRuns(
    joinedRuns(
      places.map((place) => (kind === 'fabric' ? fabricRun(frames, frame, place) : ownRun(frame, place))),
    ),
  )

const yarnWidth = sizes.yarn * 100
const edgeWidth = yarnWidth + 2 * sizes.line * 100

/** The yarn's outline, as wide as all lines are that say nothing else, and the yarn over it. */
function coatsOf({ look }: Group): CurvesNode['coats'] {
  const more = look === 'below' ? ' below' : ''
  return [
    { className: `yarn-edge${more}` },
    { className: `yarn-body${more}`, stroke: '#fff', strokeWidth: yarnWidth, cap: 'round' },
  ]
}

/** Both coats from one path, or a path for each of them: a short one is lighter twice than said once and used again. */
const coatNodes = (group: Group, runs: readonly Run[], isShared: boolean): Node[] => {
  const coats = coatsOf(group)
  return (isShared ? [coats] : coats.map((coat) => [coat])).map((own) => ({
    kind: 'curves',
    runs,
    coats: own,
  }))
}

const isLong = (runs: readonly Run[]): boolean => runs.reduce((sum, run) => sum + run.length, 0) > 40

const classes: Readonly<Partial<Record<Piece['look'], string>>> = {
  next: ' is-next',
  new: ' is-new',
  working: ' working-yarn',
}

function groupNode(frames: Frames, frame: Frame, group: Group, children: readonly Node[]): GroupNode[] {
  if (children.length === 0) return []
  const { key, kind, look } = group
  const side = kind === 'yarn' ? sideOf(frames, frame, group) : null
  const className = kind === 'needle' ? 'needle' : `loop${classes[look] ?? ''}`
  return [{ kind: 'group', className, key, ...(side === null ? {} : { data: { needle: side } }), children }]
}

/** The needle that a loop hangs on, for the half of it that stands for it. */
function sideOf({ pieces }: Frames, { on, shown }: Frame, { places }: Group): 'left' | 'right' | null {
  const loop = pieces[places.find((place) => shown[place] && pieces[place]?.front) ?? -1]?.loop ?? null
  if (loop === null) return null
  return on.left.includes(loop) ? 'left' : on.right.includes(loop) ? 'right' : null
}

function needlePaths({ pieces }: Frames, frame: Frame, { places }: Group, all: boolean): Node[] {
  return places.flatMap((place): Node[] => {
    const run = ownRun(frame, place)
    if (run.length === 0 && !all) return []
    return [
      {
        kind: 'curves',
        runs: run.length === 0 ? [] : [run],
        coats: [needleCoats[pieces[place]?.look ?? 'line'] ?? {}],
      },
    ]
  })
}

const needleCoats: Readonly<Partial<Record<Piece['look'], CurvesNode['coats'][number]>>> = {
  needle: { className: 'needle-body', fill: '#fff', stroke: 'none' },
  line: { className: 'needle-line', strokeWidth: 3.6, cap: 'round' },
  gleam: { className: 'needle-gleam', strokeWidth: 3.6, opacity: 0.5 },
}
