import { measures } from './needle-loops.ts'

/** Sizes in drawing units. A phone shows them at about 0.6: type of 25 is then 15 pixels high. */
export const size = {
  width: 600,
  height: 232,
  /** The needles' tips meet here. */
  middle: 300,
  tipY: 100,
  /** From the middle to each tip, and to the loop nearest it. */
  tip: 15,
  first: 60,
  /** How much lower a needle lies at its far end, in parts of its length. */
  slope: 0.05,
  type: 25,
  /** Places for loops on each needle. */
  places: 6,
} as const

export type NeedleSide = 'left' | 'right'

export const bothSides: readonly NeedleSide[] = ['left', 'right']

/** 1 toward the right of the picture. */
export const turnOf = (side: NeedleSide): 1 | -1 => (side === 'left' ? -1 : 1)

/** Where the loop in a place of a needle hangs, from the tip on; half places lie between two loops. */
export function placeOf(side: NeedleSide, place: number): { x: number; y: number } {
  const away = size.first + place * measures.pitch
  return { x: size.middle + turnOf(side) * away, y: size.tipY + (away - size.tip) * size.slope }
}

/** Loops of a needle that the picture has room for, from the tip on. */
export const drawnOn = (loops: readonly unknown[]): number => Math.min(loops.length, size.places)
