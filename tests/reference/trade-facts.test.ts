/**
 * Facts that every knitter can check on two needles. Common practice, no source.
 */
import { describe, expect, it } from 'vitest'
import { constant } from '../../engine/base/index.ts'
import type { Loop, WorkedPattern } from '../../engine/needles/index.ts'
import { type Draft, loopsAfterRows, proved, worked } from './support.ts'

const loop = (done: WorkedPattern, id: number | undefined): Loop => {
  const found = id === undefined ? undefined : done.loops[id]
  if (!found) throw new Error(`no loop ${id}`)
  return found
}

/** Faces of the loops of each row, as seen from the right side. */
const faces = (done: WorkedPattern): string[][] =>
  done.rows.map((row) => row.after.map((id) => loop(done, id).face))

describe('common practice: counts', () => {
  it('a yarn over between two knits makes two stitches three', () => {
    const draft: Draft = { castOn: 2, rows: ['k1, yo, k1'], growing: true }
    expect(proved(draft).problems).toEqual([])
    expect(proved(draft).proof.rows[0]?.after).toEqual(constant(3))
    expect(loopsAfterRows(worked(draft))).toEqual([3])
  })

  it.each(['k2tog', 'ssk', 'skp', 'p2tog'])('a yarn over and %s leave the count as it was', (decrease) => {
    const draft: Draft = { castOn: 4, rows: [`k1, yo, ${decrease}, k1`] }
    expect(proved(draft).problems).toEqual([])
    expect(loopsAfterRows(worked(draft))).toEqual([4])
  })

  it.each(['sk2p', 's2kp', 'k3tog', 'sssk'])('two yarn overs pay for one %s', (decrease) => {
    const draft: Draft = { castOn: 5, rows: [`k1, yo, ${decrease}, yo, k1`] }
    expect(proved(draft).problems).toEqual([])
    expect(loopsAfterRows(worked(draft))).toEqual([5])
  })

  it.each(
    [
      { multiple: 6, plus: 1, row: '*yo, k1, sk2p, k1, yo, k1; rep from * to last st, k1' },
      { multiple: 2, plus: 2, row: 'k1, *yo, k2tog; rep from * to last st, k1' },
      { multiple: 10, plus: 3, row: 'k2, *yo, ssk, k8; rep from * to last st, k1' },
      { multiple: 17, plus: 0, row: '*k17; rep from * to end' },
    ].flatMap((p) => [1, 2, 3, 14].map((n) => ({ ...p, n, castOn: p.multiple * n + p.plus }))),
  )('$n repeats of $multiple plus $plus need $castOn stitches', ({ multiple, plus, row, n, castOn }) => {
    const draft: Draft = { castOn: { multiple, plus }, rows: [row] }
    const done = worked(draft, n)
    expect(proved(draft).problems).toEqual([])
    expect(done.castOn).toBe(castOn)
    expect(loopsAfterRows(done)).toEqual([castOn])
    const repeats = done.rows[0]?.steps.map((step) => step.repeat ?? 0) ?? []
    expect(Math.max(...repeats)).toBe(n)
    // One stitch more or fewer, and the row does not come out.
    expect(proved({ castOn: castOn + 1, rows: [row] }).proof.sound).toBe(false)
    expect(proved({ castOn: castOn - 1, rows: [row] }).proof.sound).toBe(false)
  })

  it('a row that is one stitch short or over is not sound', () => {
    expect(proved({ castOn: 10, rows: ['k4, k2tog, yo, k3'] }).proof.sound).toBe(false)
    expect(proved({ castOn: 10, rows: ['k4, k2tog, yo, k5'] }).proof.sound).toBe(false)
    expect(proved({ castOn: 10, rows: ['k4, k2tog, yo, k4'] }).proof.sound).toBe(true)
  })

  it('binding off n stitches takes n away', () => {
    const draft: Draft = { castOn: 11, rows: ['bind off 4, knit to end'], growing: true }
    expect(proved(draft).problems).toEqual([])
    expect(loopsAfterRows(worked(draft))).toEqual([7])
  })

  it('a double yarn over is worked as two stitches', () => {
    const draft: Draft = { castOn: 6, rows: ['k1, k2tog, yo twice, ssk, k1', 'p3, k1, p2'] }
    expect(proved(draft).problems).toEqual([])
    expect(loopsAfterRows(worked(draft))).toEqual([6, 6])
  })
})

