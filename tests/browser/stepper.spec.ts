import { execFileSync } from 'node:child_process'
import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { type Page, test as plain } from '@playwright/test'
import { wordsOf } from '../../components/stepper/words.ts'
import { checkPattern } from '../../engine/intake/index.ts'
import { work } from '../../engine/needles/index.ts'
import { catalogue } from '../../engine/stitches/index.ts'
import { root } from '../../site/setup/machine.mjs'
import { expect, test } from './support.ts'

interface StepEntry {
  readonly row: number
  readonly step: number
  readonly stitch: string
  readonly total: number
}

/** What the command says about every step, as the live status puts it. */
function statusesOf(slug: string, repeats: number, kind: 'Row' | 'Round' = 'Row'): string[] {
  const command = join(root, 'engine/command/openwork.mjs')
  const file = join(root, `content/patterns/${slug}.yaml`)
  const told = execFileSync(process.execPath, [
    command,
    'steps',
    '--repeats',
    String(repeats),
    '--json',
    file,
  ])
  const steps = JSON.parse(told.toString()) as StepEntry[]
  // Set-up rows end at 0 and count down before it.
  const setUp = 1 - Math.min(1, ...steps.map(({ row }) => row))
  return steps.map(({ row, step, stitch, total }) => {
    const label = row >= 1 ? `${kind} ${row}` : `Set-up ${kind.toLowerCase()} ${row + setUp}`
    const name = catalogue.find(({ us }) => us === stitch)?.name
    return `${label}, stitch ${step}: ${name}. ${total} ${total === 1 ? 'stitch' : 'stitches'}`
  })
}

const address = (slug: string): string => `patterns/${slug}/`
const status = (page: Page) => page.getByRole('status')
const next = (page: Page) => page.getByRole('button', { name: /^Next/ })
const back = (page: Page) => page.getByRole('button', { name: /^Back/ })

async function open(page: Page, slug: string): Promise<void> {
  await page.goto(address(slug))
  await expect(next(page)).toBeVisible()
}

/** Presses a key so often and reads the status after each press. */
async function statusesAfter(page: Page, key: string, times: number): Promise<string[]> {
  const live = await status(page).elementHandle()
  const read: string[] = []
  for (let i = 0; i < times; i++) {
    await page.keyboard.press(key)
    read.push((await live?.textContent()) ?? '')
  }
  return read
}

plain('every stitch of every row stands in just one of its words', () => {
  const files = globSync('content/patterns/*.yaml', { cwd: root })
  for (const file of files) {
    const { pattern } = checkPattern({ name: file, text: readFileSync(join(root, file), 'utf8') })
    const { worked } = pattern ? work(pattern, 3) : { worked: null }
    if (!pattern || !worked) throw new Error(`${file} cannot be worked`)
    for (const [index, row] of worked.rows.entries()) {
      const written = [...pattern.setUp, ...pattern.rows][index]
      const words = written ? wordsOf(row, written, pattern).flatMap((box) => box.words) : []
      const steps = words.flatMap((word) => word.steps).sort((a, b) => a - b)
      expect(steps, `${file}, row ${row.number}`).toEqual(row.steps.map((_, step) => step))
    }
  }
  expect(files.length).toBeGreaterThan(20)
})

const wholePatterns = [
  ['miniature-leaf', 'Row'],
  ['jib-shawl', 'Row'],
  ['slipway-edging', 'Row'],
  ['little-fountain', 'Row'],
  ['harbour-swell', 'Round'],
] as const

for (const [slug, kind] of wholePatterns) {
  test(`${slug} is stepped through as the command counts it, there and back`, async ({ page }) => {
    const wanted = statusesOf(slug, 2, kind)
    expect(wanted.length).toBeGreaterThan(40)
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await open(page, slug)
    await expect(status(page)).toHaveText(wanted[0] ?? '')
    expect(await statusesAfter(page, 'ArrowRight', wanted.length - 1)).toEqual(wanted.slice(1))
    // There is nothing after the last stitch.
    expect(await statusesAfter(page, 'ArrowRight', 1)).toEqual(wanted.slice(-1))
    await expect(page.getByText(/^That was the last stitch/)).toBeVisible()
    expect(await statusesAfter(page, 'ArrowLeft', 20)).toEqual(wanted.slice(-21, -1).reverse())
    await expect(page.getByText(/^That was the last stitch/)).toBeHidden()
  })
}

