import { globSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import type { Source } from '../base/index.ts'
import { type ClassReading, classProblemText, readClass } from '../intake/index.ts'
import { type ClassPlan, type HandoutSource, handoutOf, papers, prints } from '../lesson/index.ts'
import { decodeText } from './decode.ts'
import { checkFile } from './files.ts'
import { chromiumPath, printPdf } from './handout-browser.ts'
import { handoutPage } from './handout-page.ts'

const content = fileURLToPath(new URL('../../content/', import.meta.url))

/** What the command was asked for; a sentence where that is not clear. */
interface Asked {
  readonly name: string
  readonly out: string
  readonly change: Partial<Pick<ClassPlan, 'paper' | 'print'>>
}

function askedFrom(argv: string[]): Asked | string {
  const options = { paper: { type: 'string' }, print: { type: 'string' }, out: { type: 'string' } } as const
  const { values, positionals } = parseArgs({ args: argv, options, allowPositionals: true })
  const [name] = positionals
  const paper = papers.find((one) => one === values.paper)
  const print = prints.find((one) => one === values.print)
  if (name === undefined || positionals.length > 1) return 'handout wants one class, by its name or its file'
  if (values.out === undefined || values.out === '') return 'handout wants --out FILE.pdf'
  if (values.paper !== undefined && !paper) return `--paper wants a4 or letter, not \`${values.paper}\``
  if (values.print !== undefined && !print)
    return `--print wants one of ${prints.join(', ')}, not \`${values.print}\``
  return { name, out: values.out, change: { ...(paper && { paper }), ...(print && { print }) } }
}

/** A class is named by a file, or by the name of one in the library. */
const fileOf = (name: string): string =>
  /[/\\]|\.ya?ml$/.test(name) ? name : join(content, 'classes', `${name}.yaml`)

function textOf(path: string): string | null {
  try {
    const { text, issues } = decodeText(readFileSync(path))
    return issues.length > 0 ? null : text
  } catch {
    return null
  }
}

/** Every pattern of the library by address; null for a draft that is not proved. */
function library(): Map<string, HandoutSource | null> {
  const files = globSync(join(content, 'patterns', '*.yaml')).sort()
  return new Map(
    files.map((file) => {
      const { pattern, proof, sound } = checkFile(file)
      const slug = basename(file, '.yaml')
      return [slug, sound && pattern && proof ? { slug, pattern, proof } : null]
    }),
  )
}

function readAgainst(source: Source, patterns: ReadonlyMap<string, HandoutSource | null>): ClassReading {
  return readClass(source, new Map([...patterns].map(([slug, one]) => [slug, { proved: one !== null }])))
}

const noBrowser = `openwork: no Chromium was found to print with
  install the package chromium, run \`npm run setup\`, or set OPENWORK_BROWSER to the path of a Chromium or Chrome
`

/**
 * `handout CLASS --paper a4|letter --out FILE.pdf`: a class's paper as PDF, made from the files as they are; the site need
 * not be built. Gives the exit code, or a sentence about wrong usage.
 */
export async function handout(
  argv: string[],
  { out, err }: { out: (text: string) => void; err: (text: string) => void },
): Promise<number | string> {
  const asked = askedFrom(argv)
  if (typeof asked === 'string') return asked
  const path = fileOf(asked.name)
  const text = textOf(path)
  if (text === null) {
    err(`${path}:1:1: error: there is no such class, or it cannot be read as UTF-8\n`)
    return 1
  }
  const source = { name: path, text }
  const patterns = library()
  const { plan, problems } = readAgainst(source, patterns)
  err(classProblemText(source, problems))
  if (!plan || problems.length > 0) return 1
  const browser = await chromiumPath()
  if (!browser) {
    err(noBrowser)
    return 1
  }
  const sources = [...patterns.values()].filter((one) => one !== null)
  const trouble = printPdf(browser, handoutPage(handoutOf({ ...plan, ...asked.change }, sources)), asked.out)
  if (trouble === null) out(`${asked.out}\n`)
  else err(`openwork: ${asked.out} could not be made: ${trouble}\n`)
  return trouble === null ? 0 : 1
}