describe('common practice: grounds, flat and in the round', () => {
  const flat = (rows: readonly string[]): WorkedPattern => worked({ castOn: 8, rows })
  const round = (rows: readonly string[]): WorkedPattern => worked({ castOn: 8, rows, worked: 'round' })
  const all = (face: string): string[] => Array.from({ length: 8 }, () => face)

  it('a stocking ground rests with purl rows when flat and with knit rounds in the round', () => {
    expect(faces(flat(['knit', 'purl', 'knit', 'purl']))).toEqual([1, 2, 3, 4].map(() => all('knit')))
    expect(faces(round(['knit', 'knit', 'knit', 'knit']))).toEqual(
      faces(flat(['knit', 'purl', 'knit', 'purl'])),
    )
  })

  it('a garter ground is knitted every row when flat and knitted and purled by turns in the round', () => {
    expect(faces(flat(['knit', 'knit']))).toEqual([all('knit'), all('purl')])
    expect(faces(round(['knit', 'purl']))).toEqual(faces(flat(['knit', 'knit'])))
  })

  it('flat work turns, so a row is met from its last stitch; a round is met from its first', () => {
    const turned = flat(['knit', 'purl'])
    expect(turned.rows[1]?.before).toEqual([...(turned.rows[0]?.after ?? [])].reverse())
    const joined = round(['knit', 'knit'])
    expect(joined.rows[1]?.before).toEqual(joined.rows[0]?.after)
  })
})

describe('common practice: a yarn over stays open through its leading leg and twists shut through the other', () => {
  /** How the yarn over of row 1 was treated by the stitch that row 2 draws through it. */
  function treated(done: WorkedPattern): boolean | undefined {
    const [first, second] = done.rows
    const over = first?.after.map((id) => loop(done, id)).find((made) => made.parents.length === 0)
    if (!over) throw new Error('row 1 has no yarn over')
    expect(over.mount).toBe('usual')
    const above = second?.after.map((id) => loop(done, id)).find((made) => made.parents.includes(over.id))
    return above?.twisted[above.parents.indexOf(over.id)]
  }
  const rows = ['k2, yo, k2tog, k2']

  it.each([
    { worked: 'round', next: 'knit', twisted: false },
    { worked: 'round', next: 'k2, k1 tbl, k3', twisted: true },
    { worked: 'flat', next: 'purl', twisted: false },
    { worked: 'flat', next: 'p3, p1 tbl, p2', twisted: true },
  ] as const)('$worked, next row $next: twisted $twisted', ({ worked: way, next, twisted }) => {
    expect(treated(worked({ castOn: 6, rows: [...rows, next], worked: way }))).toBe(twisted)
  })

  it('a plain stitch does the same', () => {
    const done = worked({ castOn: 3, rows: ['k1, k1 tbl, k1'], worked: 'round' })
    expect(done.rows[0]?.after.map((id) => loop(done, id).twisted)).toEqual([[false], [true], [false]])
  })
})

describe('common practice: which loop lies in front', () => {
  /** Places of the parents in the row below, from the right as seen from the right side, front one first. */
  function across(decrease: string, takes: number): number[] {
    const done = worked({ castOn: takes + 2, rows: [`k1, ${decrease}, k1`], growing: true })
    const [row] = done.rows
    return loop(done, row?.after[1]).parents.map((id) => row?.before.indexOf(id) ?? -1)
  }

  it('k2tog leans right: the left one of its two stitches is in front; ssk is its mirror', () => {
    expect(across('k2tog', 2)).toEqual([2, 1])
    expect(across('ssk', 2)).toEqual([1, 2])
    expect(across('skp', 2)).toEqual([1, 2])
  })

  it('in k3tog the leftmost stitch is in front, in sk2p and sssk the rightmost, in s2kp the middle one', () => {
    expect(across('k3tog', 3)[0]).toBe(3)
    expect(across('sk2p', 3)[0]).toBe(1)
    expect(across('sssk', 3)[0]).toBe(1)
    expect(across('s2kp', 3)[0]).toBe(2)
  })
})