test('buttons, page keys, a tap and a swipe do what the arrows do', async ({ page }) => {
  const wanted = statusesOf('reed-bed', 2)
  await open(page, 'reed-bed')
  await expect(back(page)).toHaveAttribute('aria-disabled', 'true')
  await back(page).focus()
  await page.keyboard.press('Enter')
  await expect(status(page)).toHaveText(wanted[0] ?? '')
  await next(page).click()
  await expect(status(page)).toHaveText(wanted[1] ?? '')
  await expect(next(page)).toBeFocused()
  expect(await statusesAfter(page, 'PageDown', 2)).toEqual(wanted.slice(2, 4))
  expect(await statusesAfter(page, 'PageUp', 1)).toEqual([wanted[2]])
  // Far from the needles, the page keys turn the page's screens.
  await page.evaluate(() => scrollTo(0, 0))
  const away = await page
    .locator('[data-stage]')
    .evaluate((stage) => stage.getBoundingClientRect().top > innerHeight)
  expect(away).toBe(true)
  expect(await statusesAfter(page, 'PageDown', 1)).toEqual([wanted[2]])
  const needles = page.getByRole('img', { name: 'Both needles, as you see them' })
  await needles.click()
  await expect(status(page)).toHaveText(wanted[3] ?? '')
  // Once the page has come to rest after its own keys.
  await needles.hover()
  const box = await needles.boundingBox()
  if (!box) throw new Error('the needles are not shown')
  const swipe = async (by: number): Promise<void> => {
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await page.mouse.down()
    await page.mouse.move(box.x + box.width / 2 + by, box.y + box.height / 2, { steps: 4 })
    await page.mouse.up()
  }
  await swipe(-120)
  await expect(status(page)).toHaveText(wanted[4] ?? '')
  await swipe(120)
  await expect(status(page)).toHaveText(wanted[3] ?? '')
  await back(page).click()
  await expect(status(page)).toHaveText(wanted[2] ?? '')
  for (const button of [next(page), back(page)])
    expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(64)
})

test('both words and chart light the stitch, and the needles show its counts', async ({ page }) => {
  await open(page, 'horseshoe')
  await statusesAfter(page, 'ArrowRight', 5)
  await expect(status(page)).toHaveText(/^Row 1, stitch 6: slip one, knit two together, pass/)
  const lit = page.locator('[aria-current="step"]')
  await expect(lit).toHaveText('sk2p')
  const chart = page.getByRole('figure', { name: 'Chart of Horseshoe, with the stitch marked' })
  // The mark lies on the cell of the sixth stitch of the first row, and on no other.
  const boxes = async (selector: string) =>
    (await chart.locator(selector).boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 }
  const [mark, ground] = [await boxes('.here-cell'), await boxes('[data-key="cell-0-5"] .ground')]
  expect(Math.abs(mark.x + mark.width / 2 - ground.x - ground.width / 2)).toBeLessThan(1)
  expect(Math.abs(mark.y + mark.height / 2 - ground.y - ground.height / 2)).toBeLessThan(1)
  const needles = page.getByRole('img', { name: 'Both needles, as you see them' })
  await expect(needles).toContainText('14 on the left')
  await expect(needles).toContainText('6 on the right')
  await statusesAfter(page, 'ArrowRight', 4)
  await expect(lit).toHaveText('yo')
})

/** The loops whose front halves hang on a needle of the picture, and those that it only counts. */
async function loopsOn(page: Page, needle: 'left' | 'right'): Promise<number> {
  const stage = page.locator('[data-stage]')
  const drawn = await stage.locator(`[data-needle="${needle}"]`).count()
  const more = await stage.locator(`[data-key="more-${needle}"]`).allTextContents()
  return drawn + Number(/\d+/.exec(more.join())?.[0] ?? 0)
}

