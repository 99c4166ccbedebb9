import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, test } from './support.ts'

test.setTimeout(90_000)

const address = (slug: string): string => `patterns/${slug}/measure/`
const sheet = (page: Page) => page.getByRole('region', { name: /the sheet/ })
const line = (page: Page, name: string) =>
  sheet(page)
    .locator('.line')
    .filter({ has: page.locator('dt', { hasText: new RegExp(`^${name}$`) }) })
const group = (page: Page, name: RegExp) => page.getByRole('group', { name })

async function open(page: Page, slug: string): Promise<void> {
  await page.goto(address(slug))
  await expect(page.getByRole('button', { name: 'Print the sheet' })).toBeVisible()
}

/** Goes on by Tab to the field of that name and types, as someone without a mouse does. */
async function type(page: Page, name: string, text: string): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    if (await page.evaluate((wanted) => document.activeElement?.getAttribute('name') === wanted, name)) {
      await page.keyboard.press('ControlOrMeta+A')
      return page.keyboard.type(text)
    }
    await page.keyboard.press('Tab')
  }
  throw new Error(`no field ${name} within 60 presses of Tab`)
}

const withoutViolations = async (page: Page): Promise<void> => {
  const { passes, violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
  expect(passes.length).toBeGreaterThan(5)
  expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html) }))).toEqual([])
}

/** A scarf: 30 cm by 160 cm at 18 stitches and 24 rows in 10 cm, blocked. */
async function planScarf(page: Page): Promise<void> {
  const told = {
    ...{
      width: '30',
      length: '160',
      beforeStitches: '22',
      beforeRows: '28',
      afterStitches: '18',
      afterRows: '24',
    },
    ...{
      ballLength: '120',
      ballGrams: '50',
      swatchGrams: '9',
      swatchStitches: '31',
      swatchRows: '40',
      pace: '20',
    },
  }
  for (const [name, text] of Object.entries(told)) await type(page, name, text)
}

test('a scarf planned by keyboard alone', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await planScarf(page)
  await expect(line(page, 'Cast on')).toContainText('55 stitches, 9 repeats')
  await expect(line(page, 'Cast on')).toContainText('6 × 9 + 1 = 55. Exact.')
  await expect(line(page, 'Width')).toContainText('30.6 cm after blocking')
  await expect(line(page, 'Width')).toContainText('Before blocking 25 cm.')
  await expect(line(page, 'Length')).toContainText('384 rows: 96 times through 4 rows.')
  await expect(line(page, 'Yarn')).toContainText('from the weight of your swatch')
  await expect(line(page, 'Yarn')).toContainText('From the size of the stitches alone')
  await expect(line(page, 'Balls to buy')).toContainText(/[4-9] balls/)
  await expect(line(page, 'Needles')).toContainText('4.5 mm: US 7, old UK 7')
  await expect(line(page, 'Time')).toContainText('rests included')
  await expect(line(page, 'Lifelines')).toContainText('After row 4, every 2nd time through')
  await expect(page.getByRole('status')).toHaveText(/^Cast on 55 stitches\. 384 rows\. Buy \d+ balls\.$/)
  const near = sheet(page).getByRole('table', { name: 'One repeat fewer, one more' })
  await expect(near.getByRole('rowheader')).toHaveText(['8', '9', '10'])
  await expect(near.getByRole('cell')).toHaveText(['49', '27.2 cm', '55', '30.6 cm', '61', '33.9 cm'])
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'Mini Horseshoe: the sheet' })).toBeFocused()
  await withoutViolations(page)
})

test('every estimate says how rough it is, and on what it rests', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await planScarf(page)
  for (const name of ['Width', 'Length', 'Yarn', 'Time']) {
    await expect(line(page, name)).toContainText(/(close|rough|a guess), within \d+ %/)
    await line(page, name).getByText('What this rests on').focus()
    await page.keyboard.press('Enter')
    await expect(line(page, name).getByRole('listitem').first()).toBeVisible()
    await expect(line(page, name)).toContainText('A swatch would settle it.')
  }
  // Leaving a field for a button of the sheet must not make the sheet anew before the button is pressed.
  await page.getByLabel('Wanted width').fill('31')
  await line(page, 'Length').getByText('What this rests on').click()
  await expect(line(page, 'Length').getByRole('listitem')).toHaveCount(0)
  // What was opened stays open while the reader types on.
  await page.getByLabel('Stitches a minute').fill('25')
  await expect(line(page, 'Width').getByRole('listitem').first()).toBeVisible()
  await withoutViolations(page)
})

test('nothing typed is lost on reload, nor by a slip', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.getByLabel('Wanted width').fill('3o')
  await page.getByLabel('Wanted length').fill('160')
  await page.getByLabel('I shall not block it').check()
  await page.reload()
  await expect(page.getByLabel('Wanted width')).toHaveValue('3o')
  await expect(page.getByLabel('Wanted width')).toHaveAccessibleDescription(/‘o’ is no unit for this/)
  await expect(page.getByLabel('Wanted length')).toHaveValue('160')
  await expect(page.getByLabel('I shall not block it')).toBeChecked()
  await page.getByRole('button', { name: 'Empty all fields' }).click()
  await expect(page.getByLabel('Wanted length')).toHaveValue('')
  await page.getByRole('button', { name: 'Put it back' }).click()
  await expect(page.getByLabel('Wanted width')).toHaveValue('3o')
  await expect(page.getByLabel('Wanted length')).toHaveValue('160')
})

