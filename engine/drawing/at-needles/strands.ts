import { backwards, type Curve, cubicsIn, endOf, inCubics, mix, moved, shared, startOf } from './geometry.ts'
import type { HungPiece } from './row-end.ts'
import type { SheetPiece, Strand, StrandPart } from './sheet.ts'
import type { Shift } from './shifts.ts'

type Side = 'left' | 'right'

/** One loop's pieces, told by their sides. */
interface Run {
  readonly head: HungPiece
  readonly legs: Readonly<Record<Side, HungPiece>> | null
  /** A curve as it runs from the left to the right. */
  readonly way: (piece: HungPiece) => Curve
}

/** How far up a loop each of its parts starts and ends: 0 at its feet, 1 at its top. */
const heights: Readonly<Record<StrandPart, readonly [number, number]>> = {
  'leg-left': [0, 0.5],
  'half-left': [0.5, 1],
  'half-right': [1, 0.5],
  'leg-right': [0.5, 0],
}

/** The loop among the pieces that arrive together, its head cut in two at the top. */
export function strandOf(
  group: readonly HungPiece[],
  old: ReadonlyMap<string, HungPiece>,
  shifts: Shift,
): Strand | null {
  const run = runOf(group)
  if (run === null) return null
  const { head, legs, way } = run
  const [twin, isLow] = [old.get(head.key), shifts.isLow(head.loop)]
  const [low, high] = shifts.heightOf(head.loop)
  const by = shifts.ofLoop(head.loop, {
    left: startOf(way(legs?.left ?? head)),
    right: endOf(way(legs?.right ?? head)),
    oldLeft: startOfOld(old, legs?.left ?? head, way),
    oldRight: endOfOld(old, legs?.right ?? head, way),
  })
  const count = Math.ceil(cubicsIn(head.curve) / 2)
  const halves = (curve: Curve): Curve[] => shared(inCubics(curve, 2 * count), [count, count])
  const part = (name: StrandPart, from: HungPiece, curve: Curve, was: Curve | undefined): SheetPiece => {
    const [start, end] =
      name.startsWith('half') && legs === null ? heights[name].map((h) => 2 * h - 1) : heights[name]
    const [a, b] = [start ?? 0, end ?? 0]
    const foot = name.endsWith('left') ? by.left : by.right
    return {
      key: `${from.loop} ${name}`,
      loop: from.loop,
      part: name,
      depth: from.depth,
      arrives: from.arrives,
      until: null,
      made: curve,
      // In a lower row nothing of the loop changes but its place.
      waiting:
        isLow && was?.length === curve.length
          ? was
          : moved(curve, (along) => mix(foot, by.top, a + (b - a) * along)),
      height: [low + (high - low) * a, low + (high - low) * b],
    }
  }
  const [left, right] = halves(way(head))
  const [oldLeft, oldRight] = twin === undefined ? [] : halves(way(twin))
  const leg = (side: Side, piece: HungPiece): SheetPiece => {
    const was = old.get(piece.key)
    return part(`leg-${side}`, piece, way(piece), was && way(was))
  }
  return {
    loop: head.loop,
    halves: {
      left: part('half-left', head, left ?? [], oldLeft),
      right: part('half-right', head, right ?? [], oldRight),
    },
    legs: legs && { left: leg('left', legs.left), right: leg('right', legs.right) },
  }
}

function runOf(group: readonly HungPiece[]): Run | null {
  const head = group.find(({ part }) => part === 'head')
  if (head === undefined) return null
  const [first, last] = group.filter(({ part }) => part === 'leg')
  const [start, end] = [startOf(first?.curve ?? head.curve), endOf(last?.curve ?? head.curve)]
  const isForward = start[0] <= end[0]
  const way = ({ curve }: HungPiece): Curve => (isForward ? curve : backwards(curve))
  if (first === undefined || last === undefined) return { head, legs: null, way }
  return { head, legs: isForward ? { left: first, right: last } : { left: last, right: first }, way }
}

const startOfOld = (old: ReadonlyMap<string, HungPiece>, piece: HungPiece, way: Run['way']) => {
  const was = old.get(piece.key)
  return was && startOf(way(was))
}

const endOfOld = (old: ReadonlyMap<string, HungPiece>, piece: HungPiece, way: Run['way']) => {
  const was = old.get(piece.key)
  return was && endOf(way(was))
}
