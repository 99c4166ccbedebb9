import type { FabricLoopId } from '../fabric.ts'
import type { Curve } from './points.ts'
import { type LoopShape, otherOf, type Side } from './shape.ts'
import type { YarnPart, YarnPiece } from './yarn.ts'

/** A piece whose depth is not known yet. */
export interface Draft {
  readonly loop: FabricLoopId
  readonly part: YarnPart
  readonly curve: Curve
  readonly ends: YarnPiece['ends']
  /** For a leg: the side of its foot. */
  readonly side: Side | null
  /** For what lies beside loops: the loop whose parents it passes, or the loop itself that it passes. */
  readonly beside: FabricLoopId | null
  /** For what passes a loop: whether in front of it. */
  readonly inFront: boolean
  /** The strand is cut before this piece. */
  readonly cut: boolean
}

type Some = Partial<Draft> & Pick<Draft, 'loop' | 'part' | 'curve'>

export const draft = (some: Some): Draft => ({
  ends: 'none',
  side: null,
  beside: null,
  inFront: false,
  cut: false,
  ...some,
})

/** A loop that hangs from nothing has no feet: its yarn runs on from its neighbours. */
export const isFootless = ({ loop }: Pick<LoopShape, 'loop'>): boolean => loop.kind === 'over'

export type ShapeOf = (id: FabricLoopId) => LoopShape

/** The leg that goes up from a foot: the one across where the loop is twisted. */
export const legAbove = ({ crossed }: LoopShape, foot: Side): Side =>
  crossed === null ? foot : otherOf(foot)
