import { catalogue, type StitchId, stitch, symbolOf } from '../stitches/index.ts'
import type { ChartRow, KeyEntry } from './chart.ts'

/** The chart's symbols, each once, in the order of the catalogue, with what to work for them on either side. */
export function keyOf(rows: readonly ChartRow[]): KeyEntry[] {
  const workedBack = new Map<StitchId, Set<StitchId>>()
  for (const row of rows) {
    for (const cell of row.cells) {
      if (cell.kind !== 'stitch') continue
      const back = workedBack.get(cell.stitch) ?? new Set()
      workedBack.set(cell.stitch, row.side === 'WS' ? back.add(cell.worked) : back)
    }
  }
  const hasWrongSide = rows.some((row) => row.side === 'WS')
  return catalogue.flatMap(({ id, name }) => {
    const back = workedBack.get(id)
    if (back === undefined) return []
    return [
      {
        stitch: id,
        symbol: symbolOf(id),
        rightSide: name,
        wrongSide: hasWrongSide ? wrongSideWords(id, back) : null,
      },
    ]
  })
}

/** What this chart's wrong-side rows work for the look, or else the stitch that gives it there. */
function wrongSideWords(look: StitchId, worked: ReadonlySet<StitchId>): string | null {
  const twin = stitch(look).wrongSideTwin
  const names = catalogue
    .filter(({ id }) => (worked.size > 0 ? worked.has(id) : id === twin))
    .map(({ name }) => name)
  return names.length === 0 ? null : names.join('; or ')
}
