import { printable } from '../base/index.ts'
import { type Gauge, mostTimesThrough, type Wishes } from '../measure/index.ts'
import type { Unclear } from './evidence.ts'

export type MeasureUnit = 'cm' | 'in'

/** What the form about measures holds when nobody has typed yet. Its names are those of the fields. */
export const emptyMeasures = {
  unit: 'cm',
  width: '',
  length: '',
  blocked: 'yes',
  repeats: '',
  through: '',
  added: '',
  of: 'lace',
  over: '10',
  beforeStitches: '',
  beforeRows: '',
  afterStitches: '',
  afterRows: '',
  ballLength: '',
  ballGrams: '',
  swatchGrams: '',
  swatchStitches: '',
  swatchRows: '',
  yarnStitches: '',
  yarnLength: '1',
  needle: '',
  pace: '',
}

export type MeasureField = keyof typeof emptyMeasures
/** What was typed, as it was typed. */
export type MeasureTexts = Readonly<Record<MeasureField, string>>

const fields = Object.keys(emptyMeasures) as MeasureField[]
const mostCharacters = 40
const mostStored = 4000

type Size = 'count' | 'length' | 'yarn' | 'weight' | 'plain'

interface Kind {
  readonly size: Size
  /** In millimetres or grams where it has a unit. */
  readonly least: number
  readonly most: number
}

const count = (most: number, least = 1): Kind => ({ size: 'count', least, most })
const part = (least: number, most: number): Kind => ({ size: 'plain', least, most })
const size = (of: Size, least: number, most: number): Kind => ({ size: of, least, most })

/** What a field may hold. The bounds are wide: they stop slips of typing, not odd pieces. */
const kinds = {
  width: size('length', 10, 5000),
  length: size('length', 10, 20_000),
  repeats: count(1000),
  through: count(mostTimesThrough),
  added: count(100, 0),
  over: size('length', 20, 1000),
  beforeStitches: part(1, 300),
  beforeRows: part(1, 400),
  afterStitches: part(1, 300),
  afterRows: part(1, 400),
  ballLength: size('yarn', 1000, 5_000_000),
  ballGrams: size('weight', 1, 2000),
  swatchGrams: size('weight', 0.1, 1000),
  swatchStitches: count(1000),
  swatchRows: count(2000),
  yarnStitches: part(1, 2000),
  yarnLength: size('yarn', 100, 100_000),
  needle: part(0.5, 35),
  pace: part(1, 200),
} as const satisfies Partial<Record<MeasureField, Kind>>

type NumberField = keyof typeof kinds

const inch = 25.4
const yard = 914.4
/** Units that a reader may write behind a number, in millimetres or grams. */
const lengths = { mm: 1, cm: 10, m: 1000, in: inch, inch: inch, inches: inch, '"': inch, '”': inch }
const yarns = { ...lengths, metre: 1000, metres: 1000, meters: 1000, yd: yard, yds: yard, yard, yards: yard }
const weights = { g: 1, gram: 1, grams: 1, oz: 28.349523125 }
const written: Readonly<Record<Size, Readonly<Record<string, number>>>> = {
  count: {},
  plain: { mm: 1 },
  length: lengths,
  yarn: yarns,
  weight: weights,
}

/** What a bare number in that field means, in millimetres or grams. */
function bare(of: Size, unit: MeasureUnit): number {
  if (of === 'length') return unit === 'cm' ? 10 : inch
  if (of === 'yarn') return unit === 'cm' ? 1000 : yard
  return 1
}

type Read = { readonly value: number | null } | { readonly words: string }

const example = { count: '12', plain: '22 or 22.5', length: '45 or 17.5', yarn: '175', weight: '50' } as const

