import type { Made, Mount, Twist } from './stitch.ts'

/**
 * How far a loop's legs are turned, in quarter turns. In the fabric an open loop lies flat: 0. On the needle
 * its right leg comes a quarter turn forward: 1, the usual mount; -1 is the turned mount. Slipping turns it
 * by half turns, working it brings it flat again by a quarter turn one way or the other, and what is then
 * left is twist. One number holds every rule about legs, also for a loop that was turned over twice.
 */
export type Turn = number

/** A loop of this stitch's making, while its motions are performed. */
export interface Draft {
  /** Outermost first, each with its turn once worked. */
  readonly through: readonly { readonly loop: HandLoop; readonly turn: Turn }[]
  readonly face: Made['face']
  readonly from: Made['from']
  readonly strandTurn: Turn
  readonly below: Made['below']
  readonly banded: boolean
  readonly beaded: boolean
}

/** A loop that the hands deal with: on a needle, on the cable needle, or just picked up. */
export interface HandLoop {
  readonly kind: 'old' | 'held' | 'strand' | 'below' | 'new'
  /**
   * For 'old' the place on the left needle from 1, for 'held' the order of fetching from 1, for 'new' the order
   * of making from 1; else 0.
   */
  readonly number: number
  readonly turn: Turn
  readonly float: Made['float']
  /** For 'new'. */
  readonly draft: Draft | null
  readonly below: Made['below']
}

const plain = { number: 0, turn: 1, float: null, draft: null, below: null } as const

export const oldLoop = (number: number, mount: Mount): HandLoop => ({
  ...plain,
  kind: 'old',
  number,
  turn: mount === 'usual' ? 1 : -1,
})

export const heldLoop = (number: number): HandLoop => ({ ...plain, kind: 'held', number })

/**
 * The running strand. The tip that lifts it from the front leaves its right half in front, as in the usual
 * mount.
 */
export const strandLoop = (from: 'front' | 'back'): HandLoop => ({
  ...plain,
  kind: 'strand',
  turn: from === 'front' ? 1 : -1,
})

export const loopBelow = (below: 'next' | 'newest'): HandLoop => ({ ...plain, kind: 'below', below })

/** A draft as far as it differs from a plain loop drawn through nothing. */
export type NewDraft = Partial<Draft> & Pick<Draft, 'from'>

export const newLoop = (number: number, draft: NewDraft, turn: Turn = 1): HandLoop => ({
  ...plain,
  kind: 'new',
  number,
  turn,
  draft: { through: [], face: 'knit', strandTurn: 0, below: null, banded: false, beaded: false, ...draft },
})

/** A loop that was there before the stitch. */
export const isOld = ({ kind }: HandLoop): boolean => kind === 'old' || kind === 'held'

export const turned = (loop: HandLoop, by: Turn): HandLoop => ({ ...loop, turn: loop.turn + by })

/** A half turn more or less swaps the legs, a whole one does not: 1, -3, 5 sit as usual. */
export const mountOf = (turn: Turn): Mount => ((((turn - 1) % 4) + 4) % 4 === 0 ? 'usual' : 'turned')

export const twistOf = (turn: Turn): Twist | null => (turn === 0 ? null : turn > 0 ? 'left' : 'right')
