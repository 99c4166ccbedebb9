import type { LoopId, WorkedPattern, WorkedRow } from '../needles/index.ts'
import type { Zone } from './chart.ts'
import { type Piece, startsRight } from './pieces.ts'

/**
 * Zones in the order in which they are seen from the right, as numbers: -2 right edge, -1 beside the repeats, 0 to
 * repeats - 1, then beside the repeats and the left edge. Without any repeat the body of the row is zone -1.
 */
export interface Zones {
  readonly repeats: number
  /** For each row, the zone of each of its pieces. Never falls from right to left. */
  readonly rows: readonly (readonly number[])[]
}

/** The zone of every piece: by its row's own repeat, or by the loops it was drawn through where the row has none. */
export function zonesOf(worked: WorkedPattern, rows: readonly (readonly Piece[])[]): Zones {
  const repeats = usualRepeats(worked)
  const own = worked.rows.map((row, index) => ownZones(worked, row, rows[index] ?? [], repeats))
  const first = Math.max(
    0,
    own.findIndex((zones) => zones.some((zone) => zone !== null && isBody(zone, repeats))),
  )
  const found: number[][] = []
  const zoneIn = (row: number, side: 'taken' | 'made', loops: ReadonlyMap<LoopId, number>) => {
    const pieces = rows[row] ?? []
    const zones = zonesOfRow(pieces, own[row] ?? [], side, loops, repeats)
    found[row] = zones
    return { pieces, zones }
  }
  const above = new Map<LoopId, number>()
  for (let row = first; row >= 0; row--) {
    const { pieces, zones } = zoneIn(row, 'made', above)
    note(above, pieces, zones, 'taken')
  }
  const below = new Map<LoopId, number>()
  note(below, rows[first] ?? [], found[first] ?? [], 'made')
  for (let row = first + 1; row < rows.length; row++) {
    const { pieces, zones } = zoneIn(row, 'taken', below)
    note(below, pieces, zones, 'made')
  }
  return { repeats, rows: found }
}

/** Whether in every row each zone is drawn only through loops that the same zone made. */
export function standOnThemselves(rows: readonly (readonly Piece[])[], zones: Zones): boolean {
  const madeIn = new Map<LoopId, number>()
  return rows.every((pieces, row) => {
    const own = zones.rows[row] ?? []
    const stands = pieces.every((piece, index) =>
      piece.taken.every((loop) => (madeIn.get(loop) ?? own[index]) === own[index]),
    )
    note(madeIn, pieces, own, 'made')
    return stands
  })
}

/** The zone's name. */
export function zoneName(zone: number, repeats: number): Zone {
  if (zone === -2) return 'right edge'
  if (zone > repeats) return 'left edge'
  if (repeats === 0) return 'body'
  if (zone === -1) return 'right'
  return zone === repeats ? 'left' : `repeat ${zone + 1}`
}

const isBody = (zone: number, repeats: number): boolean => zone >= -1 && zone <= repeats

/**
 * How many repeats most rows with a repeat of their own have, or a multiple of it: a row may repeat two stitches where
 * the pattern repeats six. Of equally many rows, the number nearest to the pattern's.
 */
function usualRepeats(worked: WorkedPattern): number {
  const own = worked.rows.map(ownRepeats).filter((repeats) => repeats > 0)
  const agreeing = (repeats: number) => own.filter((other) => other % repeats === 0).length
  const off = (repeats: number) => Math.abs(repeats - worked.repeats)
  const ranked = [...new Set(own)].sort((a, b) => agreeing(b) - agreeing(a) || off(a) - off(b) || b - a)
  return ranked[0] ?? 0
}

const ownRepeats = (row: WorkedRow): number =>
  row.steps.reduce((most, step) => Math.max(most, step.repeat ?? 0), 0)

/** What a row says of itself: its edges always, the rest where its repeats share out over the usual number (or none has any). */
function ownZones(
  worked: WorkedPattern,
  row: WorkedRow,
  pieces: readonly Piece[],
  repeats: number,
): (number | null)[] {
  const rightToLeft = startsRight(worked, row)
  const inEach = ownRepeats(row) / Math.max(1, repeats)
  const says = Number.isInteger(inEach) && (inEach > 0 || repeats === 0)
  const mirrored = (zone: number) => (rightToLeft ? zone : repeats - 1 - zone)
  const firstRepeat = row.steps.findIndex((step) => step.repeat !== null)
  const firstInside = row.steps.findIndex((step) => step.part === 'row')
  return pieces.map(({ step: index }) => {
    const step = index === null ? undefined : row.steps[index]
    if (index === null || step === undefined) return null
    // A wrong-side row may begin with either edge, so the place in the row tells which end it is.
    const begins = firstInside < 0 ? step.part === 'before' : index < firstInside
    if (step.part !== 'row') return mirrored(begins ? -2 : repeats + 1)
    if (!says) return null
    if (repeats === 0) return -1
    if (step.repeat === null) return mirrored(index < firstRepeat ? -1 : repeats)
    return mirrored(Math.floor((step.repeat - 1) / inEach))
  })
}

/** The zone of the middle one of these loops; null where none is known. */
function byLoops(loops: readonly LoopId[], zones: ReadonlyMap<LoopId, number>): number | null {
  const known = loops.map((loop) => zones.get(loop)).filter((zone) => zone !== undefined)
  return known[Math.floor((known.length - 1) / 2)] ?? null
}

/** A row's zones: its own first, then those of its loops, then those of the neighbour to the right; never falling. */
function zonesOfRow(
  pieces: readonly Piece[],
  own: readonly (number | null)[],
  side: 'taken' | 'made',
  loops: ReadonlyMap<LoopId, number>,
  repeats: number,
): number[] {
  const told = pieces.map((piece, index) => {
    const zone = own[index] ?? byLoops(piece[side], loops)
    // Only the edge's own stitches are edge, whatever they are drawn through.
    const outside = piece.step !== null && (own[index] ?? null) === null && zone !== null
    return outside ? Math.min(repeats, Math.max(-1, zone)) : zone
  })
  const firstBody = told.find((zone) => zone !== null && isBody(zone, repeats)) ?? -1
  let last = Number.NEGATIVE_INFINITY
  return told.map((zone) => {
    last = Math.max(last, zone ?? firstBody)
    return last
  })
}

function note(
  zones: Map<LoopId, number>,
  pieces: readonly Piece[],
  own: readonly number[],
  side: 'taken' | 'made',
) {
  for (const [index, piece] of pieces.entries())
    for (const loop of piece[side]) zones.set(loop, own[index] ?? 0)
}
