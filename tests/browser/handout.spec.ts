import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { readClass, writeClass } from '../../engine/intake/index.ts'
import { papers, prints } from '../../engine/lesson/index.ts'
import { root } from '../../site/setup/machine.mjs'
import { address, expect, test } from './support.ts'
import { pagesOf, readsPdf, withoutBlanks } from './support-pdf.ts'

const sizes = { a4: [595, 842], letter: [612, 792] } as const
const slugs = ['eyelet-row', 'little-fountain', 'vine']

const listed = (page: Page, n: number, label: string) =>
  page.getByLabel(`Pattern ${n}: ${label}`, { exact: true })
const leaves = (page: Page) => page.locator('[data-preview] article')
const status = (page: Page) => page.locator('[data-status]')

async function open(page: Page): Promise<void> {
  await page.goto('classes/new/')
  await expect(page.getByRole('heading', { name: 'Your classes on this machine' })).toBeVisible()
}

/** Presses Tab until the field or button of that name has the keyboard. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let i = 0; i < 80; i++) {
    await page.keyboard.press('Tab')
    const here = await page.evaluate(() => {
      const { activeElement: at } = document
      const label = at instanceof HTMLInputElement ? at.labels?.[0]?.textContent : null
      return (at?.getAttribute('aria-label') ?? label ?? at?.textContent ?? '').trim()
    })
    if (here === name) return
  }
  throw new Error(`the keyboard does not come to '${name}'`)
}

/** Chooses in a list as a hand does that types the first letters. */
async function addPattern(page: Page, n: number, title: string, repeats: number): Promise<void> {
  await expect(listed(page, n, 'Pattern')).toBeFocused()
  await page.keyboard.type(title)
  await page.keyboard.press('Tab')
  await page.keyboard.press('ControlOrMeta+a')
  await page.keyboard.type(String(repeats))
}

/** A class of three patterns in the builder. */
async function bring(
  page: Page,
  print: (typeof prints)[number],
  paper: (typeof papers)[number],
): Promise<void> {
  await open(page)
  const file = join(root, 'content/classes/first-lace-evening.yaml')
  const { plan } = readClass({ name: file, text: readFileSync(file, 'utf8') })
  if (!plan) throw new Error('the class cannot be read')
  const patterns = slugs.map((pattern) => ({ pattern, repeats: 4 }))
  const buffer = Buffer.from(
    writeClass({ ...plan, print, paper, patterns, sections: [...plan.sections, 'row cards'] }),
  )
  await page.getByLabel('Open a file').setInputFiles({ name: 'class.yaml', mimeType: 'text/yaml', buffer })
  // The running order, three patterns and their row cards.
  await expect(leaves(page)).toHaveCount(7)
}

/** What each row says on the paper, without blanks, and which stars the styles add. */
const rowsIn = async (page: Page): Promise<string[]> => {
  const rows = await page
    .locator('.rows tbody tr:not(.start), .row-list > li:has(.ticks)')
    .evaluateAll((all) =>
      all.map((row) => {
        const copy = row.cloneNode(true) as HTMLElement
        for (const starred of copy.querySelectorAll('.starred')) starred.prepend('*')
        for (const hidden of copy.querySelectorAll('.ticks, svg')) hidden.remove()
        return copy.textContent ?? ''
      }),
    )
  return rows.map(withoutBlanks)
}

test('a class of three patterns is made, kept, saved and opened again by keyboard', async ({
  page,
}, info) => {
  await open(page)
  await tabTo(page, 'Name of the class')
  await page.keyboard.type('Quay class')
  for (const [i, [title, repeats]] of (
    [
      ['Eyelet', 6],
      ['Vine', 2],
      ['Mini H', 3],
    ] as const
  ).entries()) {
    await tabTo(page, 'Add a pattern')
    await page.keyboard.press('Enter')
    await addPattern(page, i + 1, title, repeats)
  }
  // The last one goes to the front, one press for each place; the keyboard stays on its button.
  await tabTo(page, 'Earlier: pattern 3')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Earlier: pattern 2' })).toBeFocused()
  await page.keyboard.press('Enter')
  const order = ['mini-horseshoe', 'eyelet-row', 'vine']
  for (const [i, slug] of order.entries()) await expect(listed(page, i + 1, 'Pattern')).toHaveValue(slug)
  await expect(page.locator('[data-said]')).toContainText('Mini Horseshoe: cast on 19')
  await expect(status(page)).toHaveText('Kept on this machine.')

  await page.reload()
  await expect(page.getByLabel('Name of the class')).toHaveValue('Quay class')
  await expect(leaves(page)).toHaveCount(4)

  await tabTo(page, 'Save as a file')
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')])
  expect(download.suggestedFilename()).toBe('quay-class.yaml')
  const saved = info.outputPath('quay-class.yaml')
  await download.saveAs(saved)

  await page.getByRole('button', { name: 'Begin a new class' }).press('Enter')
  await expect(leaves(page)).toHaveCount(1)
  await page.getByLabel('Open a file').setInputFiles(saved)
  await expect(leaves(page)).toHaveCount(4)
  await expect(page.getByLabel('Name of the class')).toHaveValue('Quay class')
  await expect(page.locator('#builder-which option')).toHaveText(['Quay class', 'Quay class'])
  for (const [i, slug] of order.entries()) await expect(listed(page, i + 1, 'Pattern')).toHaveValue(slug)
})

