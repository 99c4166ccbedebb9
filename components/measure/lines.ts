import type { MeasureUnit } from '../../engine/intake/index.ts'
import type { Estimate, Measures, Size, Wishes, YarnNeed } from '../../engine/measure/index.ts'
import { castOnArithmetic, type PieceFacts } from './facts.ts'
import {
  gramRange,
  gramWords,
  listed,
  many,
  ordinal,
  roughWords,
  sizeRange,
  sizeWords,
  timeWords,
  yarnRange,
  yarnWords,
} from './words.ts'

/** One line of the sheet: its name, its answer, what is said beside it, and the estimate that it comes from. */
export interface SheetLine {
  readonly name: string
  readonly answer: string
  readonly more: readonly string[]
  readonly from: Estimate | null
}

interface Told {
  readonly measures: Measures
  readonly wishes: Wishes
  readonly unit: MeasureUnit
  readonly facts: PieceFacts
}

/** The sheet, from top to bottom; what was not told enough for is left out. */
export const sheetLines = (told: Told): SheetLine[] =>
  [castOn, width, length, onNeedles, yarn, balls, needles, hours, lifelines]
    .map((line) => line(told))
    .filter((line) => line !== null)

function castOn({ measures: { across }, wishes, facts }: Told): SheetLine | null {
  if (!across) return null
  const { repeats, castOn: stitches } = across.chosen
  const answer = facts.fixed
    ? many(stitches, 'stitch', 'stitches')
    : `${many(stitches, 'stitch', 'stitches')}, ${many(repeats, 'repeat')}`
  const more = [`${castOnArithmetic(facts, repeats, wishes.added)} = ${stitches}. Exact.`]
  return { name: 'Cast on', answer, more, from: null }
}

function width({ measures, wishes, unit, facts }: Told): SheetLine | null {
  const size = measures.across?.chosen.width
  if (!size) return null
  const ends = measures.endsOn === null ? [] : [`Along the last row, ${measures.endsOn} stitches.`]
  return sizeLine(facts.round ? 'Around' : 'Width', size, { wishes, unit, wanted: wishes.width, more: ends })
}

function length({ measures, wishes, unit, facts }: Told): SheetLine | null {
  if (!measures.up) return null
  const { rows, through, length: size } = measures.up.chosen
  const setUp = facts.setUp > 0 ? `, after ${many(facts.setUp, `set-up ${facts.row}`)}` : ''
  const more = `${many(rows, facts.row)}: ${many(through, 'time', 'times')} through ${many(facts.rows, facts.row)}${setUp}.`
  const line = sizeLine('Length', size, { wishes, unit, wanted: wishes.length, more: [more] })
  return line ?? { name: 'Length', answer: many(rows, facts.row), more: [more], from: null }
}

interface SizeTold {
  readonly wishes: Wishes
  readonly unit: MeasureUnit
  readonly wanted: number | null
  readonly more: readonly string[]
}

function sizeLine(name: string, size: Size, { wishes, unit, wanted, more }: SizeTold): SheetLine | null {
  const [own, other] = wishes.blocked ? [size.after, size.before] : [size.before, size.after]
  if (!own) return null
  const state = wishes.blocked ? 'after blocking' : 'before blocking'
  // An unblocked piece has no size after blocking to speak of.
  const beside = wishes.blocked && other ? [`Before blocking ${sizeWords(other.value, unit)}.`] : []
  const swatch = own.roughness === 'guess' ? ['Knit a swatch of the lace first.'] : []
  const told = [
    `${sizeRange(own, unit)}: ${roughWords(own)}.`,
    ...swatch,
    ...beside,
    ...off(own.value, wanted, unit),
    ...more,
  ]
  return { name, answer: `${sizeWords(own.value, unit)} ${state}`, more: told, from: own }
}

/** How far the nearest size is from the wish. */
function off(value: number, wanted: number | null, unit: MeasureUnit): string[] {
  if (wanted === null) return []
  const apart = Math.abs(value - wanted)
  const how = value > wanted ? 'more' : 'less'
  return apart < 1
    ? ['By the middle figure just what you wanted.']
    : [`${sizeWords(apart, unit)} ${how} than you wanted, by the middle figure.`]
}

