import { describe, expect, it } from 'vitest'
import { needlesAfter } from '../../engine/needles/index.ts'
import { worked } from '../support.ts'

const eyelets = ['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl']

describe('a row worked loop by loop', () => {
  it('has so many loops left, so many made and the total after every stitch', () => {
    const [row] = worked('{ multiple: 6, plus: 1 }', eyelets).rows
    expect(
      row?.steps.map(({ stitch, left, right, total }) => `${stitch} ${left}+${right}=${total}`).slice(0, 7),
    ).toEqual(['k 12+1=13', 'yo 12+2=14', 'ssk 10+3=13', 'k 9+4=13', 'k2tog 7+5=12', 'yo 7+6=13', 'k 6+7=13'])
  })

  it("knows the row's own repeat and the place in it, and neither outside it", () => {
    const [lace, plain] = worked('{ multiple: 6, plus: 1 }', eyelets).rows
    expect(lace?.steps.map((step) => step.repeat)).toEqual([null, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2])
    expect(lace?.steps.map((step) => step.position).slice(0, 8)).toEqual([null, 1, 2, 3, 4, 5, 6, 1])
    expect(plain?.steps.every((step) => step.repeat === null)).toBe(true)
  })

  it('keeps the parents of every loop, front to back as seen from the right side', () => {
    const { loops, rows } = worked('4', ['k2tog, ssk', 'p2'], 1, 'growing: true\n')
    const made = rows[0]?.steps.map((step) => loops[step.made[0] ?? -1]?.parents)
    expect(made).toEqual([
      [1, 0],
      [2, 3],
    ])
  })

  it('sees a purl two together on the wrong side as a decrease that leans right on the right side', () => {
    const { loops, rows } = worked('4', ['k4', 'p2tog, p2tog'], 1, 'growing: true\n')
    const [row1, row2] = rows
    const seen = row2?.steps.map((step) =>
      loops[step.made[0] ?? -1]?.parents.map((id) => row1?.after.indexOf(id)),
    )
    // Numbered from the right edge: the left one of each pair lies in front.
    expect(seen).toEqual([
      [3, 2],
      [1, 0],
    ])
    expect(loops.at(-1)?.face).toBe('knit')
  })

  it('hands a row to the next the other way round, and in the round on in the same direction', () => {
    const flat = worked('3', ['k3', 'p3'], 1)
    expect(flat.rows[1]?.before).toEqual([...(flat.rows[0]?.after ?? [])].reverse())
    const round = worked('3', ['k3', 'k3'], 1, 'worked: round\n')
    expect(round.rows[1]?.before).toEqual(round.rows[0]?.after)
    expect(round.rows.map((row) => row.side)).toEqual(['RS', 'RS'])
  })

  it('a slipped loop is taken and stays the same loop', () => {
    const { rows, loops } = worked('3', ['sl1, k2', 'p3'], 1)
    const slip = rows[0]?.steps[0]
    expect(slip?.taken).toEqual(slip?.made)
    expect(loops[rows[1]?.steps[2]?.made[0] ?? -1]?.parents).toEqual(slip?.made)
  })

  it('a loop slipped knitwise sits turned, and worked as usual it twists', () => {
    const { rows, loops } = worked('2', ['sl1 kwise, k1', 'p2'], 1)
    expect(loops[rows[1]?.steps[1]?.made[0] ?? -1]?.twisted).toEqual([true])
    expect(loops[rows[1]?.steps[0]?.made[0] ?? -1]?.twisted).toEqual([false])
  })

  it('binding off n is n stitches that take one and make none, and one is left over for the row', () => {
    const { rows } = worked('12', ['bind off 4 sts, k7'], 1, 'growing: true\n')
    const steps = rows[0]?.steps ?? []
    expect(steps.slice(0, 4).map((step) => [step.stitch, step.taken.length, step.made.length])).toEqual(
      Array(4).fill(['bo', 1, 0]),
    )
    expect(steps.slice(4).every((step) => step.stitch === 'k')).toBe(true)
    expect(rows[0]?.after).toHaveLength(8)
  })

  it('casts on in the middle of a row', () => {
    const { rows } = worked('4', ['k2, cast on 3 sts, k2'], 1, 'growing: true\n')
    expect(
      rows[0]?.steps.slice(2, 5).map((step) => [step.stitch, step.taken.length, step.made.length]),
    ).toEqual(Array(3).fill(['co', 0, 1]))
    expect(rows[0]?.after).toHaveLength(7)
  })

  it('leaves loops waiting at a turn and takes them up again', () => {
    const { rows } = worked('8', ['k5, turn', 'p5', 'k8', 'p8'], 1)
    expect(rows[0]?.unworked).toHaveLength(3)
    expect(rows[0]?.steps.at(-1)).toMatchObject({ left: 3, right: 5, total: 8 })
    expect(rows[1]?.waiting).toHaveLength(3)
    expect(rows[1]?.steps.at(-1)).toMatchObject({ left: 0, right: 8, total: 8 })
    expect(new Set(rows[2]?.before).size).toBe(8)
  })

  it('holds stitches, takes them back, and joins an edging to held ones', () => {
    const held = worked('8', ['k3, place 2 sts on holder, k3', 'p3, return 2 held sts to needle, p5'], 1)
    expect(held.rows.map((row) => row.after.length)).toEqual([6, 8])
    const join = worked('5', ['k4, k2tog with 1 held st', 'k5'], 1, 'held: 1\n')
    const last = join.rows[0]?.steps.at(-1)
    expect([last?.taken.length, last?.held, last?.made.length]).toEqual([1, 1, 1])
    expect(join.loops[last?.made[0] ?? -1]?.parents).toHaveLength(2)
  })

  it('works the edge that lies at the beginning of a wrong-side row first, where the two differ in width', () => {
    const { rows } = worked(
      '{ multiple: 2, plus: 0 }',
      ['knit', 'purl'],
      2,
      'edges: { before: k3, after: p1 }\n',
    )
    expect(rows[0]?.steps.map((step) => step.part).slice(0, 3)).toEqual(['before', 'before', 'before'])
    expect(rows[1]?.steps.map((step) => step.part).slice(0, 2)).toEqual(['after', 'row'])
  })

  it('tells at any moment what is on both needles', () => {
    const done = worked('{ multiple: 6, plus: 1 }', eyelets)
    for (const [index, row] of done.rows.entries()) {
      expect(needlesAfter(done, index, 0).left).toEqual(row.before)
      for (const step of row.steps) {
        const { left, right } = needlesAfter(done, index, step.step)
        expect([left.length, right.length]).toEqual([step.left, step.right])
      }
      expect(needlesAfter(done, index, row.steps.length).right).toEqual(row.after)
    }
  })

  it('refuses to work more than anyone knits, at once', () => {
    expect(() => worked('{ multiple: 6, plus: 1 }', eyelets, 1_000_000)).toThrow('too-much-work')
  })
})
