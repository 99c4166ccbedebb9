/**
 * What a knitter knows of stitches and mistakes, said of the motions of the hands. All of it: common
 * practice, no source.
 */
import { describe, expect, it } from 'vitest'
import { effectOf, type Motion, type Mount, perform, stitch } from '../../engine/stitches/index.ts'

const slip = (as: 'knitwise' | 'purlwise'): Motion => ({ do: 'slip', loops: 1, as, together: false })
const work = (loops: number, leg: 'front' | 'back', as: 'knitwise' | 'purlwise'): Motion[] => [
  { do: 'enter', loops, leg, as },
  { do: 'wrap' },
  { do: 'draw' },
  { do: 'drop' },
]
const pass = (loops: number, over = 1): Motion => ({ do: 'pass', loops, over, from: 'right' })
const twistedIn = (motions: readonly Motion[], mounts: readonly Mount[] = []) =>
  perform(motions, mounts).made[0]?.twisted

describe('decreases', () => {
  it('sk2p makes three one and leans left, the centred double does not lean, k3tog leans right', () => {
    const doubles = ['sk2p', 's2kp', 'k3tog'].map(stitch)
    expect(doubles.map(({ takes, makes }) => [takes, makes])).toEqual([
      [3, 1],
      [3, 1],
      [3, 1],
    ])
    expect(doubles.map(({ lean }) => lean)).toEqual(['left', 'centre', 'right'])
  })

  it('k2tog shows its left loop in front, ssk its right one', () => {
    expect(stitch('k2tog').frontToBack).toEqual([2, 1])
    expect(stitch('ssk').frontToBack).toEqual([1, 2])
  })

  it('an ssk slipped purlwise comes out twisted', () => {
    const slipped = (as: 'knitwise' | 'purlwise') => [
      slip(as),
      slip(as),
      { do: 'meet', loops: 2 } as const,
      ...work(2, 'back', 'knitwise'),
    ]
    expect(twistedIn(slipped('knitwise'))).toEqual([false, false])
    expect(twistedIn(slipped('purlwise'))).toEqual([true, true])
  })

  it('a skp slipped purlwise twists the stitch that is passed over', () => {
    const slipped = (as: 'knitwise' | 'purlwise') => [slip(as), ...work(1, 'front', 'knitwise'), pass(1)]
    expect(twistedIn(slipped('knitwise'))).toEqual([false, false])
    expect(twistedIn(slipped('purlwise'))).toEqual([true, false])
  })

  it('over a purl it is the other way: slipped purlwise the passed stitch lies open', () => {
    const slipped = (as: 'knitwise' | 'purlwise') => [slip(as), ...work(1, 'front', 'purlwise'), pass(1)]
    expect(twistedIn(slipped('purlwise'))).toEqual([false, false])
    expect(twistedIn(slipped('knitwise'))).toEqual([true, false])
  })

  it('two slipped one by one instead of together are no centred decrease', () => {
    const oneByOne = perform([slip('knitwise'), slip('knitwise'), ...work(1, 'front', 'knitwise'), pass(2)])
    expect(oneByOne.made[0]?.through).toEqual([1, 2, 3])
    expect(stitch('s2kp').frontToBack).toEqual([2, 1, 3])
  })

  it('five into one leans left, since the second of the five lies on top', () => {
    const { takes, makes, frontToBack, lean } = stitch('s2k3p')
    expect([takes, makes, frontToBack[0], lean]).toEqual([5, 1, 2, 'left'])
  })

  it('tbl decreases twist all their stitches, the slipped ones none', () => {
    for (const id of ['k2tog tbl', 'k3tog tbl', 'p2tog tbl', 'p3tog tbl'])
      expect(stitch(id).effect.made[0]?.twisted, id).not.toContain(false)
    for (const id of [
      'ssk',
      'sssk',
      'ssp',
      'sssp',
      'skp',
      'spp',
      'sk2p',
      'sp2p',
      's2kp',
      's2pp',
      'p2sp',
      'k2sp',
      'ssksp',
    ])
      expect(stitch(id).twisted, id).toBe(false)
  })
})

