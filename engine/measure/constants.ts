import { between, type Figure } from './figure.ts'
import { planarLoop } from './planar-loop.ts'

/**
 * Yarn length of a plain loop over the height of its row (kc) and over its width (kw): l = kc · c = kw · w.
 * Value: fully relaxed, examination paper 2015. Band: dry and wet relaxed wool, Munden 1959 (from memory).
 * See tests/reference/geometry.json for each with its certainty.
 */
export const kc: Figure = between(5.0, 5.5, 5.6)
export const kw: Figure = between(3.8, 4.2, 4.2)
/** l² = ks · w · c. */
export const ks: Figure = between(kc.least * kw.least, kc.value * kw.value, kc.most * kw.most)
/** Width of a plain stitch over the height of its row. */
export const rowShape: Figure = between(1.25, kc.value / kw.value, 1.4)

/** Size after blocking over size before. Three measured pieces; see tests/reference/blocking.json. */
export const growth: Figure = between(1.1, 1.2, 1.3)
/** Lace knitted to a stocking-stitch gauge. Our own allowance, no source. */
export const laceFromStocking: Figure = between(0.8, 1, 1.2)

/** Two circles of thread side by side in each other's arcs: w = 4d, h = 2√3 d, r = 1.5 d (proportions from memory). */
const closeLoop = planarLoop({ width: 4, height: 2 * Math.sqrt(3), radius: 1.5 })

/** Yarn in one of each, in plain loops. For the yarn over: a loop without the arc to its neighbour. */
export const shares = {
  drawn: between(1, 1, 1),
  over: between(0.5, 1 - closeLoop.arc / closeLoop.length, 1),
  castOn: between(1.5, 2, 2.5),
  bound: between(1, 1, 1.5),
  slipped: between(1 / kw.most, 1 / kw.value, 1 / kw.least),
} as const satisfies Record<string, Figure>

/** Millimetres left hanging at either end of the piece. Common practice, no source. */
export const tail = 150
/** Bought beyond the most that may be needed. Common practice, no source. */
export const spare = 0.1
/** A hand's pace over a whole piece. Our own allowance, no source. */
export const paceSpread: Figure = between(0.75, 1, 1.25)

/** Minutes at the needles and minutes of rest after them: the longest rests, the middle, the shortest. */
export const restEvery = {
  most: { work: 30, rest: 10 },
  usual: { work: 30, rest: 5 },
  least: { work: 45, rest: 5 },
} as const

/** Rows between two lifelines, as guides for lace knitters have it. */
export const rowsBetweenLifelines = 10
