import { sizes } from './sizes.ts'

/** The picture's size in drawing units. */
export const frameSize = {
  width: Math.round(2 * sizes.picture.side * sizes.stitch),
  height: Math.round((sizes.picture.above + sizes.picture.below) * sizes.stitch),
} as const

const middle = frameSize.width / 2
export const toX = (x: number): number => middle + x * sizes.stitch
export const toY = (y: number): number => (sizes.picture.above - y) * sizes.stitch
