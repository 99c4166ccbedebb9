import { type Habits, type Place, parseHabits, parsePlace, parseProgress } from '../../engine/intake/index.ts'
import type { Progress } from '../../engine/lesson/index.ts'

/** What the browser keeps between visits. Where it keeps nothing, everything here does nothing. */
export interface Store {
  place(): Place | null
  savePlace(place: Place): void
  habits(): Habits | null
  saveHabits(habits: Habits): void
  /** Ticks and lifeline of a pattern with so many rows. */
  progress(rows: number): Progress | null
  saveProgress(progress: Progress): void
}

const habitsKey = 'openwork:habits'

/** Place and ticks belong to one version of one pattern: in another version that stitch may be another. */
export function storeFor(slug: string, version: string): Store {
  const progressKey = `openwork:progress:${slug}:${version}`
  const placeKey = `openwork:place:${slug}:${version}`
  return {
    place: () => parsePlace(read(placeKey)),
    savePlace: (place) => write(placeKey, place),
    habits: () => parseHabits(read(habitsKey)),
    saveHabits: (habits) => write(habitsKey, habits),
    progress: (rows) => parseProgress(read(progressKey), rows),
    saveProgress: (progress) => write(progressKey, progress),
  }
}

function read(key: string): string | null {
  try {
    return localStorage.getItem(key)
  } catch {
    return null
  }
}

const written = new Map<string, string>()

/** Most presses change one of three things: what is kept already is not written again. */
function write(key: string, value: Place | Habits | Progress): void {
  const text = JSON.stringify(value)
  if (written.get(key) === text) return
  written.set(key, text)
  try {
    localStorage.setItem(key, text)
  } catch {
    // Blocked or full: the lesson goes on, only this browser forgets the place.
  }
}
