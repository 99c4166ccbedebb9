/** Plainer stitches for awkward ones, and borders that add up. */
import { describe, expect, it } from 'vitest'
import { adapt, offersIn, plainer, readRequests, swapName } from '../../engine/adapt/index.ts'
import { libraryPattern } from '../fabric/support.ts'
import { done, faults, printed, refused } from './support.ts'

function asked(list: string) {
  const read = readRequests(list)
  if ('unknown' in read) throw new Error(`unknown: ${read.unknown}`)
  return read
}

const lace = libraryPattern('rose-leaf-lambert.yaml')

describe('a plainer stitch for an awkward one', () => {
  const mirrored = done(adapt(lace, asked('mirror'))).pattern

  it('is offered for the slipped purl decreases that a mirrored wrong-side lace comes to', () => {
    expect(offersIn(lace)).toEqual([])
    expect(offersIn(mirrored).map(({ stitch, plainer: by, rows }) => [stitch, by, rows])).toEqual([
      ['ssp', 'p2tog', [2, 4, 6]],
      ['sssp', 'p3tog', [4, 8]],
    ])
  })

  it('is taken one at a time under its own name: the others stay, and so do all counts', () => {
    expect(swapName('ssp', 'p2tog')).toBe('p2tog for ssp')
    const one = done(adapt(lace, asked('mirror, p2tog for ssp'))).pattern
    expect(faults(one)).toEqual([])
    expect(printed(one).join()).not.toMatch(/\bssp\b/)
    expect(printed(one).join()).toMatch(/\bsssp\b/)
    expect(one.castOn).toEqual(mirrored.castOn)
    expect(offersIn(one).map(({ stitch }) => stitch)).toEqual(['sssp'])
  })

  it('is taken for all of them at once, each told with its change of look', () => {
    const { pattern, changes, offers } = done(adapt(lace, asked('mirror, plainer')))
    expect(printed(pattern).join()).not.toMatch(/\bss+p\b/)
    expect(offers).toEqual([])
    expect(changes.filter(({ sentence }) => sentence.startsWith('Taken: '))).toHaveLength(2)
  })

  it('is refused where nothing is awkward', () => {
    expect(refused(plainer(lace)).code).toBe('already')
  })
})

describe('two borders', () => {
  it('are as many rows above the lace as below it', () => {
    const { pattern, closing } = done(adapt(libraryPattern('reed-bed.yaml'), asked('border 4, border 2')))
    expect(pattern.setUp).toHaveLength(6)
    expect(closing).toHaveLength(6)
  })
})
