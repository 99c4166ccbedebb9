/** The steps of making a pattern over, as an address carries them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { adaptHash, parseAdaptHash, readMakeOver } from '../../engine/intake/index.ts'

describe('an address with the steps in it', () => {
  it('is read with blanks, with hyphens, and as browsers write it', () => {
    const wanted = parseAdaptHash('#round,mirror,wider 2').steps
    expect(wanted.map((step) => (step.kind === 'request' ? step.request : step.kind))).toEqual([
      { do: 'round' },
      { do: 'mirror' },
      { do: 'wider', sizes: 2 },
    ])
    expect(parseAdaptHash('#round,mirror,wider-2').steps).toEqual(wanted)
    expect(parseAdaptHash('#round,mirror,wider%202').steps).toEqual(wanted)
  })

  it('names another pattern by its address, and where it goes', () => {
    expect(parseAdaptHash('#beside-mini-horseshoe,above vine').steps).toMatchObject([
      { kind: 'together', where: 'beside', slug: 'mini-horseshoe' },
      { kind: 'together', where: 'above', slug: 'vine' },
    ])
  })

  it('tells what it does not know, with the name that was meant', () => {
    expect(parseAdaptHash('#roud,mirror').steps).toMatchObject([
      { kind: 'unknown', written: 'roud', suggestion: 'round' },
      { kind: 'request' },
    ])
    expect(readMakeOver('wider 0').kind).toBe('unknown')
    expect(readMakeOver('beside ../secret').kind).toBe('unknown')
  })

  it('is written as it is read', () => {
    const steps = parseAdaptHash('#flat,garter edge 3,p2tog for ssp,below two-terns').steps
    expect(adaptHash(steps)).toBe('#flat,garter-edge-3,p2tog-for-ssp,below-two-terns')
    expect(parseAdaptHash(adaptHash(steps)).steps).toEqual(steps)
    expect(adaptHash([])).toBe('')
  })

  it('says so where there is more in it than is read', () => {
    expect(parseAdaptHash(`#${'mirror,'.repeat(24)}`)).toMatchObject({ cut: false })
    const { steps, cut } = parseAdaptHash(`#${'mirror,'.repeat(25)}`)
    expect([steps.length, cut]).toEqual([24, true])
    expect(parseAdaptHash(`#${'m'.repeat(5000)}`).cut).toBe(true)
  })

  it('never throws, and never hands on what steers a terminal', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        for (const step of parseAdaptHash(text).steps) {
          expect(step.written).not.toMatch(/\p{Cc}/u)
          expect(typeof adaptHash([step])).toBe('string')
        }
      }),
    )
    expect(parseAdaptHash('#%E0%A4%A').steps).toHaveLength(1)
    expect(parseAdaptHash(null)).toEqual({ steps: [], cut: false })
  })
})
