import type { GroupNode, Node, Segment } from './display.ts'

/** A loop on a needle as the knitter sees it: everything that its shape depends on, and nothing about where it is. */
export interface LoopShape {
  /** A yarn over stands on nothing; a strand was lifted and twisted shut; an edge was cast on. */
  readonly base: 'stitch' | 'over' | 'strand' | 'edge'
  /** The face turned to the knitter. */
  readonly seen: 'knit' | 'purl'
  readonly mount: 'usual' | 'turned'
  /** The loops that it was drawn through, the hindmost first. */
  readonly parents: readonly ParentShape[]
}

/** Where a loop hangs, as far as that changes its shape. */
export interface LoopSetting {
  /** Whether its yarn runs on to a loop beside it in the picture. */
  readonly left: boolean
  readonly right: boolean
  /** How much lower the row lies half a loop farther to the right. */
  readonly slope: number
}

export interface ParentShape {
  /** Where it stands among them: -1 at the left, 1 at the right. */
  readonly side: number
  /** It is twisted shut: its legs cross. */
  readonly twisted: boolean
  /** It is a yarn over itself: its legs stand wide round the hole. */
  readonly wide: boolean
}

/** Measures in drawing units; the needle's middle is at y = 0 and the loop's at x = 0. */
export const measures = {
  /** From loop to loop. */
  pitch: 42,
  /** Half the needle's thickness. */
  needle: 9,
  yarn: 8,
  /** The yarn with its outline. */
  outline: 11,
  /** The lowest point of what is drawn below a needle. */
  depth: 112,
} as const

const { pitch } = measures
const foot = pitch / 2

type Turn = 1 | -1

/** The right half of a loop, from its head down to where the old loops hold it. `turn` -1 is the left half. */
const upperLeg = (turn: Turn): Segment[] => [
  ['M', -2, -19],
  ['C', -2 + turn * 9, -19, turn * 12 - 1, -13, turn * 11.5, -4],
  ['C', turn * 11, 10, turn * 9, 26, turn * 7, 48],
]

/** The same leg from below the needle on: the one that comes from behind it. */
const lowerLeg = (turn: Turn): Segment[] => [
  ['M', turn * 10.6, 17],
  ['C', turn * 10, 25, turn * 8.6, 36, turn * 7, 48],
]

/** The yarn from a leg to the loop beside it; where there is none, it ends behind the old loop's leg. */
const footOf = (turn: Turn, setting: LoopSetting): Segment[] => [
  ['M', turn * 7.4, 45],
  runsOn(turn, setting)
    ? ['C', turn * 6, 58, turn * 12, 63 + turn * setting.slope, turn * foot, 63 + turn * setting.slope]
    : ['C', turn * 6.6, 54, turn * 9, 59, turn * 11, 60],
]

const runsOn = (turn: Turn, { left, right }: LoopSetting): boolean => (turn === 1 ? right : left)

/** A yarn over's head lies askew, and its legs run straight out of the feet beside it. */
const overAt = (turn: Turn): number => (turn === 1 ? 12 : -15.5)

const overLeg = (turn: Turn, setting: LoopSetting): Segment[] => [
  ['M', -5, -19],
  ['C', -5 + turn * 10, -19.5, overAt(turn) - turn * 0.5, -13, overAt(turn), -2],
  overFoot(turn, 24, setting),
]

const overLowerLeg = (turn: Turn, setting: LoopSetting): Segment[] => [
  ['M', overAt(turn) + turn * 0.6, 17],
  overFoot(turn, 38, setting),
]

const overFoot = (turn: Turn, y: number, setting: LoopSetting): Segment =>
  runsOn(turn, setting)
    ? ['C', overAt(turn) + turn * 1.5, y, turn * 13, 62, turn * foot, 63 + turn * setting.slope]
    : ['C', overAt(turn) + turn * 1.5, y, turn * 14, 48, turn * 18, 58]

/** A lifted strand: its legs cross right above the row. */
const strandLeg = (turn: Turn, { slope }: LoopSetting): Segment[] => [
  ['M', turn * 10.6, 17],
  ['C', turn * 10, 30, turn * 5, 36, 0, 43],
  ['C', -turn * 6, 51, -turn * 12, 62 - turn * slope, -turn * foot, 63 - turn * slope],
]

/** Yarn: its outline first, and the yarn itself over it, which runs on a little so that pieces join without a line. */
export function yarn(d: readonly Segment[], part: 'own' | 'below' = 'own'): Node[] {
  const className = part === 'below' ? ' below' : ''
  return [
    { kind: 'path', className: `yarn-edge${className}`, d, strokeWidth: measures.outline },
    {
      kind: 'path',
      className: `yarn-body${className}`,
      d,
      strokeWidth: measures.yarn,
      stroke: '#fff',
      cap: 'square',
    },
  ]
}