for (const slug of ['horseshoe', 'portholes', 'slipway-edging'] as const) {
  test(`${slug}: as many loops hang on each needle as are counted`, async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await open(page, slug)
    for (let i = 0; i < 30; i++) {
      const counts = (await page.locator('[data-slot="needleCounts"]').textContent()) ?? ''
      const [left, right] = (counts.match(/\d+/g) ?? []).map(Number)
      expect([await loopsOn(page, 'left'), await loopsOn(page, 'right')], counts).toEqual([left, right])
      await expect(page.getByRole('img', { name: 'Both needles, as you see them' })).toContainText(
        `${left} on the left`,
      )
      await page.keyboard.press('ArrowRight')
    }
  })
}

test('a stitch can be watched again, and motion by motion', async ({ page }) => {
  const wanted = statusesOf('horseshoe', 2)
  await open(page, 'horseshoe')
  await page.waitForLoadState('networkidle')
  await statusesAfter(page, 'ArrowRight', 5)
  const words = page.locator('[data-motion-words]')
  const [on, before] = [
    page.getByRole('button', { name: 'One motion on' }),
    page.getByRole('button', { name: 'One motion back' }),
  ]
  await expect(words).toHaveText(/^Motion 7 of 7: With the left tip, lift the slipped stitch over/)
  await expect(page.locator('svg.is-moving')).toHaveCount(0)
  await expect(on).toHaveAttribute('aria-disabled', 'true')
  for (let motion = 6; motion > 0; motion--) {
    await before.click()
    await expect(words).toHaveText(new RegExp(`^Motion ${motion} of 7: `))
  }
  await before.click()
  await expect(words).toHaveText('Before the stitch.')
  await expect(before).toHaveAttribute('aria-disabled', 'true')
  // The loops of the stitch before are on the needles now.
  await expect(page.locator('svg.is-moving')).toHaveCount(0)
  expect([await loopsOn(page, 'left'), await loopsOn(page, 'right')]).toEqual([17, 5])
  await page.getByRole('button', { name: 'Watch it again' }).click()
  await expect(page.locator('svg.is-moving')).toHaveCount(1)
  await expect(words).toHaveText(/^Motion 4 of 7: /)
  await expect(page.locator('svg.is-moving')).toHaveCount(0, { timeout: 15_000 })
  await expect(words).toHaveText(/^Motion 7 of 7: /)
  expect([await loopsOn(page, 'left'), await loopsOn(page, 'right')]).toEqual([14, 6])
  // The place in the pattern stays where it was.
  await expect(status(page)).toHaveText(wanted[5] ?? '')
})

test('where less movement is asked for, motions change at once', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, 'horseshoe')
  await statusesAfter(page, 'ArrowRight', 5)
  const before = page.getByRole('button', { name: 'One motion back' })
  const d = () => page.locator('[data-stage] .needle-yarn path').nth(40).getAttribute('d')
  const rest = await d()
  await before.click()
  await expect(page.locator('[data-motion-words]')).toHaveText(/^Motion 6 of 7: /)
  await expect(page.locator('svg.is-moving')).toHaveCount(0)
  expect(await d()).not.toBe(rest)
})

test('the place is kept, and one can begin again', async ({ page }) => {
  const wanted = statusesOf('horseshoe', 2)
  await open(page, 'horseshoe')
  await statusesAfter(page, 'ArrowRight', 25)
  await page.getByRole('radio', { name: /Continental/ }).check()
  await page.reload()
  await expect(status(page)).toHaveText(wanted[25] ?? '')
  await expect(page.getByText('Welcome back: row 2, stitch 5. Begin again?')).toBeVisible()
  await expect(page.getByRole('radio', { name: /Continental/ })).toBeChecked()
  await page.getByRole('button', { name: 'Begin again' }).click()
  await expect(status(page)).toHaveText(wanted[0] ?? '')
  await expect(page.getByText(/^Welcome back/)).toBeHidden()
  await expect(next(page)).toBeFocused()
  await page.reload()
  await expect(status(page)).toHaveText(wanted[0] ?? '')
  await expect(page.getByText(/^Welcome back/)).toBeHidden()
})

test('at the end the pattern is offered again from row 1, past its set-up rows', async ({ page }) => {
  await open(page, 'jib-shawl')
  await page.getByRole('combobox', { name: 'Go to row' }).selectOption({ label: 'Row 4, wrong side' })
  await statusesAfter(page, 'ArrowRight', 20)
  await expect(next(page)).toHaveAttribute('aria-disabled', 'true')
  await page.getByRole('button', { name: 'Begin again' }).click()
  await expect(status(page)).toHaveText(/^Row 1, stitch 1: /)
})

