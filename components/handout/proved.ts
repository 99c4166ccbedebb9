import { checkPattern } from '../../engine/intake/index.ts'
import type { ClassPlan, HandoutSource } from '../../engine/lesson/index.ts'
import { patternFileAddress } from './addresses.ts'

const known = new Map<string, Promise<HandoutSource | null>>()

/** A pattern of the library, proved here from its own file; null where it cannot be had. */
function sourceOf(slug: string): Promise<HandoutSource | null> {
  const before = known.get(slug)
  if (before) return before
  const source = fetched(slug)
  known.set(slug, source)
  // What failed may go better the next time.
  void source.then((one) => one ?? known.delete(slug))
  return source
}

async function fetched(slug: string): Promise<HandoutSource | null> {
  try {
    const answer = await fetch(patternFileAddress(slug))
    if (!answer.ok) return null
    const { pattern, proof, sound } = checkPattern({ name: slug, text: await answer.text() })
    return sound && pattern && proof ? { slug, pattern, proof } : null
  } catch {
    return null
  }
}

export interface Sources {
  readonly found: readonly HandoutSource[]
  /** Patterns that could not be had. */
  readonly missing: readonly string[]
}

/** The patterns that a class names. */
export async function sourcesFor({ patterns }: ClassPlan): Promise<Sources> {
  const slugs = [...new Set(patterns.map(({ pattern }) => pattern))]
  const all = await Promise.all(slugs.map(sourceOf))
  return {
    found: all.filter((one) => one !== null),
    missing: slugs.filter((_, i) => all[i] === null),
  }
}
