import { type Basis, bases } from './bases.ts'
import { ks, kw, shares, spare, tail } from './constants.ts'
import {
  between,
  type Estimate,
  estimate,
  type Figure,
  over,
  plus,
  rootOf,
  scaled,
  sure,
  times,
} from './figure.ts'
import type { Tally } from './tally.ts'

/** What the band of a ball states. */
export interface Ball {
  /** Millimetres; null where it is not known. */
  readonly length: number | null
  /** Grams; null where it is not known. */
  readonly grams: number | null
}

/** A swatch on the scale. */
export interface Weighed {
  readonly grams: number
  /** Stitches that it was cast on with, and its rows. */
  readonly stitches: number
  readonly rows: number
}

/**
 * Millimetres of yarn in a plain loop. `stitch` and `row` are its width and height before blocking, which opens the
 * loops and adds no yarn to them; `row` is null where it was not counted.
 */
export const loopLength = (stitch: Figure, row: Figure | null): Figure =>
  row ? rootOf(times(times(stitch, row), ks)) : times(stitch, kw)

/** Yarn in all, in plain loops: a decrease draws one loop through several, a yarn over is a part of one. */
export function plainLoops({ castOn, drawn, over: overs, slipped, bound }: Tally): Figure {
  const parts = [
    scaled(shares.castOn, castOn),
    scaled(shares.drawn, drawn),
    scaled(shares.over, overs),
    scaled(shares.slipped, slipped),
    scaled(shares.bound, bound),
  ]
  return parts.reduce(plus)
}

/** The share rules that a piece needs. */
const shareBases = ({ over: overs, slipped }: Tally): Basis[] => [
  ...(overs > 0 ? [bases.yarnOver] : []),
  ...(slipped > 0 ? [bases.floats] : []),
  bases.edges,
]

/** Millimetres of yarn from the size of the stitches alone: the roughest way. Sizes before blocking, row null if not counted. */
export function yarnByGauge(tally: Tally, stitch: Estimate, row: Estimate | null): Estimate {
  const length = plus(times(plainLoops(tally), loopLength(stitch, row)), sure(2 * tail))
  const rests = [
    row ? bases.loopLength : bases.loopWidth,
    ...shareBases(tally),
    ...stitch.rests,
    ...(row?.rests ?? []),
  ]
  return estimate(
    length,
    rests,
    'Weigh a swatch of the lace, or count the stitches that one measured length makes.',
  )
}

/** Millimetres of yarn, from the stitches that `length` millimetres of it made. */
export function yarnByLength(tally: Tally, stitches: number, length: number): Estimate {
  const off = Number.isInteger(stitches) ? 0.5 : 0.25
  const each = between(
    length / (stitches + off),
    length / stitches,
    length / Math.max(stitches - off, stitches / 2),
  )
  const yarn = plus(times(plainLoops(tally), each), sure(2 * tail))
  return estimate(
    yarn,
    [bases.measuredYarn, bases.reading, ...shareBases(tally)],
    'A longer measured length: more stitches, and half a stitch matters less.',
  )
}

/** What of a swatch is compared with what of the piece: both stitches × rows, or both loops. */
export interface Areas {
  readonly piece: number
  readonly swatch: number
}

/** Grams of yarn in the piece, from a weighed swatch. */
export function gramsByWeight(areas: Areas, weighed: Weighed, of: 'lace' | 'stocking stitch'): Estimate {
  const off = Number.isInteger(weighed.grams) ? 0.5 : 0.05
  const { grams } = weighed
  const weight = between(Math.max(grams - off, grams / 2), grams, grams + off)
  const rests = [bases.weighed, ...(of === 'lace' ? [] : [bases.yarnOver, bases.edges])]
  return estimate(
    scaled(weight, areas.piece / areas.swatch),
    rests,
    'A larger swatch: on a heavier one half a gram matters less.',
  )
}

/** Grams as millimetres of yarn. */
export const lengthOfGrams = (grams: Estimate, ball: { length: number; grams: number }): Estimate =>
  estimate(scaled(grams, ball.length / ball.grams), [...grams.rests, bases.ballBand], grams.swatch)

export interface Balls {
  /** Enough if the middle figure is right. */
  readonly middle: number
  /** Enough if the most is needed, with the spare. */
  readonly bought: number
  readonly rests: readonly Basis[]
}

/** Whole balls for a need, both in the same unit. Never fewer to buy than the middle figure asks for. */
export function ballsFor(need: Estimate, perBall: number): Balls {
  const whole = (amount: number): number => Math.max(1, Math.ceil(amount / perBall))
  return {
    middle: whole(need.value),
    bought: whole(need.most * (1 + spare)),
    rests: [...need.rests, bases.ballBand, bases.spare],
  }
}

/**
 * The thickness in millimetres of firmly spun cotton of `length` millimetres in `grams`: 0.0374 √tex, specific volume
 * 1.1 cm³/g. Softer yarn is thicker. Source: Peirce's rule as textile courses state it, see tests/reference/geometry.json.
 */
export const firmThickness = ({ length, grams }: { length: number; grams: number }): number =>
  0.0374 * Math.sqrt(grams / (length / 1_000_000))

/**
 * Whether even the thinnest yarn of that put-up is too thick for so narrow a stitch: yarn thicker than a quarter of the
 * stitch cannot make a plain loop (the closest loop is four threads wide). Both in millimetres; a sign of a slip in typing.
 */
export const tooThick = (ball: { length: number; grams: number }, stitch: Figure): boolean =>
  firmThickness(ball) > stitch.most / 4

/** How far two figures for the same thing are apart: null where their bands touch. */
export const apart = (a: Figure, b: Figure): number | null =>
  a.least <= b.most && b.least <= a.most ? null : over(a, b).value
