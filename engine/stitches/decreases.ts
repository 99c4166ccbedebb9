import { entry } from './families.ts'
import {
  giveBack,
  knit,
  knitBack,
  passOver,
  purl,
  purlBack,
  returnAndPass,
  slip,
  slipSlipKnit,
  slipSlipPurl,
  slipTogether,
  turnNextReturnAndPass,
} from './moves.ts'
import type { StitchEntry } from './stitch.ts'

/** Two into one. The plainest stitch of each look stands first: twins are looked for in this order. */
export const decreases: readonly StitchEntry[] = [
  entry('k2tog', 'decrease', 'knit two together', knit(2)),
  entry('ssk', 'decrease', 'slip, slip, knit', slipSlipKnit(2)),
  entry('p2tog', 'decrease', 'purl two together', purl(2), {
    note: 'Its lean is named for the knit side only: published sources disagree about the purl side.',
  }),
  entry('ssp', 'decrease', 'slip, slip, purl', slipSlipPurl(2), {
    note: 'One source gives this name to two stitches slipped purlwise, which comes out as p2tog.',
  }),
  entry(
    'skp',
    'decrease',
    'slip one, knit one, pass the slipped stitch over',
    [...slip('knitwise'), ...knit(), passOver(1)],
    { uk: 'skpo', note: 'The same fabric as ssk. Written out it reads: sl1, k1, psso.' },
  ),
  entry(
    'ksp',
    'decrease',
    'knit one, return it, pass the next stitch over, slip it back',
    [...knit(), ...returnAndPass],
    { note: 'The same fabric as k2tog, made by passing over.' },
  ),
  entry(
    'spp',
    'decrease',
    'slip one, purl one, pass the slipped stitch over',
    [...slip('purlwise'), ...purl(), passOver(1)],
    {
      note: 'Slipped purlwise: passed over a purl, a stitch slipped knitwise would be twisted. The same fabric as p2tog.',
    },
  ),
  entry('k2tog tbl', 'decrease', 'knit two together through the back loops', knitBack(2), {
    note: 'Leans as ssk does, but twists both stitches.',
  }),
  entry('p2tog tbl', 'decrease', 'purl two together through the back loops', purlBack(2), {
    note: 'Twists both stitches; ssp does not.',
  }),
]

/** Three into one, and the wider ones that pass stitches over. */
export const doubleDecreases: readonly StitchEntry[] = [
  entry('k3tog', 'double decrease', 'knit three together', knit(3)),
  entry('sssk', 'double decrease', 'slip, slip, slip, knit', slipSlipKnit(3)),
  entry('p3tog', 'double decrease', 'purl three together', purl(3)),
  entry('sssp', 'double decrease', 'slip, slip, slip, purl', slipSlipPurl(3)),
  entry(
    'sk2p',
    'double decrease',
    'slip one, knit two together, pass the slipped stitch over',
    [...slip('knitwise'), ...knit(2), passOver(1)],
    {
      uk: 'sk2po',
      note: 'Written out it reads: sl1, k2tog, psso. It takes the same three stitches as the centred one, but leans left.',
    },
  ),
  entry(
    's2kp',
    'double decrease',
    'slip two together, knit one, pass the slipped stitches over',
    [slipTogether('knitwise', 2), ...knit(), passOver(2)],
    {
      note: 'The centred double decrease; also spelled s2kp2 or cdd. The two are slipped at once, as if to k2tog.',
    },
  ),
  entry(
    'k2sp',
    'double decrease',
    'knit two together, return it, pass the next stitch over, slip it back',
    [...knit(2), ...returnAndPass],
    { note: 'Its loops lie as those of k3tog. The exact mirror of sk2p begins with an ssk: see ssksp.' },
  ),
  entry(
    'ssksp',
    'double decrease',
    'slip, slip, knit, return it, pass the next stitch over, slip it back',
    [...slipSlipKnit(2), ...returnAndPass],
    { note: 'The exact mirror of sk2p, loop for loop. The abbreviation is this workbook’s own.' },
  ),
  entry(
    'p2sp',
    'double decrease',
    'purl two together, turn the next stitch, pass it over, slip back',
    [...purl(2), ...turnNextReturnAndPass],
    {
      note:
        'The wrong-side form of sk2p. Turn the next stitch by slipping it knitwise before both are returned: ' +
        'passed over as it sits it would be twisted. An old handbook gives p3tog tbl here, but its loops lie in another order.',
    },
  ),
  entry(
    's2pp',
    'double decrease',
    'slip two so that they change places, purl one, pass both over',
    [...slip('knitwise', 2), giveBack(2), slipTogether('throughBack', 2), ...purl(), passOver(2)],
    {
      note: 'The wrong-side form of s2kp: the middle stitch lies in front; behind it the outer two lie the other way round.',
    },
  ),
  entry(
    'sp2p',
    'double decrease',
    'slip one, purl two together, pass the slipped stitch over',
    [...slip('purlwise'), ...purl(2), passOver(1)],
    { note: 'Slipped purlwise, so that it comes out open over a purl. Its loops lie as those of p3tog.' },
  ),
  entry(
    'sl1 ssp psso',
    'double decrease',
    'slip one, ssp, pass the slipped stitch over',
    [...slip('purlwise'), ...slipSlipPurl(2), passOver(1)],
    { note: 'The mirror of p2sp.' },
  ),
  entry('k3tog tbl', 'double decrease', 'knit three together through the back loops', knitBack(3), {
    note: 'Leans as sssk does, but twists all three.',
  }),
  entry('p3tog tbl', 'double decrease', 'purl three together through the back loops', purlBack(3)),
  entry(
    'sk3p',
    'double decrease',
    'slip one, knit three together, pass the slipped stitch over',
    [...slip('knitwise'), ...knit(3), passOver(1)],
    {
      // By analogy with sk2po: from memory.
      uk: 'sk3po',
      note: 'Four stitches become one.',
    },
  ),
  entry(
    'p3sp',
    'double decrease',
    'purl three together, turn the next stitch, pass it over, slip back',
    [...purl(3), ...turnNextReturnAndPass],
    { note: 'The wrong-side form of sk3p.' },
  ),
  entry(
    's2k3p',
    'double decrease',
    'slip two together, knit three together, pass the slipped stitches over',
    [slipTogether('knitwise', 2), ...knit(3), passOver(2)],
    {
      note: 'Five stitches become one. The second of them lies on top, right of the middle, so it leans left.',
    },
  ),
]
