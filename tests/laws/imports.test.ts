import { globSync, readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** From the ground up. A folder imports from lines above its own in this list only, never from a neighbour. */
const layers = [
  ['engine/base'],
  ['engine/stitches'],
  ['engine/pattern'],
  ['engine/notation', 'engine/counts', 'engine/needles'],
  ['engine/chart', 'engine/fabric'],
  ['engine/mistakes', 'engine/adapt', 'engine/measure'],
  ['engine/drawing'],
  ['engine/lesson'],
  ['engine/practice'],
  ['engine/intake'],
  ['engine/command', 'site/library.ts'],
  ['components'],
  ['pages'],
]

/** Engine files that may be longer than others because they are tables of data. */
const longTables: readonly string[] = []
const longestFile = 400

/** The part of the product that a file belongs to: an engine folder, the library, components, or all that makes pages. */
function partOf(file: string): string {
  if (file.startsWith('engine/')) return file.split('/').slice(0, 2).join('/')
  if (file === 'site/library.ts') return file
  return file.startsWith('components/') ? 'components' : 'pages'
}

const heightOf = (part: string): number => layers.findIndex((layer) => layer.includes(part))

/** Everything that a file imports or exports from elsewhere, types counted, as written. */
function importsOf(file: string, text: string): string[] {
  return scriptsOf(file, text).flatMap((script) =>
    ts.preProcessFile(script, true, true).importedFiles.map((found) => found.fileName),
  )
}

/** The script of a file: all of it, or the fenced part and the script elements of a component, or a lesson's imports. */
function scriptsOf(file: string, text: string): string[] {
  if (file.endsWith('.mdx')) return text.match(/^(?:import|export)\s[^'"]*['"][^'"\n]+['"]/gm) ?? []
  if (!file.endsWith('.astro')) return [text]
  const fenced = /^---$(.*?)^---$/ms.exec(text)?.[1] ?? ''
  return [fenced, ...[...text.matchAll(/<script[^>]*>(.*?)<\/script>/gs)].map((match) => match[1] ?? '')]
}

/** What is wrong with the imports of one file; nothing when all keep the law. */
function problemsOf(file: string, text: string): string[] {
  return importsOf(file, text).flatMap((name) => {
    const problem = name.startsWith('.')
      ? problemWithin(file, posix.join(posix.dirname(file), name))
      : problemOutside(file, name)
    return problem ? [`${file} imports ${name}: ${problem}`] : []
  })
}

/** The law for an import from our own files. */
function problemWithin(file: string, target: string): string | null {
  const [from, to] = [partOf(file), partOf(target)]
  if (from === to) return null
  if (heightOf(from) < 0) return `${from} has no place in the list of layers`
  if (heightOf(to) < 0) return `${to} has no place in the list of layers`
  if (heightOf(to) >= heightOf(from)) return `${to} does not lie below ${from}`
  if (to.startsWith('engine/') && target !== `${to}/index.ts`) return `not by way of ${to}/index.ts`
  return null
}

/** The law for an import of a package or of Node's own modules. */
function problemOutside(file: string, name: string): string | null {
  if (!file.startsWith('engine/') || file.startsWith('engine/command/')) return null
  if (name.startsWith('node:')) return 'only engine/command may use Node'
  if (/^(astro|@astrojs)\b/.test(name)) return 'the engine knows nothing of pages or browsers'
  return null
}

const files = globSync('{engine,components,site,content}/**/*.{ts,mts,mjs,js,astro,mdx}', { cwd: root })
const textOf = (file: string): string => readFileSync(join(root, file), 'utf8')

describe('imports go down only', () => {
  it('in every file', () => {
    expect(files.filter((file) => importsOf(file, textOf(file)).length > 0).length).toBeGreaterThan(5)
    expect(files.flatMap((file) => problemsOf(file, textOf(file)))).toEqual([])
  })

  it('for every engine folder there is a place in the layers', () => {
    const folders = new Set(
      files.filter((file) => file.startsWith('engine/')).map((file) => posix.dirname(file)),
    )
    expect([...folders].filter((folder) => heightOf(partOf(`${folder}/index.ts`)) < 0)).toEqual([])
  })

  it.each([
    ['up', 'engine/pattern/a.ts', "import { x } from '../chart/index.ts'"],
    ['up, a type only', 'engine/base/a.ts', "import type { Pattern } from '../pattern/index.ts'"],
    ['up, passed on', 'engine/base/a.ts', "export type * from '../pattern/index.ts'"],
    ['up, on demand', 'engine/base/a.ts', "const later = import('../pattern/index.ts')"],
    ['up, a type within a type', 'engine/base/a.ts', "type P = import('../pattern/index.ts').Pattern"],
    ['to a neighbour', 'engine/counts/a.ts', "import { x } from '../needles/index.ts'"],
    ['past the index', 'engine/chart/a.ts', "import { x } from '../needles/worked.ts'"],
    [
      'past the index, from a page',
      'site/pages/a.astro',
      "---\nimport { x } from '../../engine/needles/worked.ts'\n---\n",
    ],
    ['of Node', 'engine/intake/a.ts', "import { readFileSync } from 'node:fs'"],
    ['of Astro', 'engine/lesson/a.ts', "import { getCollection } from 'astro:content'"],
    ['of a component', 'engine/lesson/a.ts', "import X from '../../components/X.astro'"],
    [
      'of a page by a component',
      'components/A.astro',
      "---\n---\n<script>\nimport '../site/pages/x.ts'\n</script>",
    ],
    ['of the command by the library', 'site/library.ts', "import { main } from '../engine/command/index.ts'"],
    ['of a folder that is not listed', 'engine/chart/a.ts', "import { x } from '../made-up/index.ts'"],
  ])('refuses one %s', (_, file, text) => {
    expect(problemsOf(file, text)).toHaveLength(1)
  })

  it.each([
    ['down', 'engine/chart/a.ts', "import type { Pattern } from '../pattern/index.ts'"],
    ['within a folder', 'engine/chart/a.ts', "import { b } from './b.ts'"],
    ['of Node by the command', 'engine/command/a.ts', "import { readFileSync } from 'node:fs'"],
    [
      'of a component by a page',
      'site/pages/a.astro',
      "---\nimport X from '../../components/X.astro'\n---\n",
    ],
    [
      'of a component by a lesson',
      'content/lessons/a.mdx',
      "import X from '../../components/X.astro'\n\n# A",
    ],
    [
      'of a component by a lesson, on several lines',
      'content/lessons/a.mdx',
      "import {\n  a,\n} from '../../components/a.ts'\n",
    ],
    ['of a package', 'engine/intake/a.ts', "import { parseDocument } from 'yaml'"],
  ])('lets one %s be', (_, file, text) => {
    expect(importsOf(file, text)).toHaveLength(1)
    expect(problemsOf(file, text)).toEqual([])
  })
})

describe('engine files are short', () => {
  const lengthOf = (file: string): number => textOf(file).split('\n').length

  it('but for tables of data', () => {
    const engine = files.filter((file) => file.startsWith('engine/') && !longTables.includes(file))
    expect(engine.length).toBeGreaterThan(5)
    expect(engine.filter((file) => lengthOf(file) > longestFile)).toEqual([])
  })

  it('and no table is excused that is short or gone', () => {
    expect(longTables.filter((file) => !files.includes(file) || lengthOf(file) <= longestFile)).toEqual([])
  })
})
