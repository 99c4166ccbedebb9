/**
 * The demo patterns in content/patterns: proved, without a warning, and with the counts that a simulation outside this project
 * gave (demo-patterns.json). Their titles and cast-ons are our own data or of the sources that each file names.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { at } from '../../engine/base/index.ts'
import { prove } from '../../engine/counts/index.ts'
import { readPattern } from '../../engine/intake/index.ts'
import { work } from '../../engine/needles/index.ts'
import { facts, loopsAfterRows } from './support.ts'

interface Counted {
  readonly slug: string
  readonly edgeStitches: number
  readonly growing?: boolean
  readonly counts: readonly { repeats: number; castOn: number; after: readonly number[] }[]
}
const { patterns } = facts<{ patterns: readonly Counted[] }>('demo-patterns.json')
const folder = new URL('../../content/patterns/', import.meta.url)
const read = (slug: string) =>
  readPattern({ name: `${slug}.yaml`, text: readFileSync(new URL(`${slug}.yaml`, folder), 'utf8') })

it('the counts are those of the files that are there', () => {
  const slugs = readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.slice(0, -5))
  expect(patterns.length).toBeGreaterThanOrEqual(14)
  for (const { slug } of patterns) expect(slugs).toContain(slug)
})

describe.each(patterns)('$slug', ({ slug, edgeStitches, counts }) => {
  const { pattern, issues } = read(slug)

  it('is read and proved without a problem or a warning', () => {
    expect(issues).toEqual([])
    expect(pattern && prove(pattern).issues).toEqual([])
    expect(pattern && prove(pattern).sound).toBe(true)
  })

  it('has the simulated counts, by the proof and by its loops', () => {
    if (!pattern) throw new Error('not read')
    const proof = prove(pattern)
    expect(proof.edges).toBe(edgeStitches)
    for (const { repeats, castOn, after } of counts) {
      const { worked } = work(pattern, repeats)
      expect(worked?.castOn).toBe(castOn)
      expect([...proof.setUp, ...proof.rows].map((row) => at(row.after, repeats))).toEqual(after)
      expect(worked && loopsAfterRows(worked)).toEqual(after)
    }
  })

  it('says where it is from, under which licence, and how far it was tried', () => {
    const about = pattern?.about
    expect(about?.source ?? about?.contributor).toBeDefined()
    expect(about?.licence).toBe('CC BY 4.0')
    expect(about?.tested).toContain('not yet test-knitted')
    expect(about?.version).toBe('1.0')
    expect(about?.level).toBeDefined()
    expect(about?.teaches.length).toBeGreaterThan(0)
    expect(about?.notes?.length).toBeGreaterThan(40)
  })
})

it.each(patterns.filter((p) => p.growing))(
  '$slug comes out every time through, not only the first',
  ({ slug }) => {
    const { pattern } = read(slug)
    if (!pattern) throw new Error('not read')
    const rows = Array.from({ length: 6 }, () => pattern.rows)
      .flat()
      .map((row, i) => ({ ...row, number: i + 1 }))
    expect(prove({ ...pattern, rows }).issues).toEqual([])
  },
)
