import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { checkPattern } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { root } from '../../site/setup/machine.mjs'

/** A demo pattern, read from its file. */
export function patternOf(slug: string): Pattern {
  const text = readFileSync(join(root, `content/patterns/${slug}.yaml`), 'utf8')
  const { pattern } = checkPattern({ name: slug, text })
  if (!pattern) throw new Error(`'${slug}' is not read`)
  return pattern
}
