import { describe, expect, it } from 'vitest'
import { type Fabric, type FabricLoop, fabricOf } from '../../engine/fabric/index.ts'
import { worked } from '../support.ts'
import { atLeastRows, fabricFor, library, libraryPattern, workedPattern } from './support.ts'

const growing = 'growing: true\n'

const loopOf = (fabric: Fabric, id: number | undefined): FabricLoop => {
  const loop = fabric.loops[id ?? -1]
  if (loop === undefined) throw new Error(`no loop ${id}`)
  return loop
}

/** The loops of a course in the order of working. */
const course = (fabric: Fabric, row: number): FabricLoop[] =>
  (fabric.courses[row] ?? []).map((id) => loopOf(fabric, id))

describe('the loop graph', () => {
  it('runs the yarn of a flat cast-on towards the tip that row 1 starts from', () => {
    const right = fabricFor(3, ['knit', 'purl'])
    expect(right.courses[0]).toEqual([2, 1, 0])
    expect(right.rightToLeft).toEqual([false, true, false])
    expect(right.lines[0]?.loops).toEqual([2, 1, 0])
    const wrong = fabricFor(3, ['purl', 'knit'], 1, 'firstSide: WS\n')
    expect(wrong.rightToLeft).toEqual([true, false, true])
    expect(wrong.lines[0]?.loops).toEqual([0, 1, 2])
  })

  it('runs every round from right to left, and the cast-on with it', () => {
    const round = fabricFor(3, ['knit', 'knit'], 1, 'worked: round\n')
    expect(round.rightToLeft).toEqual([true, true, true])
    expect(round.courses[0]).toEqual([0, 1, 2])
    expect(round.lines.map(({ loops }) => loops)).toEqual([
      [2, 1, 0],
      [5, 4, 3],
      [8, 7, 6],
    ])
  })

  it('gathers the parents of a decrease front to back, and lets a yarn over hang from nothing', () => {
    const fabric = fabricFor(5, ['k2tog, yo, ssk, yo, k1'])
    const [right, over, left] = course(fabric, 1)
    expect([right?.parents, right?.kind]).toEqual([[1, 0], 'drawn'])
    expect([over?.parents, over?.kind]).toEqual([[], 'over'])
    expect([left?.parents, left?.kind]).toEqual([[2, 3], 'drawn'])
    expect(loopOf(fabric, 0).children).toEqual([right?.id])
  })

  it('gives one parent several children after an increase, in working order', () => {
    const fabric = fabricFor(2, ['(k1, yo, k1) in next st, kfb'], 1, growing)
    const [first, over, last, front, back] = course(fabric, 1)
    expect(loopOf(fabric, 0).children).toEqual([first?.id, last?.id])
    expect([over?.kind, over?.parents]).toEqual(['over', []])
    expect(loopOf(fabric, 1).children).toEqual([front?.id, back?.id])
    expect([front?.twisted, back?.twisted]).toEqual([[false], [true]])
  })

  it('lets a slipped loop span the rows that it passes', () => {
    const fabric = fabricFor(3, ['k1, sl1, k1', 'p1, sl1, p1', 'knit'])
    const slipped = loopOf(fabric, 1)
    expect(slipped.span).toBe(3)
    expect(slipped.row).toBe(-1)
    expect(loopOf(fabric, slipped.children[0]).row).toBe(2)
    expect(fabric.lines.map((line) => line.slipped)).toEqual([[], [1], [1], []])
    expect(fabric.courses[1]).toHaveLength(2)
    expect(fabric.loops.filter(({ span }) => span > 1)).toEqual([slipped])
  })

  it('passes a loop over several', () => {
    const fabric = fabricFor(3, ['sl1 k2 psso'], 1, growing)
    const [first, second] = course(fabric, 1)
    expect(loopOf(fabric, 0).children).toEqual([first?.id, second?.id])
    expect([first?.parents, second?.parents]).toEqual([
      [0, 1],
      [0, 2],
    ])
  })

  it('crosses loops', () => {
    const fabric = fabricFor(4, ['2/2 RC'])
    expect(course(fabric, 1).map(({ parents }) => parents)).toEqual([[2], [3], [0], [1]])
  })

  it('knows what lifted increases hang from', () => {
    const fabric = fabricFor(4, ['knit', 'purl', 'k1, m1l, k1, rli, k1, lli, k1'], 1, growing)
    const [k1, strand, , right, k3, left] = course(fabric, 3)
    expect([strand?.kind, strand?.parents]).toEqual(['strand', []])
    // The third loop of the row is drawn through the one over cast-on loop 2: below it lies row 1's loop.
    const under = (loop: FabricLoop | undefined): number | undefined =>
      loopOf(fabric, loop?.parents[0]).parents[0]
    expect([right?.kind, right?.parents]).toEqual(['below', [under(k3)]])
    expect([left?.kind, left?.parents]).toEqual(['below', [under(k3)]])
    expect(loopOf(fabric, under(k3)).children).toHaveLength(3)
    expect(k1?.parents).toHaveLength(1)
  })
})

