import type { Pattern, Row, Side } from './pattern.ts'

/**
 * The pattern with its rows worked so many times, one time above the other. Set-up rows come once, and rows keep their
 * numbers. Worked flat, an odd number of rows begins on the other side every second time, as in the hands.
 */
export function workedAgain(pattern: Pattern, times: number): Pattern {
  const { rows, worked } = pattern
  const turned = (row: Row): Row => ({ ...row, side: otherSideOf(row.side) })
  const swaps = worked === 'flat' && rows.length % 2 === 1
  const passes = Array.from({ length: times }, (_, pass) =>
    swaps && pass % 2 === 1 ? rows.map(turned) : rows,
  )
  return { ...pattern, rows: passes.flat() }
}

const otherSideOf = (side: Side): Side => (side === 'RS' ? 'WS' : 'RS')
