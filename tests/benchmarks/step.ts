/**
 * What one press of Next costs: milliseconds of script in the built stepper on a row of some 60 stitches, in headless
 * Chromium with the processor slowed down four times. First a press with all that follows it, then what is made ready
 * for the next one while nothing else happens. Run by hand after a build: node tests/benchmarks/step.ts
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
const times = 30

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
  const { presses, idle, nothing } = await measure(browser, motion)
  const moving = motion === 'reduce' ? 'without movement' : 'with the whole movement'
  report(`a press, ${moving}`, presses)
  report('the neighbours made ready in idle time', idle)
  report('a key that does nothing', nothing)
}
await browser.close()
server.close()

interface Costs {
  /** Of a press with all that follows it up to the next. */
  readonly presses: number[]
  /** Of what is made ready for the next press while the browser has nothing to do. */
  readonly idle: number[]
  /** Of a key that nothing listens to: what the browser and this measuring cost by themselves. */
  readonly nothing: number[]
}

/** Milliseconds of the main thread's time, whatever else the machine does; what waits for idle time is held back and measured apart. */
async function measure(browser_: Browser, reducedMotion: 'reduce' | 'no-preference'): Promise<Costs> {
  const page = await browser_.newPage({ viewport: { width: 1280, height: 900 }, reducedMotion })
  await page.addInitScript(() => {
    const held: (() => void)[] = []
    const letGo = (): void => {
      for (const run of held.splice(0)) setTimeout(run)
    }
    const hold = (run: () => void): number => held.push(run)
    Object.assign(window, { requestIdleCallback: hold, letGo })
  })
  await page.goto(`http://127.0.0.1:${port}${lesson}`)
  await page.getByLabel('Repeats side by side').selectOption(repeats)
  const tools = await page.context().newCDPSession(page)
  await tools.send('Performance.enable', { timeDomain: 'threadTicks' })
  const scriptTime = async (): Promise<number> => {
    const { metrics } = await tools.send('Performance.getMetrics')
    return 1000 * (metrics.find((one) => one.name === 'ScriptDuration')?.value ?? Number.NaN)
  }
  const letGo = (): Promise<void> => page.evaluate(() => (window as unknown as { letGo(): void }).letGo())
  const costOf = async (run: () => Promise<void>, wait: number): Promise<number> => {
    const before = await scriptTime()
    await run()
    await page.waitForTimeout(wait)
    return (await scriptTime()) - before
  }
  await page.waitForTimeout(1500)
  await letGo()
  await tools.send('Emulation.setCPUThrottlingRate', { rate: slowDown })
  const costs: Costs = { presses: [], idle: [], nothing: [] }
  for (let i = 0; i < times; i++) {
    costs.presses.push(
      await costOf(() => page.keyboard.press('ArrowRight'), reducedMotion === 'reduce' ? 250 : 2500),
    )
    costs.idle.push(await costOf(letGo, 100))
    costs.nothing.push(await costOf(() => page.keyboard.press('F8'), 100))
  }
  await page.close()
  return costs
}

function report(what: string, costs: number[]): void {
  const sorted = [...costs].sort((a, b) => a - b)
  const at = (share: number): string =>
    (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(1)
  console.log(
    `${what}: median ${at(0.5)} ms, nine in ten under ${at(0.9)} ms of script, ${slowDown}x slowed down`,
  )
}
