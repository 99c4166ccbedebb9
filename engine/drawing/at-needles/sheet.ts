import type { FabricLoopId, YarnPart } from '../../fabric/index.ts'
import type { WorkedPattern, WorkedRow } from '../../needles/index.ts'
import { backwards, type Curve, cubicsIn, endOf, inCubics, mix, type Point, shared, startOf } from './geometry.ts'
import { type HungPiece, type RowEnd, rowEndOf } from './row-end.ts'
import { type Shift, shiftsOf } from './shifts.ts'

/** A loop's yarn from its left foot to its right foot, as the knitter sees them. */
export type StrandPart = 'leg-left' | 'half-left' | 'half-right' | 'leg-right'

/** A piece of yarn of the fabric that hangs from both needles in the course of a row. */
export interface SheetPiece {
  readonly key: string
  readonly loop: FabricLoopId
  readonly part: Exclude<YarnPart, 'leg' | 'head'> | StrandPart
  /** What has the greater depth lies nearer to the knitter. */
  readonly depth: number
  /** It is there from when this loop is made, */
  readonly arrives: FabricLoopId
  /** and until this one is; null: for good. */
  readonly until: FabricLoopId | null
  /** Where it would lie if it hung from the left needle like the loops that wait, and from the right one like those made. */
  readonly waiting: Curve
  readonly made: Curve
}

/** The parts of one loop that the fabric shows once it is off the needles. */
export interface Strand {
  readonly loop: FabricLoopId
  /** Null for a yarn over: it has no feet, its yarn runs on into its neighbours. */
  readonly legs: { readonly left: SheetPiece; readonly right: SheetPiece } | null
  readonly halves: { readonly left: SheetPiece; readonly right: SheetPiece }
}

/** All that hangs from the needles in one row, as its knitter sees it: between how it began and how it ends. */
export interface Sheet {
  readonly row: WorkedRow
  readonly before: RowEnd
  readonly after: RowEnd
  readonly pieces: readonly SheetPiece[]
  readonly strands: ReadonlyMap<FabricLoopId, Strand>
}

const remembered = new WeakMap<WorkedRow, Sheet>()

export function sheetOf(worked: WorkedPattern, rowIndex: number): Sheet | null {
  const row = worked.rows[rowIndex]
  if (row === undefined) return null
  const found = remembered.get(row) ?? weave(worked, rowIndex, row)
  remembered.set(row, found)
  return found
}

function weave(worked: WorkedPattern, rowIndex: number, row: WorkedRow): Sheet {
  const before = rowEndOf(worked, rowIndex - 1, row.side)
  const after = rowEndOf(worked, rowIndex, row.side)
  const shifts = shiftsOf(before, after, rowIndex)
  const old = new Map(before.pieces.map((piece) => [piece.key, piece]))
  const pieces: SheetPiece[] = []
  const strands = new Map<FabricLoopId, Strand>()
  const lifted = new Map<FabricLoopId, FabricLoopId>()
  for (const group of groupsOf(after.pieces)) {
    const beside = group.filter(({ part }) => part !== 'leg' && part !== 'head')
    const strand = strandOf(group, old, shifts)
    if (strand !== null) {
      strands.set(strand.loop, strand)
      pieces.push(strand.halves.left, strand.halves.right)
      if (strand.legs !== null) pieces.push(strand.legs.left, strand.legs.right)
    }
    pieces.push(...besidePieces(beside, old, shifts))
    for (const { part, loop, arrives } of beside) if (part === 'strand') lifted.set(arrives, loop)
  }
  const kept = new Set(pieces.map(({ key }) => key))
  for (const piece of before.pieces) {
    const until = lifted.get(piece.arrives)
    if (kept.has(piece.key) || until === undefined || piece.part === 'leg' || piece.part === 'head') continue
    pieces.push({ ...piece, part: piece.part, until, waiting: piece.curve, made: moved(piece.curve, () => shifts.gone(piece.loop)) })
  }
  return { row, before, after, pieces, strands }
}

/** What arrives with one loop. */
const groupsOf = (pieces: readonly HungPiece[]): HungPiece[][] => [
  ...Map.groupBy(pieces, ({ arrives }) => arrives).values(),
]

