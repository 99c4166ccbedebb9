import { describe, expect, it } from 'vitest'
import { readWhere } from '../../engine/intake/index.ts'
import {
  casebookOf,
  type Glimpse,
  nearPlaces,
  nearWords,
  noPlaceWords,
  placesFor,
  placeWordsAt,
  tellApart,
  tellApartWords,
  withoutTwins,
} from '../../engine/mistakes/index.ts'
import { isDecrease, isYarnOver, showsKnit } from '../../engine/mistakes/kin.ts'
import { needlesAfter, type WorkedPattern } from '../../engine/needles/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { fromLibrary, fromRows } from './support.ts'

const reed = fromLibrary('reed-bed')
const horseshoe = fromLibrary('horseshoe')

/** What a made stitch looks like to whoever made it. */
function glimpse(id: string): Glimpse {
  if (isYarnOver(id)) return { looks: 'hole' }
  if (isDecrease(id)) return { looks: stitch(id).takes === 2 ? 'two together' : 'three together' }
  return { looks: showsKnit(id) ? 'knit' : 'purl' }
}

describe('where am I', () => {
  it('the loops on both needles tell every place of a row', () => {
    for (const worked of [reed, horseshoe]) {
      for (const [row, { steps }] of worked.rows.entries()) {
        for (const [i, { left, right }] of steps.entries()) {
          const places = placesFor(worked, { left, right, row })
          expect(places).toContainEqual({ row, done: i + 1, agree: 0 })
          expect(places.length).toBeLessThanOrEqual(2)
        }
      }
    }
  })

  it('the last stitches made tell it too, by their names or by their looks', () => {
    const steps = horseshoe.rows[2]?.steps ?? []
    for (let done = 6; done <= steps.length; done++) {
      const ids = steps.slice(done - 6, done).map((step) => step.stitch)
      for (const last of [ids.map((id) => ({ stitch: id })), ids.map(glimpse)]) {
        const places = placesFor(horseshoe, { last })
        expect(places.map(({ row, done: at }) => `${row} ${at}`)).toContain(`2 ${done}`)
        expect(places.every(({ agree }) => agree === 6)).toBe(true)
      }
    }
  })

  it('together they leave one place', () => {
    const step = reed.rows[0]?.steps[8]
    const last = reed.rows[0]?.steps.slice(6, 9).map(({ stitch: id }) => ({ stitch: id })) ?? []
    expect(placesFor(reed, { left: step?.left ?? 0, right: step?.right ?? 0, last })).toEqual([
      { row: 0, done: 9, agree: 3 },
    ])
  })

  it('where not all of the last stitches fit, the newest count', () => {
    const places = placesFor(reed, {
      row: 0,
      last: [{ stitch: 'nupp5' }, { stitch: 'k2tog' }, { stitch: 'yo' }],
    })
    expect(places.length).toBe(3)
    expect(places.every(({ agree }) => agree === 2)).toBe(true)
  })

  it('loops that no place has give no place', () => {
    expect(placesFor(reed, { left: 300, right: 1 })).toEqual([])
  })
})

const key = ({ row, done }: { row: number; done: number }): string => `${row} ${done}`

/** What really lies on the needles, from the loops themselves. */
const counted = (worked: WorkedPattern, row: number, done: number) => {
  const { left, right } = needlesAfter(worked, row, done)
  return { left: left.length, right: right.length }
}

