/** A stitch's name in the catalogue, which is its US abbreviation: 'k', 'yo', 'ssk', 'sk2p'. */
export type StitchId = string

/** One movement of the hands. Loops on the left needle are counted from its tip. */
export type Motion =
  /** Move loops to the right needle unworked; `together` puts the tip through all of them at once. */
  | {
      readonly do: 'slip'
      readonly loops: number
      readonly as: 'knitwise' | 'purlwise' | 'throughBack'
      readonly together: boolean
    }
  /** Put the newest loops of the right needle back on the left one, tip to tip, as they sit. */
  | { readonly do: 'return'; readonly loops: number }
  /**
   * Put the left tip into the fronts of the newest loops of the right needle: they count as on the left
   * again.
   */
  | { readonly do: 'meet'; readonly loops: number }
  /** Put the right tip into the next loops of the left needle, through their front or back legs. */
  | {
      readonly do: 'enter'
      readonly loops: number
      readonly leg: 'front' | 'back'
      readonly as: 'knitwise' | 'purlwise'
    }
  /** Put the right tip into the loop below the next loop ('next'), or two below the newest ('newest'). */
  | { readonly do: 'enterBelow'; readonly of: 'next' | 'newest' }
  /** Pick up the running strand on the left tip. */
  | { readonly do: 'liftStrand'; readonly from: 'front' | 'back' }
  /** Lay the yarn round the right tip. */
  | { readonly do: 'wrap' }
  /**
   * Draw the wrapped yarn through what the tip has entered: a new loop. What was entered stays on the left
   * needle. `loosely`: drawn up long, because the next row must get a needle through it with others.
   */
  | { readonly do: 'draw'; readonly loosely?: true }
  /** Let every loop that a new one was drawn through since the last drop fall from the left needle. */
  | { readonly do: 'drop' }
  /**
   * Lay the yarn over the right needle: a loop through nothing. `turns` wraps give one loop each, or one long
   * loop.
   */
  | { readonly do: 'over'; readonly turns: number; readonly long: boolean; readonly backward: boolean }
  /**
   * Pass loops over the `over` loops nearest the tip, and off it. 'right': both on the right needle. 'left':
   * both on the left one, the new loop having been returned there. Where the right needle has nothing of this
   * stitch to pass, the loop that was there before is passed: that is binding off.
   */
  | { readonly do: 'pass'; readonly loops: number; readonly over: number; readonly from: 'right' | 'left' }
  /** Take loops on a cable needle. */
  | { readonly do: 'hold'; readonly loops: number; readonly where: 'front' | 'back' }
  /** Put the loops of the cable needle back on the left needle, to be worked next. */
  | { readonly do: 'unhold' }
  /** Move loops to a holder, where they wait. */
  | { readonly do: 'park'; readonly loops: number }
  /**
   * Bring the next waiting loops of the holder to the left needle, right behind its first loop: they are
   * joined to it.
   */
  | { readonly do: 'fetch'; readonly loops: number }
  /** Carry the yarn between the needles. */
  | { readonly do: 'yarn'; readonly to: 'front' | 'back' }
  /** Cast one loop on the right needle. */
  | { readonly do: 'castOn' }
  /** Slide a bead on the next loop. */
  | { readonly do: 'bead' }

/** How a loop sits: 'usual' has its leading leg, the one nearer the tip, in front of the needle. */
export type Mount = 'usual' | 'turned'

/**
 * Which way the leg that crosses in front leans, where a loop is twisted. It is the same seen from either
 * face.
 */
export type Twist = 'left' | 'right'

/**
 * One loop that a stitch makes. Loops taken are numbered from the left tip, the one nearest it first; in all
 * but crossings that is also the order in which they leave. Loops from a holder are numbered after those.
 */
export interface Made {
  /**
   * The loops it is drawn through, front to back on the knit face; empty where it is drawn through nothing.
   */
  readonly through: readonly number[]
  /** For each of `through`: whether that loop is twisted shut. */
  readonly twisted: readonly boolean[]
  /** For each of `through`: which way it is twisted; null where it is open. */
  readonly twists: readonly (Twist | null)[]
  /** Which face shows the knit look: the one the knitter looks at ('knit') or the other ('purl'). */
  readonly face: 'knit' | 'purl'
  readonly mount: Mount
  /** Set where the loop is not new: the number of the loop that was only slipped. */
  readonly slipped: number | null
  /** Where its base is, when `through` is empty or it hangs from something else. */
  readonly from: 'loops' | 'air' | 'strand' | 'below' | 'castOn'
  /** How a picked-up strand is twisted; null for anything else. */
  readonly strandTwist: Twist | null
  /** For `from: 'below'`: under which neighbour its base lies. Null for anything else. */
  readonly below: 'next' | 'newest' | null
  /**
   * For a slipped loop: where the yarn passes it, seen by the knitter; null where it stays on the wrong side
   * as usual.
   */
  readonly float: 'near' | 'far' | null
  /** A loop made in this same stitch was passed over it and lies round its neck. */
  readonly banded: boolean
  readonly beaded: boolean
}

/** What a stitch does, found by performing its motions. */
export interface Effect {
  readonly takes: number
  /** Loops taken from a holder beside those. */
  readonly held: number
  /** Loops left on a holder. */
  readonly parked: number
  /** The loops on the right needle afterwards, in the order in which they came. */
  readonly made: readonly Made[]
  /**
   * Loops whose heads end in the fabric with nothing drawn through them but a passed-over edge (bound off),
   * by number.
   */
  readonly boundOff: readonly number[]
  /**
   * Binding off: the new loop. It takes the place of the loop passed over it, which was on the right needle
   * before the stitch, so it is not counted as made. For the first one of a row nothing is passed; the count
   * of the step is alike.
   */
  readonly chain: Made | null
  /** Crossings: the loops that travel in front, as the knitter sees it. Empty for anything else. */
  readonly inFront: readonly number[]
}

export type Family =
  | 'plain'
  | 'twisted'
  | 'yarn over'
  | 'decrease'
  | 'double decrease'
  | 'gathering'
  | 'slip'
  | 'increase'
  | 'crossing'
  | 'passing'
  | 'bind off'
  | 'cast on'
  | 'bead'
  | 'holding'

/** A kind of stitch in the catalogue: what is declared. Everything else is derived from `motions`. */
export interface StitchEntry {
  readonly id: StitchId
  readonly family: Family
  /** Full name, lower case: 'knit two together'. */
  readonly name: string
  /** US and UK abbreviations as printed in a row. US is what the reader reads back. */
  readonly us: string
  readonly uk: string
  readonly motions: readonly Motion[]
  /** Facts of the trade about the words or the use; null where there is nothing to say. */
  readonly note: string | null
}

/** A stitch with what its motions do. */
export interface Stitch extends StitchEntry {
  readonly takes: number
  readonly makes: number
  readonly effect: Effect
  /**
   * Numbers of the parents of the first made loop, front to back on the right side when worked there. For a
   * crossing all its loops, those in front first; for a slipped loop itself.
   */
  readonly frontToBack: readonly number[]
  /**
   * On the right side, when worked there: the tilt of the parent on top, of the strands that cross in front,
   * or of an increase that grows to one side. Null where nothing leans, and on the purl face, where published
   * sources disagree.
   */
  readonly lean: 'left' | 'right' | 'centre' | null
  readonly twisted: boolean
  /**
   * The stitch that gives the same right-side look when worked on the wrong side. Null where none in the
   * catalogue does.
   */
  readonly wrongSideTwin: StitchId | null
  readonly mirrorTwin: StitchId | null
  /** Chart cells that it fills. */
  readonly cells: number
}
