import type { Pattern } from '../pattern/index.ts'
import { bases } from './bases.ts'
import { type Estimate, marginOf } from './figure.ts'
import { rowHeight, stitchWidth } from './gauge.ts'
import type { Tally } from './tally.ts'
import type { Wishes } from './wishes.ts'
import {
  type Balls,
  ballsFor,
  gramsByWeight,
  lengthOfGrams,
  plainLoops,
  yarnByGauge,
  yarnByLength,
} from './yarn.ts'

/** Yarn found in one way. At least one of the two is there. */
export interface YarnNeed {
  readonly way: 'weighed' | 'measured' | 'gauge'
  /** Millimetres. */
  readonly length: Estimate | null
  readonly grams: Estimate | null
}

/** The piece that the yarn is for. */
interface Extent {
  readonly castOn: number
  readonly rows: number
}

/** Yarn in every way that what was told allows, the surest first: what was measured goes before what is reasoned. */
export function yarnNeeds(pattern: Pattern, wishes: Wishes, tally: Tally, extent: Extent): YarnNeed[] {
  return [byWeight(pattern, wishes, tally, extent), byMeasured(wishes, tally), byGauge(wishes, tally)]
    .filter((need) => need !== null)
    .toSorted((a, b) => marginIn(a) - marginIn(b))
}

function marginIn({ way, grams, length }: YarnNeed): number {
  const known = length ?? grams
  return way === 'gauge' || !known ? Number.POSITIVE_INFINITY : marginOf(known)
}

function byWeight(pattern: Pattern, wishes: Wishes, tally: Tally, extent: Extent): YarnNeed | null {
  const { weighed, swatch, ball } = wishes
  if (!weighed) return null
  // A swatch of the same lace has the same yarn overs in it; a growing piece and a plain swatch are compared loop by loop.
  const alike = swatch.of === 'lace' && !pattern.growing
  const piece = alike ? extent.castOn * extent.rows : plainLoops(tally).value
  const areas = { piece, swatch: weighed.stitches * weighed.rows }
  const grams = gramsByWeight(areas, weighed, swatch.of)
  const { length, grams: ballGrams } = ball
  const known = length !== null && ballGrams !== null
  return { way: 'weighed', grams, length: known ? lengthOfGrams(grams, { length, grams: ballGrams }) : null }
}

function byMeasured({ measuredYarn, ball }: Wishes, tally: Tally): YarnNeed | null {
  if (!measuredYarn) return null
  return withGrams('measured', yarnByLength(tally, measuredYarn.stitches, measuredYarn.length), ball)
}

function byGauge({ swatch, ball }: Wishes, tally: Tally): YarnNeed | null {
  const stitch = stitchWidth(swatch, 'before')
  if (!stitch) return null
  const counted = swatch.before?.rows ?? swatch.after?.rows ?? null
  const row = counted === null ? null : rowHeight(swatch, 'before')
  return withGrams('gauge', yarnByGauge(tally, stitch, row), ball)
}

function withGrams(way: YarnNeed['way'], length: Estimate, ball: Wishes['ball']): YarnNeed {
  if (ball.length === null || ball.grams === null) return { way, length, grams: null }
  const share = ball.grams / ball.length
  const { value, least, most, roughness, rests, swatch } = length
  const grams = { value: value * share, least: least * share, most: most * share, roughness, swatch }
  return { way, length, grams: { ...grams, rests: [...rests, bases.ballBand] } }
}

/** Balls for a need, by length where the band states it, else by weight; null where neither can be compared. */
export function ballsOf({ length, grams }: YarnNeed, ball: Wishes['ball']): Balls | null {
  if (length && ball.length !== null) return ballsFor(length, ball.length)
  return grams && ball.grams !== null ? ballsFor(grams, ball.grams) : null
}