/** The old loop that holds a new one: its head round the new legs, its own legs down into the fabric. */
function parentNodes({ side, twisted, wide }: ParentShape, many: number): Node[] {
  const spread = many === 1 ? 0 : many === 2 ? 12 : 21
  const at = side * spread
  const [head, top] = [14, 39]
  const half = wide ? 17 : 7
  const leg = (turn: Turn, from: Turn): Segment[] => [
    ['M', at * 0.35, top],
    ['C', at * 0.35 + turn * 9, top, at * 0.5 + turn * head, top + 6, at * 0.6 + turn * head, top + 17],
    [
      'C',
      at * 0.7 + turn * (head - 1),
      top + 36,
      at + from * half,
      top + 48,
      at + from * half,
      measures.depth,
    ],
  ]
  // A twisted loop's legs change sides; the right one lies on top.
  return twisted
    ? [...yarn(leg(-1, 1), 'below'), ...yarn(leg(1, -1), 'below')]
    : [...yarn(joined(leg(-1, -1), leg(1, 1)), 'below')]
}

/** Two legs that begin at one head, as a single line from foot to foot. */
function joined(left: readonly Segment[], right: readonly Segment[]): Segment[] {
  return [...backwards(left), ...right.slice(1)]
}

/** A line of curves run the other way. */
function backwards(d: readonly Segment[]): Segment[] {
  const points = d.flatMap(([, ...numbers]) => pairs(numbers)).reverse()
  const [start, ...rest] = points
  const segments: Segment[] = start ? [['M', ...start]] : []
  for (let i = 0; i + 2 < rest.length; i += 3) {
    const [a, b, c] = [rest[i], rest[i + 1], rest[i + 2]]
    if (a && b && c) segments.push(['C', ...a, ...b, ...c])
  }
  return segments
}

const pairs = (numbers: readonly number[]): [number, number][] =>
  numbers.flatMap((n, i): [number, number][] => (i % 2 === 0 ? [[n, numbers[i + 1] ?? 0]] : []))

/** The knot of a cast-on round the foot of its loop. */
const edgeKnot: readonly Segment[] = [
  ['M', -13, 57],
  ['C', -6, 46, 6, 46, 13, 57],
]

/** A loop in two parts: what lies behind the needle, and all the rest. A loop that sits turned has its left leg in front. */
export function loopNodes(
  shape: LoopShape,
  setting: LoopSetting,
): { readonly behind: readonly Node[]; readonly front: readonly Node[] } {
  const front: Turn = shape.mount === 'usual' ? 1 : -1
  const back: Turn = front === 1 ? -1 : 1
  if (shape.base === 'over') {
    return {
      behind: yarn(overLeg(back, setting)),
      front: [...yarn(overLowerLeg(back, setting)), ...yarn(overLeg(front, setting))],
    }
  }
  const behind = yarn(upperLeg(back))
  const legs = [...yarn(lowerLeg(back)), ...yarn(upperLeg(front))]
  if (shape.base === 'strand') {
    const upper = yarn(upperLeg(front).slice(0, 2))
    return {
      behind,
      front: [...yarn(strandLeg(back, setting)), ...yarn(strandLeg(front, setting)), ...upper],
    }
  }
  const feet = [...yarn(footOf(-1, setting)), ...yarn(footOf(1, setting))]
  if (shape.base === 'edge') return { behind, front: [...legs, ...feet, ...yarn(edgeKnot)] }
  const parents = shape.parents.flatMap((parent) => parentNodes(parent, shape.parents.length))
  // On the knit face the legs come out over the old heads; on the purl face the heads and the feet lie over the legs.
  return {
    behind,
    front: shape.seen === 'knit' ? [...feet, ...parents, ...legs] : [...legs, ...parents, ...feet],
  }
}

/** One needle with its tip at `at`, lying toward the left (`turn` 1) or the right (-1). */
export function needleNode(
  key: string,
  turn: Turn,
  at: Pick<GroupNode, 'x' | 'y' | 'rotate'>,
  length: number,
): GroupNode {
  const r = measures.needle
  const d: Segment[] = [
    ['M', -turn * length, -r],
    ['L', -turn * 52, -r],
    ['C', -turn * 30, -r, -turn * 12, -3.2, -turn * 2, -2],
    ['C', turn * 1, -1.6, turn * 1, 1.6, -turn * 2, 2],
    ['C', -turn * 12, 3.2, -turn * 30, r, -turn * 52, r],
    ['L', -turn * length, r],
  ]
  const [y, x1, x2] = [-r * 0.45, -turn * length, -turn * 50]
  const children: Node[] = [
    { kind: 'path', className: 'needle-body', d, fill: '#fff', strokeWidth: 2 },
    { kind: 'line', className: 'needle-gleam', x1, x2, y1: y, y2: y, strokeWidth: 1.5, opacity: 0.5 },
  ]
  return { kind: 'group', key, className: 'needle', ...at, children }
}