function onNeedles({ measures: { widest, across }, facts }: Told): SheetLine | null {
  if (!widest || !across || widest.stitches === across.chosen.castOn) return null
  const after = `${facts.row} ${widest.row}`
  return {
    name: 'Most stitches on the needles',
    answer: `${widest.stitches} after ${after}`,
    more: ['Choose a needle long enough for them. Exact.'],
    from: null,
  }
}

const ways: Readonly<Record<YarnNeed['way'], string>> = {
  weighed: 'from the weight of your swatch',
  measured: 'from the stitches that a measured length makes',
  gauge: 'from the size of the stitches alone',
}

function yarn({ measures, unit }: Told): SheetLine | null {
  const [best, ...others] = measures.yarn
  const from = best && (best.length ?? best.grams)
  if (!best || !from) return null
  const answer = [best.length && yarnWords(best.length, unit), best.grams && gramWords(best.grams)]
  const range = best.length ? yarnRange(best.length, unit) : gramRange(from)
  const beside = others.map((other) => `${sentence(ways[other.way])}: ${amountWords(other, unit)}.`)
  return {
    name: 'Yarn',
    answer: answer.filter((part) => part !== null).join(', '),
    more: [`${range}: ${roughWords(from)}, ${ways[best.way]}.`, ...beside],
    from,
  }
}

const sentence = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)

const amountWords = ({ length: mm, grams }: YarnNeed, unit: MeasureUnit): string =>
  mm ? `${yarnRange(mm, unit)}, ${mm.roughness}` : grams ? `${gramRange(grams)}, ${grams.roughness}` : ''

function balls({ measures }: Told): SheetLine | null {
  if (!measures.balls) return null
  const { middle, bought } = measures.balls
  const more =
    middle === bought
      ? 'Enough with a tenth to spare, even if the most is needed.'
      : `${many(middle, 'ball')} ${middle === 1 ? 'is' : 'are'} enough if the middle figure is right; the rest covers the most with a tenth to spare. Of one dye lot.`
  return { name: 'Balls to buy', answer: many(bought, 'ball'), more: [more], from: null }
}

function needles({ measures }: Told): SheetLine | null {
  const [first] = measures.needles
  if (!first) return null
  const sizes = measures.needles.map(
    ({ mm, us, uk }) =>
      `${mm} mm: ${us ? `US ${us}` : 'no US number'}, ${uk ? `old UK ${uk}` : 'no old UK number'}`,
  )
  const disputed = measures.needles.flatMap(({ disputed: words }) =>
    words ? [`Charts disagree: ${words}.`] : [],
  )
  const categories = measures.categories.map(
    ({ number, name, needle: [least, most] }) =>
      `Such a gauge is usual for yarn category ${number}, ${name}, on ${most === null ? `${least} mm and more` : `${least} to ${most} mm`}; lace often goes on larger ones.`,
  )
  return {
    name: 'Needles',
    answer: sizes.join('; '),
    more: ['Buy by millimetres: the numbers differ from place to place.', ...disputed, ...categories],
    from: null,
  }
}

function hours({ measures: { hours: found, stitches } }: Told): SheetLine | null {
  if (!found || stitches === null) return null
  const { knitting, withRests, sittings } = found
  return {
    name: 'Time',
    answer: `${timeWords(withRests.value)}, rests included`,
    more: [
      `${timeWords(withRests.least)} to ${timeWords(withRests.most)}: ${roughWords(withRests)}.`,
      `${stitches.toLocaleString('en')} stitches, ${timeWords(knitting.value)} at the needles: ${many(sittings, 'sitting')} of half an hour, each with a rest for the hands after it.`,
    ],
    from: withRests,
  }
}

function lifelines({ measures: { lifelines: plan }, facts }: Told): SheetLine {
  const after = `after ${plan.rows.length === 1 ? facts.row : `${facts.row}s`} ${listed(plan.rows)}`
  const often = plan.every === 1 ? 'every time through' : `every ${ordinal(plan.every)} time through`
  const first =
    plan.first.length === 0
      ? []
      : [
          `Counted from the first ${facts.row}: ${plan.first.join(', ')}${(plan.many ?? 0) > plan.first.length ? ' and so on' : ''}, ${plan.many} in all.`,
        ]
  const care = plan.plain
    ? []
    : [`No ${facts.row} of this pattern is plain: catch the yarn overs too, and count twice.`]
  return {
    name: 'Lifelines',
    answer: sentence(`${after}, ${often}`),
    more: [...first, ...care, 'Leave the last one in until the next is through.'],
    from: null,
  }
}
