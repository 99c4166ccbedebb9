import type { MeasureUnit } from '../../engine/intake/index.ts'
import { type Estimate, type Figure, marginOf } from '../../engine/measure/index.ts'

const inch = 25.4
const yard = 914.4

/** 1 → '1 stitch', 12 → '12 stitches'. */
export const many = (n: number, one: string, more = `${one}s`): string => `${n} ${n === 1 ? one : more}`

type Round = (value: number) => number

/** To one decimal, to whole ones from 100 on. */
const fine = (value: number, round: Round = Math.round): number =>
  value < 100 ? round(value * 10) / 10 : round(value)

const sizeIn = (mm: number, unit: MeasureUnit, round?: Round): number =>
  fine(unit === 'cm' ? mm / 10 : mm / inch, round)

/** '30.6 cm', '12 in'. */
export const sizeWords = (mm: number, unit: MeasureUnit): string => `${sizeIn(mm, unit)} ${unit}`

/** '28.9 to 32.4 cm', rounded outward. */
export const sizeRange = ({ least, most }: Figure, unit: MeasureUnit): string =>
  `${sizeIn(least, unit, Math.floor)} to ${sizeIn(most, unit, Math.ceil)} ${unit}`

const yarnIn = (mm: number, unit: MeasureUnit, round: Round): number =>
  round(unit === 'cm' ? mm / 1000 : mm / yard)

const yarnUnit = (unit: MeasureUnit): string => (unit === 'cm' ? 'm' : 'yd')

/** '318 m', '348 yd'. */
export const yarnWords = ({ value }: Figure, unit: MeasureUnit): string =>
  `${yarnIn(value, unit, Math.round)} ${yarnUnit(unit)}`

export const yarnRange = ({ least, most }: Figure, unit: MeasureUnit): string =>
  `${yarnIn(least, unit, Math.floor)} to ${yarnIn(most, unit, Math.ceil)} ${yarnUnit(unit)}`

export const gramWords = ({ value }: Figure): string => `${fine(value)} g`
export const gramRange = ({ least, most }: Figure): string =>
  `${fine(least, Math.floor)} to ${fine(most, Math.ceil)} g`

/** '50 minutes', '3½ hours', '21 hours'. */
export function timeWords(minutes: number): string {
  if (minutes < 90) return many(Math.round(minutes), 'minute')
  const halves = Math.round(minutes / 30)
  const whole = Math.floor(halves / 2)
  if (whole >= 10) return many(Math.round(minutes / 60), 'hour')
  return halves % 2 === 0 ? many(whole, 'hour') : `${whole}½ hours`
}

/** 'close, within 3 %'. */
export function roughWords(estimate: Estimate): string {
  if (estimate.roughness === 'exact') return 'exact'
  const name = estimate.roughness === 'guess' ? 'a guess' : estimate.roughness
  return `${name}, within ${Math.ceil(marginOf(estimate) * 100)} %`
}

/** 2 → '2nd'. */
export function ordinal(n: number): string {
  const tens = n % 100
  if (tens >= 11 && tens <= 13) return `${n}th`
  return `${n}${['th', 'st', 'nd', 'rd'][n % 10] ?? 'th'}`
}

/** 'a', 'a and b', 'a, b and c'. */
export const listed = (items: readonly (string | number)[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
