// Checked by hand: a schema library would weigh more than all the rest of a lesson's own script.

/** What is known of a value that was stored, by name. */
export type Parts = Readonly<Record<string, unknown>>

export const isWithin = (value: unknown, least: number, most: number): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most

/** An object that has just these names of its own; null for anything else. */
export function partsIn(value: unknown, names: readonly string[]): Parts | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null
  const own = Object.keys(value)
  return own.length === names.length && names.every((name) => own.includes(name)) ? (value as Parts) : null
}

/** The same from a stored text that is no longer than such a text can be. */
export function partsOf(stored: unknown, names: readonly string[], mostCharacters: number): Parts | null {
  if (typeof stored !== 'string' || stored.length > mostCharacters) return null
  try {
    return partsIn(JSON.parse(stored), names)
  } catch {
    return null
  }
}