const rip = (page: Page) => page.getByRole('button', { name: 'Rip back to the lifeline' })
const time = (page: Page) => page.locator('[data-done="time"]')
const ticks = async (page: Page): Promise<string[]> => {
  const rows = await page.locator('[data-done="list"] li').allTextContents()
  return rows.map((row) =>
    row
      .replace(/^(Row \d+)\s*/, '')
      .replace(/\s+/g, ' ')
      .trim(),
  )
}

test('rows are ticked as they are done, over and over, and stepping back takes the tick away', async ({
  page,
}) => {
  await open(page, 'reed-bed')
  await expect(time(page)).toHaveText('Row 1, 1st time')
  await statusesAfter(page, 'ArrowRight', 13)
  await expect(time(page)).toHaveText('Row 2, 1st time')
  await page.locator('.done summary').click()
  expect(await ticks(page)).toEqual(['✓done once', 'not done yet'])
  await statusesAfter(page, 'ArrowLeft', 1)
  expect(await ticks(page)).toEqual(['not done yet', 'not done yet'])
  await statusesAfter(page, 'ArrowRight', 13)
  await page.getByRole('button', { name: 'Begin again' }).click()
  await expect(time(page)).toHaveText('Row 1, 2nd time')
  expect(await ticks(page)).toEqual(['✓done once', '✓done once'])
  await statusesAfter(page, 'ArrowRight', 13)
  expect(await ticks(page)).toEqual(['✓✓done 2 times', '✓done once'])
  await page.reload()
  await expect(time(page)).toHaveText('Row 2, 2nd time')
  await page.getByRole('button', { name: 'Tick this row' }).click()
  await expect(time(page)).toHaveText('Row 2, 3rd time')
  await page.getByRole('button', { name: 'Take a tick away' }).click()
  await expect(time(page)).toHaveText('Row 2, 2nd time')
})

test('one press leads back to the lifeline, and the ticks stay until they are taken away', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, 'mini-horseshoe')
  await expect(rip(page)).toHaveAttribute('aria-disabled', 'true')
  const before = await status(page).textContent()
  await rip(page).focus()
  await page.keyboard.press('Enter')
  await expect(status(page)).toHaveText(before ?? '')
  const end = statusesOf('mini-horseshoe', 2).findIndex((words) => words.startsWith('Row 3, '))
  await statusesAfter(page, 'ArrowRight', end - 1)
  await page.getByRole('button', { name: 'Lifeline in row 2' }).focus()
  await page.keyboard.press('Enter')
  const notice = page.locator('[data-notice]')
  await expect(notice).toHaveText(/^\s*Lifeline in row 2: with a blunt needle, through all 13 stitches/)
  await expect(notice).toHaveAttribute('aria-live', 'polite')
  await page.getByRole('combobox', { name: 'Go to row' }).selectOption({ label: 'Row 2, wrong side' })
  await statusesAfter(page, 'ArrowRight', 28)
  await page.reload()
  await expect(page.locator('[data-done="lifeline"]')).toHaveText('Lifeline in row 2')
  await rip(page).click()
  await expect(status(page)).toHaveText(/^Row 3, stitch 1: /)
  await expect(notice).toContainText('At the lifeline in row 2: count 13 stitches. Row 3 comes next.')
  await page.locator('.done summary').click()
  expect(await ticks(page)).toEqual(['✓done once', '✓done once lifeline', '✓done once', 'not done yet'])
  await page.getByRole('button', { name: 'Untick row 3' }).click()
  expect(await ticks(page)).toEqual(['✓done once', '✓done once lifeline', 'not done yet', 'not done yet'])
  await expect(next(page)).toBeFocused()
})

