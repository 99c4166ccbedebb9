import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { base } from './support.ts'
import { dist, htmlOf, localAddresses } from './support-pages.ts'

/** What a page's parts weigh on their way to a reader, in bytes after gzip; fonts stand aside. */
export interface Weight {
  readonly html: number
  readonly styles: number
  /** What the page loads at once and what its scripts fetch later. */
  readonly scripts: number
  readonly pictures: number
}

export const totalOf = ({ html, styles, scripts, pictures }: Weight): number =>
  html + styles + scripts + pictures

export function weightOf(page: { readonly path: string; readonly file: string }): Weight {
  const html = htmlOf(page)
  const linked = localAddresses(html).map((address) => address.slice(base.length))
  const ending = (end: string): string[] => linked.filter((path) => path.endsWith(end))
  const weigh = (paths: Iterable<string>): number =>
    [...paths].reduce((sum, path) => sum + compressed(readFileSync(join(dist, path))), 0)
  return {
    html: compressed(Buffer.from(html)),
    styles: weigh(ending('.css')),
    scripts: weigh(withImports(ending('.js'))),
    pictures: weigh(ending('.svg').filter((path) => isShown(html, path))),
  }
}

const compressed = (bytes: Buffer): number => gzipSync(bytes, { level: 9 }).length

const isShown = (html: string, path: string): boolean => html.includes(`src="${base}${path}"`)

/** Scripts with all that they import, at once or later, by the names of the files beside them. */
function withImports(paths: readonly string[]): Set<string> {
  const found = new Set<string>()
  const visit = (path: string): void => {
    if (found.has(path)) return
    found.add(path)
    const folder = path.replace(/[^/]*$/, '')
    const text = readFileSync(join(dist, path), 'utf8')
    for (const [, name] of text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*["'`]\.\/([^"'`]+\.js)["'`]/g)) {
      visit(`${folder}${name}`)
    }
  }
  for (const path of paths) visit(path)
  return found
}
