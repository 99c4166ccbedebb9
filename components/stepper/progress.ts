import { type Progress, wentBackOver, wentElsewhere, wentPast } from '../../engine/lesson/index.ts'
import type { Move, Spot } from './state.ts'

/** What a move does to the ticks: stepping past a row's end ticks the row, stepping back over it takes that tick away. */
export function progressAfter(progress: Progress, old: Spot, spot: Spot, move: Move): Progress {
  // The pattern begins anew behind its last stitch.
  if (move.do === 'again') return wentElsewhere(wentPast(progress, old.row))
  if (spot.row === old.row) return progress
  if (move.do === 'next') return wentPast(progress, old.row)
  return move.do === 'back' ? wentBackOver(progress, spot.row) : wentElsewhere(progress)
}
