import { type Basis, bases } from './bases.ts'
import { growth, laceFromStocking, rowShape } from './constants.ts'
import { between, type Estimate, estimate, type Figure, over, times } from './figure.ts'

/** Before or after blocking. */
export type State = 'before' | 'after'

/** What was counted on a swatch, laid flat and not stretched. */
export interface Gauge {
  readonly stitches: number
  /** Null where rows were not counted. */
  readonly rows: number | null
  /** Millimetres that they were counted over. */
  readonly over: number
}

export interface Swatch {
  readonly of: 'lace' | 'stocking stitch'
  readonly before: Gauge | null
  readonly after: Gauge | null
}

/** The width of one stitch in millimetres, in that state; null where no gauge is known. Counts are of cast-on stitches. */
export function stitchWidth(swatch: Swatch, state: State): Estimate | null {
  const found = sizeIn(swatch, state, ({ stitches, over: length }) => readOff(stitches, length))
  return found && told(swatch, state, found)
}

/** The height of one row in millimetres, in that state; from the width where rows were not counted. Null as above. */
export function rowHeight(swatch: Swatch, state: State): Estimate | null {
  const counted = sizeIn(swatch, state, ({ rows, over: length }) =>
    rows === null ? null : readOff(rows, length),
  )
  if (counted) return told(swatch, state, counted)
  const width = sizeIn(swatch, state, ({ stitches, over: length }) => readOff(stitches, length))
  if (!width) return null
  return told(swatch, state, {
    size: over(width.size, rowShape),
    rests: [...width.rests, bases.rowShape],
  })
}

interface Size {
  readonly size: Figure
  readonly rests: readonly Basis[]
}

/** Measured in this state, or worked out from the other one. */
function sizeIn(swatch: Swatch, state: State, read: (gauge: Gauge) => Figure | null): Size | null {
  const own = swatch[state] && read(swatch[state])
  if (own) return { size: own, rests: [bases.reading] }
  const other = swatch[otherState(state)]
  const size = other && read(other)
  if (!size) return null
  const rests = [bases.reading, bases.growth]
  return { size: state === 'after' ? times(size, growth) : over(size, growth), rests }
}

export const otherState = (state: State): State => (state === 'before' ? 'after' : 'before')

/** One of `count` things in `length` millimetres, with the count half a thing out where it is whole. */
function readOff(count: number, length: number): Figure {
  const off = Number.isInteger(count) ? 0.5 : 0.25
  return between(length / (count + off), length / count, length / Math.max(count - off, count / 2))
}

function told(swatch: Swatch, state: State, { size, rests }: Size): Estimate {
  const stocking = swatch.of === 'stocking stitch'
  const figure = stocking ? times(size, laceFromStocking) : size
  return estimate(figure, stocking ? [...rests, bases.stocking] : rests, wanted(swatch, state))
}

/** What would be known better with another swatch. */
function wanted(swatch: Swatch, state: State): string {
  if (swatch.of === 'stocking stitch')
    return 'Two repeats each way of the lace itself, blocked as the piece will be: stocking stitch cannot tell how lace opens.'
  if (!swatch[state]?.rows)
    return state === 'after'
      ? 'The same swatch blocked and dry, unpinned and measured again, rows and all.'
      : 'The same swatch measured, rows and all, before it is wetted.'
  return 'A larger swatch, counted over a longer stretch, with part stitches counted too.'
}
