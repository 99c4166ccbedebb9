/** The steps in words. The four yarn overs follow the sources named in tests/reference/stitches.json. */
import { describe, expect, it } from 'vitest'
import {
  catalogue,
  type Hold,
  handSteps,
  type Neighbours,
  neighbourYarnOver,
  stitch,
} from '../../engine/stitches/index.ts'

const holds: readonly Hold[] = ['English', 'Continental']
const steps = (
  id: string,
  hold: Hold = 'English',
  before: Neighbours['before'] = null,
  after: Neighbours['after'] = null,
) => handSteps(stitch(id), hold, { before, after })

describe('every stitch', () => {
  it.each(holds)('has its steps for a knitter who holds the yarn the %s way', (hold) => {
    for (const { id } of catalogue) {
      const told = steps(id, hold)
      expect(told.length, id).toBeGreaterThan(0)
      for (const step of told) expect(step, id).toMatch(/^[A-Z].*\.$/s)
    }
  })

  it('is told without an undefined word, a double space or a step too long to keep in mind', () => {
    for (const { id } of catalogue)
      for (const step of holds.flatMap((hold) => steps(id, hold))) {
        expect(step, id).not.toMatch(/undefined|null|NaN| {2}/)
        expect(step.length, step).toBeLessThan(170)
      }
  })

  it('uses left and right for sides alone, so that they can be swapped', () => {
    for (const { id } of catalogue)
      for (const step of holds.flatMap((hold) => steps(id, hold))) {
        expect(step, id).not.toMatch(
          /right side|right behind|right away|\bright,? so\b|is left\b|are left\b/i,
        )
      }
  })

  it('differs between the holds wherever yarn goes round a tip, and nowhere else', () => {
    for (const { id, motions } of catalogue) {
      const yarn = motions.some((motion) => ['wrap', 'over', 'castOn'].includes(motion.do))
      const same = JSON.stringify(steps(id, 'English')) === JSON.stringify(steps(id, 'Continental'))
      expect(same, id).toBe(!yarn)
    }
  })
})

describe('a yarn over, thrown', () => {
  const told = (before: Neighbours['before'], after: Neighbours['after']) =>
    steps('yo', 'English', before, after)

  it('between knits: forward between the needles, and over as the next is knitted', () => {
    const [first, second, ...rest] = told('knit', 'knit')
    expect(first).toMatch(/forward between the needles/)
    expect(second).toMatch(/over the right needle to the back as you knit/)
    expect(rest).toEqual([])
  })

  it('between purls: over to the back, and forward again', () => {
    const [first, second, ...rest] = told('purl', 'purl')
    expect(first).toMatch(/over the right needle to the back/)
    expect(second).toMatch(/forward between the needles again/)
    expect(rest).toEqual([])
  })

  it('from knit to purl: the full turn', () => {
    const turn = told('knit', 'purl')
    expect(turn).toHaveLength(3)
    expect(turn[0]).toMatch(/forward between/)
    expect(turn[1]).toMatch(/over the right needle to the back/)
    expect(turn[2]).toMatch(/forward between the needles again/)
  })

  it('from purl to knit: the yarn stays in front and rises by itself', () => {
    expect(told('purl', 'knit')).toEqual([expect.stringMatching(/^Leave the yarn in front.*by itself\.$/)])
  })

  it('at the start of a row: in front of the empty needle', () => {
    expect(told('start', 'knit')).toEqual([
      expect.stringMatching(/empty right needle/),
      expect.stringMatching(/by itself/),
    ])
    expect(told('start', 'purl')).toHaveLength(3)
  })

  it('at the end of a row: a finger on it while turning', () => {
    expect(told('knit', 'end').at(-1)).toMatch(/finger/)
  })

  it('is told otherwise for each place that it can stand in', () => {
    const places = (['knit', 'purl', 'start'] as const).flatMap((before) =>
      (['knit', 'purl', 'end'] as const).map((after) => told(before, after).join(' ')),
    )
    expect(new Set(places).size).toBe(places.length)
  })
})

describe('the British word for a yarn over', () => {
  it.each([
    ['knit', 'knit', 'yfwd'],
    ['purl', 'purl', 'yrn'],
    ['knit', 'purl', 'yfrn'],
    ['purl', 'knit', 'yon'],
    ['start', 'knit', 'yfwd'],
    ['start', 'purl', 'yrn'],
    [null, null, 'yfwd'],
    ['purl', 'end', 'yon'],
  ] as const)('from %s to %s is %s', (before, after, word) => {
    expect(neighbourYarnOver(before, after)).toBe(word)
  })
})

describe('the words of some stitches', () => {
  it('slip twice knitwise for ssk, then knit through the backs', () => {
    const told = steps('ssk')
    expect(told[0]).toMatch(/^Slip the next stitch knitwise/)
    expect(told[1]).toMatch(/in the same way/)
    expect(told[2]).toMatch(/left tip into the fronts of both/)
    expect(told.at(-1)).toMatch(/both old stitches drop/)
  })

  it('slip two at once for the centred decrease, and pass both over together', () => {
    const told = steps('s2kp')
    expect(told[0]).toMatch(/next two stitches at once.*change places/)
    expect(told.at(-1)).toMatch(/both slipped stitches together over the new one/)
  })

  it('go back into the same stitch for kfb', () => {
    expect(steps('kfb').filter((step) => /same stitch/.test(step))).toHaveLength(1)
  })

  it('draw a nupp up long and loose', () => {
    expect(steps('nupp7').filter((step) => /long and loose/.test(step))).toHaveLength(4)
  })

  it('care for the wrists where many loops are worked at once', () => {
    expect(steps('p5tog').join(' ')).toMatch(/do not force it/)
    expect(steps('k2tog').join(' ')).not.toMatch(/force/)
  })

  it('take the yarn to the other face after a slip with it in front, if a knit follows', () => {
    expect(steps('sl wyif', 'English', 'knit', 'knit').at(-1)).toMatch(/to the back/)
    expect(steps('sl wyif', 'English', 'purl', 'purl')).toHaveLength(2)
  })
})
