import type { Fabric, FabricLoopId } from '../fabric.ts'
import type { Curve, Point } from './points.ts'

/** What a piece of yarn is to its loop. */
export type YarnPart =
  /** From where the loop leaves its parents to half its height. */
  | 'leg'
  /** The upper halves of both legs and the head between them. */
  | 'head'
  /** Half of the yarn between two loops; the other half belongs to the other loop. */
  | 'sinker'
  /** Yarn that passes slipped loops. */
  | 'float'
  /** The tail's yarn round the foot of a cast-on loop. */
  | 'edge'
  /** The running strand, lifted, that an increase is drawn through. */
  | 'strand'
  /** A yarn over that was passed over its neighbours and lies round their necks. */
  | 'belt'
  /** An end of the yarn, and the yarn to the ball. */
  | 'tail'

/** A piece of yarn that lies in one depth all along. */
export interface YarnPiece {
  /** The loop that it belongs to. */
  readonly loop: FabricLoopId
  readonly part: YarnPart
  readonly curve: Curve
  /** What has the greater depth lies nearer to the eye. From who is drawn through whom, never from where it lies. */
  readonly depth: number
  readonly face: 'knit' | 'purl'
  /** Pieces of one strand follow each other: each begins where the one before it ends. */
  readonly strand: number
  /** Where the yarn ends for good: there it is drawn round. */
  readonly ends: 'none' | 'start' | 'end'
}

/** A bead on a loop. */
export interface YarnBead {
  readonly loop: FabricLoopId
  readonly at: Point
  readonly along: Point
}

/** All yarn of a fabric, seen from one side. Unit: one stitch width of the plain ground; x goes right, y goes up. */
export interface Yarn {
  /** Who is drawn through whom, always as seen from the right side. */
  readonly fabric: Fabric
  readonly side: 'right' | 'wrong'
  /** In the order in which the yarn runs, from the tail to the ball. */
  readonly pieces: readonly YarnPiece[]
  readonly beads: readonly YarnBead[]
  /** By loop: where it leaves its parents, and where its child leaves it. */
  readonly places: readonly { readonly base: Point; readonly head: Point }[]
  readonly thickness: number
}

/**
 * The thickness of yarn, in stitch widths. A plain loop jams at a loop length of 16.67 yarn diameters (textbooks of
 * knitted structures), which is about 0.17 of the stitch width here.
 */
export const thickness = 0.165
