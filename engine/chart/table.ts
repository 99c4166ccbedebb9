import { type StitchId, stitch } from '../stitches/index.ts'
import type { Chart, ChartRow } from './chart.ts'

/** One row of a chart in words, for those who do not see the chart. */
export interface TableRow {
  readonly index: number
  /** 'Row 3', 'Round 3' or 'Set-up row 1'. */
  readonly row: string
  /** 'right side, right to left'. */
  readonly direction: string
  /** In working order, runs taken together: 'k1, yo, ssk, k3'. */
  readonly stitches: string
  /** '13 stitches'. */
  readonly count: string
  /** All of it in one line. */
  readonly text: string
}

/** The chart as a plain table, from the first row worked to the last. */
export function chartTable(chart: Chart): TableRow[] {
  return chart.rows.map((row) => {
    const name = rowName(chart, row)
    const direction = `${row.side === 'RS' ? 'right' : 'wrong'} side, ${row.label === 'right' ? 'right to left' : 'left to right'}`
    const stitches = stitchWords(row)
    const count = `${row.countAfter} ${row.countAfter === 1 ? 'stitch' : 'stitches'}`
    return {
      index: row.index,
      row: name,
      direction,
      stitches,
      count,
      text: `${name}, ${direction}: ${stitches}; ${count}`,
    }
  })
}

/** 'Row 3', 'Round 3', 'Set-up row 1'. Set-up rows count from the first one worked. */
export function rowName(chart: Chart, row: ChartRow): string {
  const word = chart.worked === 'round' ? 'round' : 'row'
  if (row.number > 0) return `${word === 'round' ? 'Round' : 'Row'} ${row.number}`
  return `Set-up ${word} ${row.index + 1}`
}

function stitchWords(row: ChartRow): string {
  const seen = row.cells.filter((cell) => cell.kind === 'stitch').map((cell) => cell.worked)
  const runs: { stitch: StitchId; times: number }[] = []
  for (const id of row.label === 'right' ? seen : seen.toReversed()) {
    const run = runs.at(-1)
    if (run?.stitch === id) run.times++
    else runs.push({ stitch: id, times: 1 })
  }
  return runs.map(({ stitch: id, times }) => runWords(id, times)).join(', ')
}

/** Knits and purls carry their number (k1, p3); other stitches say how often they come in a row. */
function runWords(id: StitchId, times: number): string {
  const { us, family } = stitch(id)
  if (family === 'plain') return us + times
  if (times === 1) return us
  return times === 2 ? `${us} twice` : `${us} ${times} times`
}