describe('a bind-off', () => {
  it('is a chain: each loop drawn through the one on the needle and the chain loop before it', () => {
    const fabric = fabricFor(4, ['knit', 'purl', 'bind off all'], 1, growing)
    const chain = course(fabric, 3)
    expect(chain.map(({ kind, loop, face }) => [kind, loop, face])).toEqual(
      Array(4).fill(['chain', null, 'knit']),
    )
    const [first, second] = chain
    expect(first?.parents).toHaveLength(1)
    // Passed over, it lies in front on the knit face.
    expect(second?.parents[0]).toBe(first?.id)
    expect(loopOf(fabric, second?.parents[1]).row).toBe(1)
    expect(first?.children).toEqual([second?.id])
    expect(chain.at(-1)?.children).toEqual([])
    expect(fabric.loops.some(({ live }) => live)).toBe(false)
  })

  it('lies behind where its knit face is the wrong side', () => {
    const fabric = fabricFor(4, ['knit', 'bind off all'], 1, growing)
    const [first, second] = course(fabric, 2)
    expect(second?.face).toBe('purl')
    expect(second?.parents.at(-1)).toBe(first?.id)
  })

  it('in mid-row ends in the loop that stays on the needle', () => {
    const fabric = fabricFor(8, ['k2, bind off 3 sts, k2'], 1, growing)
    const row = course(fabric, 1)
    expect(row.map(({ kind }) => kind)).toEqual([
      'drawn',
      'drawn',
      'chain',
      'chain',
      'chain',
      'drawn',
      'drawn',
      'drawn',
    ])
    expect(row[2]?.parents).toHaveLength(1)
    expect(row[5]?.parents).toEqual([row[4]?.id, 5])
    expect(row[6]?.parents).toEqual([6])
    expect(row.filter(({ live }) => live)).toHaveLength(5)
  })

  it('numbers chain loops where they are made, and the others in the order of the table', () => {
    const work = worked('8', ['k2, bind off 3 sts, k2', 'purl'], 1, growing)
    const fabric = fabricOf(work)
    expect(fabric.loops.map(({ id }) => id)).toEqual(fabric.loops.map((_, i) => i))
    expect(fabric.loops.flatMap(({ loop }) => (loop === null ? [] : [loop]))).toEqual(
      work.loops.map(({ id }) => id),
    )
    expect(fabric.loops.slice(10, 13).every(({ loop }) => loop === null)).toBe(true)
  })
})

describe('loops that are not worked', () => {
  it('stay in the line of a turned row', () => {
    const fabric = fabricFor(5, ['k3, turn', 'p3', 'knit'], 1, growing)
    const [, first, second] = fabric.lines
    expect(first?.loops).toEqual([4, 3, 7, 6, 5])
    expect(second?.loops.slice(0, 2)).toEqual([4, 3])
    expect(loopOf(fabric, 4).span).toBe(1)
    expect(loopOf(fabric, 4).children).toHaveLength(1)
  })

  it('on a holder are live and lie in no line', () => {
    const fabric = fabricFor(6, ['k2, hold 2, k2'], 1, growing)
    expect(fabric.loops.filter(({ row, live }) => row === -1 && live).map(({ id }) => id)).toEqual([2, 3])
    expect(fabric.lines[1]?.loops).toHaveLength(4)
  })

  it('of another piece come after the cast-on and are joined one by one', () => {
    const fabric = fabricFor(3, ['k2, k2tog join', 'knit'], 2, 'held: 3\n')
    expect(fabric.courses[0]).toEqual([2, 1, 0])
    expect([3, 4, 5].map((id) => loopOf(fabric, id).live)).toEqual([false, false, true])
    expect(loopOf(fabric, loopOf(fabric, 3).children[0]).parents).toEqual([3, 2])
  })
})

describe('a moment in the work', () => {
  it('has what both needles hold as live, and the numbers of the whole piece', () => {
    const work = worked('{ multiple: 6, plus: 1 }', [
      'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
      'purl',
    ])
    const whole = fabricOf(work)
    const moment = fabricOf(work, { row: 1, steps: 5 })
    expect(moment.loops).toHaveLength(13 + 13 + 5)
    expect(moment.loops.map(({ loop, parents }) => [loop, parents])).toEqual(
      whole.loops.slice(0, 31).map(({ loop, parents }) => [loop, parents]),
    )
    const live = moment.loops.filter((loop) => loop.live)
    expect(live).toHaveLength(13)
    expect(live.filter(({ row }) => row === 1)).toHaveLength(5)
    expect([...(moment.lines[2]?.loops ?? [])].sort((a, b) => a - b)).toEqual(live.map(({ id }) => id))
  })

  it('with all steps done is the piece itself', () => {
    const work = worked('5', ['k2tog, yo, ssk, yo, k1', 'purl'])
    expect(fabricOf(work, { row: 1, steps: 5 })).toEqual(fabricOf(work))
  })
})

describe.each(library)('%s', (file) => {
  const fabrics = [1, 2, 3].map((repeats) =>
    fabricOf(workedPattern(atLeastRows(libraryPattern(file), 8), repeats)),
  )

  it('agrees with itself: parents and children, lines and courses', () => {
    for (const { loops, courses, lines } of fabrics) {
      for (const { id, parents, children, twisted, live } of loops) {
        for (const parent of parents) expect(loops[parent]?.children).toContain(id)
        for (const child of children) expect(loops[child]?.parents).toContain(id)
        expect(twisted).toHaveLength(parents.length)
        if (live) expect(children).toEqual([])
      }
      expect(courses.flat().toSorted((a, b) => a - b)).toEqual(loops.map(({ id }) => id))
      for (const [i, { loops: line, slipped }] of lines.entries()) {
        expect(new Set(line).size).toBe(line.length)
        for (const id of courses[i] ?? []) expect(line).toContain(id)
        for (const id of slipped) expect(line).toContain(id)
      }
      const last = lines.at(-1)?.loops ?? []
      expect(loops.filter(({ live }) => live).every(({ id }) => last.includes(id))).toBe(true)
    }
  })
})
