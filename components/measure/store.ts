import { type MeasureTexts, parseMeasures } from '../../engine/intake/index.ts'

/** What the browser keeps of the form between visits. Where it keeps nothing, everything here does nothing. */
export interface MeasureStore {
  texts(): MeasureTexts | null
  save(texts: MeasureTexts): void
}

/** What was typed belongs to one pattern, whatever its version: it is read anew against its rows. */
export function measureStore(slug: string): MeasureStore {
  const key = `openwork:measures:${slug}`
  return {
    texts() {
      try {
        return parseMeasures(localStorage.getItem(key))
      } catch {
        return null
      }
    },
    save(texts) {
      try {
        localStorage.setItem(key, JSON.stringify(texts))
      } catch {
        // Blocked or full: the sheet goes on, only this browser forgets what was typed.
      }
    },
  }
}