test('the lifeline can be put in any row and taken out, and what is cleared can be put back', async ({
  page,
}) => {
  await open(page, 'horseshoe')
  await statusesAfter(page, 'ArrowRight', 30)
  await page.locator('.done summary').click()
  const where = page.getByRole('combobox', { name: 'Lifeline in' })
  await where.selectOption({ label: 'Row 4, wrong side' })
  await expect(page.locator('[data-done="lifeline"]')).toHaveText('Lifeline in row 4')
  await where.selectOption({ label: 'no row' })
  await expect(page.locator('[data-done="lifeline"]')).toHaveText('No lifeline')
  await page.getByRole('button', { name: 'Lifeline in row 2' }).click()
  await page.getByRole('button', { name: 'Clear all ticks and the lifeline' }).click()
  await expect(page.locator('[data-done="lifeline"]')).toHaveText('No lifeline')
  expect((await ticks(page))[0]).toBe('not done yet')
  await page.getByRole('button', { name: 'Put them back' }).click()
  await expect(page.locator('[data-done="lifeline"]')).toHaveText('Lifeline in row 2')
  expect((await ticks(page))[0]).toBe('✓done once')
})

test('a link leads to its stitch, before the place that was kept, also while the page is open', async ({
  page,
}) => {
  const [two, three] = [statusesOf('reed-bed', 2), statusesOf('reed-bed', 3)]
  await open(page, 'reed-bed')
  await statusesAfter(page, 'ArrowRight', 4)
  await page.goto('about:blank')
  await page.goto(`${address('reed-bed')}#row=0&step=9&repeats=3`)
  await expect(status(page)).toHaveText(three[9] ?? '')
  await expect(page.locator('.stepper')).toBeInViewport()
  await statusesAfter(page, 'ArrowRight', 2)
  await page.reload()
  // The place in the address was followed once; the reader goes on where she is.
  await expect(status(page)).toHaveText(three[11] ?? '')
  await page.evaluate(() => {
    location.hash = '#row=1&step=2&repeats=2'
  })
  await expect(status(page)).toHaveText(two[15] ?? '')
  for (const odd of ['#row=9&step=0', '#row=x', '#step=4', '#words']) {
    await page.evaluate((hash) => {
      location.hash = hash
    }, odd)
    await page.waitForTimeout(100)
    await expect(status(page)).toHaveText(two[15] ?? '')
  }
  // What makes no sense is left out: the row is there, the stitch and the width are not.
  await page.evaluate(() => {
    location.hash = '#row=0&step=999&repeats=0'
  })
  await expect(status(page)).toHaveText(two[0] ?? '')
})

