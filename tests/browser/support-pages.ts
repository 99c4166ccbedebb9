import { globSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { root } from '../../site/setup/machine.mjs'

/** Where the build wrote the site. */
export const dist = join(root, 'dist')

/** A page of the built site: its path below the site's address ('patterns/reed-bed/') and its file. */
export interface BuiltPage {
  readonly path: string
  readonly file: string
}

/** Every page that the build wrote, in order of path. */
export function builtPages(): BuiltPage[] {
  return globSync('**/index.html', { cwd: dist })
    .map((file) => ({ path: file.replaceAll('\\', '/').replace(/index\.html$/, ''), file: join(dist, file) }))
    .sort((a, b) => (a.path < b.path ? -1 : 1))
}

/** Pages by kind. They are of one kind when they differ only in the second part of their path. */
export function byKind(pages: readonly BuiltPage[]): Map<string, BuiltPage[]> {
  return Map.groupBy(pages, (page) => kindOf(page.path))
}

/** The shortest and the longest of some pages. */
export function extremes(pages: readonly BuiltPage[]): BuiltPage[] {
  const sorted = pages.toSorted((a, b) => statSync(a.file).size - statSync(b.file).size)
  return [...new Set([...sorted.slice(0, 1), ...sorted.slice(-1)])]
}

// '' for the home page, 'patterns/' for a list, 'patterns/*' for what stands below it, 'patterns/*/mend' below that.
function kindOf(path: string): string {
  const [list, , ...below] = path.split('/').filter(Boolean)
  if (!path.replace(/\/$/, '').includes('/')) return path
  return [list, '*', ...below].join('/')
}

export const htmlOf = (page: BuiltPage): string => readFileSync(page.file, 'utf8')

/** Links and sources in a page that start at the site's root, without query and fragment. */
export function localAddresses(html: string): string[] {
  const found = html.matchAll(/\s(?:href|src)="(\/[^"#?]*)/g)
  return [...new Set([...found].map((match) => decodeURI(match[1] ?? '')))]
}

/** Whether the built site has something at a path that starts at the site's root. */
export function isServed(path: string, base: string): boolean {
  if (!path.startsWith(base)) return false
  const file = join(dist, path.slice(base.length), path.endsWith('/') ? 'index.html' : '')
  return statSync(file, { throwIfNoEntry: false })?.isFile() ?? false
}
