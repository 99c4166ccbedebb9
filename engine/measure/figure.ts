import type { Basis } from './bases.ts'

/** A number with how far it may lie off: least ≤ value ≤ most. Its unit is its owner's. */
export interface Figure {
  readonly value: number
  readonly least: number
  readonly most: number
}

/** Exact; within 5 in 100; within 20 in 100; further off than that. */
export type Roughness = 'exact' | 'close' | 'rough' | 'guess'

/** A figure that can be told: what it rests on, and what a swatch would settle (null where nothing is open). */
export interface Estimate extends Figure {
  readonly roughness: Roughness
  readonly rests: readonly Basis[]
  readonly swatch: string | null
}

export const sure = (value: number): Figure => ({ value, least: value, most: value })

export const between = (least: number, value: number, most: number): Figure => ({ value, least, most })

/** Both may be off in the same direction at once: the margins are widened, never balanced against each other. */
export const times = (a: Figure, b: Figure): Figure =>
  between(a.least * b.least, a.value * b.value, a.most * b.most)

export const over = (a: Figure, b: Figure): Figure =>
  between(a.least / b.most, a.value / b.value, a.most / b.least)

export const plus = (a: Figure, b: Figure): Figure =>
  between(a.least + b.least, a.value + b.value, a.most + b.most)

export const scaled = (a: Figure, by: number): Figure => times(a, sure(by))

export const rootOf = (a: Figure): Figure =>
  between(Math.sqrt(a.least), Math.sqrt(a.value), Math.sqrt(a.most))

/** The larger of the two margins, as a share of the value: 0.1 for ten in a hundred. */
export const marginOf = ({ value, least, most }: Figure): number =>
  value === 0 ? 0 : Math.max(most - value, value - least) / value

/** How rough a figure is follows from its margin alone, so that word and number cannot disagree. */
export function roughnessOf(figure: Figure): Roughness {
  const margin = marginOf(figure)
  if (margin === 0) return 'exact'
  if (margin <= 0.05) return 'close'
  return margin <= 0.2 ? 'rough' : 'guess'
}

/** A figure made ready to be told; each basis is named once. */
export function estimate(figure: Figure, rests: readonly Basis[], swatch: string | null): Estimate {
  const { value, least, most } = figure
  return { value, least, most, roughness: roughnessOf(figure), rests: [...new Set(rests)], swatch }
}
