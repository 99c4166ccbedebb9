/**
 * Eight classics as published articles state them (classic-patterns.json names the article of each): accepted with the
 * stated multiple and plus, or cast-on, and the stated number of rows.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { checkJson, temporaryFolder } from './command.ts'
import { type Draft, facts, fileOf, loopsAfterRows, proved, type Rule, worked } from './support.ts'

interface Classic {
  readonly id: string
  readonly title: string
  readonly source: string
  readonly statedCastOn: number | null
  readonly statedRule: Rule | null
  readonly rowCount: number
  readonly firstSide: 'RS' | 'WS'
  readonly rule: Rule | null
  readonly fixed: number | null
  readonly edgeStitches: number
  readonly rows: readonly string[]
}

const { patterns } = facts<{ patterns: readonly Classic[] }>('classic-patterns.json')

/** Stitches that an end of a row takes: k5 five, k2tog two, sk2p three, yo none. */
function taken(end: string): number {
  const each = end.split(' ').map((word) => {
    const run = /^[kp](\d+)(tbl)?$/.exec(word)
    if (run) return Number(run[1])
    const together = /^[kp](\d+)tog(tbl)?$/.exec(word)
    if (together) return Number(together[1])
    return word === 'sk2p' ? 3 : word === 'yo' ? 0 : Number.NaN
  })
  return each.reduce((sum, n) => sum + n, 0)
}

/** 'k2 [k2tog] x3 k1togtbl' → 'k2, [k2tog] 3 times, k1tog tbl'. */
const trade = (bracketed: string): string =>
  bracketed
    .trim()
    .replace(/\] x(\d+)/g, ']×$1')
    .replace(/(?<!\[) (?!\])/g, ', ')
    .replace(/\]×(\d+)/g, '] $1 times')
    .replace(/(\w)tbl\b/g, '$1 tbl')

/** A row of the facts' bracket form in trade writing. */
function inTradeWriting(row: string): string {
  if (row === 'kall') return 'knit'
  if (row === 'pall') return 'purl'
  const repeat = /^(?<before>[^[]*)\[(?<inner>.*)\] rep ?(?<after>.*)$/.exec(row)?.groups
  if (!repeat) return trade(row)
  const { before = '', inner = '', after = '' } = repeat
  const start = before === '' ? '' : `${trade(before)}, `
  const end = after === '' ? 'end' : `last ${taken(after)} sts, ${trade(after)}`
  return `${start}*${trade(inner)}; rep from * to ${end}`
}

const draftOf = (p: Classic): Draft => ({
  castOn: p.rule ?? (p.fixed as number),
  rows: p.rows.map(inTradeWriting),
  firstSide: p.firstSide,
  edgeStitches: p.edgeStitches,
})

it('the translation into trade writing is the one meant', () => {
  expect(inTradeWriting('k1 [yo k3 sk2p k3 yo k1] rep')).toBe(
    'k1, *yo, k3, sk2p, k3, yo, k1; rep from * to end',
  )
  expect(inTradeWriting('[[k2tog] x3 [yo k1] x6 [k2tog] x3] rep')).toBe(
    '*[k2tog] 3 times, [yo, k1] 6 times, [k2tog] 3 times; rep from * to end',
  )
  expect(inTradeWriting('k5 [k3 k2togtbl] rep p5')).toBe('k5, *k3, k2tog tbl; rep from * to last 5 sts, p5')
  expect(inTradeWriting('k3tbl p126 k3tbl')).toBe('k3 tbl, p126, k3 tbl')
  expect(inTradeWriting('pall')).toBe('purl')
})

describe.each(patterns)('$id $title ($source)', (p) => {
  it('is accepted, with as many rows as stated', () => {
    const { proof, problems } = proved(draftOf(p))
    expect(problems).toEqual([])
    expect(proof.rows).toHaveLength(p.rowCount)
    expect(proof.rows[0]?.side).toBe(p.firstSide)
  })

  it('keeps its count, in every row and for two widths', () => {
    for (const n of p.rule ? [2, 5] : [1]) {
      const done = worked(draftOf(p), n)
      const castOn = (p.rule ? p.rule.multiple * n + p.rule.plus : (p.fixed as number)) + p.edgeStitches
      expect(done.castOn).toBe(castOn)
      expect(loopsAfterRows(done)).toEqual(p.rows.map(() => castOn))
    }
  })
})

it.each(patterns.filter((p) => p.statedCastOn))(
  '$id: the stated cast-on of $statedCastOn is one that the rule gives',
  (p) => {
    const n = p.rule ? ((p.statedCastOn as number) - p.edgeStitches - p.rule.plus) / p.rule.multiple : 1
    expect(worked(draftOf(p), n).castOn).toBe(p.statedCastOn)
  },
)

// cl-02 states 18 + 6 for rows of which one fits 132 stitches alone; cl-07 states no rule.
it.each(patterns.filter((p) => p.rule && p.statedRule))('$id: the rows give the stated rule', (p) => {
  expect(proved(draftOf(p)).proof.derived).toEqual(p.statedRule)
})

describe('the same through the command', () => {
  const folder = temporaryFolder()
  const files: string[] = []
  beforeAll(() => {
    for (const p of patterns) files.push(folder.write(`${p.id}.yaml`, fileOf(draftOf(p))))
  })
  afterAll(folder.remove)

  it('all eight are sound, in the order given', () => {
    const { status, entries } = checkJson(...files)
    expect(status).toBe(0)
    expect(entries.map((entry) => entry.file)).toEqual(files)
    expect(entries.map((entry) => entry.ok)).toEqual(patterns.map(() => true))
    entries.forEach((entry, i) => {
      const p = patterns[i] as Classic
      expect(entry.castOn).toEqual(p.rule ?? { fixed: p.fixed })
      expect(entry.edges).toBe(p.edgeStitches)
      expect(entry.rows.map((row) => row.row)).toEqual(p.rows.map((_, row) => row + 1))
      expect(entry.rows[0]?.side).toBe(p.firstSide)
      const count = {
        perRepeat: p.rule?.multiple ?? 0,
        plus: (p.rule?.plus ?? (p.fixed as number)) + p.edgeStitches,
      }
      for (const row of entry.rows)
        expect({ before: row.before, after: row.after }).toEqual({ before: count, after: count })
    })
  })
})
