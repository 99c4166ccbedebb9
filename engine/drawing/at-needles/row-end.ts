import {
  type Fabric,
  type FabricLoopId,
  fabricOf,
  layOutFabric,
  type YarnPart,
  yarnOf,
} from '../../fabric/index.ts'
import type { WorkedPattern } from '../../needles/index.ts'
import { placesAlong } from './along-needle.ts'
import { at, type Curve, type Point } from './geometry.ts'
import { endOfFabric } from './window.ts'

/** Lines of loops that are laid out: those on the needles and so many below them. */
const lines = 7

/** How far below the middle of a needle the layout has the heads of its loops: loops on a needle are drawn up long. */
export const headBelow = 0.35

/** A piece of yarn of the hanging fabric, where it lies once the row is done. */
export interface HungPiece {
  /** The same in every row end that has it. */
  readonly key: string
  readonly loop: FabricLoopId
  readonly part: YarnPart
  readonly curve: Curve
  /** From 0 up to less than 1; what has the greater depth lies nearer to the knitter. */
  readonly depth: number
  /** The loop with whose making the piece comes to be. */
  readonly arrives: FabricLoopId
}

/**
 * The fabric as it hangs from a needle after a row, seen by the knitter of the row named. Unit: stitch widths; y is 0
 * along the needle's middle.
 */
export interface RowEnd {
  readonly fabric: Fabric
  readonly pieces: readonly HungPiece[]
  readonly base: ReadonlyMap<FabricLoopId, Point>
  readonly head: ReadonlyMap<FabricLoopId, Point>
  readonly beads: readonly { readonly loop: FabricLoopId; readonly at: Point }[]
  /** All loops side by side from the knitter's left, chain loops of a bind-off among them. */
  readonly order: readonly FabricLoopId[]
}

type Face = 'RS' | 'WS'

const remembered = new WeakMap<WorkedPattern, Map<string, RowEnd>>()

/** After row `row` (-1: after the cast-on), seen from a face. Each is made once and kept as long as the worked pattern. */
export function rowEndOf(worked: WorkedPattern, row: number, face: Face): RowEnd {
  const known = remembered.get(worked) ?? new Map<string, RowEnd>()
  remembered.set(worked, known)
  const name = `${row} ${face}`
  const found = known.get(name) ?? (face === 'RS' ? hang(worked, row) : turned(rowEndOf(worked, row, 'RS')))
  known.set(name, found)
  return found
}

/** The loops of a worked pattern hang together in one way; the numbers of the whole piece hold for every moment of it. */
function fabricAfter(worked: WorkedPattern, row: number): Fabric {
  if (row >= 0) return fabricOf(worked, { row, steps: worked.rows[row]?.steps.length ?? 0 })
  const { lines, courses, rightToLeft, loops } = fabricOf(worked, { row: 0, steps: 0 })
  return {
    loops,
    lines: lines.slice(0, 1),
    courses: courses.slice(0, 1),
    rightToLeft: rightToLeft.slice(0, 1),
  }
}

function hang(worked: WorkedPattern, row: number): RowEnd {
  const fabric = fabricAfter(worked, row)
  const { fabric: end, whole } = endOfFabric(fabric, lines)
  const original = (id: number): FabricLoopId => at(whole, id)
  const last = end.lines.at(-1)?.loops ?? []
  const along = placesAlong(fabric)
  const pins = last.flatMap((loop, i) =>
    end.loops[loop]?.live ? [{ loop, x: along.get(original(loop)) ?? i, y: 0 }] : [],
  )
  const layout = layOutFabric(end, { state: 'free', pins })
  const yarn = yarnOf(end, layout)
  const place = (x: Float64Array, y: Float64Array, id: number): Point => [at(x, id), at(y, id) - headBelow]
  const each = (of: (id: number) => Point): Map<FabricLoopId, Point> =>
    new Map(whole.map((id, i) => [id, of(i)]))
  return {
    fabric,
    pieces: piecesOf(yarn.pieces, original, end.lines.length < fabric.lines.length),
    base: each((id) => place(layout.baseX, layout.baseY, id)),
    head: each((id) => place(layout.headX, layout.headY, id)),
    beads: yarn.beads.map((bead) => ({
      loop: original(bead.loop),
      at: [bead.at[0], bead.at[1] - headBelow],
    })),
    order: last.map(original),
  }
}

type Spun = ReturnType<typeof yarnOf>['pieces']

/** What lies between two loops, and the loop after it, come together: the yarn runs from the one to the other. */
function piecesOf(spun: Spun, original: (id: number) => FabricLoopId, isCut: boolean): HungPiece[] {
  const counts = new Map<string, number>()
  const pieces: HungPiece[] = []
  const deepest = spun.reduce((most, piece) => Math.max(most, piece.depth), 0) + 1
  const settle = ({ loop: id, part, curve, depth }: Spun[number], arrives: FabricLoopId): void => {
    const loop = original(id)
    const name = `${loop} ${part} ${arrives}`
    const nth = counts.get(name) ?? 0
    counts.set(name, nth + 1)
    const hung = curve.map((n, i) => (i % 2 === 0 ? n : n - headBelow))
    pieces.push({ key: `${name} ${nth}`, loop, part, arrives, depth: depth / deepest, curve: hung })
  }
  let waiting: Spun[number][] = []
  for (const piece of spun) {
    // The end of the yarn is drawn by whoever knows where the hand is; a cut fabric has no edge of its own.
    if (piece.part === 'tail' || (isCut && piece.part === 'edge')) continue
    waiting.push(piece)
    if (piece.part !== 'leg' && piece.part !== 'head') continue
    for (const one of waiting) settle(one, original(piece.loop))
    waiting = []
  }
  return pieces
}

/** Seen from behind: what lay right lies left, and what lay in front behind. */
function turned(end: RowEnd): RowEnd {
  const flip = ([x, y]: Point): Point => [-x, y]
  const nearest = end.pieces.reduce((most, piece) => Math.max(most, piece.depth), 0)
  const all = (of: ReadonlyMap<FabricLoopId, Point>) =>
    new Map([...of].map(([id, place]) => [id, flip(place)]))
  return {
    fabric: end.fabric,
    pieces: end.pieces.map((piece) => ({
      ...piece,
      depth: nearest - piece.depth,
      curve: piece.curve.map((n, i) => (i % 2 === 0 ? -n : n)),
    })),
    base: all(end.base),
    head: all(end.head),
    beads: end.beads.map(({ loop, at: place }) => ({ loop, at: flip(place) })),
    order: end.order.toReversed(),
  }
}
