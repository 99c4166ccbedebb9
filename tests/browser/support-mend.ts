import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { at } from '../../engine/base/index.ts'
import { checkPattern } from '../../engine/intake/index.ts'
import { root } from '../../site/setup/machine.mjs'

/** The proof's counts before and after each row of a demo pattern over two repeats. */
export function provedOf(slug: string): { index: number; row: number; before: number; after: number }[] {
  const text = readFileSync(join(root, `content/patterns/${slug}.yaml`), 'utf8')
  const { proof } = checkPattern({ name: slug, text })
  if (!proof) throw new Error(`'${slug}' has no proof`)
  return [...proof.setUp, ...proof.rows].map(({ row, before, after }, index) => ({
    index,
    row,
    before: at(before, 2),
    after: at(after, 2),
  }))
}
