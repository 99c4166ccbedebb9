/**
 * What published sources say of mistakes in lace, against what comes of them when they are worked loop by loop.
 */
import { describe, expect, it } from 'vitest'
import {
  answer,
  type Casebook,
  casebookOf,
  consequenceOf,
  diagnose,
  type Look,
  type MistakeKind,
  sightsFor,
  type Trace,
  tracesIn,
} from '../../engine/mistakes/index.ts'
import { type Draft, facts, worked } from './support.ts'

interface Published {
  readonly n: number
  readonly what: string
  readonly source: string
  readonly draft: Omit<Draft, 'edgeStitches'> & { readonly edges?: number }
  readonly repeats: number
  readonly kind: MistakeKind
  readonly row: number
  readonly place: string | null
  readonly which: number
  readonly everywhere: boolean
  /** Rows after the mistake's own at the end of which the total is compared. */
  readonly later: number
  readonly published: { readonly total: number | null; readonly neighbours?: readonly [number, number] }
  readonly engine?: { readonly total: number }
  readonly reason?: string
  readonly looks: readonly Look[]
  readonly rowEnd: number
}

interface Signature {
  readonly difference: string
  readonly draft: Draft
  readonly suspects: readonly MistakeKind[]
}

interface File {
  readonly sources: Readonly<Record<string, string>>
  readonly totalUnchanged: { readonly numbers: readonly number[]; readonly can: readonly number[] }
  readonly mistakes: readonly Published[]
  readonly signatures: { readonly list: readonly Signature[] }
}

const file = facts<File>('mistakes.json')

const bookFor = ({ draft, repeats }: Published): Casebook =>
  casebookOf(worked({ ...draft, edgeStitches: 2 * (draft.edges ?? 0) }, repeats))

/** The mistake where the file places it. */
function traceFor(book: Casebook, one: Published): Trace {
  const row = book.plan.rows.find(({ number }) => number === one.row)
  const fits = tracesIn(book, row?.index ?? 0).filter(({ mistake, section }) => {
    if (mistake.kind !== one.kind || mistake.everywhere !== one.everywhere) return false
    return one.place === null || book.plan.sections[section ?? -1] === one.place
  })
  const found = fits[one.which]
  if (!found) throw new Error(`${one.kind} cannot be made in ${one.place} of row ${one.row}`)
  return found
}

/** The difference in the total so many rows after the mistake's own. */
function totalAfter(book: Casebook, { unmarked }: Trace, later: number): number {
  const outcome = unmarked[later]
  const meant = book.plan.rows[outcome?.row ?? 0]?.makes.reduce((sum, count) => sum + count, 0) ?? 0
  return (outcome?.total ?? Number.NaN) - meant
}

describe.each(file.mistakes)('$n $what', (one) => {
  const book = bookFor(one)
  const trace = traceFor(book, one)

  it('changes the total as published, or the reason is given', () => {
    const { total } = one.published
    if (total === null) return expect(one.rowEnd).not.toBe(0)
    const found = totalAfter(book, trace, one.later)
    if (one.engine) {
      expect(one.reason?.length ?? 0).toBeGreaterThan(20)
      expect(one.engine.total).not.toBe(total)
      expect(found).toBe(one.engine.total)
    } else expect(found).toBe(total)
  })

  it('lets the words come out, or not, as published', () => {
    const [first] = trace.unmarked
    expect((first?.over ?? 0) - (first?.short ?? 0)).toBe(one.rowEnd)
  })

  it('looks as published', () => {
    const seen = sightsFor(book, trace).map(({ look }) => look)
    expect(seen).toEqual(expect.arrayContaining([...one.looks]))
  })

  it('names its source, or says that there is none', () => {
    const numbers = [...one.source.matchAll(/\[(\d+)\]/g)].map((match) => match[1] ?? '')
    expect(numbers.every((number) => number in file.sources)).toBe(true)
    expect(numbers.length > 0 || /common practice, no source|from memory/.test(one.source)).toBe(true)
  })
})

describe('the table as a whole', () => {
  it('has forty mistakes', () => {
    expect(new Set(file.mistakes.map(({ n }) => Math.floor(n)))).toEqual(
      new Set(Array.from({ length: 40 }, (_, i) => i + 1)),
    )
  })

  it('sixteen of the forty leave the total unchanged and let the row come out', () => {
    const silent = file.mistakes.filter((one) => {
      const book = bookFor(one)
      const trace = traceFor(book, one)
      return totalAfter(book, trace, one.later) === 0 && trace.unmarked[0]?.at === null
    })
    const { numbers, can } = file.totalUnchanged
    const certain = silent.map(({ n }) => n).filter((n) => !can.includes(n))
    expect(certain).toEqual(numbers)
    expect(certain).toHaveLength(16)
    expect(silent.map(({ n }) => n)).toEqual(expect.arrayContaining([...can]))
  })

  it.each(file.mistakes.filter(({ published }) => published.neighbours))(
    '$n takes from one stretch what it gives to its neighbour',
    (one) => {
      const book = bookFor(one)
      const consequence = consequenceOf(book.plan, traceFor(book, one).mistake)
      const by = consequence?.counts.map(({ now, meant }) => now - meant) ?? []
      expect([...by].sort((a, b) => a - b)).toEqual(one.published.neighbours)
      const [a, b] = consequence?.counts.map(({ section }) => section) ?? []
      expect(Math.abs((a ?? 0) - (b ?? 9))).toBe(1)
      expect(consequence?.knittedRightly).toBe(true)
    },
  )
})

describe('what a difference points to', () => {
  const by: Readonly<Record<string, readonly [number, Readonly<Record<number, number>>]>> = {
    'one short in one repeat': [1, { 2: -1 }],
    'one over in one repeat': [0, { 2: 1 }],
    'two over in one repeat': [0, { 2: 2 }],
    'one short and one over next door': [0, { 1: 1, 2: -1 }],
  }

  it.each(file.signatures.list)('$difference', ({ difference, draft, suspects }) => {
    const book = casebookOf(worked(draft, 3))
    const [row, changes] = by[difference] ?? [0, {}]
    const counts = (book.plan.rows[row]?.makes ?? []).map((count, section) => count + (changes[section] ?? 0))
    const found = diagnose(book, { row, counts }, { most: 12 })
    const kinds = found.suspects.map(({ kind }) => kind)
    expect(kinds).toEqual(expect.arrayContaining([...suspects]))
    // The first suspect of the published list is among our first three, at once or after the one question.
    const asked = found.question ? answer(found, found.question.choices[0]?.id ?? 'unsure') : found
    expect([...kinds.slice(0, 3), ...asked.suspects.slice(0, 3).map(({ kind }) => kind)]).toContain(
      suspects[0],
    )
  })
})
