import type { Drawing, GroupNode, Node, Segment as Stroke } from '../../engine/drawing/index.ts'
import type { Loop, LoopId, WorkedRow } from '../../engine/needles/index.ts'

/** One row as it lies on the needle, with the loops of the row before beneath it. */
export interface OnNeedle {
  readonly row: WorkedRow
  readonly loops: readonly Loop[]
  /** Columns across, and where each loop stands in them, from the right. */
  readonly columns: number
  readonly above: ReadonlyMap<LoopId, number>
  readonly below: ReadonlyMap<LoopId, number>
  /** Columns where repeats begin and end. */
  readonly bounds: readonly number[]
  /** Whether the row runs from right to left, seen from the right side. */
  readonly rightToLeft: boolean
  /** Stitches for which no loops were left. */
  readonly undone: number
}

/** CSS pixels. */
export const unit = 26
const margin = 26
const height = 84
const [needle, foot, head] = [13, 42, 60]

/** The row on its needle: each loop over the loops it was drawn through. */
export function stripDrawing(on: OnNeedle): Drawing {
  const x = (column: number): number => margin + (on.columns - column) * unit
  const missing = on.undone > 0 ? unit * 1.5 : 0
  return {
    width: 2 * margin + on.columns * unit + missing,
    height,
    unit: 'px',
    title: '',
    description: '',
    nodes: [
      { kind: 'path', className: 'links', d: linksOf(on, x), fill: 'none' },
      { kind: 'path', className: 'parents', d: headsOf(on, x), fill: 'none' },
      ...leftOver(on, x),
      needleNode(on, x),
      ...ringsOf(on, x),
      { kind: 'group', className: 'loops', fill: 'none', children: loopsOf(on, x) },
    ],
  }
}

type X = (column: number) => number

/** From each loop down to every loop that it was drawn through, the one in front last. */
function linksOf({ row, loops, above, below }: OnNeedle, x: X): Stroke[] {
  const strokes: Stroke[] = []
  for (const step of row.steps) {
    for (const id of step.made) {
      const loop = loops[id]
      const to = above.get(id)
      if (!loop || to === undefined || step.taken.includes(id)) continue
      for (const parent of loop.parents.toReversed()) {
        const from = below.get(parent)
        if (from === undefined) continue
        const [x1, x2] = [x(from), x(to)]
        strokes.push(['M', x1, head - 4], ['C', x1, head - 12, x2, foot + 12, x2, foot])
      }
    }
  }
  return strokes
}

/** The heads of the loops beneath, of which only the stitches worked into them are new. */
function headsOf({ below, row }: OnNeedle, x: X): Stroke[] {
  const left = new Set(row.unworked)
  return [...below].flatMap(([id, column]) => (left.has(id) ? [] : headAt(x(column))))
}

const headAt = (at: number): Stroke[] => [
  ['M', at - 6, head + 16],
  ['C', at - 9, head - 9, at + 9, head - 9, at + 6, head + 16],
]

function leftOver({ row, below }: OnNeedle, x: X): Node[] {
  const d = row.unworked.flatMap((id) => {
    const column = below.get(id)
    return column === undefined ? [] : headAt(x(column))
  })
  return d.length === 0 ? [] : [{ kind: 'path', className: 'left-over', d, fill: 'none' }]
}

/** The needle points where the row ends: that is the tip that has just worked. */
function needleNode({ columns, rightToLeft, undone }: OnNeedle, x: X): Node {
  const [from, to] = [x(columns) - 18, x(0) + 18]
  const [tip, end] = rightToLeft ? [from - 6, to + 4] : [to + 6, from - 4]
  const shoulder = rightToLeft ? tip + 12 : tip - 12
  const d: Stroke[] = [
    ['M', tip, needle],
    ['L', shoulder, needle - 4],
    ['L', end, needle - 4],
    ['L', end, needle + 4],
    ['L', shoulder, needle + 4],
    ['Z'],
  ]
  return { kind: 'path', className: undone > 0 ? 'needle wanting' : 'needle', d }
}

/** A ring between two repeats, where a knitter hangs a marker. */
const ringsOf = ({ bounds }: OnNeedle, x: X): Node[] =>
  bounds.slice(1, -1).map((column) => ({
    kind: 'circle',
    className: 'ring',
    x: x(column),
    y: needle,
    radius: 5,
    fill: 'none',
  }))

function loopsOf(on: OnNeedle, x: X): GroupNode[] {
  return on.row.steps.map((step, index) => ({
    kind: 'group',
    key: `loop-${index}`,
    children: step.made.flatMap((id): Node[] => {
      const loop = on.loops[id]
      const column = on.above.get(id)
      if (!loop || column === undefined) return []
      const slipped = step.taken.includes(id)
      return [{ kind: 'path', className: classOf(loop, slipped), d: loopAt(x(column), loop, slipped) }]
    }),
  }))
}

function classOf(loop: Loop, slipped: boolean): string {
  if (slipped) return 'slipped'
  if (loop.parents.length === 0) return loop.stitch.startsWith('m1') ? 'knit' : 'hole'
  return loop.parents.length > 1 ? 'together' : loop.face
}

/** A loop over the needle; a purl has its bar at the foot, a twisted one its legs crossed, a yarn over stands on nothing. */
function loopAt(at: number, { parents, face, twisted }: Loop, slipped: boolean): Stroke[] {
  const end = slipped ? head + 16 : foot
  const wide = parents.length === 0 && !slipped ? 8 : 6
  const cross = twisted.some(Boolean) ? -1 : 1
  const bow: Stroke[] = [
    ['M', at - wide * cross, end],
    ['C', at - wide - 3, needle + 4, at - 7, needle - 9, at, needle - 9],
    ['C', at + 7, needle - 9, at + wide + 3, needle + 4, at + wide * cross, end],
  ]
  if (parents.length === 0 && !slipped)
    return [...bow, ['C', at + 4, end + 8, at - 4, end + 8, at - wide, end]]
  if (face === 'purl' && !slipped) return [...bow, ['M', at - 8, end - 2], ['L', at + 8, end - 2]]
  return bow
}
