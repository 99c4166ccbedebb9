import { describe, expect, it } from 'vitest'
import { toSvg } from '../../engine/drawing/index.ts'
import {
  closeUpWords,
  nextNumber,
  numberText,
  pictureOf,
  readNumber,
  readSpot,
  spotText,
} from '../../engine/practice/index.ts'
import { rightSideLook } from '../../engine/stitches/index.ts'
import { forAny, given, tableFor } from './support.ts'

describe('reading the fabric', () => {
  it('asks only for stitches of the pattern, as they look from the right side', () => {
    forAny('read-the-fabric', ({ parts }, { worked }) => {
      const own = new Set(
        worked.rows.flatMap(({ side, steps }) =>
          steps.map((step) => rightSideLook(step.stitch, worked.pattern.worked === 'round' ? 'RS' : side)),
        ),
      )
      for (const part of parts) {
        if (part.form !== 'choose' || part.picture?.form !== 'close-up')
          throw new Error('a picture is asked about')
        expect([...own]).toContain(part.picture.stitch)
        expect(part.choices.find(({ right }) => right)?.id).toBe(part.picture.stitch)
      }
    })
  })

  it('offers no two stitches that look the same', () => {
    forAny('read-the-fabric', ({ parts }) => {
      for (const part of parts) {
        if (part.form !== 'choose' || part.picture?.form !== 'close-up')
          throw new Error('a picture is asked about')
        const { side } = part.picture
        const looks = part.choices.map(({ id }) => closeUpWords(id, side))
        expect(new Set(looks).size).toBe(looks.length)
        expect(looks).not.toContain('')
      }
    })
  })

  it('draws a picture that does not tell its name', () => {
    const { parts } = given(tableFor('mini-horseshoe.yaml'), 'read-the-fabric', 4)
    for (const part of parts) {
      if (part.form !== 'choose' || !part.picture) throw new Error('a picture is asked about')
      const svg = toSvg(pictureOf(part.picture), { idPrefix: 'a' })
      expect(svg).toContain('<path')
      for (const { id, words } of part.choices) {
        expect(svg).not.toContain(words)
        if (id.length > 1) expect(svg).not.toContain(`>${id}`)
      }
    }
  })
})

describe('numbers', () => {
  it('go on until each was met once', () => {
    const met = new Set<number>()
    for (let number = 407; !met.has(number); number = nextNumber(number)) met.add(number)
    expect(met.size).toBe(10_000)
    expect(Math.max(...met)).toBe(9999)
  })

  it('are read out and read back as four digits', () => {
    for (const number of [0, 7, 407, 9999]) expect(readNumber(numberText(number))).toBe(number)
    for (const odd of ['', '407', '04070', 'abcd', '１２３４', null, 407]) expect(readNumber(odd)).toBe(null)
  })

  it('stand in an address with the kind, and an odd address leads where everyone begins', () => {
    const first = { kind: 'comes-next', number: 407 } as const
    const spot = { kind: 'wrong-repeat', number: 12 } as const
    expect(readSpot(`#${spotText(spot)}`, first)).toEqual(spot)
    expect(readSpot('#mend-it', first)).toEqual({ kind: 'mend-it', number: 407 })
    for (const odd of [
      '',
      '#',
      '#nothing-0001',
      '#wrong-repeat-1',
      '#wrong-repeat-00011',
      `#${'a'.repeat(9999)}`,
      null,
      '#__proto__-0001',
    ])
      expect(readSpot(odd, first)).toEqual(first)
  })
})