test('a file with problems is opened as far as it goes, and tells where they are', async ({ page }) => {
  await open(page)
  const text = 'title: Half right\npaper: foolscap\npatterns:\n  - { pattern: fan, repeats: 2 }\n'
  const file = { name: 'half.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) }
  await page.getByLabel('Open a file').setInputFiles(file)
  await expect(page.locator('[data-problem-list] li')).toHaveText([
    'Line 2, column 8: `paper` wants a4 or letter.',
  ])
  await expect(page.getByLabel('Name of the class')).toHaveValue('Half right')
  await page.getByLabel('Open a file').setInputFiles({ ...file, name: 'x.yaml', buffer: Buffer.from('- no') })
  await expect(page.locator('[data-problems-of]')).toHaveText('x.yaml cannot be opened:')
  await expect(page.getByLabel('Name of the class')).toHaveValue('Half right')
})

test('a class of the library is opened from its page as a copy', async ({ page }) => {
  await page.goto('classes/first-lace-evening/')
  await expect(page.locator('.handout article')).toHaveCount(3)
  await page.getByRole('link', { name: 'Make it your own' }).click()
  await expect(page.getByLabel('Name of the class')).toHaveValue('First lace evening')
  await expect(leaves(page)).toHaveCount(3)
})

for (const width of [390, 820, 1280]) {
  test(`the builder fits a screen of ${width} pixels, and its targets are large enough`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 })
    await bring(page, 'usual', 'a4')
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    const targets = page.locator('.class-builder :is(button, select, .file, .choices label):visible')
    const small = await targets.evaluateAll((all) =>
      all.filter((one) => one.getBoundingClientRect().height < 44).map(({ outerHTML }) => outerHTML),
    )
    expect(await targets.count()).toBeGreaterThan(20)
    expect(small).toEqual([])
  })
}

test('the builder shuts nobody out when it is full', async ({ page }) => {
  await bring(page, 'usual', 'a4')
  const { passes, violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
  expect(passes.length).toBeGreaterThan(5)
  expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map(({ html }) => html) }))).toEqual([])
})

for (const paper of papers) {
  for (const print of prints) {
    test(`paper ${paper}, print ${print}: every row whole on one page, and nothing beyond the page`, async ({
      page,
    }, info) => {
      test.skip(!readsPdf, 'pdftotext is not here: install poppler-utils')
      await bring(page, print, paper)
      const rows = await rowsIn(page)
      const file = info.outputPath('handout.pdf')
      await page.pdf({ path: file, preferCSSPageSize: true, printBackground: true })
      const pages = pagesOf(file)
      expect(pages.length).toBeGreaterThanOrEqual(7)
      expect(pages.length).toBeLessThanOrEqual(print === 'large' ? 45 : 17)
      expect(rows.length).toBeGreaterThanOrEqual(12)
      for (const row of rows) expect(pages.filter(({ text }) => text.includes(row)).length, row).toBe(1)
      for (const { width, height, words, text } of pages) {
        expect([Math.round(width), Math.round(height)]).toEqual(sizes[paper])
        expect(text).toMatch(/[3479ACEFHJKMNPRTWXY]{3}-[3479ACEFHJKMNPRTWXY]{3}/)
        // No printer can print nearer than about 5 mm, 14 points, to the edge.
        const beyond = words.filter(
          ({ left, right, top, bottom }) =>
            left < 14 || top < 14 || right > width - 14 || bottom > height - 14,
        )
        expect(beyond).toEqual([])
      }
    })
  }
}

/** Millimetres between the margins that the sheet names. */
const widths = {
  a4: { usual: 176, easier: 168, large: 160 },
  letter: { usual: 181.9, easier: 173.9, large: 165.9 },
}

