/**
 * What one key costs on the drafting page: milliseconds of script on the page's own thread for a draft of 60 stitches
 * by 40 rows, in headless Chromium. Run by hand after a build: node tests/benchmarks/draft.ts [FOLDER OF THE BUILT SITE]
 *
 * The answer to the key (the field, the history, the store, the message to the worker) is told apart from what follows
 * when the worker has counted, which is done in slices between frames.
 */
import { createReadStream, existsSync } from 'node:fs'
import { createServer } from 'node:http'
import { extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium, type Page } from '@playwright/test'
import { findBrowser } from '../../site/setup/browser.mjs'

const dist = process.argv[2] ?? fileURLToPath(new URL('../../dist', import.meta.url))
const [stitches, rowCount, keys] = [60, 40, 30]
/** Milliseconds of one frame at 60 frames a second. */
const frame = 16

if (!existsSync(join(dist, 'draft/index.html'))) throw new Error('build the site first: npm run build')

const types: Record<string, string> = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css' }
const server = createServer((request, response) => {
  const path = join(dist, new URL(request.url ?? '/', 'http://localhost').pathname)
  const file = extname(path) === '' ? join(path, 'index.html') : path
  if (!existsSync(file)) return void response.writeHead(404).end()
  response.writeHead(200, { 'content-type': types[extname(file)] ?? 'application/octet-stream' })
  createReadStream(file).pipe(response)
})
await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
const address = server.address()
const port = typeof address === 'object' && address ? address.port : 0

/** A right-side row of 60 stitches, written out, with holes and decreases, and a plain row back. */
const lace = Array.from({ length: stitches / 6 }, () => 'yo, ssk, k1, k2tog, yo, k1').join(', ')
const text = Array.from({ length: rowCount }, (_, i) => `Row ${i + 1}: ${i % 2 === 0 ? lace : 'purl'}`).join(
  '\n',
)

const browser = await chromium.launch({
  executablePath: findBrowser() ?? chromium.executablePath(),
  chromiumSandbox: process.getuid?.() !== 0,
  args: ['--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'],
})
const page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
await page.goto(`http://127.0.0.1:${port}/draft/`)
await page.locator('[data-rows] textarea').first().focus()
await page.evaluate((words) => {
  const data = new DataTransfer()
  data.setData('text/plain', words)
  document.activeElement?.dispatchEvent(
    new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
  )
}, text)
await page.locator('[data-stand][data-sound="true"]').waitFor({ timeout: 30_000 })
await page.waitForTimeout(4000)
const drawn = await page.locator('.strip .loops path').count()
if (drawn !== stitches * rowCount)
  throw new Error(`${drawn} loops are drawn instead of ${stitches * rowCount}`)

// A key in the middle of row 21: a number changes, so that every loop above it is counted anew.
const field = page.locator('[data-rows] textarea').nth(20)
await field.focus()
await field.evaluate((one) => {
  const area = one as HTMLTextAreaElement
  const at = area.value.indexOf('k1') + 2
  area.setSelectionRange(at, at)
})
const costs = await measure(page)
report('the key itself', costs.key)
report('until all is shown again, in slices', costs.all)
report('the longest slice of it', costs.slice)
await browser.close()
server.close()
const worst = percentile(costs.key, 0.9)
if (worst > frame) throw new Error(`a key costs ${worst.toFixed(1)} ms of script, more than a frame`)

interface Costs {
  readonly key: number[]
  readonly all: number[]
  readonly slice: number[]
}

async function measure(page_: Page): Promise<Costs> {
  const tools = await page_.context().newCDPSession(page_)
  await tools.send('Performance.enable')
  const script = async (): Promise<number> => {
    const { metrics } = await tools.send('Performance.getMetrics')
    return 1000 * (metrics.find((one) => one.name === 'ScriptDuration')?.value ?? Number.NaN)
  }
  // What runs between an input event's start and the end of its task is the answer to the key; the frame that a browser
  // reports as long tells the slices.
  await page_.evaluate(() => {
    const seen = { key: 0, slice: 0 }
    Object.assign(window, { seen })
    let begun = 0
    addEventListener('beforeinput', () => (begun = performance.now()), true)
    addEventListener('input', () => (seen.key = performance.now() - begun))
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) seen.slice = Math.max(seen.slice, duration)
    }).observe({ type: 'longtask' })
  })
  const costs: Costs = { key: [], all: [], slice: [] }
  for (let i = 0; i < keys; i++) {
    await page_.evaluate(() =>
      Object.assign((window as unknown as { seen: object }).seen, { key: 0, slice: 0 }),
    )
    const before = await script()
    await page_.keyboard.press(i % 2 === 0 ? '1' : 'Backspace')
    await page_.waitForTimeout(1500)
    costs.all.push((await script()) - before)
    const { key, slice } = await page_.evaluate(
      () => (window as unknown as { seen: { key: number; slice: number } }).seen,
    )
    costs.key.push(key)
    costs.slice.push(slice)
  }
  return costs
}

function percentile(costs_: readonly number[], share: number): number {
  const sorted = costs_.toSorted((a, b) => a - b)
  return sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN
}

function report(what: string, costs_: readonly number[]): void {
  const at = (share: number): string => percentile(costs_, share).toFixed(1)
  console.log(`${what}: median ${at(0.5)} ms, nine in ten under ${at(0.9)} ms, at most ${at(1)} ms`)
}