/** A number as people write it: '45', '45,5 cm', '17½ in', '1 3/4'. Null where nothing stands. */
function readNumber(text: string, kind: Kind, unit: MeasureUnit): Read {
  // Written before the next step takes ½ apart: 17½ is not 171/2.
  const apart = text.slice(0, mostCharacters).replace(/(\d)\s*([¼½¾⅓⅔⅛⅜⅝⅞])/g, '$1 $2')
  const tidy = apart.normalize('NFKC').trim()
  if (tidy === '') return { value: null }
  const found = /^([\d.,/⁄\s-]*\d)\s*([a-z"”]*)\.?$/i.exec(tidy)
  const amount = amountOf(found?.[1] ?? '')
  if (/^\d{1,3}(,\d{3})+$/.test(found?.[1] ?? ''))
    return { words: `‘${printable(tidy)}’ can be read in two ways. Write it without the comma.` }
  if (!found || amount === null)
    return {
      words: `‘${printable(tidy)}’ is not a number. Write it in digits, such as ${example[kind.size]}.`,
    }
  const name = (found[2] ?? '').toLowerCase()
  const factor = name === '' ? bare(kind.size, unit) : ownUnit(kind, name)
  if (factor === undefined)
    return { words: `‘${printable(name)}’ is no unit for this. Write the number alone.` }
  return bounded(amount * factor, kind, unit)
}

const ownUnit = ({ size: of }: Kind, name: string): number | undefined =>
  Object.hasOwn(written[of], name) ? written[of][name] : undefined

/** Decimals with a point or a comma, fractions with or without a whole number before them. */
function amountOf(text: string): number | null {
  if (/^\d+(?:[.,]\d+)?$/.test(text)) return Number(text.replace(',', '.'))
  const found = /^(?:(\d+)[\s-]+)?(\d+)\s*[/⁄]\s*(\d+)$/.exec(text)
  const [whole, above, below] = [found?.[1] ?? '0', found?.[2], Number(found?.[3])]
  return above !== undefined && below > 0 ? Number(whole) + Number(above) / below : null
}

function bounded(value: number, kind: Kind, unit: MeasureUnit): Read {
  if (kind.size === 'count' && !Number.isInteger(value))
    return { words: `Only whole ones can be counted here. Write a whole number, such as ${example.count}.` }
  if (value >= kind.least && value <= kind.most) return { value }
  const [least, most] = [inUnit(kind.least, kind.size, unit), inUnit(kind.most, kind.size, unit)]
  return { words: `That cannot be right here. Write a number from ${least} to ${most}.` }
}

const inUnit = (value: number, of: Size, unit: MeasureUnit): string => {
  const shown = value / bare(of, unit)
  return String(shown < 10 ? Math.ceil(shown * 10) / 10 : Math.round(shown))
}

/**
 * What a reader filled in, by the names of the fields. Every field that is not understood is told, with what to do, and
 * counts as not told, so that all others still give an answer.
 */
export function readMeasures(texts: MeasureTexts): {
  readonly wishes: Wishes
  readonly unclear: readonly Unclear[]
} {
  const unclear: Unclear[] = []
  const unit = unitOf(texts)
  const number = (field: NumberField): number | null => {
    const read = readNumber(texts[field], kinds[field], unit)
    if (!('words' in read)) return read.value
    unclear.push({ field, words: read.words })
    return null
  }
  const told = Object.fromEntries(
    (Object.keys(kinds) as NumberField[]).map((field) => [field, number(field)]),
  ) as Record<NumberField, number | null>
  unclear.push(...missing(texts, told))
  return { wishes: wishesOf(texts, told), unclear }
}

type Told = Readonly<Record<NumberField, number | null>>

const unitOf = ({ unit }: Pick<MeasureTexts, 'unit'>): MeasureUnit => (unit === 'in' ? 'in' : 'cm')

/** Fields that say nothing without another one. */
function missing(texts: MeasureTexts, told: Told): Unclear[] {
  const needs: [NumberField, NumberField, string][] = [
    ['beforeRows', 'beforeStitches', 'Write the stitches too: rows alone give no width.'],
    ['afterRows', 'afterStitches', 'Write the stitches too: rows alone give no width.'],
    ['swatchGrams', 'swatchStitches', 'Write how many stitches the weighed swatch was cast on with.'],
    ['swatchGrams', 'swatchRows', 'Write how many rows the weighed swatch has.'],
  ]
  const empty = (field: NumberField): boolean => texts[field].trim() === ''
  return needs
    .filter(([given, needed]) => told[given] !== null && empty(needed))
    .map(([, field, words]) => ({ field, words }))
}

function wishesOf(texts: MeasureTexts, told: Told): Wishes {
  const { width, length, repeats, through, needle, pace } = told
  return {
    ...{ width, length, repeats, through, needle, pace },
    blocked: texts.blocked !== 'no',
    added: told.added ?? 0,
    swatch: {
      of: texts.of === 'stocking' ? 'stocking stitch' : 'lace',
      before: gaugeOf(told.beforeStitches, told.beforeRows, told.over),
      after: gaugeOf(told.afterStitches, told.afterRows, told.over),
    },
    ball: { length: told.ballLength, grams: told.ballGrams },
    weighed: all({ grams: told.swatchGrams, stitches: told.swatchStitches, rows: told.swatchRows }),
    measuredYarn: all({ stitches: told.yarnStitches, length: told.yarnLength }),
  }
}

const gaugeOf = (stitches: number | null, rows: number | null, over: number | null): Gauge | null =>
  stitches === null || over === null ? null : { stitches, rows, over }

/** The parts, or null where one of them is missing. */
const all = <T extends Record<string, number | null>>(parts: T): { [K in keyof T]: number } | null =>
  Object.values(parts).includes(null) ? null : (parts as { [K in keyof T]: number })

/** What was typed, from what was stored; what is not understood of it is as if never typed. Null where nothing is. */
export function parseMeasures(stored: unknown): MeasureTexts | null {
  if (typeof stored !== 'string' || stored.length > mostStored) return null
  try {
    return measureTexts(JSON.parse(stored))
  } catch {
    return null
  }
}

/** The form's fields from any object that has them; null for anything else. */
export function measureTexts(value: unknown): MeasureTexts | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null
  const own = value as Readonly<Record<string, unknown>>
  const text = (field: MeasureField): string => {
    const typed = Object.hasOwn(own, field) ? own[field] : undefined
    return typeof typed === 'string' && typed.length <= mostCharacters ? typed : emptyMeasures[field]
  }
  return Object.fromEntries(fields.map((field) => [field, text(field)])) as MeasureTexts
}

/** The same lengths in the other unit. What has a unit of its own, or is no number, stays as it was typed. */
export function inUnitOf(texts: MeasureTexts, unit: MeasureUnit): MeasureTexts {
  const from = unitOf(texts)
  if (from === unit) return texts
  const untouched = [texts.beforeStitches, texts.beforeRows, texts.afterStitches, texts.afterRows].every(
    (text) => text.trim() === '',
  )
  const changed: Partial<Record<MeasureField, string>> = {
    unit,
    width: converted(texts.width, 'length', from, unit),
    length: converted(texts.length, 'length', from, unit),
    over: untouched ? overWhenEmpty[unit] : converted(texts.over, 'length', from, unit),
    ballLength: converted(texts.ballLength, 'yarn', from, unit),
    yarnLength: texts.yarnStitches.trim() === '' ? '1' : converted(texts.yarnLength, 'yarn', from, unit),
  }
  return { ...texts, ...changed }
}

/** The stretch that a gauge is counted over as a rule. Ten centimetres are not quite four inches. */
const overWhenEmpty: Readonly<Record<MeasureUnit, string>> = { cm: '10', in: '4' }

function converted(text: string, of: Size, from: MeasureUnit, to: MeasureUnit): string {
  const amount = amountOf(text.trim())
  if (amount === null) return text
  const fine = of === 'length' && to === 'in' ? 100 : 10
  return String(Math.round(((amount * bare(of, from)) / bare(of, to)) * fine) / fine)
}
