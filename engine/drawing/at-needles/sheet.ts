import type { FabricLoopId, YarnPart } from '../../fabric/index.ts'
import type { LoopId, WorkedPattern, WorkedRow } from '../../needles/index.ts'
import { type Curve, moved } from './geometry.ts'
import { type HungPiece, type RowEnd, rowEndOf } from './row-end.ts'
import { type Shift, shiftsOf } from './shifts.ts'
import { strandOf } from './strands.ts'

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
  /** How far its start and its end belong to what the row makes, 1, rather than to what hangs below, 0. */
  readonly height: readonly [number, number]
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
  /** The worked pattern's numbers as the fabric's. */
  readonly numbers: ReadonlyMap<LoopId, FabricLoopId>
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
    pieces.push({
      ...piece,
      part: piece.part,
      until,
      height: [0, 0],
      waiting: piece.curve,
      made: moved(piece.curve, () => shifts.gone(piece.loop)),
    })
  }
  return { row, before, after, pieces, strands, numbers: numbersOf(before, after) }
}

function numbersOf(...ends: readonly RowEnd[]): ReadonlyMap<LoopId, FabricLoopId> {
  const all = ends.flatMap(({ fabric }) => fabric.loops)
  return new Map(all.flatMap(({ id, loop }) => (loop === null ? [] : [[loop, id] as const])))
}

/** What arrives with one loop. */
const groupsOf = (pieces: readonly HungPiece[]): HungPiece[][] => [
  ...Map.groupBy(pieces, ({ arrives }) => arrives).values(),
]

/** Yarn between two loops: both row ends have it, or only the later one. */
function besidePieces(
  group: readonly HungPiece[],
  old: ReadonlyMap<string, HungPiece>,
  shifts: Shift,
): SheetPiece[] {
  return group.map((piece, i): SheetPiece => {
    const { part, curve } = piece
    if (part === 'leg' || part === 'head') throw new Error('needles: a loop is not beside itself')
    const twin = old.get(piece.key)
    const isShared = twin !== undefined && twin.curve.length === curve.length && !shifts.isMade(piece.arrives)
    const arrives = part === 'strand' ? piece.loop : piece.arrives
    const waiting = isShared
      ? twin.curve
      : moved(curve, (along) => shifts.between(piece.arrives, (i + along) / group.length))
    const height = shifts.heights(piece.arrives, i / group.length, (i + 1) / group.length)
    return { ...piece, part, arrives, until: null, made: curve, waiting, height }
  })
}