test('nothing is wider than the paper, which a browser would make smaller until it is not', async ({
  page,
}) => {
  for (const paper of papers) {
    for (const print of prints) {
      await bring(page, print, paper)
      const room = widths[paper]
      const width = Math.floor(((print in room ? room[print as 'usual'] : room.usual) / 25.4) * 96)
      await page.setViewportSize({ width, height: 1000 })
      await page.emulateMedia({ media: 'print' })
      const parts = page.locator('.handout :is(table, tr, li, p, section, svg, img, figure)')
      const over = await parts.evaluateAll((all, most) => {
        const right = (one: Element): number => one.getBoundingClientRect().right
        return all.filter((one) => right(one) > most + 1).map(({ outerHTML }) => outerHTML.slice(0, 100))
      }, width)
      expect(await parts.count()).toBeGreaterThan(100)
      expect(over, `${paper}, ${print}`).toEqual([])
      await page.emulateMedia({ media: 'screen' })
    }
  }
})

test('the type is as large as each print promises', async ({ page }) => {
  const smallest = { usual: 9.4, large: 21.9, easier: 11.9, 'left-handed': 9.4, 'for copying': 10.9 }
  for (const print of prints) {
    await bring(page, print, 'a4')
    await page.emulateMedia({ media: 'print' })
    const points = await page
      .locator('.handout :is(p, li, td, th, dd, small, h4)')
      .evaluateAll((all) => all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize) * 0.75))
    expect(Math.min(...points), print).toBeGreaterThanOrEqual(smallest[print])
    await page.emulateMedia({ media: 'screen' })
  }
})

test('lines, signs and numbers of the print for copying survive a copy of 70 %', async ({ browser }) => {
  // Many screen pixels a point, so that thin lines are not rounded to whole ones.
  const context = await browser.newContext({ baseURL: address, deviceScaleFactor: 8 })
  const page = await context.newPage()
  await bring(page, 'for copying', 'a4')
  await page.emulateMedia({ media: 'print' })
  const millimetres = (pixels: number): number => (pixels / 96) * 25.4
  const borders = await page
    .locator('.handout :is(td, .ticks i)')
    .evaluateAll((all) => all.map((one) => Number.parseFloat(getComputedStyle(one).borderTopWidth)))
  const drawn = await page.locator('.handout :is(.chart, .key) svg').evaluateAll((all) =>
    all.flatMap((one) => {
      const svg = one as SVGSVGElement
      const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width
      return [...svg.querySelectorAll('line, path, polyline, circle, rect, text')].map((part) => {
        const { strokeWidth, stroke, fontSize } = getComputedStyle(part)
        const isText = part.tagName === 'text'
        const size = Number.parseFloat(isText ? fontSize : strokeWidth) * scale
        return { isText, size: !isText && stroke === 'none' ? Number.POSITIVE_INFINITY : size }
      })
    }),
  )
  const strokes = [...borders, ...drawn.filter(({ isText }) => !isText).map(({ size }) => size)].map(
    millimetres,
  )
  const letters = drawn.filter(({ isText }) => isText).map(({ size }) => size * 0.75)
  expect(strokes.length).toBeGreaterThan(300)
  expect(letters.length).toBeGreaterThan(20)
  // A quarter of a millimetre and seven points are left on the copy.
  expect(Math.min(...strokes) * 0.7).toBeGreaterThanOrEqual(0.25)
  expect(Math.min(...letters) * 0.7).toBeGreaterThanOrEqual(7)
  await context.close()
})

test('the command prints a class that was saved here with the same rows and counts', async ({
  page,
}, info) => {
  test.skip(!readsPdf, 'pdftotext is not here: install poppler-utils')
  test.setTimeout(120_000)
  await bring(page, 'usual', 'letter')
  const rows = await rowsIn(page)
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ])
  const [saved, file] = [info.outputPath('class.yaml'), info.outputPath('command.pdf')]
  await download.saveAs(saved)
  const script = join(root, 'engine/command/openwork.mjs')
  const args = [script, 'handout', saved, '--paper', 'a4', '--out', file]
  const done = spawnSync(process.execPath, args, { encoding: 'utf8', timeout: 110_000 })
  expect(done.stderr).toBe('')
  expect(done.status).toBe(0)
  const pages = pagesOf(file)
  expect(rows.length).toBe(4 + 4 + 4)
  for (const row of rows) expect(pages.filter(({ text }) => text.includes(row)).length, row).toBe(1)
  expect(pages.map(({ width, height }) => [Math.round(width), Math.round(height)])).toEqual(
    pages.map(() => sizes.a4),
  )
})

test('what was typed a moment before another class is opened is kept', async ({ page }) => {
  await bring(page, 'usual', 'a4')
  await page.getByLabel('Place', { exact: true }).fill('The lamp room')
  await page.getByRole('button', { name: 'Begin a new class' }).click()
  await expect(page.getByLabel('Place', { exact: true })).toHaveValue('')
  await page.getByLabel('Name of the class').fill('Another')
  await page.locator('#builder-which').selectOption({ label: 'First lace evening' })
  await expect(page.getByLabel('Place', { exact: true })).toHaveValue('The lamp room')
  await expect(page.locator('#builder-which option')).toHaveText(['Another', 'First lace evening'])
})
