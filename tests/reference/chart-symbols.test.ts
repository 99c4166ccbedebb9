/**
 * Pairs of a right-side and a wrong-side stitch that one chart sign stands for (chart-symbols.json names the published keys
 * of each): the catalogue, which derives its twins from the motions of the hands, must come to the same pairs.
 */
import { describe, expect, it } from 'vitest'
import type { Item } from '../../engine/pattern/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { facts, read, worked } from './support.ts'

interface Pair {
  readonly name: string
  readonly rightSide: string
  readonly wrongSide: readonly string[]
  readonly confidence: string
}
const { pairs } = facts<{ pairs: readonly Pair[] }>('chart-symbols.json')

/** The catalogue's name of a stitch as it is written in a row. */
function idOf(written: string): string {
  const items: readonly Item[] =
    read({ castOn: 9, rows: [`k1, ${written}, k1`] }).pattern.rows[0]?.items ?? []
  const item = items[1]
  if (item?.kind !== 'stitch') throw new Error(`${written} is read as ${JSON.stringify(item)}`)
  return item.stitch
}

describe.each(pairs)('$name: $rightSide on the right side', ({ rightSide, wrongSide }) => {
  it(`has the wrong-side twin ${wrongSide.join(' or ')}`, () => {
    expect(wrongSide.map(idOf)).toContain(stitch(idOf(rightSide)).wrongSideTwin)
  })

  it('takes and makes the same on both sides', () => {
    const { takes, makes } = stitch(idOf(rightSide))
    for (const ws of wrongSide)
      expect({ takes: stitch(idOf(ws)).takes, makes: stitch(idOf(ws)).makes }).toEqual({ takes, makes })
  })
})

/** The loops over `stitches` plain ones, seen from the right side: their face and the order of their parents. */
function seen(written: string, side: 'RS' | 'WS'): { face: string; across: number[] }[] {
  const { takes } = stitch(idOf(written))
  const castOn = takes + 2
  const done = worked({ castOn, rows: [`k1, ${written}, k1`], firstSide: side, growing: true })
  const [row] = done.rows
  // Counted from the right edge as seen from the right side, whichever way the row ran.
  const place = (id: number): number => {
    const at = row?.before.indexOf(id) ?? -1
    return side === 'RS' ? at : castOn - 1 - at
  }
  return (row?.after.slice(1, -1) ?? []).map((id) => {
    const loop = done.loops[id]
    return { face: loop?.face ?? '', across: (loop?.parents ?? []).map(place) }
  })
}

// Decreases alone: there the sign also says which loop lies in front.
const decreases = pairs.filter(({ rightSide }) => /tog$|^ss|^skp$/.test(rightSide))

describe.each(decreases)('$rightSide worked on the wrong side as its twin', ({ rightSide, wrongSide }) => {
  it('shows the same face with the same loop in front', () => {
    const asKnit = seen(rightSide, 'RS')
    expect(asKnit).toHaveLength(1)
    expect(asKnit[0]?.across.length).toBeGreaterThan(1)
    for (const ws of wrongSide) expect(seen(ws, 'WS')).toEqual(asKnit)
  })
})
