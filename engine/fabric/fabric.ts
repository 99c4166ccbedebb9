import type { LoopId } from '../needles/index.ts'
import type { StitchId } from '../stitches/index.ts'

/** A loop's number in `Fabric.loops`. Loops of the worked table keep their order; chain loops of a bind-off come in where they are made. */
export type FabricLoopId = number

/** One loop of yarn in the fabric, as it hangs together with the others. Everything here comes from the worked loops, nothing from coordinates. */
export interface FabricLoop {
  readonly id: FabricLoopId
  /** The loop in the worked table; null for what only the fabric has (the chain of a bind-off). */
  readonly loop: LoopId | null
  /** Index into the worked rows; -1 for the cast-on. */
  readonly row: number
  readonly stitch: StitchId
  /** 'over' hangs from nothing (yarn over), 'strand' from the running strand between two stitches, 'below' from a loop under the row below. */
  readonly kind: 'cast on' | 'drawn' | 'over' | 'strand' | 'below' | 'chain'
  /** Loops it is drawn through, front to back as seen from the right side. */
  readonly parents: readonly FabricLoopId[]
  /** For each parent, whether it is twisted shut. */
  readonly twisted: readonly boolean[]
  /** Loops drawn through this one, in working order: none on the needle, several after an increase. */
  readonly children: readonly FabricLoopId[]
  /** Its look from the right side. */
  readonly face: 'knit' | 'purl'
  /** Rows that pass before it is worked: 1 as a rule, more for a slipped loop that spans rows. */
  readonly span: number
  /** Still on a needle (or a holder) at the end. */
  readonly live: boolean
}

/** What lies side by side before and after a row, from the left as seen from the right side. */
export interface FabricLine {
  /** The loops on the needles when the row began. None for the cast-on; held loops joined in the row lie apart. */
  readonly met: readonly FabricLoopId[]
  /** Loops that the row made, chain loops of a bind-off among them, loops that it slipped, and loops that it left alone. */
  readonly loops: readonly FabricLoopId[]
  /** Those of them that it slipped: they reach up past the row, but no yarn is drawn through them there. */
  readonly slipped: readonly FabricLoopId[]
  /** Those of the slipped ones that the yarn passes in front of, seen from the right side; it passes behind the others. */
  readonly yarnInFront: readonly FabricLoopId[]
}

/** The loop graph of a worked piece. */
export interface Fabric {
  readonly loops: readonly FabricLoop[]
  /** For each row, from the cast-on (index 0) up, the loops that the yarn makes in it, in the order in which the yarn runs. */
  readonly courses: readonly (readonly FabricLoopId[])[]
  /** For each of `courses`, whether the yarn runs from right to left seen from the right side. */
  readonly rightToLeft: readonly boolean[]
  /** For each of `courses`, the loops side by side once it is done. Loops on a holder lie in no line. */
  readonly lines: readonly FabricLine[]
}

export type FabricState = 'pinned' | 'free' | 'unblocked' | 'blocked'

/** Where the loops lie. Unit: one stitch width of the plain ground; x goes right, y goes up, both seen from the right side. */
export interface FabricLayout {
  readonly state: FabricState
  /** The base of each loop: where it leaves its parents. By FabricLoopId. */
  readonly baseX: Float64Array
  readonly baseY: Float64Array
  /** The head of each loop: the base of what is drawn through it, or a place of its own on the needle. */
  readonly headX: Float64Array
  readonly headY: Float64Array
  /** Largest force left in the network when the solver stopped, in spring units. */
  readonly residual: number
}
