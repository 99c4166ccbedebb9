import type { StitchId } from './stitch.ts'
import {
  banded,
  curve,
  digit,
  dot,
  fan,
  line,
  mirrored,
  polyline,
  rake,
  ring,
  type Stroke,
} from './symbol-shapes.ts'

const rising = line(0.2, 0.8, 0.8, 0.2)
const falling = line(0.2, 0.2, 0.8, 0.8)
/** Where the strokes of three stitches drawn into one stand. */
export const feet = [0.18, 0.5, 0.82] as const
const threeRight = fan([0.82, 0.18], feet, 0.82)
const threeLeft = mirrored(threeRight)
const passedOver = [falling, line(0.5, 0.5, 0.2, 0.8)]
const vee = polyline([0.2, 0.2], [0.5, 0.8], [0.8, 0.2])
/** A loop whose legs cross. */
const twist = curve(
  [0.26, 0.84],
  [0.5, 0.62, 0.76, 0.46, 0.68, 0.28],
  [0.6, 0.12, 0.4, 0.12, 0.32, 0.28],
  [0.24, 0.46, 0.5, 0.62, 0.74, 0.84],
)
const em = (lean: number) =>
  polyline([0.22 + lean, 0.82], [0.22 - lean, 0.18], [0.5, 0.56], [0.78 - lean, 0.18], [0.78 + lean, 0.82])
const lifted = [line(0.42, 0.84, 0.42, 0.16), line(0.42, 0.66, 0.76, 0.24)]
const fork = (...ends: Stroke[]) => [
  line(1, 0.84, 1, 0.56),
  line(1, 0.56, 0.5, 0.2),
  line(1, 0.56, 1.5, 0.2),
  ...ends,
]
const hooked = [
  line(0.34, 0.66, 0.8, 0.2),
  curve([0.34, 0.66], [0.22, 0.78, 0.26, 0.88, 0.38, 0.86], [0.46, 0.85, 0.5, 0.8, 0.5, 0.74]),
]
const arch = curve([0.18, 0.66], [0.22, 0.3, 0.78, 0.3, 0.82, 0.66])
const pin = ring(0.25, 0.25, 0.12)

/**
 * Stitches with a sign of their own. Blank for knit, a dot for purl, a circle for a yarn over and a stroke that leans as
 * the decrease does are what published keys describe (tests/reference/chart-symbols.json names them). The other shapes
 * are from memory or drawn from what the stitch does; the key beside every chart says which is which.
 */
export const ownSymbols: Readonly<Record<StitchId, readonly Stroke[]>> = {
  k: [],
  p: [dot(0.5, 0.5)],
  'k tbl': [twist],
  'p tbl': [twist, dot(0.5, 0.86)],
  yo: [ring(0.5, 0.5, 0.28)],
  yo2: [ring(0.5, 0.5, 0.28), ring(1.5, 0.5, 0.28)],
  'yo2 long': [ring(0.5, 0.5, 0.34), ring(0.5, 0.5, 0.15)],
  byo: [ring(0.54, 0.54, 0.27), line(0.35, 0.35, 0.16, 0.16)],
  k2tog: [rising],
  ssk: [falling],
  p2tog: [rising, dot(0.74, 0.74)],
  ssp: [falling, dot(0.26, 0.74)],
  'k2tog tbl': [pin, line(0.34, 0.34, 0.8, 0.8)],
  'p2tog tbl': [pin, line(0.34, 0.34, 0.8, 0.8), dot(0.26, 0.74)],
  k3tog: threeRight,
  sssk: threeLeft,
  p3tog: [...threeRight, dot(0.26, 0.28)],
  sssp: [...threeLeft, dot(0.74, 0.28)],
  'k3tog tbl': [pin, ...fan([0.34, 0.34], feet, 0.82)],
  'p3tog tbl': [pin, ...fan([0.34, 0.34], feet, 0.82), dot(0.74, 0.28)],
  s2kp: fan([0.5, 0.18], feet, 0.82),
  s2pp: [...fan([0.5, 0.18], feet, 0.82), dot(0.18, 0.3)],
  sk2p: passedOver,
  p2sp: [...passedOver, dot(0.5, 0.84)],
  ssksp: mirrored(passedOver),
  'sl1 ssp psso': [...mirrored(passedOver), dot(0.5, 0.84)],
  sk3p: [...passedOver, digit(4, 0.74, 0.3)],
  p3sp: [...passedOver, digit(4, 0.74, 0.3), dot(0.5, 0.84)],
  s2k3p: [...passedOver, digit(5, 0.74, 0.3)],
  sl: [vee],
  'sl wyif': [vee, line(0.32, 0.44, 0.68, 0.44)],
  'sl kwise': [polyline([0.2, 0.2], [0.5, 0.8], [0.8, 0.2], [0.54, 0.2])],
  m1: [em(0)],
  m1p: [em(0), dot(0.5, 0.84)],
  m1l: [em(0.1)],
  m1r: [em(-0.1)],
  m1lp: [em(0.1), dot(0.55, 0.84)],
  m1rp: [em(-0.1), dot(0.45, 0.84)],
  kfb: fork(),
  pfb: fork(dot(1, 0.24)),
  kfbf: rake(['knit', 'knit', 'knit']),
  rli: lifted,
  lli: mirrored(lifted),
  'yo k2 pyo': [...banded(2, 1.58), ring(1.72, 0.5, 0.14)],
  bo: [arch],
  'bo p': [arch, dot(0.5, 0.72)],
  co: [curve([0.18, 0.36], [0.22, 0.72, 0.78, 0.72, 0.82, 0.36])],
  bead: [polyline([0.5, 0.16], [0.8, 0.5], [0.5, 0.84], [0.2, 0.5], [0.5, 0.16])],
  'k2tog join': hooked,
  'ssk join': mirrored(hooked),
  'p2tog join': [...hooked, dot(0.76, 0.76)],
  hold: [polyline([0.2, 0.34], [0.2, 0.7], [0.8, 0.7], [0.8, 0.34])],
}
