import { describe, expect, it } from 'vitest'
import { type Glimpse, placesFor } from '../../engine/mistakes/index.ts'
import { isDecrease, isYarnOver, showsKnit } from '../../engine/mistakes/kin.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { fromLibrary } from './support.ts'

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
