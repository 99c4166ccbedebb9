/**
 * What one press of Next costs: milliseconds of script in the built stepper on a row of some 60 stitches, in headless
 * Chromium with the processor slowed down four times. First the press alone, which holds up the next frame, then all that
 * follows it, the neighbours made ready in idle time counted. Run by hand after a build: node tests/benchmarks/step.ts
 */
import { createReadStream, existsSync } from 'node:fs'
import { createServer } from 'node:http'
import { extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, chromium } from '@playwright/test'
import { findBrowser } from '../../site/setup/browser.mjs'

const dist = process.env.OPENWORK_DIST ?? fileURLToPath(new URL('../../dist', import.meta.url))
const lesson = '/patterns/horseshoe/'
const repeats = '6'
const slowDown = 4
const presses = 40

if (!existsSync(join(dist, lesson, 'index.html'))) throw new Error('build the site first: npm run build')

const types: Record<string, string> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
}
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

const browser = await chromium.launch({
  executablePath: findBrowser() ?? chromium.executablePath(),
  chromiumSandbox: process.getuid?.() !== 0,
  args: ['--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'],
})
for (const motion of ['reduce', 'no-preference'] as const) {
  const { presses: alone, inAll } = await measure(browser, motion)
  const moving = motion === 'reduce' ? 'without movement' : 'with movement'
  report(`the press itself, ${moving}`, alone)
  report(`all that follows it, ${moving}`, inAll)
}
await browser.close()
server.close()

interface Costs {
  /** Of the press itself, from the key to the end of its handlers. */
  readonly presses: number[]
  /** Of all script from one press to the next. */
  readonly inAll: number[]
}

/** Milliseconds of script, the presses far enough apart for everything that follows one to end. */
async function measure(browser_: Browser, reducedMotion: 'reduce' | 'no-preference'): Promise<Costs> {
  const page = await browser_.newPage({ viewport: { width: 1280, height: 900 }, reducedMotion })
  await page.addInitScript(() => {
    const times: number[] = []
    let began = 0
    const begin = (): void => {
      began = performance.now()
    }
    window.addEventListener('keydown', begin, { capture: true })
    window.addEventListener('keydown', () => void times.push(performance.now() - began))
    Object.assign(window, { times })
  })
  await page.goto(`http://127.0.0.1:${port}${lesson}`)
  await page.getByLabel('Repeats side by side').selectOption(repeats)
  const tools = await page.context().newCDPSession(page)
  await tools.send('Performance.enable')
  const scriptTime = async (): Promise<number> => {
    const { metrics } = await tools.send('Performance.getMetrics')
    return 1000 * (metrics.find((one) => one.name === 'ScriptDuration')?.value ?? Number.NaN)
  }
  await page.waitForTimeout(1500)
  await tools.send('Emulation.setCPUThrottlingRate', { rate: slowDown })
  const inAll: number[] = []
  for (let i = 0; i < presses; i++) {
    const before = await scriptTime()
    await page.keyboard.press('ArrowRight')
    await page.waitForTimeout(reducedMotion === 'reduce' ? 300 : 2500)
    inAll.push((await scriptTime()) - before)
  }
  const times = await page.evaluate(() => (window as unknown as { times: number[] }).times)
  await page.close()
  return { presses: times, inAll }
}

function report(what: string, costs: number[]): void {
  const sorted = [...costs].sort((a, b) => a - b)
  const at = (share: number): string =>
    (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(1)
  console.log(
    `${what}: median ${at(0.5)} ms, nine in ten under ${at(0.9)} ms of script, ${slowDown}x slowed down`,
  )
}
