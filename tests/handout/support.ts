import { globSync, readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { checkPattern } from '../../engine/intake/index.ts'
import { type ClassPlan, emptyClass, type HandoutSource } from '../../engine/lesson/index.ts'

/** Every pattern of the library that is proved. */
export const library: readonly HandoutSource[] = globSync('content/patterns/*.yaml')
  .sort()
  .flatMap((file) => {
    const { pattern, proof, sound } = checkPattern({ name: file, text: readFileSync(file, 'utf8') })
    return sound && pattern && proof ? [{ slug: basename(file, '.yaml'), pattern, proof }] : []
  })

export const known: ReadonlyMap<string, { readonly proved: boolean }> = new Map(
  library.map(({ slug }) => [slug, { proved: true }]),
)

/** A class that teaches these patterns, three repeats each. */
export const classOf = (slugs: readonly string[], more: Partial<ClassPlan> = {}): ClassPlan => ({
  ...emptyClass,
  title: 'A test',
  patterns: slugs.map((pattern) => ({ pattern, repeats: 3 })),
  ...more,
})
