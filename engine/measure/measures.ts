import { same } from '../base/index.ts'
import { prove } from '../counts/index.ts'
import type { Pattern } from '../pattern/index.ts'
import { widestRow } from './across.ts'
import { stitchWidth } from './gauge.ts'
import { type Hours, hoursFor } from './hours.ts'
import { firstLifelines, type LifelinePlan, lifelinePlan, lifelinesIn } from './lifelines.ts'
import { type NeedleSize, needlesNear } from './needle-sizes.ts'
import { ballsOf, type YarnNeed, yarnNeeds } from './needs.ts'
import type { Notice } from './notices.ts'
import { type Across, acrossOf, type Choice, lastRow, type Up, upOf } from './sizes.ts'
import { type Tally, tallyOf } from './tally.ts'
import type { Wishes } from './wishes.ts'
import { apart, type Balls, tooThick } from './yarn.ts'
import { categoriesOfGauge, type YarnCategory } from './yarn-weights.ts'

/** All that can be said of a planned piece; null for what was not told enough for. */
export interface Measures {
  readonly across: Choice<Across> | null
  readonly up: Choice<Up> | null
  /** The most stitches that lie on the needles at once, and the row after which they do (0: the cast-on). */
  readonly widest: { readonly row: number; readonly stitches: number } | null
  /** Stitches that a growing piece ends on. */
  readonly endsOn: number | null
  /** Stitches worked in all, cast-on and bind-off with them. */
  readonly stitches: number | null
  readonly yarn: readonly YarnNeed[]
  readonly balls: Balls | null
  readonly hours: Hours | null
  readonly lifelines: LifelinePlan & { readonly many: number | null; readonly first: readonly number[] }
  readonly needles: readonly NeedleSize[]
  /** Of the yarn standard, for a stocking-stitch gauge. */
  readonly categories: readonly YarnCategory[]
  readonly notices: readonly Notice[]
}

/** Measures of a proved pattern, as far as what a knitter told of her piece allows. */
export function measuresOf(pattern: Pattern, wishes: Wishes): Measures {
  const up = upOf(pattern, wishes)
  const through = up?.chosen.through ?? null
  const across = acrossOf(pattern, wishes, through)
  const tally = across && through !== null ? tallyIn(pattern, wishes, across.chosen.repeats, through) : null
  const extent = across && up && { castOn: across.chosen.castOn, rows: up.chosen.rows }
  const yarn = tally && extent ? yarnNeeds(pattern, wishes, tally, extent) : []
  const stitches = tally ? tally.worked + tally.castOn : null
  return {
    across,
    up,
    widest: across && !pattern.growing ? widestRow(pattern, across.chosen.repeats, wishes.added) : null,
    endsOn: across && pattern.growing ? lastRow(pattern, wishes, across.chosen.repeats, through) : null,
    stitches,
    yarn,
    balls: yarn[0] ? ballsOf(yarn[0], wishes.ball) : null,
    hours: stitches !== null && wishes.pace !== null ? hoursFor(stitches, wishes.pace) : null,
    lifelines: lifelinesOf(pattern, through),
    needles: wishes.needle === null ? [] : needlesNear(wishes.needle),
    categories: categoriesOf(wishes),
    notices: noticesOf(pattern, wishes, yarn, through !== null && across !== null && tally === null),
  }
}

const tallyIn = (pattern: Pattern, { added }: Wishes, repeats: number, through: number): Tally | null =>
  tallyOf(pattern, { repeats, through, added })

function lifelinesOf(pattern: Pattern, through: number | null): Measures['lifelines'] {
  const plan = lifelinePlan(pattern)
  const many = through === null ? null : lifelinesIn(plan, through)
  return { ...plan, many, first: through === null ? [] : firstLifelines(pattern, plan, through) }
}

function categoriesOf({ swatch }: Wishes): readonly YarnCategory[] {
  const gauge = swatch.before ?? swatch.after
  return swatch.of === 'stocking stitch' && gauge ? categoriesOfGauge(gauge.stitches, gauge.over) : []
}

function noticesOf(
  pattern: Pattern,
  wishes: Wishes,
  yarn: readonly YarnNeed[],
  unworkable: boolean,
): Notice[] {
  const { swatch, width, length } = wishes
  const any = swatch.before ?? swatch.after
  const said: Record<Notice, boolean> = {
    stocking: any !== null && swatch.of === 'stocking stitch',
    countsVary: any !== null && swatch.of === 'lace' && !pattern.growing && countsVary(pattern),
    growthGuessed: any !== null && (swatch.before === null || swatch.after === null),
    oneWidth: 'fixed' in pattern.castOn && !pattern.growing && width !== null,
    lengthDecides: pattern.growing && width !== null && length !== null,
    cannotGrow: unworkable,
    tooThick: isTooThick(wishes),
    waysDisagree: disagree(yarn),
  }
  return (Object.keys(said) as Notice[]).filter((notice) => said[notice])
}

const countsVary = (pattern: Pattern): boolean =>
  prove(pattern).rows.some(({ before, after }) => !same(before, after))

function isTooThick({ ball, swatch }: Wishes): boolean {
  const stitch = stitchWidth(swatch, 'before')
  const { length, grams } = ball
  return stitch !== null && length !== null && grams !== null && tooThick({ length, grams }, stitch)
}

/** The size of the stitches against what was weighed or measured. */
function disagree(yarn: readonly YarnNeed[]): boolean {
  const length = (way: YarnNeed['way']) => yarn.find((need) => need.way === way)?.length ?? null
  const [gauge, found] = [length('gauge'), length('weighed') ?? length('measured')]
  return gauge !== null && found !== null && apart(gauge, found) !== null
}
