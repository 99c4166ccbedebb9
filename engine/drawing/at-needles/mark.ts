import type { LoopId } from '../../needles/index.ts'
import type { Point } from './geometry.ts'

/** Something said about the picture, in its place in one frame. */
export type Mark =
  /** Round a loop that is about to be taken. */
  | { readonly kind: 'ring'; readonly key: string; readonly at: Point }
  /** Its turn, from 1. */
  | { readonly kind: 'badge'; readonly key: string; readonly at: Point; readonly text: string }
  /** Over a loop that has just come on the needle. */
  | {
      readonly kind: 'new'
      readonly key: string
      readonly at: Point
      readonly text: string
      readonly edge: 'left' | 'right' | 'middle'
    }
  /** A stitch marker on a needle. */
  | { readonly kind: 'marker'; readonly key: string; readonly at: Point }
  /** Between two loops of different repeats. */
  | { readonly kind: 'line'; readonly key: string; readonly at: Point }
  /** Words in a box, with a pointer to what they speak of. */
  | {
      readonly kind: 'label'
      readonly key: string
      readonly at: Point
      readonly text: string
      readonly box: Point
    }
  /** Words by themselves. `edge`: beside which side of the picture they begin or end. */
  | {
      readonly kind: 'count' | 'more' | 'note' | 'end'
      readonly key: string
      readonly at: Point
      readonly text: string
      readonly edge: 'left' | 'right' | 'middle'
    }
  | { readonly kind: 'bead'; readonly key: string; readonly at: Point }

/** A loop to be pointed out, on a needle or in the fabric, with what is to be said of it. */
export interface LoopLabel {
  readonly loop: LoopId
  readonly label: string
}
