import { at } from './geometry.ts'

/** A line of yarn in whole units: its start, and then two handles and an end for every curve of it. */
export type Run = readonly number[]

/** Pieces that follow each other are one line, so that nothing shows where they meet. */
export function joinedRuns(pieces: readonly Run[]): Run[] {
  const runs: number[][] = []
  for (const piece of pieces) {
    if (piece.length < 8) continue
    const last = runs.at(-1)
    const meets = last !== undefined && last.at(-2) === piece[0] && last.at(-1) === piece[1]
    if (meets) for (let i = 2; i < piece.length; i++) last.push(at(piece, i))
    else runs.push([...piece])
  }
  return runs
}

/** How far a line runs on beneath or over what follows it in another layer, so that no gap shows between them: in units. */
const overlap = 2

/** Lines of yarn that run on a little at both ends. */
export function longerRuns(runs: readonly Run[]): Run[] {
  return runs.map((run) => {
    const last = run.length - 2
    const longer = [...run]
    ;[longer[0], longer[1]] = beyond(run, 0, 2)
    ;[longer[last], longer[last + 1]] = beyond(run, last, last - 2)
    return longer
  })
}

function beyond(run: Run, end: number, inward: number): [number, number] {
  const [x, y] = [at(run, end), at(run, end + 1)]
  const [dx, dy] = [x - at(run, inward), y - at(run, inward + 1)]
  const length = Math.hypot(dx, dy)
  if (length < 0.1) return [x, y]
  return [Math.round(x + (dx / length) * overlap), Math.round(y + (dy / length) * overlap)]
}