describe('legs', () => {
  it('a yarn over worked through its leading leg stays open, through the other twists shut', () => {
    const [made] = stitch('yo').effect.made
    const mounts = [made?.mount ?? 'turned']
    expect(effectOf('k', mounts).made[0]?.twisted).toEqual([false])
    expect(effectOf('p', mounts).made[0]?.twisted).toEqual([false])
    expect(effectOf('k tbl', mounts).made[0]?.twisted).toEqual([true])
  })

  it('a backward yarn over knitted through the front leg is twisted, through the back leg open', () => {
    const [made] = stitch('byo').effect.made
    const mounts = [made?.mount ?? 'usual']
    expect(effectOf('k', mounts).made[0]?.twisted).toEqual([true])
    expect(effectOf('k tbl', mounts).made[0]?.twisted).toEqual([false])
  })

  it('a stitch slipped knitwise sits turned, purlwise as before', () => {
    expect(stitch('sl kwise').effect.made[0]?.mount).toBe('turned')
    expect(stitch('sl').effect.made[0]?.mount).toBe('usual')
    expect(effectOf('sl kwise', ['turned']).made[0]?.mount).toBe('usual')
  })

  it('a turned stitch in an ssk is twisted, beside one that is not', () => {
    expect(effectOf('ssk', ['turned', 'usual']).made[0]?.twisted).toEqual([true, false])
  })

  it('m1l and m1r are both twisted shut, one to each side', () => {
    expect(stitch('m1l').effect.made[0]?.strandTwist).toBe('left')
    expect(stitch('m1r').effect.made[0]?.strandTwist).toBe('right')
    expect([stitch('m1l').lean, stitch('m1r').lean]).toEqual(['left', 'right'])
  })

  it('a strand lifted the wrong way for its leg leaves a hole', () => {
    const open = perform([{ do: 'liftStrand', from: 'front' }, ...work(1, 'front', 'knitwise')])
    expect([open.takes, open.made[0]?.from, open.made[0]?.strandTwist]).toEqual([0, 'strand', null])
  })
})

describe('more than one', () => {
  it.each([5, 7, 9])('a nupp makes %i from one, and the next row gathers them to one again', (n) => {
    const nupp = stitch(`nupp${n}`)
    expect([nupp.takes, nupp.makes]).toEqual([1, n])
    expect(nupp.motions.filter((motion) => motion.do === 'draw').every(({ loosely }) => loosely)).toBe(true)
    for (const id of [`p${n}tog`, `k${n}tog`])
      expect([stitch(id).takes, stitch(id).makes], id).toEqual([n, 1])
  })

  it('kfb knits the stitch open first and twisted second', () => {
    expect(stitch('kfb').effect.made.map(({ through, twisted }) => [through, twisted])).toEqual([
      [[1], [false]],
      [[1], [true]],
    ])
  })

  it('k1-p1-k1 in one shows knit, purl, knit, all out of one stitch', () => {
    const { made } = stitch('(k1, p1, k1) in 1').effect
    expect(made.map(({ face, through }) => [face, through])).toEqual([
      ['knit', [1]],
      ['purl', [1]],
      ['knit', [1]],
    ])
  })

  it('a double yarn over is two loops, or one long one', () => {
    expect([stitch('yo2').makes, stitch('yo2').cells]).toEqual([2, 2])
    expect([stitch('yo2 long').makes, stitch('yo2 long').cells, stitch('yo2 long').us]).toEqual([1, 1, 'yo2'])
  })

  it('one passed over two leaves two, each through its own stitch and through the slipped one', () => {
    const { takes, effect } = stitch('sl1 k2 psso')
    expect([takes, effect.made.map(({ through }) => through)]).toEqual([
      3,
      [
        [1, 2],
        [1, 3],
      ],
    ])
    expect(effect.made.flatMap(({ twisted }) => twisted)).not.toContain(true)
  })

  it('a yarn over passed over two stitches leaves the count and bands the two', () => {
    const { takes, makes, effect } = stitch('yo k2 pyo')
    expect([takes, makes, effect.made.map(({ banded }) => banded)]).toEqual([2, 2, [true, true]])
  })

  it('a right cross brings the left stitch in front, a left cross the right one', () => {
    const crosses = ['1/1 RC', '1/1 LC', '2/2 RC', '2/2 LC'].map(stitch)
    expect(crosses.map(({ effect }) => effect.made.flatMap(({ through }) => through))).toEqual([
      [2, 1],
      [2, 1],
      [3, 4, 1, 2],
      [3, 4, 1, 2],
    ])
    expect(crosses.map(({ effect }) => effect.inFront)).toEqual([[2], [1], [3, 4], [1, 2]])
  })
})

