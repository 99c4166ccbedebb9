import { sizes } from './sizes.ts'

/** The picture's size in drawing units, and how much of it lies above the needles. */
export const frameSize = {
  width: Math.round(2 * sizes.picture.side * sizes.stitch),
  height: Math.round((sizes.picture.above + sizes.picture.below) * sizes.stitch),
  above: sizes.picture.above * sizes.stitch,
} as const

/** Yarn is drawn in whole hundredths of a stitch width; one of them in drawing units. */
export const unitSize = sizes.stitch / 100

/** A number of a curve in such units: x for an even place, y for an odd one, which goes down. */
export const inUnits = (value: number, place: number): number =>
  Math.round(place % 2 === 0 ? value * 100 : value * -100)

export const toX = (x: number): number => frameSize.width / 2 + x * sizes.stitch
export const toY = (y: number): number => frameSize.above - y * sizes.stitch

export const tenth = (n: number): number => Math.round(n * 10) / 10
