import { decreases, doubleDecreases } from './decreases.ts'
import { entry, gatherings, increasesInOne, nupps, passings } from './families.ts'
import {
  cross,
  drop,
  into,
  knit,
  knitBack,
  meet,
  passOver,
  purl,
  purlBack,
  slip,
  yarnOver,
  yarnTo,
} from './moves.ts'
import type { StitchEntry } from './stitch.ts'

const plain: readonly StitchEntry[] = [
  entry('k', 'plain', 'knit', knit()),
  entry('p', 'plain', 'purl', purl()),
  entry('k tbl', 'twisted', 'knit through the back loop', knitBack()),
  entry('p tbl', 'twisted', 'purl through the back loop', purlBack()),
]

const yarnOvers: readonly StitchEntry[] = [
  entry('yo', 'yarn over', 'yarn over', [yarnOver()], {
    uk: 'yfwd',
    note:
      'British patterns name it by its neighbours: yfwd between knits, yrn between purls, yfrn from knit to purl, ' +
      'yon from purl to knit. Some lists use yf for carrying the yarn only, which makes no stitch.',
  }),
  entry('yo2', 'yarn over', 'double yarn over', [yarnOver(2)], {
    uk: 'yfwd twice',
    note: 'Two loops. The next row works a knit and a purl into the pair, in the order that the pattern names.',
  }),
  entry('yo2 long', 'yarn over', 'double yarn over, one long loop', [yarnOver(2, { long: true })], {
    us: 'yo2',
    uk: 'yfwd twice',
    note: 'Two wraps that the next row lets out into one long loop.',
  }),
  entry('byo', 'yarn over', 'backward yarn over', [yarnOver(1, { backward: true })], {
    note: 'Its leading leg is at the back: knitted through the front it is twisted.',
  }),
]

const slips: readonly StitchEntry[] = [
  entry('sl', 'slip', 'slip purlwise, yarn on the wrong side', slip('purlwise'), {
    note: 'Alone, a stitch is slipped purlwise unless told otherwise; inside a decrease, knitwise.',
  }),
  entry('sl wyif', 'slip', 'slip purlwise with the yarn in front', [yarnTo('front'), ...slip('purlwise')]),
  entry('sl wyib', 'slip', 'slip purlwise with the yarn in back', [yarnTo('back'), ...slip('purlwise')]),
  entry('sl kwise', 'slip', 'slip knitwise', slip('knitwise'), {
    note: 'The stitch sits turned afterwards.',
  }),
]

const lifted = (from: 'front' | 'back') => ({ do: 'liftStrand', from }) as const

const increases: readonly StitchEntry[] = [
  entry('m1l', 'increase', 'make one left', [lifted('front'), ...knitBack()]),
  entry('m1r', 'increase', 'make one right', [lifted('back'), ...knit()]),
  entry('m1lp', 'increase', 'make one left, purled', [lifted('front'), ...purlBack()]),
  entry('m1rp', 'increase', 'make one right, purled', [lifted('back'), ...purl()]),
  entry('m1', 'increase', 'make one', [lifted('front'), ...knitBack()], {
    note: 'Worked as m1l where no side is named.',
  }),
  entry('m1p', 'increase', 'make one purlwise', [lifted('front'), ...purlBack()], {
    note: 'Worked as m1lp where no side is named.',
  }),
  entry(
    'kfb',
    'increase',
    'knit into the front and back',
    [...into(1, 'knitwise'), ...into(1, 'knitwise', 'back'), drop],
    {
      note: 'Its second loop is twisted and leaves a small bar on the knit side. British patterns also call it inc.',
    },
  ),
  entry('pfb', 'increase', 'purl into the front and back', [
    ...into(1, 'purlwise'),
    ...into(1, 'purlwise', 'back'),
    drop,
  ]),
  entry('kfbf', 'increase', 'knit into the front, the back and the front again', [
    ...into(1, 'knitwise'),
    ...into(1, 'knitwise', 'back'),
    ...into(1, 'knitwise'),
    drop,
  ]),
  entry('rli', 'increase', 'right lifted increase', [
    { do: 'enterBelow', of: 'next' },
    { do: 'wrap' },
    { do: 'draw' },
  ]),
  entry('lli', 'increase', 'left lifted increase', [
    { do: 'enterBelow', of: 'newest' },
    { do: 'wrap' },
    { do: 'draw' },
  ]),
]

const twice = [...knit(), ...knit()]

const crossings: readonly StitchEntry[] = [
  entry('1/1 RC', 'crossing', 'one over one, crossed to the right', cross(1, 'back', knit(), knit())),
  entry('1/1 LC', 'crossing', 'one over one, crossed to the left', cross(1, 'front', knit(), knit())),
  entry('2/2 RC', 'crossing', 'two over two, crossed to the right', cross(2, 'back', twice, twice)),
  entry('2/2 LC', 'crossing', 'two over two, crossed to the left', cross(2, 'front', twice, twice)),
  entry(
    '1/1 RPC',
    'crossing',
    'one knit over one purl, crossed to the right',
    cross(1, 'back', knit(), purl()),
  ),
  entry(
    '1/1 LPC',
    'crossing',
    'one knit over one purl, crossed to the left',
    cross(1, 'front', purl(), knit()),
  ),
]

const bandedPair = entry(
  'yo k2 pyo',
  'passing',
  'yarn over, knit two, pass the yarn over over both',
  [yarnOver(), ...twice, passOver(1, 2)],
  { note: 'The count stays: the yarn over ends as a belt round the two.' },
)

const edges: readonly StitchEntry[] = [
  entry('bo', 'bind off', 'bind off one', [...knit(), passOver(1)], {
    uk: 'cast off',
    note: 'Each stitch is knitted and the one before it passed over it; the last one knitted stays on the right needle.',
  }),
  entry('bo p', 'bind off', 'bind off one purlwise', [...purl(), passOver(1)], { uk: 'cast off p' }),
  entry('co', 'cast on', 'cast on one', [{ do: 'castOn' }]),
]

const others: readonly StitchEntry[] = [
  entry('bead', 'bead', 'knit with a bead', [{ do: 'bead' }, ...knit()]),
  entry('k2tog join', 'holding', 'knit the last stitch together with one held stitch', [
    { do: 'fetch', loops: 1 },
    ...knit(2),
  ]),
  entry('ssk join', 'holding', 'slip the last stitch and one held stitch, knit them together', [
    { do: 'fetch', loops: 1 },
    ...slip('knitwise', 2),
    meet(2),
    ...knitBack(2),
  ]),
  entry('p2tog join', 'holding', 'purl the last stitch together with one held stitch', [
    { do: 'fetch', loops: 1 },
    ...purl(2),
  ]),
  entry('hold', 'holding', 'place one stitch on a holder', [{ do: 'park', loops: 1 }]),
]

/**
 * Every stitch that can be written in a row. Where several look alike, the one that stands first speaks for
 * them.
 */
export const entries: readonly StitchEntry[] = [
  ...plain,
  ...yarnOvers,
  ...decreases,
  ...doubleDecreases,
  ...gatherings,
  ...slips,
  ...increases,
  ...increasesInOne,
  ...nupps,
  ...crossings,
  ...passings,
  bandedPair,
  ...edges,
  ...others,
]