describe('edges and holders', () => {
  it('binding off takes one and leaves no more on the needle than there were', () => {
    for (const id of ['bo', 'bo p']) {
      const { takes, makes, cells, effect } = stitch(id)
      expect([takes, makes, cells, effect.boundOff]).toEqual([1, 0, 1, [1]])
      expect(effect.chain?.through).toEqual([1])
    }
  })

  it('a join takes one from the needle and one that was held', () => {
    for (const id of ['k2tog join', 'ssk join', 'p2tog join']) {
      const { takes, makes, effect } = stitch(id)
      expect([takes, effect.held, makes], id).toEqual([1, 1, 1])
      expect(effect.made[0]?.through.toSorted(), id).toEqual([1, 2])
    }
  })

  it('a stitch put on a holder waits and is not bound off', () => {
    const { takes, makes, effect } = stitch('hold')
    expect([takes, makes, effect.parked, effect.boundOff]).toEqual([1, 0, 1, []])
  })

  it('a slipped stitch is taken and kept, with the yarn on the side that was named', () => {
    expect(stitch('sl').effect.made[0]).toMatchObject({ slipped: 1, through: [], float: null })
    expect(stitch('sl wyif').effect.made[0]?.float).toBe('near')
    expect(stitch('sl wyib').effect.made[0]?.float).toBe('far')
  })
})

describe('motions that no hands can make', () => {
  const [enter, wrap, draw, drop] = work(1, 'front', 'knitwise') as [Motion, Motion, Motion, Motion]
  const hold: Motion = { do: 'hold', loops: 1, where: 'back' }

  it.each<[string, Motion[], RegExp]>([
    ['drawing a loop with no yarn round the tip', [enter, draw], /no yarn was wrapped/],
    ['wrapping with the tip in no loop', [wrap], /in no loop/],
    ['dropping what was not worked', [enter, drop], /nothing was drawn/],
    ['slipping with a wrap on the tip', [enter, wrap, slip('knitwise')], /drawn through first/],
    ['entering and leaving it so', [enter], /not dropped/],
    ['working and not dropping', [enter, wrap, draw], /not dropped/],
    ['forgetting the cable needle', [hold], /cable needle still/],
    ['filling the cable needle twice', [hold, hold], /taken/],
    ['emptying an empty cable needle', [{ do: 'unhold' }], /empty/],
    ['giving back more than there is', [{ do: 'return', loops: 1 }], /right needle has 0/],
    [
      'passing two where there is one',
      [slip('knitwise'), enter, wrap, draw, drop, pass(2)],
      /right needle has 2/,
    ],
    [
      'passing over a stitch that was only slipped',
      [slip('knitwise'), slip('knitwise'), pass(1)],
      /only new loops/,
    ],
    [
      'leaving a new loop on the left needle',
      [enter, wrap, draw, drop, { do: 'return', loops: 1 }],
      /was not there/,
    ],
    ['a bead for no loop', [{ do: 'bead' }], /bead/],
    ['jumping over a stitch', [hold, enter, wrap, draw, drop, { do: 'unhold' }], /jumped over/],
  ])('%s throws', (_, motions, message) => {
    expect(() => perform(motions)).toThrow(message)
  })
})
