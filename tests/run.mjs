// `npm test`: sets up what is missing, runs every check, and ends with one line that adds them all up.
// `node tests/run.mjs unit browser` runs the named parts only.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { ensureBrowser } from '../site/setup/browser.mjs'
import { environment, root, run } from '../site/setup/machine.mjs'
import { orExplain, setUp } from '../site/setup/packages.mjs'
import { ensurePdfText } from '../site/setup/pdf-text.mjs'

/** @typedef {{ passed: number, failed: number }} Count */
/** @typedef {{ status: string, assertionResults: { status: string }[] }} UnitFile */

const failure = { passed: 0, failed: 1 }
const reports = mkdtempSync(join(tmpdir(), 'openwork-tests-'))
/** Milliseconds. No tool takes half as long; one that hangs is ended and has failed. */
const longest = 900_000

/** @type {Record<string, () => Count | Promise<Count>>} */
const parts = { types, lint, unit, build, browser }

await main(process.argv.slice(2))

/** @param {readonly string[]} asked */
async function main(asked) {
  const unknown = asked.filter((name) => !Object.hasOwn(parts, name))
  if (unknown.length > 0) {
    console.error(`No such part: ${unknown.join(', ')}. There are: ${Object.keys(parts).join(', ')}.`)
    process.exitCode = 2
    return
  }
  heading('set-up')
  const isSetUp = await orExplain(setUp)
  const total = isSetUp ? await runAll(asked.length > 0 ? asked : Object.keys(parts)) : failure
  rmSync(reports, { recursive: true, force: true })
  console.log(`\n${total.passed} passed, ${total.failed} failed`)
  process.exitCode = total.failed > 0 || total.passed === 0 ? 1 : 0
}

/** @param {readonly string[]} names */
async function runAll(names) {
  /** @type {Count[]} */
  const counts = []
  for (const name of names) {
    heading(name)
    const began = Date.now()
    const count = (await parts[name]?.()) ?? failure
    const seconds = Math.round((Date.now() - began) / 1000)
    console.log(`\n${name}: ${count.passed} good, ${count.failed} bad, ${seconds} s`)
    counts.push(count)
  }
  return sum(counts)
}

function types() {
  const projects = ['engine', 'engine/command', 'tests']
  return sum([
    single(run('astro', ['check'], { timeout: longest })),
    ...projects.map((project) => single(run('tsc', ['--project', project], { timeout: longest }))),
  ])
}

function lint() {
  return single(
    run('biome', ['check', '--error-on-warnings', '--max-diagnostics=none'], { timeout: longest }),
  )
}

/** The engine's own tests, the outside checks and the laws. */
function unit() {
  const report = join(reports, 'unit.json')
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
  const ok = run('vitest', ['run', ...reporters], { timeout: longest })
  const result = read(report)
  if (!result) return failure
  // A file that breaks before its first test has failed, though no test in it has.
  const broken = result.testResults.filter(
    (/** @type {UnitFile} */ file) =>
      file.status === 'failed' && file.assertionResults.every((test) => test.status !== 'failed'),
  )
  return agreed(ok, { passed: result.numPassedTests, failed: result.numFailedTests + broken.length })
}

function build() {
  // A site of an earlier build must not stand in for one that fails.
  rmSync(join(root, 'dist'), { recursive: true, force: true })
  return single(run('astro', ['build'], { timeout: longest }))
}

async function browser() {
  const path = await orExplain(ensureBrowser)
  if (!path) return failure
  if (!ensurePdfText()) console.log('There is no pdftotext here: tests that read printed pages are skipped.')
  const report = join(reports, 'browser.json')
  const args = ['test', '--config', 'tests/browser/playwright.config.ts', '--reporter=list,json']
  const env = environment({ OPENWORK_BROWSER: path, PLAYWRIGHT_JSON_OUTPUT_FILE: report })
  const ok = run('playwright', args, { env, timeout: longest })
  const result = read(report)
  if (!result) return failure
  const { expected, unexpected, flaky } = result.stats
  return agreed(ok, { passed: expected, failed: unexpected + flaky + result.errors.length })
}

/** A check that is one pass or one failure. @param {boolean} ok @returns {Count} */
function single(ok) {
  return ok ? { passed: 1, failed: 0 } : failure
}

/** A tool that ends badly has failed, whatever its report counts. @param {boolean} ok @param {Count} count @returns {Count} */
function agreed(ok, { passed, failed }) {
  return { passed, failed: ok ? failed : Math.max(failed, 1) }
}

/** @param {readonly Count[]} counts @returns {Count} */
function sum(counts) {
  return counts.reduce((a, b) => ({ passed: a.passed + b.passed, failed: a.failed + b.failed }), {
    passed: 0,
    failed: 0,
  })
}

/** A tool's report, or null where it wrote none. @param {string} file */
function read(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    console.error('There is no report to count from.')
    return null
  }
}

/** @param {string} name */
function heading(name) {
  console.log(`\n── ${name} ${'─'.repeat(60 - name.length)}\n`)
}
