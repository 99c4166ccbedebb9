import { bases } from './bases.ts'
import { paceSpread, restEvery } from './constants.ts'
import { between, type Estimate, estimate, over, sure } from './figure.ts'

export interface Hours {
  /** Minutes with the needles in the hands. */
  readonly knitting: Estimate
  /** Minutes with the rests in them. */
  readonly withRests: Estimate
  /** Stretches at the needles, each followed by a rest, at the middle figure. */
  readonly sittings: number
}

/** How long so many stitches take at a pace of so many a minute. */
export function hoursFor(stitches: number, pace: number): Hours {
  const swatch = 'Time yourself over two rows of this lace: stitches worked, divided by minutes.'
  const knitting = estimate(over(sure(stitches / pace), paceSpread), [bases.pace], swatch)
  const rest = (minutes: number, every: { work: number; rest: number }): number =>
    minutes + Math.floor(minutes / every.work) * every.rest
  const all = between(
    rest(knitting.least, restEvery.least),
    rest(knitting.value, restEvery.usual),
    rest(knitting.most, restEvery.most),
  )
  return {
    knitting,
    withRests: estimate(all, [bases.pace, bases.breaks], swatch),
    sittings: Math.ceil(knitting.value / restEvery.usual.work),
  }
}
