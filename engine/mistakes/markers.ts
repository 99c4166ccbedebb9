import type { Plan } from './plan.ts'

/**
 * For the marker after each section (from the right): how many loops it moves to the left between two rows. Not 0 where
 * a decrease crosses the line, so that the marker is taken off and put back.
 */
export function markerMoves(plan: Plan, before: number | null, row: number): number[] {
  const now = plan.rows[row]?.takes ?? []
  const then = before === null ? now : (plan.rows[before]?.makes ?? now)
  let by = 0
  return now.slice(0, -1).map((count, section) => {
    by += count - (then[section] ?? 0)
    return by
  })
}

/** The counts between the markers once they are moved. No marker passes its neighbour or the end of the needle. */
export function afterMoves(counts: readonly number[], moves: readonly number[]): number[] {
  if (moves.every((by) => by === 0)) return [...counts]
  const total = counts.reduce((sum, count) => sum + count, 0)
  let [place, last] = [0, 0]
  const found = counts.map((count, section) => {
    place += count
    const here =
      section === counts.length - 1 ? total : Math.min(total, Math.max(last, place + (moves[section] ?? 0)))
    const wide = here - last
    last = here
    return wide
  })
  return found
}
