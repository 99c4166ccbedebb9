import type { Segment } from '../display.ts'
import { at } from './geometry.ts'

/** A line of yarn in drawing units: its start, and then two handles and an end for every curve of it. */
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

/** How far a line runs on beneath or over what follows it in another layer, so that no gap shows between them. */
const overlap = 0.9

/** Path data of lines of yarn, each run on a little at both ends. */
export function yarnSegments(runs: readonly Run[]): Segment[] {
  const all: Segment[] = []
  for (const run of runs) {
    const [x, y] = beyond(run, 0, 1)
    const [endX, endY] = beyond(run, run.length - 2, -1)
    all.push(['M', x, y])
    for (let i = 2; i + 5 < run.length; i += 6) {
      const isLast = i + 6 >= run.length
      const [toX, toY] = isLast ? [endX, endY] : [at(run, i + 4), at(run, i + 5)]
      all.push(['C', at(run, i), at(run, i + 1), at(run, i + 2), at(run, i + 3), toX, toY])
    }
  }
  return all
}

function beyond(run: Run, end: number, inward: 1 | -1): [number, number] {
  const [x, y] = [at(run, end), at(run, end + 1)]
  const [dx, dy] = [x - at(run, end + 2 * inward), y - at(run, end + 1 + 2 * inward)]
  const length = Math.hypot(dx, dy)
  return length < 0.1 ? [x, y] : [tenth(x + (dx / length) * overlap), tenth(y + (dy / length) * overlap)]
}

export const tenth = (n: number): number => Math.round(n * 10) / 10

/** Path data of a line or an outline that ends where it ends. */
export function plainSegments(run: Run): Segment[] {
  if (run.length < 8) return []
  const all: Segment[] = [['M', at(run, 0), at(run, 1)]]
  for (let i = 2; i + 5 < run.length; i += 6) {
    all.push(['C', at(run, i), at(run, i + 1), at(run, i + 2), at(run, i + 3), at(run, i + 4), at(run, i + 5)])
  }
  return all
}
