import { type Cell, type Chart, type ChartRow, chartOf } from '../../engine/chart/index.ts'
import { readPattern } from '../../engine/intake/index.ts'
import { type WorkedPattern, work } from '../../engine/needles/index.ts'

/** A pattern file's text, worked over so many repeats. */
export function workedText(text: string, repeats = 1): WorkedPattern {
  const { pattern, issues } = readPattern({ name: 'test', text })
  if (!pattern) throw new Error(`not read: ${JSON.stringify(issues)}`)
  const { worked, issues: more } = work(pattern, repeats)
  if (!worked) throw new Error(`not worked: ${JSON.stringify([issues, more])}`)
  return worked
}

export const chartFor = (text: string, repeats = 1): Chart => chartOf(workedText(text, repeats))

export const patternText = (head: string, ...rows: string[]): string =>
  `title: Test\n${head}\nrows:\n${rows.map((row) => `  - ${JSON.stringify(row)}\n`).join('')}`

const signs: Readonly<Record<string, string>> = {
  k: '.',
  p: '-',
  yo: 'o',
  k2tog: '/',
  ssk: '\\',
  s2kp: '^',
  k3tog: '>',
  sssk: '<',
  p2tog: 'p',
  ssp: 'q',
}

const sign = (cell: Cell): string =>
  cell.kind === 'none' ? 'x' : cell.kind === 'unworked' ? '~' : (signs[cell.stitch] ?? '?').repeat(cell.span)

/** A row as it is seen, from the left: one letter a column, x where no stitch is, ~ where a loop was left unworked. */
export const picture = (row: ChartRow): string => row.cells.map(sign).reverse().join('')

/** The whole chart as it is seen, upper row first. */
export const pictures = (chart: Chart): string[] => chart.rows.map(picture).reverse()

export const reedBed = patternText(
  'castOn: { multiple: 6, plus: 1 }',
  'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
  'purl',
)

/** Nine stitches that grow to fifteen and shrink back by twos. */
export const fan = patternText(
  'castOn: { multiple: 9, plus: 0 }',
  '*k2, (yo, k1) 6 times, k1; rep from * to end',
  'purl',
  '*ssk, k11, k2tog; rep from * to end',
  '*p2tog, p9, ssp; rep from * to end',
  '*ssk, k7, k2tog; rep from * to end',
  'purl',
)
