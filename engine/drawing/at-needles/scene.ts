import type { HandLoopName, HandsNow } from '../../stitches/index.ts'
import type { YarnSide } from './yarn-side.ts'

/**
 * A loop of a stitch in the hands; 'before 1' is the loop of a bind-off that waits on the right needle, 'none 0' no loop
 * at all.
 */
export type Name = HandLoopName | 'before 1' | 'none 0'

/** How a tip goes through loops: under the front legs as if to knit or to purl, or under the back legs. */
export type Way = 'knit' | 'purl' | 'knit back' | 'purl back'

/** Where the right tip is. */
export type Tip =
  | { readonly at: 'rest' }
  /** Through loops of the left needle, or just before them where it is not `deep`. */
  | { readonly at: 'loops'; readonly loops: readonly Name[]; readonly way: Way; readonly deep: boolean }
  /** In the head of the loop under the next one. */
  | { readonly at: 'below' }

/** The hands at one moment of a stitch: everything that the picture of it depends on. */
export interface Scene {
  readonly hands: HandsNow
  readonly tip: Tip
  /** The yarn lies round the right tip: which face the loop will show that is drawn from it. */
  readonly wrapped: 'knit' | 'purl' | null
  /** New loops that are drawn through loops still on the left needle, each with those. */
  readonly through: ReadonlyMap<Name, readonly Name[]>
  /** The right needle lies behind the left one, with a loop just pushed through. */
  readonly behind: boolean
  /** Loops that a tip lifts over others. */
  readonly lifted: {
    readonly loops: readonly Name[]
    readonly over: readonly Name[]
    readonly by: 'left' | 'right'
  } | null
  /** The left tip is in the newest loops of the right needle, to take them back. */
  readonly taking: readonly Name[]
  /** Already lifted off: the loop of a bind-off. */
  readonly passed: boolean
  /** The stitch takes loops of another piece, which wait on a holder. */
  readonly holds: boolean
  readonly yarn: YarnSide
  readonly bead: 'above' | 'on' | null
}

/** A scene on the way of a stitch. */
export interface Told {
  readonly scene: Scene
  /** What the hands do to come here. */
  readonly words: string
  /** Where one may stop and look; otherwise only a place that the movement passes. */
  readonly stop: boolean
}
