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
  const byZone = rows.map((_, row) => indexesByZone(zones.rows[row] ?? []))
  const zoneStarts = new Map<number, number>()
  let columns = 0
  for (let zone = -2; zone <= zones.repeats + 1; zone++) {
    zoneStarts.set(zone, columns)
    const places = byZone.map((indexes) => indexes.get(zone) ?? [])
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

function indexesByZone(zones: readonly number[]): ReadonlyMap<number, readonly number[]> {
  const indexes = new Map<number, number[]>()
  for (const [index, zone] of zones.entries()) {
    const own = indexes.get(zone) ?? []
    own.push(index)
    indexes.set(zone, own)
  }
  return indexes
}

/** How often the rows are placed anew at most. Slanting lines of decreases settle in two rounds. */
const mostRounds = 3

/**
 * The rows of one zone over each other. A row that fills the zone has its columns at once; from the first such row the
 * others follow, upwards over the loops they take, downwards under the stitches that take their loops. Then each is
 * placed anew, once between both its neighbours and once more from one: so the empty cells of a slanting line of
 * decreases come together on one side of it.
 */
function stacked(rows: readonly (readonly Piece[])[], columns: number): number[][] {
  const starts: number[][] = []
  const place = (row: number, below: boolean, above: boolean) => {
    const made = marks(below ? rows[row - 1] : undefined, starts[row - 1], 'made')
    const taken = marks(above ? rows[row + 1] : undefined, starts[row + 1], 'taken')
    const pieces = rows[row] ?? []
    starts[row] = placed(
      pieces.map((piece, index) => wanting(piece, made, taken, starts[row]?.[index])),
      columns,
    )
  }
  const fullest = Math.max(
    0,
    rows.findIndex((row) => widthOf(row) === columns),
  )
  const fromFullest = () => {
    for (let row = fullest; row < rows.length; row++) place(row, row > fullest, false)
    for (let row = fullest - 1; row >= 0; row--) place(row, false, true)
  }
  fromFullest()
  for (let round = 0; round < mostRounds; round++) {
    const before = starts.join('; ')
    for (const row of rows.keys()) place(row, true, true)
    fromFullest()
    if (starts.join('; ') === before) break
  }
  return starts
}

/** `start`: where the piece stands already; else it rather stands over the loop that lies in front. */
const wanting = (
  piece: Piece,
  made: ReadonlyMap<LoopId, number>,
  taken: ReadonlyMap<LoopId, number>,
  start: number | undefined,
): Wanting => ({
  width: piece.width,
  middles: [mean(piece.taken, made), mean(piece.made, taken)].filter((middle) => middle !== null),
  rather: start === undefined ? (made.get(piece.front ?? -1) ?? null) : (start + piece.width / 2) * fine,
  decrease: piece.taken.length > piece.made.length,
})

function mean(loops: readonly LoopId[], at: ReadonlyMap<LoopId, number>): number | null {
  const known = loops.map((loop) => at.get(loop)).filter((place) => place !== undefined)
  return known.length === 0 ? null : Math.round(known.reduce((sum, place) => sum + place, 0) / known.length)
}

/** Where each loop of a laid-out row stands: the loops of one piece share its width evenly. */
function marks(
  pieces: readonly Piece[] = [],
  starts: readonly number[] = [],
  side: 'taken' | 'made',
): Map<LoopId, number> {
  const at = new Map<LoopId, number>()
  for (const [index, piece] of pieces.entries()) {
    const start = (starts[index] ?? 0) * fine
    const share = (piece.width * fine) / Math.max(1, piece[side].length)
    for (const [nth, loop] of piece[side].entries()) at.set(loop, start + (nth + 0.5) * share)
  }
  return at
}
