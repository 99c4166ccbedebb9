import { isIndex, isRepeats, type Place } from './place.ts'

/** Such a part of an address has some 30 characters. */
const mostCharacters = 200

/** Where a link leads: a row at least. Indices from 0; what it leaves open is null. */
export interface LinkedPlace {
  readonly row: number
  readonly step: number | null
  readonly repeats: number | null
}

/** A place in a lesson as the last part of an address: '#row=2&step=5&repeats=3'. */
export const placeHash = ({ row, step, repeats }: Omit<Place, 'hold'>): string =>
  `#row=${row}&step=${step}&repeats=${repeats}`

/** The index that stands behind a name; null where none does. What has more digits is no index of ours. */
function numberIn(parts: readonly string[], name: string): number | null {
  const value = parts.find((part) => part.startsWith(`${name}=`))?.slice(name.length + 1)
  return value !== undefined && /^\d{1,5}$/.test(value) ? Number(value) : null
}

/** The place that such an address names; null where it names no row. Other parts that make no sense are left open. */
export function parsePlaceHash(hash: unknown): LinkedPlace | null {
  if (typeof hash !== 'string' || hash.length > mostCharacters) return null
  const parts = hash.replace(/^#/, '').split('&')
  const [row, step, repeats] = ['row', 'step', 'repeats'].map((name) => numberIn(parts, name))
  if (!isIndex(row)) return null
  return { row, step: isIndex(step) ? step : null, repeats: isRepeats(repeats) ? repeats : null }
}
