/**
 * Patterns from needlework books of 1843 to 1918 (handbook-patterns.json names book, author, year and place of each):
 * the engine must give exactly the counts that an independent simulation gives, and find each misprint in its row.
 */
import { afterAll, describe, expect, it } from 'vitest'
import { at } from '../../engine/base/index.ts'
import { checkJson, temporaryFolder } from './command.ts'
import {
  type Draft,
  facts,
  fileOf,
  firstFailingRow,
  loopsAfterRows,
  proved,
  type Rule,
  worked,
} from './support.ts'

interface Handbook {
  readonly id: string
  readonly title: string
  readonly book: string
  readonly author: string
  readonly year: number
  readonly worked: 'flat' | 'round'
  readonly firstSide: 'RS' | 'WS' | null
  readonly statedCastOn: number | null
  readonly statedRule: Rule | null
  readonly edgeStitches: number
  readonly rule: Rule | null
  readonly setUpRows: number
  readonly growing: boolean
  readonly rows: readonly { number: number; side: 'RS' | 'WS' | null; printed: string; corrected?: string }[]
  readonly balanced: boolean
  readonly counts: readonly { castOn: number; after: readonly number[] }[]
  readonly misprints: readonly { castOn: Rule | number; row: number; reason: string }[]
}

const { patterns } = facts<{ patterns: readonly Handbook[] }>('handbook-patterns.json')

const nameOf = (p: Handbook): string => `${p.id} ${p.title} (${p.author}, ${p.book}, ${p.year})`

/** The pattern as corrected, its once-worked rows as set-up rows. */
function corrected(p: Handbook, castOn: Rule | number): Draft {
  const texts = p.rows.map((row) => row.corrected ?? row.printed)
  return {
    castOn,
    setUp: texts.slice(0, p.setUpRows),
    rows: texts.slice(p.setUpRows),
    worked: p.worked,
    // After an odd number of set-up rows, row 1 falls on the other side.
    firstSide: p.setUpRows % 2 === 1 ? 'WS' : p.firstSide,
    growing: p.growing,
    edgeStitches: p.edgeStitches,
  }
}

/** The pattern with the book's misprints, every row in turn: row r of the book is row `rows.indexOf(r) + 1`. */
const printed = (p: Handbook, castOn: Rule | number): Draft => ({
  castOn,
  rows: p.rows.map((row) => row.printed),
  worked: p.worked,
  firstSide: p.firstSide,
  growing: p.growing,
  edgeStitches: p.edgeStitches,
})

const withEdges = (p: Handbook, counts: readonly number[]): number[] =>
  counts.map((count) => count + p.edgeStitches)

const balanced = patterns.filter((p) => p.balanced)
const perCastOn = balanced.flatMap((p) =>
  p.counts.map((c) => ({ name: `${nameOf(p)}, cast on ${c.castOn}`, p, ...c })),
)
const perRule = balanced.flatMap((p) => (p.rule ? [{ name: nameOf(p), p, rule: p.rule, ...p.rule }] : []))
const misprinted = patterns.flatMap((p) =>
  p.misprints.map((m) => ({ name: `${nameOf(p)} on ${JSON.stringify(m.castOn)}: row ${m.row}`, p, ...m })),
)

it('holds the whole collection: 29 patterns that balance once mended, 11 with a misprint', () => {
  expect(balanced).toHaveLength(29)
  expect(patterns.filter((p) => p.misprints.length > 0)).toHaveLength(11)
  expect(perCastOn.length).toBeGreaterThan(70)
})

