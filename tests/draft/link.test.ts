import { deflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { browserPacking } from '../../components/draft/packing.ts'
import {
  type Draft,
  draftFromLink,
  draftToLink,
  emptyDraft,
  longestLink,
  mostLinkBytes,
  parseDraft,
} from '../../engine/intake/index.ts'

const words = fc.string({ unit: 'grapheme', maxLength: 80 }).filter((text) => text.isWellFormed())
const draft: fc.Arbitrary<Draft> = fc.record({
  title: words,
  castOn: fc.record({
    kind: fc.constantFrom('multiple', 'exactly'),
    multiple: words,
    plus: words,
    exactly: words,
  }),
  worked: fc.constantFrom('flat', 'round'),
  firstSide: fc.constantFrom('RS', 'WS'),
  setUp: fc.array(words, { maxLength: 3 }),
  rows: fc.array(words, { minLength: 1, maxLength: 8 }),
  edges: fc.record({ before: words, after: words }),
  growing: fc.boolean(),
  doubleYarnOver: fc.constantFrom('two', 'one'),
  bindOffLeaves: fc.constantFrom('extra', 'first'),
  held: fc.nat(50),
  about: fc.record({
    also: fc.array(words, { maxLength: 2 }),
    notToConfuseWith: fc.constant([]),
    teaches: fc.array(words, { maxLength: 2 }),
    corrections: fc.array(
      fc.record(
        { version: words, date: words, change: words, rows: fc.array(fc.integer({ min: 1, max: 99 })) },
        { requiredKeys: ['version', 'date', 'change'] },
      ),
      { maxLength: 2 },
    ),
    notes: words,
    needle: fc.constantFrom(3.75, 5),
    source: fc.record({ title: words, year: fc.constant(1846) }),
  }),
})

const letters = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64url')
const link = (value: unknown): string => `1.${letters(deflateRawSync(JSON.stringify(value)))}`

describe('a draft in a link', () => {
  it('comes out as it went in, and fits an address', async () => {
    await fc.assert(
      fc.asyncProperty(draft, async (one) => {
        const payload = await draftToLink(one, browserPacking)
        expect(payload).toMatch(/^1\.[\w-]*$/)
        expect(await draftFromLink(payload, browserPacking)).toEqual({ draft: one })
        expect(parseDraft(JSON.parse(JSON.stringify(one)))).toEqual(one)
      }),
    )
  })

  it('is short: a pattern of 8 rows stays under 400 characters', async () => {
    const rows = Array.from({ length: 8 }, (_, i) =>
      i % 2 ? 'purl' : `k1, *k${i}, yo, s2kp, yo, k2; rep from * to end`,
    )
    expect((await draftToLink({ ...emptyDraft, rows }, browserPacking)).length).toBeLessThan(400)
  })

  const bad: [string, () => Promise<string>, string][] = [
    [
      'cut off',
      async () => (await draftToLink({ ...emptyDraft, title: 'Ebb' }, browserPacking)).slice(0, -6),
      'damaged',
    ],
    ['of letters that are none', async () => '1.%%%', 'damaged'],
    ['of nothing', async () => '', 'damaged'],
    ['of another version', async () => '2.abcd', 'another version'],
    ['of a list', async () => link([]), 'damaged'],
    ['of rows that are no texts', async () => link({ rows: [1] }), 'damaged'],
    ['of a million rows', async () => link({ rows: Array.from({ length: 60_000 }, () => 'k') }), 'damaged'],
    ['that is too long', async () => `1.${'a'.repeat(longestLink)}`, 'too long'],
    ['that swells', async () => link({ title: ' '.repeat(mostLinkBytes + 1) }), 'too long'],
  ]
  it.each(bad)('%s opens nothing', async (_, make, why) => {
    expect(await draftFromLink(await make(), browserPacking)).toEqual({ draft: null, why })
  })
})