describe('the side, and a row that is done', () => {
  it('the side that faces her leaves only rows of that side', () => {
    const places = placesFor(horseshoe, { left: 0, side: 'WS' })
    expect(places.length).toBeGreaterThan(1)
    for (const { row } of places) expect(horseshoe.rows[row]?.side).toBe('WS')
  })

  it('the stitches of the row before are still the last ones when a row begins', () => {
    const last = reed.rows[0]?.steps.slice(-2).map((step) => ({ stitch: step.stitch })) ?? []
    expect(placesFor(reed, { last, right: 0 }).map(key)).toContain('1 0')
  })

  it('a row done and the next not begun are one place, told once', () => {
    const places = placesFor(reed, { last: [{ stitch: 'p' }, { stitch: 'p' }, { stitch: 'p' }] })
    const once = withoutTwins(reed, places)
    const keys = once.map(key)
    expect(keys).toContain('0 0')
    expect(keys).not.toContain(`${reed.rows.length - 1} ${reed.rows.at(-1)?.steps.length}`)
    expect(once.length).toBeLessThan(places.length)
  })

  it('works in the round and for an edging that grows and shrinks', () => {
    const round = fromRows(
      '{ multiple: 4, plus: 0 }',
      ["'*yo, k2tog, k2; rep from *'", 'knit'],
      3,
      'worked: round\n',
    )
    for (const worked of [round, fromLibrary('little-fountain'), fromLibrary('slipway-edging', 1)])
      for (const [row, { steps }] of worked.rows.entries())
        for (let done = 0; done <= steps.length; done++)
          expect(placesFor(worked, { ...counted(worked, row, done) }).map(key)).toContain(`${row} ${done}`)
  })
})

describe('one more thing to look at', () => {
  it.each([
    ['reed-bed', 3],
    ['horseshoe', 2],
    ['little-fountain', 2],
    ['old-shale', 2],
  ] as const)('in %s answer after answer leads to the place where she is', (slug, repeats) => {
    const worked = fromLibrary(slug, repeats)
    for (const [row, { steps, side }] of worked.rows.entries()) {
      for (let done = 1; done < steps.length; done += 3) {
        let places = withoutTwins(worked, placesFor(worked, counted(worked, row, done)))
        for (let apart = tellApart(worked, places); apart; apart = tellApart(worked, places)) {
          const mine = apart.choices.filter((choice) =>
            choice.places.some((one) => key(one) === `${row} ${done}`),
          )
          expect(mine).toHaveLength(1)
          if (apart.look === 'side') expect(mine[0]?.sees).toBe(side)
          expect(mine[0]?.places.length).toBeLessThan(places.length)
          places = [...(mine[0]?.places ?? [])]
        }
        expect(places.map(key)).toContain(`${row} ${done}`)
        // What is left looks alike in the hands: the same stitch of rows that look alike.
        for (const place of places)
          expect(counted(worked, place.row, place.done)).toEqual(counted(worked, row, done))
      }
    }
  })

  it('asks for the side first where rows of both sides fit, in words', () => {
    const places = placesFor(reed, { left: 10, right: 9 })
    expect(new Set(places.map(({ row }) => reed.rows[row]?.side)).size).toBe(2)
    const apart = tellApart(reed, places)
    expect(apart?.look).toBe('side')
    if (!apart) return
    const { question, choices } = tellApartWords(apart)
    expect(question).toMatch(/side of the work faces you/)
    expect(choices).toEqual(['The right side', 'The wrong side'])
  })

  it('asks nothing where one place is left', () => {
    expect(tellApart(reed, [{ row: 0, done: 3, agree: 0 }])).toBeNull()
  })
})

describe('a place in words', () => {
  const { plan } = casebookOf(reed)

  it('has the words before it and after it, as the row is written', () => {
    // Row 1 of Reed Bed: k1, *yo, ssk, k1, k2tog, yo, k1; rep from *.
    expect(placeWordsAt(plan, { row: 0, done: 4 })).toMatchObject({
      headline: expect.stringMatching(/^Row 1, repeat 1: 4 of \d+ stitches done$/),
      before: 'k1, yo, ssk, k1',
      after: 'k2tog, yo, k1, yo',
    })
    expect(placeWordsAt(plan, { row: 1, done: 0 }).headline).toBe('Row 2 is about to begin')
    expect(placeWordsAt(plan, { row: 0, done: reed.rows[0]?.steps.length ?? 0 })).toMatchObject({
      headline: 'Row 1 is done',
      after: '',
    })
  })
})

