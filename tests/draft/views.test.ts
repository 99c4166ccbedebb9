import { globSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { segmentsOf } from '../../components/draft/segments.ts'
import { tallyWords } from '../../components/draft/tally.ts'
import { answerOf, workedDraft } from '../../components/draft/work-draft.ts'
import { at } from '../../engine/base/index.ts'
import { checkDraft, checkPattern, type Draft, draftOf, emptyDraft } from '../../engine/intake/index.ts'
import { readRow } from '../../engine/notation/index.ts'
import { stitch } from '../../engine/stitches/index.ts'

const files = globSync('content/patterns/*.yaml').sort()
const draftIn = (file: string): Draft => {
  const { pattern } = checkPattern({ name: file, text: readFileSync(file, 'utf8') })
  if (!pattern) throw new Error(`${file} cannot be read`)
  return draftOf(pattern)
}
const loopsIn = (svg: string): number =>
  svg.match(/ class="(?:knit|purl|hole|together|slipped)"/g)?.length ?? 0

it('every row of the library lies on its needle with as many loops as are counted', () => {
  expect(files.length).toBeGreaterThan(25)
  for (const file of files) {
    const worked = workedDraft(draftIn(file), null)
    const { rows, summary, chart } = answerOf(worked)
    const { proof } = worked.checked
    expect(summary.sound, file).toBe(true)
    expect(chart?.only, file).toBe(null)
    const counts = proof ? [...proof.setUp, ...proof.rows] : []
    expect(rows.length).toBe(counts.length)
    for (const [i, row] of rows.entries()) {
      // Stitches that a turn leaves behind lie on the other needle.
      const turned = worked.segments.all[0]?.worked.rows[i]?.unworked.length ?? 0
      const after = counts[i]?.after ?? { perRepeat: 0, plus: -1 }
      expect(loopsIn(row.strip) + turned, `${file}, ${row.name}`).toBe(at(after, worked.repeats))
    }
  }
})

describe('a draft of which a row is wrong', () => {
  const rows = [
    'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
    'purl',
    'k1, *yo, ssk; rep from * to end',
    'purl',
  ]
  const draft = (row: string): Draft => ({
    ...emptyDraft,
    castOn: { ...emptyDraft.castOn, multiple: '6', plus: '1' },
    rows: rows.map((text, i) => (i === 2 ? row : text)),
  })

  it('shows its other rows all the same', () => {
    const { rows: views } = answerOf(workedDraft(draft('k1, *yo, ssk, k2tgo; rep from * to end'), 2))
    expect(views.map(({ state }) => state)).toEqual(['fits', 'fits', 'unread', 'fits'])
    expect(views.map(({ strip }) => loopsIn(strip))).toEqual([13, 13, 0, 13])
  })

  it('shows how far the wrong one goes and what is left over', () => {
    const checked = checkDraft(draft('k1, *yo, ssk, k2, yo, k1; rep from * to end'))
    const { all, broken } = segmentsOf(checked, 2)
    expect(all.map(({ first, worked }) => [first, worked.rows.length])).toEqual([
      [0, 2],
      [3, 1],
    ])
    // k1 and twice five of thirteen; two are left.
    expect(broken.map(({ index, row, undone }) => [index, row.unworked.length, undone])).toEqual([[2, 2, 0]])
  })

  it('shows for how many stitches loops are lacking', () => {
    const { broken } = segmentsOf(checkDraft(draft('k14')), 2)
    expect(broken.map(({ row, undone }) => [row.unworked.length, undone])).toEqual([[0, 1]])
  })
})

it.each([
  [
    'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
    'Each repeat adds 2 (yo), takes away 2 (ssk, k2tog): even.',
  ],
  ['k2, yo, knit to last 2 sts, yo, k2', 'It adds 2 (yo): +2.'],
  [
    'k1, yo, *yo, s2kp, yo; rep from * to last 2 sts, k2tog',
    'Each repeat adds 2 (yo), takes away 2 (s2kp): even. Beside it the row adds 1 (yo), takes away 1 (k2tog): even.',
  ],
  ['bind off 4, knit to end', 'It takes away 4 (bind off): −4.'],
  ['purl', 'Adds nothing, takes nothing away.'],
])('%s: %s', (row, words) => expect(tallyWords(readRow(row).items)).toBe(words))

it('what a tally says is what the stitches take and make', () => {
  expect([stitch('s2kp').takes - stitch('s2kp').makes, stitch('yo').makes - stitch('yo').takes]).toEqual([
    2, 1,
  ])
})