test('from every stitch one press leads to where mistakes are found', async ({ page }) => {
  await open(page, 'reed-bed')
  const wrong = page.getByRole('link', { name: 'Something is wrong here' })
  await expect(wrong).toHaveAttribute('href', /\/patterns\/reed-bed\/mend\/#row=0&step=0&repeats=2$/)
  await statusesAfter(page, 'ArrowRight', 15)
  await expect(wrong).toHaveAttribute('href', /\/mend\/#row=1&step=2&repeats=2$/)
  const box = await wrong.boundingBox()
  expect(box?.height).toBeGreaterThanOrEqual(44)
  await wrong.click()
  await expect(page).toHaveURL(/\/patterns\/reed-bed\/mend\//)
})

test('a mistake is told of where it happens, and folded from the second repeat on', async ({ page }) => {
  await open(page, 'reed-bed')
  await statusesAfter(page, 'ArrowRight', 1)
  const told = page.locator('.call-outs details')
  await expect(told).toHaveCount(1)
  await expect(told).toHaveAttribute('open', '')
  await expect(told).toContainText('The row ends one short, with 12 stitches instead of 13.')
  await statusesAfter(page, 'ArrowRight', 6)
  await expect(status(page)).toHaveText(/^Row 1, stitch 8: yarn over/)
  await expect(told.first()).not.toHaveAttribute('open', '')
  await page.getByRole('combobox', { name: 'Repeats side by side' }).selectOption('5')
  await expect(told.first()).toContainText('with 30 stitches instead of 31')
})

test('a press of Next within a row writes nothing about ticks', async ({ page }) => {
  await open(page, 'horseshoe')
  await statusesAfter(page, 'ArrowRight', 2)
  await page.evaluate(() => {
    const seen: string[] = []
    Object.assign(window, { seen })
    const done = document.querySelector('.done')
    if (!done) throw new Error('nothing tells of ticks')
    new MutationObserver((changes) =>
      seen.push(...changes.filter(({ type }) => type === 'childList').map(({ target }) => target.nodeName)),
    ).observe(done, { childList: true, subtree: true })
  })
  const seen = () => page.evaluate(() => (window as unknown as { seen: string[] }).seen.length)
  await statusesAfter(page, 'ArrowRight', 10)
  expect(await seen()).toBe(0)
  await statusesAfter(page, 'ArrowRight', 12)
  expect(await seen()).toBeGreaterThan(0)
})

test('another number of repeats keeps the stitch and changes the counts', async ({ page }) => {
  const [two, four] = [statusesOf('reed-bed', 2), statusesOf('reed-bed', 4)]
  await open(page, 'reed-bed')
  await statusesAfter(page, 'ArrowRight', 3)
  await expect(status(page)).toHaveText(two[3] ?? '')
  await page.getByRole('combobox', { name: 'Repeats side by side' }).selectOption('4')
  await expect(status(page)).toHaveText(four[3] ?? '')
  await back(page).focus()
  expect(await statusesAfter(page, 'ArrowRight', 30)).toEqual(four.slice(4, 34))
  await page.reload()
  await expect(status(page)).toHaveText(four[33] ?? '')
  await expect(page.getByRole('combobox', { name: 'Repeats side by side' })).toHaveValue('4')
})

test('one can go to a row and from repeat to repeat', async ({ page }) => {
  await open(page, 'reed-bed')
  await page.getByRole('button', { name: 'One repeat on' }).click()
  await expect(status(page)).toHaveText(/^Row 1, stitch 2: /)
  await page.getByRole('button', { name: 'One repeat on' }).click()
  await expect(status(page)).toHaveText(/^Row 1, stitch 8: /)
  await page.getByRole('button', { name: 'One repeat on' }).click()
  await expect(status(page)).toHaveText(/^Row 2, stitch 1: /)
  await page.getByRole('button', { name: 'One repeat back' }).click()
  await expect(status(page)).toHaveText(/^Row 1, stitch 8: /)
  await page.getByRole('combobox', { name: 'Go to row' }).selectOption({ label: 'Row 2, wrong side' })
  await expect(status(page)).toHaveText(/^Row 2, stitch 1: /)
})

test('keys belong to a field while it has the focus', async ({ page }) => {
  await open(page, 'horseshoe')
  await statusesAfter(page, 'ArrowRight', 2)
  const before = await status(page).textContent()
  const row = page.getByRole('combobox', { name: 'Go to row' })
  await row.focus()
  for (const key of ['ArrowRight', 'ArrowLeft', 'PageDown', 'PageUp', 'ArrowDown']) {
    expect(await statusesAfter(page, key, 1)).toEqual([before])
  }
  // What the keys chose counts with Enter, and not when the list is left.
  await back(page).focus()
  await expect(status(page)).toHaveText(before ?? '')
  await expect(row).toHaveValue('0')
  await row.focus()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Enter')
  await expect(status(page)).toHaveText(/^Row 2, stitch 1: /)
  await page.getByRole('radio', { name: /English/ }).focus()
  expect(await statusesAfter(page, 'ArrowRight', 1)).toEqual([await status(page).textContent()])
  await expect(status(page)).toHaveText(/^Row 2, stitch 1: /)
})

test('the focus is never lost where what had it is shown anew', async ({ page }) => {
  await open(page, 'reed-bed')
  await statusesAfter(page, 'ArrowRight', 1)
  await page.locator('.stepper summary').first().focus()
  await statusesAfter(page, 'ArrowRight', 12)
  const where = await page.evaluate(() => document.activeElement?.closest('.stepper') !== null)
  expect(where).toBe(true)
})

test('quick presses while the loops still move lose nothing', async ({ page }) => {
  const wanted = statusesOf('horseshoe', 2)
  await open(page, 'horseshoe')
  await page.waitForLoadState('networkidle')
  await page.keyboard.press('ArrowRight')
  await expect(page.locator('svg.is-moving')).toHaveCount(1)
  for (let i = 0; i < 30; i++) await page.keyboard.press(i % 5 === 4 ? 'ArrowLeft' : 'ArrowRight')
  await expect(status(page)).toHaveText(wanted[19] ?? '')
  await expect(page.locator('svg.is-moving')).toHaveCount(0)
  const moved = await page.locator('[data-stage]').innerHTML()
  // Nothing of the movement is left: the same stitch reached in stillness is the same picture.
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await statusesAfter(page, 'ArrowRight', 1)
  await statusesAfter(page, 'ArrowLeft', 1)
  const shape = (html: string): string => html.replaceAll(/ opacity="1"/g, '')
  expect(shape(moved).match(/<g/g)?.length).toBe(
    shape(await page.locator('[data-stage]').innerHTML()).match(/<g/g)?.length,
  )
})

test('where less movement is asked for, nothing moves', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, 'reed-bed')
  await page.waitForLoadState('networkidle')
  for (let i = 0; i < 5; i++) {
    await page.keyboard.press('ArrowRight')
    await expect(page.locator('svg.is-moving')).toHaveCount(0)
  }
  await expect(page.getByRole('checkbox', { name: /Slower/ })).toBeHidden()
})

test('what storage holds is ignored when it is odd', async ({ page }) => {
  const wanted = statusesOf('reed-bed', 2)
  await open(page, 'reed-bed')
  await statusesAfter(page, 'ArrowRight', 1)
  const key = await page.evaluate(
    () => Object.keys(localStorage).find((name) => name.includes('place:reed-bed')) ?? '',
  )
  expect(key).not.toBe('')
  const odd = [
    '',
    'null',
    '{',
    '{"repeats":2,"row":99,"step":0,"hold":"English"}',
    '{"repeats":1e9,"row":0,"step":0,"hold":"English"}',
    '[]',
  ]
  const ticksKey = key.replace('place', 'progress')
  const oddTicks = [
    '',
    'null',
    '{',
    '{"done":[1],"passed":0,"lifeline":null}',
    '{"done":[1,1],"passed":0}',
    '[]',
  ]
  for (const [i, stored] of odd.entries()) {
    const values = [
      [key, stored],
      [ticksKey, oddTicks[i] ?? ''],
    ] as const
    await page.evaluate((all) => {
      for (const [name, value] of all) localStorage.setItem(name, value)
    }, values)
    await page.reload()
    await expect(next(page)).toBeVisible()
    await expect(status(page)).toHaveText(wanted[0] ?? '')
    await expect(time(page)).toHaveText('Row 1, 1st time')
  }
})

test('it works where the browser keeps nothing', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('blocked', 'SecurityError')
      },
    })
  })
  await open(page, 'reed-bed')
  expect(await statusesAfter(page, 'ArrowRight', 3)).toEqual(statusesOf('reed-bed', 2).slice(1, 4))
  await statusesAfter(page, 'ArrowRight', 10)
  await expect(time(page)).toHaveText('Row 2, 1st time')
  await page.getByRole('button', { name: 'Lifeline in row 2' }).click()
  await rip(page).click()
  await expect(status(page)).toHaveText(/^Row 1, stitch 1: /)
})

