import { describe, expect, it } from 'vitest'
import { cardSheets } from '../../engine/lesson/card-room.ts'
import {
  type CallOut,
  callOutsIn,
  callOutTable,
  lessonFrom,
  lessonOf,
  lessonStep,
  swatchCard,
  tabledWidths,
} from '../../engine/lesson/index.ts'
import { consequenceOf, likelyMistakesAt } from '../../engine/mistakes/index.ts'
import { check, worked } from '../support.ts'

const lesson = (castOn: string, rows: string[], more = '') => lessonOf(worked(castOn, rows, 2, more))

/** Every call-out of one row with the stitch that it stands at. */
function called(castOn: string, rows: string[], row: number, more = ''): [number, CallOut][] {
  const one = lesson(castOn, rows, more)
  const steps = one.worked.rows[row]?.steps ?? []
  return steps.flatMap((step, i) =>
    one.callOuts(row, i).map((found): [number, CallOut] => [step.step, found]),
  )
}

const kindsOf = (found: readonly [number, CallOut][]): string[] => found.map(([, { kind }]) => kind)

const eyelets = ['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl']
const horseshoe = [
  'k1, *yo, k1, sk2p, k1, yo, k1; rep from * to end',
  'purl',
  'k1, *k1, yo, sk2p, yo, k2; rep from * to end',
  'purl',
]
const leaf = [
  'k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
  'purl',
  'k2tog, *yo, k3, yo, sk2p; rep from * to last 5 sts, yo, k3, yo, ssk',
  'purl',
]
/** Patterns of many kinds: plain and lace wrong sides, repeats that a decrease crosses, counts that change, edges, the round. */
const many: readonly [string, string, string[], string?][] = [
  ['eyelets', '{ multiple: 6, plus: 1 }', eyelets],
  ['eyelets with edges', '{ multiple: 6, plus: 1 }', eyelets, 'edges: { before: k3, after: k2 }\n'],
  ['a horseshoe', '{ multiple: 6, plus: 1 }', horseshoe],
  ['a leaf', '{ multiple: 6, plus: 1 }', leaf],
  [
    'a mesh',
    '{ multiple: 2, plus: 1 }',
    ['k1, *yo, k2tog; rep from * to end', 'p1, *yo, p2tog; rep from * to end'],
  ],
  [
    'eyelets in the round',
    '{ multiple: 6, plus: 0 }',
    ['*yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'knit'],
    'worked: round\n',
  ],
]

describe('what goes wrong at a stitch', () => {
  it('a missed yarn over is warned of at the yarn over, with what it does to this row and to later ones', () => {
    const found = called('{ multiple: 6, plus: 1 }', horseshoe, 0).filter(
      ([, { kind }]) => kind === 'yarn over left out',
    )
    expect(found.map(([step]) => step)).toEqual([2, 6, 8, 12])
    expect(found.map(([, { rowEnds }]) => rowEnds)).toEqual([12, 12, 12, 12])
    expect(found[0]?.[1]).toMatchObject({
      title: 'A yarn over was left out',
      words:
        'The row ends one short, with 12 stitches instead of 13. Row 2 can still be worked, but in row 3 it does not come out: one short. Two stitches stand close together where a hole should be.',
    })
  })

  it('a pattern that has no later lace row is one short when its row comes again', () => {
    const [first] = called('{ multiple: 6, plus: 1 }', eyelets, 0).filter(([step]) => step === 2)
    expect(first?.[1].words).toContain(
      'Row 2 can still be worked, but when you come to row 1 again it does not come out: one short.',
    )
  })

  it('a missed double yarn over leaves the row two short', () => {
    const found = called(
      '{ multiple: 4, plus: 2 }',
      ['k1, *k2tog, yo twice, ssk; rep from * to last st, k1', 'p1, *p2, k1, p1; rep from * to last st, p1'],
      0,
    )
    expect(found.find(([, { kind }]) => kind === 'yarn over left out')?.[1].rowEnds).toBe(8)
  })

  it('slipped stitches that are not passed over stay on the needle: one for sk2p, two for a centred decrease', () => {
    const rowEnds = (decrease: string) =>
      called(
        '{ multiple: 6, plus: 1 }',
        [`k1, *yo, k1, ${decrease}, k1, yo, k1; rep from * to end`, 'purl'],
        0,
      ).find(([, { kind }]) => kind === 'pass over forgotten')?.[1].rowEnds
    expect([rowEnds('sk2p'), rowEnds('s2kp')]).toEqual([14, 15])
  })

  it('a decrease that leans the wrong way is told by the eye, since the count stays right', () => {
    const [, found] =
      called('{ multiple: 6, plus: 1 }', eyelets, 0).find(([, { kind }]) => kind === 'wrong lean') ?? []
    expect(found).toMatchObject({ rowEnds: 13 })
    expect(found?.words).toMatch(/^The row still ends with 13 stitches\. Only the eye finds it: /)
  })

  it('on the way back the yarn overs are warned of, and the plain stitches between them are not', () => {
    const found = called('{ multiple: 6, plus: 1 }', eyelets, 1)
    expect([...new Set(found.map(([step]) => step))]).toEqual([2, 6, 8, 12])
    expect(new Set(kindsOf(found))).toEqual(
      new Set(['yarn over dropped on the return', 'yarn over worked through the back']),
    )
  })

  it('edge stitches can be forgotten, also those that the file keeps apart, but not in the round', () => {
    const apart = ['*yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl']
    const first = (found: [number, CallOut][]) =>
      found.filter(([step]) => step === 1).map(([, { kind }]) => kind)
    expect(first(called('{ multiple: 6, plus: 1 }', eyelets, 0))).toContain('edge forgotten')
    expect(
      first(called('{ multiple: 6, plus: 0 }', apart, 0, 'edges: { before: k3, after: k3 }\n')),
    ).toContain('edge forgotten')
    expect(kindsOf(called('{ multiple: 6, plus: 0 }', apart, 0, 'worked: round\n'))).not.toContain(
      'edge forgotten',
    )
  })

  it('where the row itself does not come out, it says with how many stitches, and claims no count for its end', () => {
    const edge = called('{ multiple: 6, plus: 1 }', eyelets, 0).find(
      ([, { kind }]) => kind === 'edge forgotten',
    )
    expect(edge?.[1]).toMatchObject({ rowEnds: null })
    expect(edge?.[1].words).toContain('The words of the row come to their end with 1 stitch left over.')
  })
})

describe('what is special at a stitch', () => {
  it('a yarn over twisted on purpose is said to be so', () => {
    const found = called(
      '{ multiple: 2, plus: 0 }',
      ['*yo, k2tog; rep from * to end', '*p1, p1 tbl; rep from * to end'],
      1,
    )
    const words = found.filter(([step]) => step === 2).map(([, one]) => one.words)
    expect(words.join()).toContain('on purpose')
  })

  it('a yarn over that sits with its leading leg behind is to be entered there', () => {
    const found = called(
      '{ multiple: 2, plus: 0 }',
      ['*byo, k2tog; rep from * to end', '*p1, p1 tbl; rep from * to end'],
      1,
    )
    expect(found.find(([, { kind }]) => kind === 'leading leg behind')?.[1].words).toContain('go in there')
    expect(kindsOf(called('{ multiple: 6, plus: 1 }', eyelets, 1))).not.toContain('leading leg behind')
  })

  it('a run of equal stitches across the line between two repeats is longer than the words show', () => {
    const found = called('{ multiple: 6, plus: 1 }', horseshoe, 2).filter(
      ([, { kind }]) => kind === 'longer run at the seam',
    )
    expect(found.map(([step]) => step)).toEqual([1, 6])
    expect(found[1]?.[1].words).toContain(
      'knit 3 times running: 2 to end this repeat, 1 to begin the next repeat',
    )
    expect(kindsOf(called('{ multiple: 6, plus: 1 }', horseshoe, 0))).not.toContain('longer run at the seam')
  })

  it('a decrease across the line between two repeats moves the marker', () => {
    expect(kindsOf(called('{ multiple: 6, plus: 1 }', leaf, 2))).toContain('marker moves')
    expect(kindsOf(called('{ multiple: 6, plus: 1 }', leaf, 0))).not.toContain('marker moves')
  })
})

describe('how much is said', () => {
  it.each(many)('%s: two things at most at one stitch, each kind once', (_, castOn, rows, more) => {
    const one = lesson(castOn, rows, more)
    let said = 0
    for (const [row, { steps }] of one.worked.rows.entries()) {
      for (const index of steps.keys()) {
        const found = lessonStep(one, row, index)?.callOuts ?? []
        expect(found.length).toBeLessThanOrEqual(2)
        expect(new Set(found.map(({ kind }) => kind)).size).toBe(found.length)
        said += found.length
      }
    }
    expect(said).toBeGreaterThan(0)
  })

  it.each(many)(
    '%s: folded after the first repeat, and where the row has said it before',
    (_, castOn, rows, more) => {
      const one = lesson(castOn, rows, more)
      let open = 0
      for (const [row, { steps }] of one.worked.rows.entries()) {
        const said = new Set<string>()
        for (const [index, step] of steps.entries()) {
          for (const { kind, folded } of one.callOuts(row, index)) {
            expect(folded).toBe((step.repeat ?? 1) > 1 || said.has(kind))
            if (!folded) open++
          }
          for (const { kind } of one.callOuts(row, index)) said.add(kind)
        }
      }
      expect(open).toBeGreaterThan(0)
    },
  )

  it.each(many)(
    '%s: every number is the one that the mistake comes to when it is worked',
    (_, castOn, rows, more) => {
      const one = lesson(castOn, rows, more)
      let compared = 0
      for (const [row, { steps }] of one.worked.rows.entries()) {
        for (const index of steps.keys()) {
          const likely = likelyMistakesAt(one.worked, row, index, 99)
          const warned = one
            .callOuts(row, index)
            .filter(({ kind }) => likely.some((other) => other.kind === kind))
          // Heaviest first.
          const weights = warned.map(({ kind }) => likely.findIndex((other) => other.kind === kind))
          expect(weights).toEqual(weights.toSorted((a, b) => a - b))
          for (const { kind, rowEnds, words } of warned) {
            const mistake = likely.find((other) => other.kind === kind)?.mistake
            const known = mistake && consequenceOf(one.worked, mistake)
            if (!known) throw new Error(`${kind} cannot be made at ${row}, ${index}`)
            if (rowEnds === null) expect(known.shows).toMatchObject({ by: 'row end', row, nextTurn: false })
            else expect(rowEnds).toBe(known.total.now)
            if (rowEnds !== null && rowEnds !== known.total.meant)
              expect(words).toContain(`with ${known.total.now} stitches instead of ${known.total.meant}`)
            expect(words.includes('does not come out') || words.includes('come to their end')).toBe(
              known.shows.by === 'row end',
            )
            expect(words.includes('Only the eye')).toBe(known.shows.by === 'eye')
            compared++
          }
        }
      }
      expect(compared).toBeGreaterThan(5)
    },
  )
})

describe('the call-outs that are made ready for every width', () => {
  it.each(many)('%s: from one repeat to six they are those of the piece itself', (_, castOn, rows, more) => {
    const table = callOutTable(tabledWidths.map((n) => worked(castOn, rows, n, more)))
    for (const n of [1, 2, 3, 4, 5, 6]) {
      const piece = worked(castOn, rows, n, more)
      const [read, found] = [lessonFrom(piece, table), lessonOf(piece)]
      for (const [row, { steps }] of piece.rows.entries())
        for (const index of steps.keys())
          expect(read.callOuts(row, index), `${n} repeats, row ${row}, step ${index}`).toEqual(
            found.callOuts(row, index),
          )
    }
  })

  it('are plain data, and none where the table has no such row', () => {
    const piece = worked('{ multiple: 6, plus: 1 }', eyelets, 1)
    const table = callOutTable([piece])
    expect(JSON.parse(JSON.stringify(table))).toEqual(table)
    const { chart } = lessonOf(piece)
    expect(callOutsIn(table, piece, chart, 0, 1).length).toBeGreaterThan(0)
    expect(callOutsIn(table, piece, chart, 99, 0)).toEqual([])
    expect(callOutsIn({ ...table, widths: {} }, piece, chart, 0, 1)).toEqual([])
  })
})

describe('warnings on the swatch card', () => {
  const cardOf = (rows: string[]) => {
    const { pattern, proof } = check('{ multiple: 6, plus: 1 }', rows)
    if (!pattern || !proof) throw new Error('not read')
    return swatchCard(pattern, proof)
  }

  it('a wrong count leads to its cause, each cause once', () => {
    expect(cardOf(eyelets).sheets[0]?.rows.map(({ watch }) => watch)).toEqual([
      'Count 12? A yarn over was left out.',
      'Count 12? A yarn over of the row before slid off the needle.',
    ])
  })

  it('cost no card of their own', () => {
    const said = (rows: number): number => {
      const card = cardOf(Array.from({ length: rows }, (_, i) => eyelets[i % 2] as string))
      const all = card.sheets.flatMap((sheet) => sheet.rows)
      const bare = cardSheets(
        all.map((row) => ({ ...row, watch: null })),
        card,
      )
      expect(card.sheets.length, `${rows} rows`).toBe(bare.length)
      const watches = all.flatMap(({ watch }) => watch ?? [])
      expect(new Set(watches).size).toBe(watches.length)
      return watches.length
    }
    const counts = Array.from({ length: 10 }, (_, i) => said(4 + 2 * i))
    // A card that is just full has fewer lines to spare.
    expect(Math.min(...counts)).toBeLessThan(Math.max(...counts))
  })
})
