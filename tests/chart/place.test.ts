import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../engine/base/index.ts'
import { fine, placed, type Wanting } from '../../engine/chart/place.ts'

const stretch = (width: number, ...columns: number[]): Wanting => ({
  width,
  middles: columns.map((column) => column * fine),
  rather: null,
  decrease: false,
})

const distance = (row: readonly Wanting[], starts: readonly number[]): number =>
  row.reduce((sum, { width, middles }, index) => {
    const middle = ((starts[index] ?? 0) + width / 2) * fine
    return sum + middles.reduce((more, wanted) => more + Math.abs(middle - wanted), 0)
  }, 0)

/** Every way to keep the order within the columns. */
function* everyWay(row: readonly Wanting[], columns: number, from = 0): Generator<number[]> {
  const [first, ...rest] = row
  if (!first) {
    yield []
    return
  }
  const needed = rest.reduce((sum, { width }) => sum + width, first.width)
  for (let start = from; start + needed <= columns; start++) {
    for (const others of everyWay(rest, columns, start + first.width)) yield [start, ...others]
  }
}

describe('placing stretches in columns', () => {
  it('comes as near as any way does', () => {
    const random = seededRandom(7)
    for (let trial = 0; trial < 200; trial++) {
      const columns = 5 + Math.floor(random() * 5)
      const row: Wanting[] = []
      for (let used = 0; ; ) {
        const width = random() < 0.2 ? 2 : 1
        if (used + width > columns - Math.floor(random() * 3)) break
        used += width
        const wants = random() < 0.2 ? [] : [random() * columns]
        row.push({
          ...stretch(width, ...wants.map((at) => Math.round(at * 2) / 2)),
          decrease: random() < 0.3,
        })
      }
      const starts = placed(row, columns)
      const best = Math.min(...[...everyWay(row, columns)].map((way) => distance(row, way)))
      expect(distance(row, starts)).toBe(best)
    }
  })

  it('keeps the order and stays inside, also when a row is too wide to weigh every case', () => {
    const row = Array.from({ length: 1_000 }, (_, index) => stretch(1, index * 1.9))
    const starts = placed(row, 2_000)
    for (const [index, start] of starts.entries()) expect(start).toBeGreaterThan(starts[index - 1] ?? -1)
    expect(starts.at(-1)).toBeLessThan(2_000)
    expect(starts[500]).toBe(950)
  })

  it('leaves no empty cell where none is to spare', () => {
    expect(placed([stretch(1, 5), stretch(2, 0), stretch(1)], 4)).toEqual([0, 1, 3])
  })

  it('puts an empty cell beside the decrease where it may choose', () => {
    const row = [stretch(1, 0.5), stretch(1), { ...stretch(1), decrease: true }, stretch(1, 4.5)]
    expect(placed(row, 5)[1]).toBe(1)
  })
})