test('what was stored by someone else is not believed', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.evaluate(() =>
    localStorage.setItem('openwork:measures:mini-horseshoe', '{"width":{"a":1},"x":"<b>"}'),
  )
  await page.reload()
  await expect(page.getByLabel('Wanted width')).toHaveValue('')
  await expect(sheet(page)).toBeVisible()
})

test('a problem is told beside its field, and all else still answers', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.getByLabel('Repeats, if decided').fill('7')
  await page.getByLabel('Wanted length').fill('long')
  await page.getByLabel('Wanted length').blur()
  await expect(page.getByLabel('Wanted length')).toHaveAccessibleDescription(/‘long’ is not a number/)
  await expect(page.getByLabel('Wanted length')).toHaveAttribute('aria-invalid', 'true')
  await expect(line(page, 'Cast on')).toContainText('43 stitches, 7 repeats')
  await withoutViolations(page)
  await page.getByLabel('Wanted length').fill('120')
  await expect(page.getByLabel('Wanted length')).not.toHaveAttribute('aria-invalid')
})

test('inches and yards: the same piece', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await planScarf(page)
  await page.getByLabel('inches and yards').check()
  await expect(page.getByLabel('Wanted width, in')).toHaveValue('11.81')
  await expect(page.getByLabel('Counted over, in')).toHaveValue('3.94')
  await expect(line(page, 'Width')).toContainText('12 in after blocking')
  await expect(line(page, 'Yarn')).toContainText('yd')
  await expect(line(page, 'Cast on')).toContainText('55 stitches, 9 repeats')
  await expect(line(page, 'Length')).toContainText('384 rows')
  await page.getByLabel('centimetres and metres').check()
  await expect(page.getByLabel('Wanted width, cm')).toHaveValue('30')
})

test('a gauge in stocking stitch is warned of', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.getByLabel('Wanted width').fill('30')
  await group(page, /^Before blocking/)
    .getByLabel('Stitches')
    .fill('22')
  await page.getByLabel('in stocking stitch').check()
  await expect(sheet(page)).toContainText('Lace opens further and differs from pattern to pattern')
  await expect(line(page, 'Width')).toContainText('a guess')
  await expect(line(page, 'Width')).toContainText('Knit a swatch of the lace first.')
  await expect(line(page, 'Needles')).toContainText('yarn category 3, Light')
})

test('a shawl that grows, a piece with one width, a cowl in the round', async ({ page }) => {
  await open(page, 'jib-shawl')
  await page.getByLabel('Wanted width of the last row').fill('150')
  await group(page, /^After blocking/)
    .getByLabel('Stitches')
    .fill('18')
  await expect(line(page, 'Cast on')).toContainText('3 stitches')
  await expect(line(page, 'Width')).toContainText('Along the last row, 269 stitches.')

  await open(page, 'slipway-edging')
  await expect(page.getByLabel('Wanted width')).toHaveCount(0)
  await expect(page.getByLabel('Repeats, if decided')).toHaveCount(0)
  await expect(line(page, 'Cast on')).toContainText('7 stitches')

  await open(page, 'harbour-swell')
  await page.getByLabel('Wanted length around').fill('56')
  await group(page, /^Before blocking/)
    .getByLabel('Stitches')
    .fill('18')
  await expect(line(page, 'Around')).toContainText('cm after blocking')
})

test('everything to press is large enough, and nothing is cut off on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page, 'mini-horseshoe')
  await planScarf(page)
  const targets = page
    .locator('[data-measure]')
    .locator('button, summary, input[type="text"], label:has(input)')
  const heights = await targets.evaluateAll((all) => all.map((one) => (one as HTMLElement).offsetHeight))
  expect(heights.length).toBeGreaterThan(20)
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44)
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
})

const pagesOf = (paper: Buffer): number =>
  paper.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0

test('the sheet prints on one page, with all that it can have to say', async ({ page }) => {
  await open(page, 'shetland-bead')
  await planScarf(page)
  const more = {
    afterStitches: '',
    afterRows: '',
    ballLength: '20',
    ballGrams: '150',
    yarnStitches: '45',
    added: '6',
    needle: '3.1',
  }
  for (const [name, text] of Object.entries(more)) await page.locator(`[name="${name}"]`).fill(text)
  await page.getByLabel('in stocking stitch').check()
  await expect(sheet(page)).toContainText('a guess')
  await expect(sheet(page)).toContainText('too thick')
  for (const format of ['A4', 'Letter']) expect(pagesOf(await page.pdf({ format })), format).toBe(1)
  await page.emulateMedia({ media: 'print' })
  await expect(line(page, 'Cast on')).toBeVisible()
  await expect(page.getByText(/^Reckoned from: wanted width 30 cm/)).toBeVisible()
  await expect(page.getByLabel('Wanted width')).toBeHidden()
  await expect(page.getByRole('heading', { name: 'By hand' })).toBeHidden()
})

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false })

  test('the numbers and the reckoning are there, and print on one page', async ({ page }) => {
    await page.goto(address('mini-horseshoe'))
    await expect(page.getByText('needs a script')).toBeVisible()
    await expect(page.getByLabel('Wanted width')).toBeHidden()
    const table = page.getByRole('table', { name: /Stitches to cast on/ })
    const numbers = Array.from({ length: 11 }, (_, i) => String((i + 2) * 6 + 1))
    await expect(table.getByRole('row').last().getByRole('cell')).toHaveText(numbers)
    await expect(page.getByText('30 × 18 ÷ 10 = 54')).toBeVisible()
    await expect(page.getByText('6 × 9 + 1 = 55')).toBeVisible()
    for (const format of ['A4', 'Letter']) expect(pagesOf(await page.pdf({ format })), format).toBe(1)
  })
})