describe('where no place fits', () => {
  const { plan } = casebookOf(reed)

  it('says kindly what the needles hold, and where a stitch lost would explain it', () => {
    const step = reed.rows[0]?.steps[7]
    const clues = { left: step?.left ?? 0, right: (step?.right ?? 0) - 1, row: 0 }
    expect(placesFor(reed, clues).map(key)).not.toContain('0 8')
    const near = nearPlaces(reed, clues)
    expect(near.map(key)).toContain('0 8')
    const mine = near.find(({ done }) => done === 8)
    expect(mine).toMatchObject({ offLeft: 0, offRight: -1 })
    expect(mine && nearWords(mine)).toBe('Here you would have one too few among the new stitches.')
  })

  it('says whether any row has so many at all', () => {
    expect(noPlaceWords(plan, { left: 10, right: 15 }).join(' ')).toMatch(
      /Together that is 25 stitches, and no row ever has so many/,
    )
    expect(noPlaceWords(plan, { last: [{ stitch: 'nupp5' }] }).join(' ')).toMatch(/least sure/)
  })

  it('knows that in the middle of a row there may be fewer than at its ends', () => {
    const least = Math.min(...(reed.rows[0]?.steps.map(({ total }) => total) ?? []))
    expect(least).toBeLessThan(19)
    expect(noPlaceWords(plan, { left: 1, right: least - 1 }).join(' ')).toMatch(/at some moment of row 1/)
    expect(noPlaceWords(plan, { left: 1, right: least - 1, row: 1 }).join(' ')).toMatch(
      /row 2 never has so many/,
    )
  })

  it('does not take another width for a mistake', () => {
    expect(nearPlaces(reed, { left: 300, right: 1 })).toEqual([])
    expect(nearPlaces(reed, { last: [{ stitch: 'k' }] })).toEqual([])
  })
})

describe('what she writes', () => {
  const read = (form: unknown) => readWhere(form, 4)

  it('counts, a side, a row, and stitches as rows and as looks', () => {
    expect(
      read({ left: '10', right: ' 9 sts', inRow: '0', facing: 'RS', last: 'K2, a hole, k2tog' }),
    ).toEqual({
      clues: {
        left: 10,
        right: 9,
        row: 0,
        side: 'RS',
        last: [{ stitch: 'k' }, { stitch: 'k' }, { looks: 'hole' }, { stitch: 'k2tog' }],
      },
      unclear: [],
    })
    expect(read({ last: 'knit, yfwd, k2tog' }).clues?.last).toEqual([
      { stitch: 'k' },
      { stitch: 'yo' },
      { stitch: 'k2tog' },
    ])
    expect(read({ last: 'two together; smooth then bump' }).clues?.last).toEqual([
      { looks: 'two together' },
      { looks: 'knit' },
      { looks: 'purl' },
    ])
  })

  it.each([
    [{}, 'left'],
    [{ inRow: '1' }, 'left'],
    [{ left: 'ten' }, 'left'],
    [{ right: '-3', left: '4' }, 'right'],
    [{ last: '*k1; rep from * to end' }, 'last'],
    [{ last: 'purl to end' }, 'last'],
    [{ last: '<img src=x>' }, 'last'],
    [{ last: `${'k1, '.repeat(90)}` }, 'last'],
    [{ last: 7 }, 'last'],
    [{ last: '__proto__' }, 'last'],
    [null, 'left'],
  ])('%j is not understood, and is told beside its field', (form, field) => {
    const told = read(form)
    expect(told.clues).toBeNull()
    expect(told.unclear.map((one) => one.field)).toContain(field)
    for (const { words } of told.unclear) expect(words.length).toBeGreaterThan(20)
  })

  it('a row or a side that no list offers is not taken', () => {
    expect(read({ left: '3', inRow: '99', facing: 'up' }).clues).toEqual({ left: 3 })
  })

  it('of very many stitches only the newest are looked at', () => {
    expect(read({ last: '((k1, yo) 40 times) 9 times' }).clues?.last).toHaveLength(12)
  })
})
