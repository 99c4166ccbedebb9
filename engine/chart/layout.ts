import type { LoopId } from '../needles/index.ts'
import type { Piece } from './pieces.ts'
import { fine, placed, type Wanting } from './place.ts'
import { standOnThemselves, type Zones } from './zones.ts'

export interface Layout {
  readonly columns: number
  /** For each row, the rightmost column of each piece. */
  readonly starts: readonly (readonly number[])[]
  /** Where each zone begins, and where the last one ends, when zones are laid out one by one; null when rows are wholes. */
  readonly zoneStarts: ReadonlyMap<number, number> | null
}

/**
 * Columns for every piece. Rows of one width simply stack. Where widths differ and every zone stands on itself, each
 * zone gets the width of its widest row, so that every repeat looks like the others; else the whole row is one zone.
 */
export function laidOut(rows: readonly (readonly Piece[])[], zones: Zones): Layout {
  const widths = rows.map(widthOf)
  const alike = widths.every((width) => width === widths[0])
  if (alike || !standOnThemselves(rows, zones)) {
    const columns = Math.max(0, ...widths)
    return { columns, starts: stacked(rows, columns), zoneStarts: null }
  }
  const starts: number[][] = rows.map((row) => row.map(() => 0))
  const zoneStarts = new Map<number, number>()
  let columns = 0
  for (let zone = -2; zone <= zones.repeats + 1; zone++) {
    zoneStarts.set(zone, columns)
    const places = rows.map((row, index) => indexesOf(row, zones.rows[index] ?? [], zone))
    const inZone = rows.map((row, index) => (places[index] ?? []).flatMap((at) => row[at] ?? []))
    const width = Math.max(0, ...inZone.map(widthOf))
    for (const [row, columnsIn] of stacked(inZone, width).entries()) {
      for (const [nth, column] of columnsIn.entries()) {
        const at = places[row]?.[nth]
        const own = starts[row]
        if (at !== undefined && own) own[at] = columns + column
      }
    }
    columns += width
  }
  zoneStarts.set(zones.repeats + 2, columns)
  return { columns, starts, zoneStarts }
}

const widthOf = (row: readonly Piece[]): number => row.reduce((sum, piece) => sum + piece.width, 0)

const indexesOf = (row: readonly Piece[], zones: readonly number[], zone: number): number[] =>
  row.flatMap((_, index) => (zones[index] === zone ? [index] : []))

/**
 * The rows of one zone over each other. A row that fills the zone has its columns at once; from the first such row the
 * others follow, upwards over the loops they take, downwards under the stitches that take their loops.
 */
function stacked(rows: readonly (readonly Piece[])[], columns: number): number[][] {
  const fullest = Math.max(0, rows.findIndex((row) => widthOf(row) === columns))
  const starts: number[][] = []
  const made = new Map<LoopId, number>()
  for (let row = fullest; row < rows.length; row++) {
    const pieces = rows[row] ?? []
    const places = placed(pieces.map((piece) => over(piece, made)), columns)
    starts[row] = places
    note(made, pieces, places, 'made')
  }
  const taken = new Map<LoopId, number>()
  const inFront = new Map<LoopId, number>()
  for (let row = fullest; row >= 0; row--) {
    const pieces = rows[row] ?? []
    const places = starts[row] ?? placed(pieces.map((piece) => under(piece, taken, inFront)), columns)
    starts[row] = places
    note(taken, pieces, places, 'taken')
    noteFronts(inFront, pieces, places)
  }
  return starts
}

const isDecrease = (piece: Piece): boolean => piece.taken.length > piece.made.length

const over = (piece: Piece, made: ReadonlyMap<LoopId, number>): Wanting => ({
  width: piece.width,
  middle: mean(piece.taken, made),
  rather: piece.front === null ? null : (made.get(piece.front) ?? null),
  decrease: isDecrease(piece),
})

const under = (
  piece: Piece,
  taken: ReadonlyMap<LoopId, number>,
  inFront: ReadonlyMap<LoopId, number>,
): Wanting => ({
  width: piece.width,
  middle: mean(piece.made, taken),
  rather: mean(piece.made, inFront),
  decrease: isDecrease(piece),
})

function mean(loops: readonly LoopId[], at: ReadonlyMap<LoopId, number>): number | null {
  const known = loops.map((loop) => at.get(loop)).filter((place) => place !== undefined)
  return known.length === 0 ? null : Math.round(known.reduce((sum, place) => sum + place, 0) / known.length)
}

/** Where each loop of a laid-out row stands: the loops of one piece share its width evenly. */
function note(at: Map<LoopId, number>, pieces: readonly Piece[], starts: readonly number[], side: 'taken' | 'made') {
  for (const [index, piece] of pieces.entries()) {
    const start = (starts[index] ?? 0) * fine
    const share = (piece.width * fine) / Math.max(1, piece[side].length)
    for (const [nth, loop] of piece[side].entries()) at.set(loop, start + (nth + 0.5) * share)
  }
}

/** A loop that lies in front of a decrease shows as its line: it stands in the decrease's own column if it can. */
function noteFronts(at: Map<LoopId, number>, pieces: readonly Piece[], starts: readonly number[]) {
  for (const [index, { front, width }] of pieces.entries()) {
    if (front !== null) at.set(front, ((starts[index] ?? 0) + width / 2) * fine)
  }
}