test('its parts are reached by Tab in a sensible order, and Tab leads out again', async ({ page }) => {
  await open(page, 'reed-bed')
  await back(page).focus()
  const reached: string[] = []
  for (let i = 0; i < 18; i++) {
    await page.keyboard.press('Tab')
    reached.push(
      await page.evaluate(() => {
        const at = document.activeElement
        return at?.closest('.stepper')
          ? (at.getAttribute('data-do') ?? at.id ?? at.tagName) || at.tagName
          : 'outside'
      }),
    )
  }
  const order = [
    'next',
    'lifeline',
    'rip',
    'tick',
    'untick',
    'stepper-row',
    'stepper-width',
    'repeat-back',
    'repeat-on',
    'outside',
  ].map((name) => reached.indexOf(name))
  expect(order).not.toContain(-1)
  expect(order).toEqual(order.toSorted((a, b) => a - b))
})

for (const colorScheme of ['light', 'dark'] as const) {
  test(`in the middle of a row it shuts nobody out, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
    await open(page, 'horseshoe')
    await statusesAfter(page, 'ArrowRight', 5)
    const { passes, violations } = await new AxeBuilder({ page })
      .include('.stepper')
      .setLegacyMode()
      .analyze()
    expect(passes.length).toBeGreaterThan(5)
    expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html) }))).toEqual([])
  })
}

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 } })

  test('nothing is wider than the screen, and Next is at its lower edge', async ({ page }) => {
    await open(page, 'rose-leaf-mee')
    await page.getByRole('img', { name: 'Both needles, as you see them' }).scrollIntoViewIfNeeded()
    const { right, scrolled } = await page.locator('.stepper').evaluate((stepper) => ({
      right: stepper.getBoundingClientRect().right,
      scrolled: stepper.scrollWidth,
    }))
    expect(right).toBeLessThanOrEqual(390)
    expect(scrolled).toBeLessThanOrEqual(390)
    const box = await next(page).boundingBox()
    expect(box && box.y + box.height).toBeGreaterThan(800)
  })
})

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false })

  test('the first stitch is shown in full and no control is offered', async ({ page }) => {
    await page.goto(address('reed-bed'))
    await expect(status(page)).toHaveText(statusesOf('reed-bed', 2)[0] ?? '')
    await expect(page.getByRole('img', { name: 'Both needles, as you see them' })).toBeVisible()
    await expect(page.locator('[aria-current="step"]')).toHaveText('k1')
    await expect(page.locator('.stepper').getByRole('button')).toHaveCount(0)
    await expect(page.locator('.stepper').getByRole('combobox')).toHaveCount(0)
    await expect(page.getByRole('link', { name: 'Something is wrong here' })).toBeVisible()
  })
})

test('on a wall the stepper fills the screen and goes on at a clicker’s keys', async ({ page, context }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await page.goto(`${address('horseshoe')}?wall`)
  const wall = page.locator('[data-wall]')
  await expect(wall).toBeVisible()
  expect(await wall.boundingBox()).toMatchObject({ x: 0, y: 0, ...page.viewportSize() })
  await statusesAfter(page, 'PageDown', 3)
  expect(await statusesAfter(page, 'PageUp', 1)).toEqual([statusesOf('horseshoe', 2)[2]])
  await expect(page.getByText(/stays awake|may go dark|cannot keep the screen awake/)).toBeVisible()
  const shown = await status(page).textContent()
  const follow = await page.locator('[data-follow]').getAttribute('href')
  const other = await context.newPage()
  await other.goto(follow ?? '')
  await expect(status(other)).toHaveText(shown ?? '')
  // Nothing behind it is in the way of the keyboard.
  for (let i = 0; i < 12; i++) {
    await page.keyboard.press('Tab')
    expect(
      await page.evaluate(
        () =>
          document.activeElement === document.body || document.activeElement?.closest('[data-wall]') !== null,
      ),
    ).toBe(true)
  }
  await next(page).focus()
  await page.keyboard.press('Escape')
  await expect(wall).toHaveCount(0)
  await expect(page.getByRole('link', { name: 'Stitches', exact: true })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Show it on the wall' })).toBeFocused()
})

test('on a wall it shuts nobody out', async ({ page }) => {
  await page.goto(`${address('horseshoe')}?wall`)
  await expect(page.locator('[data-wall]')).toBeVisible()
  const { violations } = await new AxeBuilder({ page }).include('[data-wall]').analyze()
  expect(violations).toEqual([])
})

test('a row is read aloud, one group of stitches a press', async ({ page }) => {
  await page.addInitScript(() => {
    const said: string[] = []
    Object.assign(window, { said })
    speechSynthesis.speak = ({ text }) => void said.push(text)
  })
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, 'reed-bed')
  await page.getByLabel('Repeats side by side').selectOption('1')
  await page.getByRole('checkbox', { name: /^Read aloud/ }).check()
  for (let i = 0; i < 7; i++) await next(page).click()
  expect(await page.evaluate(() => (window as unknown as { said: string[] }).said)).toEqual([
    'Row 1, right side. Knit.',
    'Yarn over.',
    'Slip, slip, knit.',
    'Knit.',
    'Knit two together.',
    'Yarn over.',
    'Knit. 7 stitches.',
    'Row 2, wrong side. Purl 7. 7 stitches.',
  ])
  await expect(status(page)).toHaveText(statusesOf('reed-bed', 1).at(-1) ?? '')
})
