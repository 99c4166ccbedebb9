import { globSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { lookAt } from '../../components/draft/look-at.ts'
import { workedDraft } from '../../components/draft/work-draft.ts'
import {
  changed,
  checkDraft,
  checkPattern,
  type Draft,
  draftOf,
  emptyDraft,
  textAt,
} from '../../engine/intake/index.ts'
import { work } from '../../engine/needles/index.ts'

const draft = (rows: readonly string[], more: Partial<Draft> = {}): Draft => ({
  ...emptyDraft,
  rows,
  ...more,
})
const exactly = (n: number): Partial<Draft> => ({
  castOn: { kind: 'exactly', multiple: '', plus: '', exactly: String(n) },
})

/** The row after another stitch was put in the place of one; null where it is not offered. */
function put(it_: Draft, row: number, step: number, short: string): string | null {
  const view = lookAt(workedDraft(it_, null), row, step)
  const all = [...(view?.keeps ?? []), ...(view?.pairs ?? []), ...(view?.others ?? [])]
  const choice = short === 'nothing' ? view?.out : all.find((one) => one.short === short)
  if (choice?.change.kind !== 'text') return null
  return textAt(changed(it_, choice.change), choice.change.place)
}

const reedBed = ['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl']

describe('another stitch in the place of one', () => {
  it.each([
    [
      'a word gives way to a word',
      reedBed,
      0,
      2,
      'k2tog',
      'k1, *yo, k2tog, k1, k2tog, yo, k1; rep from * to end',
    ],
    [
      'in any repeat it is the same word',
      reedBed,
      0,
      8,
      'k2tog',
      'k1, *yo, k2tog, k1, k2tog, yo, k1; rep from * to end',
    ],
    [
      'her way of writing stays',
      ['K1,*YO, sl1, k1, psso,k1 ; k2tog,  yo, k1 ; rep from *', 'purl'],
      0,
      2,
      'k2tog',
      'K1,*YO, k2tog,k1 ; k2tog,  yo, k1 ; rep from *',
    ],
    ['taken out with its comma', reedBed, 0, 3, 'nothing', 'k1, *yo, ssk, k2tog, yo, k1; rep from * to end'],
    ['the last taken out with the comma before it', ['k1, p1'], 0, 1, 'nothing', 'k1'],
    ['a plain row gets a repeat of its own', reedBed, 1, 1, 'k1', '*p1, k1, p4; rep from * to last st, p1'],
    ['beside the repeats too', reedBed, 1, 12, 'k1', '*p6; rep from * to last st, k1'],
  ] as const)('%s', (_, rows, row, step, short, wanted) => {
    expect(put(draft(rows), row, step, short)).toBe(wanted)
  })

  it('in the middle of several, what is before and behind is kept', () => {
    const one = draft(['k5', 'purl'], exactly(5))
    expect(put(one, 0, 2, 'p1')).toBe('k2, p1, k2')
    expect(put(one, 0, 0, 'p1')).toBe('p1, k4')
    expect(put(one, 0, 4, 'yo')).toBe('k4, yo')
    expect(put(one, 1, 2, 'k1')).toBe('p2, k1, p2')
  })

  it('a hole with its decrease takes the place of two that stand side by side', () => {
    const one = draft(['k2, k3', 'purl'], exactly(5))
    expect(put(one, 0, 1, 'yo, k2tog')).toBe('k1, yo, k2tog, k2')
    expect(put(one, 0, 1, 'yo, s2kp, yo')).toBe('k1, yo, s2kp, yo, k1')
    // Over the end of a repeat nothing stands side by side.
    expect(put(draft(['*k3; rep from * to end', 'purl']), 0, 2, 'yo, k2tog')).toBe(null)
  })

  it('a row that says that it is another one is written out', () => {
    const one = draft([...reedBed, 'as row 1', 'purl'])
    expect(put(one, 2, 2, 'k2tog')).toBe('k1, *yo, k2tog, k1, k2tog, yo, k1; rep from * to end')
  })

  it('an edge stitch is changed in the edge', () => {
    const one = draft(['knit', 'purl'], { ...exactly(4), edges: { before: 'k2', after: 'k2' } })
    expect(put(one, 0, 0, 'p1')).toBe('p1, k1')
  })
})

it('every choice at every stitch of the library does to the count what it says', () => {
  let tried = 0
  for (const file of globSync('content/patterns/*.yaml').sort().slice(0, 6)) {
    const { pattern } = checkPattern({ name: file, text: readFileSync(file, 'utf8') })
    if (!pattern) throw new Error(`${file} cannot be read`)
    const it_ = draftOf(pattern)
    const at = workedDraft(it_, null)
    const before = checkDraft(it_).proof
    const { worked } = work(pattern, at.repeats)
    if (!worked || !before) throw new Error(`${file} cannot be worked`)
    for (const [index, row] of worked.rows.slice(0, 4).entries())
      for (const step of [0, Math.floor(row.steps.length / 2), row.steps.length - 1]) {
        const view = lookAt(at, index, step)
        for (const { change, short } of [...(view?.keeps ?? []), ...(view?.pairs ?? [])]) {
          // What keeps the balance leaves every row coming out on the same counts.
          const { proof, sound } = checkDraft(changed(it_, change))
          expect(sound, `${file}, row ${row.number}, stitch ${step + 1}: ${short}`).toBe(true)
          expect(proof?.rows.map(({ after }) => after)).toEqual(before.rows.map(({ after }) => after))
          tried++
        }
      }
  }
  expect(tried).toBeGreaterThan(200)
})