/** A curve moved by a way that may change along it, from 0 at its start to 1 at its end. */
function moved(curve: Curve, by: (part: number) => Point): Curve {
  const last = curve.length / 2 - 1
  const result: number[] = []
  for (let i = 0; i <= last; i++) {
    const [x, y] = by(i / last)
    result.push((curve[2 * i] ?? Number.NaN) + x, (curve[2 * i + 1] ?? Number.NaN) + y)
  }
  return result
}

/** Yarn between two loops: both row ends have it, or only the later one. */
function besidePieces(group: readonly HungPiece[], old: ReadonlyMap<string, HungPiece>, shifts: Shift): SheetPiece[] {
  return group.map((piece, i): SheetPiece => {
    const { part, curve } = piece
    if (part === 'leg' || part === 'head') throw new Error('needles: a loop is not beside itself')
    const twin = old.get(piece.key)
    const isShared = twin !== undefined && twin.curve.length === curve.length && !shifts.isMade(piece.arrives)
    const arrives = part === 'strand' ? piece.loop : piece.arrives
    const waiting = isShared
      ? twin.curve
      : moved(curve, (along) => shifts.between(piece.arrives, (i + along) / group.length))
    return { ...piece, part, arrives, until: null, made: curve, waiting }
  })
}

function strandOf(group: readonly HungPiece[], old: ReadonlyMap<string, HungPiece>, shifts: Shift): Strand | null {
  const head = group.find(({ part }) => part === 'head')
  if (head === undefined) return null
  const legs = group.filter(({ part }) => part === 'leg')
  const [first, last] = [legs[0], legs[1]]
  const [start, end] = [startOf(first?.curve ?? head.curve), endOf(last?.curve ?? head.curve)]
  const forward = start[0] <= end[0]
  const way = (piece: HungPiece): Curve => (forward ? piece.curve : backwards(piece.curve))
  const run = [first, head, last].flatMap((piece) => piece ?? [])
  const ordered = forward ? run : run.toReversed()
  const twins = ordered.map((piece) => old.get(piece.key))
  // In a lower row nothing of the loop changes but its place.
  const isLow = shifts.isLow(head.loop) && twins.every((twin, i) => twin?.curve.length === ordered[i]?.curve.length)
  const [leftShift, topShift, rightShift] = shifts.ofLoop(head.loop, ordered, forward)
  const piece = (part: StrandPart, from: HungPiece, curve: Curve, waiting: Curve): SheetPiece => ({
    key: `${from.loop} ${part}`,
    loop: from.loop,
    part,
    depth: from.depth,
    arrives: from.arrives,
    until: null,
    made: curve,
    waiting,
  })
  const count = Math.ceil(cubicsIn(head.curve) / 2)
  const halves = shared(inCubics(way(head), 2 * count), [count, count])
  const twin = old.get(head.key)
  const oldHalves = isLow && twin ? shared(inCubics(way(twin), 2 * count), [count, count]) : null
  const [middle, toMiddle] = legs.length === 0 ? [0, 0] : [0.5, 0.5]
  const half = (side: 0 | 1): SheetPiece => {
    const curve = halves[side] ?? []
    const foot = side === 0 ? leftShift : rightShift
    const height = (along: number): number => middle + (1 - middle) * (side === 0 ? along : 1 - along)
    return piece(
      side === 0 ? 'half-left' : 'half-right',
      head,
      curve,
      oldHalves?.[side] ?? moved(curve, (along) => mix(foot, topShift, height(along))),
    )
  }
  const leg = (side: 0 | 1): SheetPiece | null => {
    const from = legs.length < 2 ? undefined : ordered[side === 0 ? 0 : 2]
    if (from === undefined) return null
    const curve = way(from)
    const foot = side === 0 ? leftShift : rightShift
    const height = (along: number): number => toMiddle * (side === 0 ? along : 1 - along)
    const was = isLow ? old.get(from.key) : undefined
    return piece(
      side === 0 ? 'leg-left' : 'leg-right',
      from,
      curve,
      was ? way(was) : moved(curve, (along) => mix(foot, topShift, height(along))),
    )
  }
  const [left, right] = [leg(0), leg(1)]
  return {
    loop: head.loop,
    halves: { left: half(0), right: half(1) },
    legs: left !== null && right !== null ? { left, right } : null,
  }
}

