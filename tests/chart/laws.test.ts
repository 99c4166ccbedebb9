/** What holds for the chart of any pattern: here for every pattern of the library, over one to three repeats. */
import { globSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { chartOf } from '../../engine/chart/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { workedText } from './support.ts'

const folder = new URL('../../content/patterns/', import.meta.url)
const files = globSync('*.yaml', { cwd: folder }).sort()

it('there are patterns to look at', () => {
  expect(files.length).toBeGreaterThan(10)
})

describe.each(files)('%s', (file) => {
  const cases = [1, 2, 3].map((repeats) => {
    const worked = workedText(readFileSync(new URL(file, folder), 'utf8'), repeats)
    return { worked, chart: chartOf(worked) }
  })

  it('fills every column of every row once', () => {
    for (const { chart } of cases) {
      for (const row of chart.rows) {
        const ends = row.cells.map((cell) => cell.column + cell.span)
        expect(row.cells.map((cell) => cell.column)).toEqual([0, ...ends.slice(0, -1)])
        expect(ends.at(-1)).toBe(chart.columns)
      }
    }
  })

  it('is no wider than its widest zones ask for', () => {
    for (const { chart } of cases) {
      const widest = chart.rows.map((row) =>
        row.cells.filter((cell) => cell.kind !== 'none').reduce((sum, cell) => sum + cell.span, 0),
      )
      expect(chart.columns).toBeGreaterThanOrEqual(Math.max(...widest))
      if (new Set(widest).size === 1) expect(chart.columns).toBe(widest[0])
    }
  })

  it('has one cell a step, in working order, as wide as the stitch', () => {
    for (const { worked, chart } of cases) {
      for (const [index, row] of chart.rows.entries()) {
        const cells = row.cells.filter((cell) => cell.kind === 'stitch')
        const inOrder = row.label === 'right' ? cells : cells.toReversed()
        expect(inOrder.map((cell) => cell.step)).toEqual(worked.rows[index]?.steps.map((_, step) => step))
        expect(inOrder.map((cell) => cell.worked)).toEqual(
          worked.rows[index]?.steps.map((step) => step.stitch),
        )
        for (const cell of cells) expect(cell.span).toBe(stitch(cell.worked).cells)
      }
    }
  })

  it('has a cell for each stitch counted after the row, and one more for each bound off', () => {
    for (const { worked, chart } of cases) {
      for (const [index, row] of chart.rows.entries()) {
        const made = row.cells
          .filter((cell) => cell.kind !== 'none')
          .reduce((sum, cell) => sum + cell.span, 0)
        const gone = worked.rows[index]?.steps.filter((step) => stitch(step.stitch).makes === 0).length ?? 0
        expect(made).toBe(row.countAfter + gone)
        expect(row.countBefore).toBe(index === 0 ? worked.castOn : chart.rows[index - 1]?.countAfter)
      }
    }
  })

  it('keeps repeats and edges in order from the right', () => {
    for (const { chart } of cases) {
      for (const row of chart.rows) {
        const lines = [0, row.edges.right, ...row.bounds, row.edges.left, chart.columns]
        expect(lines).toEqual(lines.toSorted((a, b) => a - b))
        expect(row.bounds).toHaveLength(chart.repeats === 0 ? 0 : chart.repeats + 1)
        for (const cell of row.cells) {
          if (cell.kind !== 'stitch' || !cell.zone.startsWith('repeat')) continue
          const repeat = Number(cell.zone.slice('repeat '.length))
          expect(cell.column).toBeGreaterThanOrEqual(row.bounds[repeat - 1] ?? Number.NaN)
          expect(cell.column + cell.span).toBeLessThanOrEqual(row.bounds[repeat] ?? Number.NaN)
        }
      }
    }
  })

  it('has every sign in its key, and no other', () => {
    for (const { chart } of cases) {
      const used = new Set(
        chart.rows
          .flatMap((row) => row.cells)
          .flatMap((cell) => (cell.kind === 'stitch' ? [cell.stitch] : [])),
      )
      expect(new Set(chart.key.map((entry) => entry.stitch))).toEqual(used)
      expect(chart.key).toHaveLength(used.size)
    }
  })
})