describe('corrected patterns are accepted with the counts of an independent simulation', () => {
  it.each(perCastOn)('$name: proof', ({ p, castOn, after }) => {
    const { proof, problems } = proved(corrected(p, castOn))
    expect(problems).toEqual([])
    expect(proof.edges).toBe(p.edgeStitches)
    const counts = [...proof.setUp, ...proof.rows].map((row) => row.after)
    expect(counts).toEqual(withEdges(p, after).map((plus) => ({ perRepeat: 0, plus })))
  })

  it.each(perCastOn)('$name: worked loops', ({ p, castOn, after }) => {
    const done = worked(corrected(p, castOn))
    expect(done.castOn).toBe(castOn + p.edgeStitches)
    expect(loopsAfterRows(done)).toEqual(withEdges(p, after))
  })

  it.each(perRule)('$name: proof by the rule $multiple n + $plus', ({ p, rule }) => {
    const { proof, problems } = proved(corrected(p, rule))
    expect(problems).toEqual([])
    for (const { castOn, after } of p.counts) {
      const n = (castOn - rule.plus) / rule.multiple
      expect(Number.isInteger(n)).toBe(true)
      expect([...proof.setUp, ...proof.rows].map((row) => at(row.after, n))).toEqual(withEdges(p, after))
    }
  })

  it.each(perRule)('$name: worked loops by the rule', ({ p, rule }) => {
    for (const { castOn, after } of p.counts) {
      const done = worked(corrected(p, rule), (castOn - rule.plus) / rule.multiple)
      expect(done.castOn).toBe(castOn + p.edgeStitches)
      expect(loopsAfterRows(done)).toEqual(withEdges(p, after))
    }
  })

  it.each(balanced)('$id: sides of the rows', (p) => {
    const { proof } = proved(corrected(p, p.counts[0]?.castOn ?? 0))
    const stated = p.rows.map((row) => row.side)
    const told = [...proof.setUp, ...proof.rows].map((row, i) => (stated[i] === null ? null : row.side))
    expect(told).toEqual(stated)
  })
})

describe('misprints are found in the row where the book has them', () => {
  it.each(misprinted)('$name ($reason)', ({ p, castOn, row }) => {
    const { proof, problems } = proved(printed(p, castOn))
    const place = p.rows.findIndex((r) => r.number === row) + 1
    expect(place).toBeGreaterThan(0)
    expect(firstFailingRow(problems)).toBe(place)
    expect(proof.sound).toBe(false)
  })
})

describe('cast-ons as the books state them', () => {
  const stated = balanced.filter(
    (p) => p.statedRule && JSON.stringify(p.statedRule) === JSON.stringify(p.rule),
  )

  it.each(stated)('$id: the stated rule is strong enough', (p) => {
    const { problems } = proved(corrected(p, p.statedRule as Rule))
    expect(problems).toEqual([])
  })

  // Mee's stated 122, 106 and 76 count the edge stitches that she names once for all twelve chair covers.
  it.each(stated.filter((p) => p.statedCastOn !== null))(
    '$id: the stated cast-on is one of the rule',
    (p) => {
      const { multiple, plus } = p.rule as Rule
      const n = ((p.statedCastOn as number) - p.edgeStitches - plus) / multiple
      const done = worked(corrected(p, p.rule as Rule), n)
      expect(Number.isInteger(n)).toBe(true)
      expect(done.castOn).toBe(p.statedCastOn)
    },
  )

  it('lam-17: Lambert 1843 lets any number that divides by three be cast on; the rows need six', () => {
    const p = patterns.find((q) => q.id === 'lam-17') as Handbook
    expect(proved(corrected(p, { multiple: 3, plus: 0 })).proof.sound).toBe(false)
    expect(proved(corrected(p, 6)).proof.derived).toEqual({ multiple: 6, plus: 0 })
  })
})

describe('through the command', () => {
  const folder = temporaryFolder()
  afterAll(folder.remove)
  const byId = (id: string): Handbook => patterns.find((p) => p.id === id) as Handbook

  it('mee-06 is sound with its edges counted, dil-10 as printed fails in row 15, and both are told', () => {
    const roseLeaf = byId('mee-06')
    const lace = byId('dil-10')
    const misprint = fileOf(printed(lace, 11))
    const files = [
      folder.write('rose-leaf.yaml', fileOf(corrected(roseLeaf, roseLeaf.rule as Rule))),
      folder.write('lace-as-printed.yaml', misprint),
    ]
    const { status, entries } = checkJson(...files)
    expect(status).toBe(1)
    expect(entries.map((entry) => [entry.file, entry.ok])).toEqual([
      [files[0], true],
      [files[1], false],
    ])
    const after = (perRepeat: number) => ({ perRepeat, plus: 8 })
    expect(entries[0]).toMatchObject({
      castOn: { multiple: 19, plus: 0 },
      derivedCastOn: { multiple: 19, plus: 0 },
      edges: 8,
    })
    expect(entries[0]?.rows.map((row) => row.after)).toEqual([17, 17, 17, 17, 17, 17, 19, 19].map(after))
    const failing = entries[1]?.problems.filter((problem) => problem.severity === 'error') ?? []
    expect(failing[0]).toMatchObject({ row: 15 })
    expect(misprint.split('\n')[(failing[0]?.line ?? 0) - 1]).toContain(lace.rows[14]?.printed)
  })
})
