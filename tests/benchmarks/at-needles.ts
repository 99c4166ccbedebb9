/**
 * How long the needle view takes on a row of 61 stitches, and how large its pictures are.
 * By hand: node tests/benchmarks/at-needles.ts
 */
import { gzipSync } from 'node:zlib'
import { atNeedles, between, frameDrawing, movingPaths, restAt, toSvg } from '../../engine/drawing/index.ts'
import type { WorkedPattern } from '../../engine/needles/index.ts'
import { patternWorked } from '../drawing/at-needles-support.ts'

const rows = [6, 7] as const

/** Milliseconds: the least of a few runs, since other work on the machine only ever adds. */
function least(times: number, run: () => unknown): number {
  let best = Number.POSITIVE_INFINITY
  for (let i = 0; i < times; i++) {
    const from = performance.now()
    run()
    best = Math.min(best, performance.now() - from)
  }
  return best
}

function stepsIn(worked: WorkedPattern) {
  return rows.flatMap((rowIndex) =>
    (worked.rows[rowIndex]?.steps ?? []).map(({ stitch }, stepIndex) => ({
      stitch,
      view: { worked, rowIndex, stepIndex },
    })),
  )
}

const shown = (n: number): string => n.toFixed(2)

for (let round = 0; round < 3; round++) {
  const worked = patternWorked('horseshoe', 6)
  const newRow = least(1, () => restAt({ worked, rowIndex: rows[0], stepIndex: 0 }, 'before'))
  const byStitch = new Map<string, number[]>()
  for (const { stitch, view } of stepsIn(worked)) {
    const took = least(5, () => atNeedles(view))
    byStitch.set(stitch, [...(byStitch.get(stitch) ?? []), took])
  }
  const means = [...byStitch].map(
    ([stitch, all]) => `${stitch} ${shown(all.reduce((sum, n) => sum + n, 0) / all.length)}`,
  )
  console.log(
    `a row for the first time ${shown(newRow)} ms; then, a step with all its frames: ${means.join(', ')} ms`,
  )
}

const worked = patternWorked('horseshoe', 6)
const frames = atNeedles({ worked, rowIndex: 6, stepIndex: 15 })
const [first, second] = frames?.frames ?? []
if (frames && first && second) {
  console.log(
    `only at rest ${shown(least(20, () => restAt({ worked, rowIndex: 6, stepIndex: 15 }, 'after')))} ms`,
  )
  console.log(
    `one picture of a movement ${shown(least(20, () => movingPaths(frames, between(first, second, 0.4))))} ms`,
  )
  const svg = toSvg(frameDrawing(frames, first))
  const elements = svg.match(/<\w/g)?.length
  console.log(
    `a picture at rest: ${svg.length} bytes, ${gzipSync(svg).length} compressed, ${elements} elements`,
  )
}
