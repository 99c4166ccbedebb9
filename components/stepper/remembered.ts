import type { Lesson } from '../../engine/lesson/index.ts'
import type { Hold } from '../../engine/stitches/index.ts'
import type { Spot } from './state.ts'

/** What is made for a stitch of a lesson. */
type Make<T> = (lesson: Lesson, spot: Spot, hold: Hold) => T | null

/** So many stitches are kept ready. */
const mostKept = 6

/** Remembers the last few stitches, so that those beside the one that is shown can be made ready while nothing happens. */
export function remembered<T>(make: Make<T>): Make<T> {
  const kept = new Map<string, T | null>()
  let of: Lesson | null = null
  return (lesson, spot, hold) => {
    if (lesson !== of) kept.clear()
    of = lesson
    const name = `${spot.row} ${spot.step} ${hold}`
    const made = kept.get(name) ?? make(lesson, spot, hold)
    kept.delete(name)
    kept.set(name, made)
    const [oldest] = kept.keys()
    if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest)
    return made
  }
}
