import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, test } from './support.ts'
import { provedOf } from './support-mend.ts'

// Each looks a page over for accessibility more than once.
test.setTimeout(90_000)

const address = (slug: string): string => `patterns/${slug}/mend/`
const status = (page: Page) => page.getByRole('status')
const suspects = (page: Page) =>
  page.getByRole('region', { name: 'What it may be' }).locator('.suspects > li')
const names = (page: Page) => suspects(page).locator('summary .name')
const meant = (page: Page) => page.locator('[data-meant]')

async function open(page: Page, slug: string): Promise<void> {
  await page.goto(address(slug))
  await expect(page.getByRole('button', { name: 'Look for it' })).toBeVisible()
}

/** Goes on by Tab until what has the focus passes, as someone without a mouse does. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`no ${selector} within 60 presses of Tab`)
}

const withoutViolations = async (page: Page): Promise<void> => {
  const { passes, violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
  expect(passes.length).toBeGreaterThan(5)
  expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html) }))).toEqual([])
}

test('a whole dialogue by keyboard: one repeat is one short', async ({ page }) => {
  await page.goto('patterns/')
  await tabTo(page, 'a[href$="/patterns/mini-horseshoe/"]')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 1, name: 'Mini Horseshoe' })).toBeVisible()
  await tabTo(page, 'a[href$="/mini-horseshoe/mend/"]')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 1, name: 'Find my mistake' })).toBeVisible()

  await tabTo(page, '[name="row"]')
  await page.keyboard.type('Row 3')
  await tabTo(page, '[name="repeats"]')
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type('3')
  await page.keyboard.press('Tab')
  await expect(meant(page)).toContainText('Row 3 keeps its count')
  await expect(meant(page)).toContainText('19 stitches')

  await tabTo(page, '[name="count-2"]')
  await expect(page.locator('[name="count-2"]')).toHaveValue('6')
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type('5')
  await page.keyboard.press('Enter')

  await expect(status(page)).toContainText('a yarn over was left out')
  expect((await names(page).allTextContents()).slice(0, 3).join('\n')).toMatch(
    /Row 3, repeat 2: a yarn over was left out/,
  )
  await expect(suspects(page).first()).toContainText('Repeat 2 is one short.')
  await expect(suspects(page).first()).toContainText('How to mend it')
  await expect(page.getByRole('heading', { name: 'What it may be' })).toBeFocused()
  const before = await suspects(page).count()
  expect(before).toBeGreaterThan(1)
  await withoutViolations(page)

  await tabTo(page, '[data-reply="no hole"]')
  await page.keyboard.press('Enter')
  await expect(status(page)).toContainText('Narrowed from')
  expect(await suspects(page).count()).toBeLessThan(before)
  for (const name of await names(page).allTextContents()) expect(name).toContain('yarn over')
  await expect(page.getByRole('heading', { name: 'What it may be' })).toBeFocused()

  await tabTo(page, '.answered button')
  await page.keyboard.press('Enter')
  expect(await suspects(page).count()).toBe(before)
})

test('a row in which the count is meant to change says so before anything is asked', async ({ page }) => {
  const [changing] = provedOf('little-fountain').filter(({ before, after }) => after > before)
  if (!changing) throw new Error('no row of that pattern gains stitches')
  await open(page, 'little-fountain')
  await page.getByLabel(/just worked/).selectOption({ index: changing.index })
  await expect(meant(page).getByRole('heading')).toHaveText(
    `The count is meant to change in row ${changing.row}`,
  )
  await expect(meant(page)).toContainText(`from ${changing.before} to ${changing.after} stitches`)
  await page.getByRole('button', { name: 'Look for it' }).click()
  await expect(status(page)).toHaveText('These counts are just what they should be.')
  await expect(suspects(page)).toHaveCount(0)
})

test('one over and one short next door: nothing is knitted wrongly', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.getByLabel(/just worked/).selectOption('Row 1, right side')
  await page.getByLabel('Repeats side by side').fill('3')
  await page.getByLabel('Repeats side by side').blur()
  await page.getByLabel('Repeat 2', { exact: true }).fill('7')
  await page.getByLabel('Repeat 3', { exact: true }).fill('5')
  await page.getByRole('button', { name: 'Look for it' }).click()
  const marker = suspects(page).filter({ hasText: 'slipped over the marker' }).first()
  await marker.locator('summary').focus()
  if ((await marker.locator('details').getAttribute('open')) === null) await page.keyboard.press('Enter')
  await expect(marker).toContainText('Nothing is knitted wrongly')
  expect((await names(page).allTextContents()).slice(0, 3).join('\n')).toContain('slipped over the marker')
})

test('a right count with a wrong look: what she sees is enough', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.getByLabel('The count is right, but it looks wrong').check()
  await expect(page.getByLabel('Repeat 1', { exact: true })).toBeHidden()
  await page.getByRole('button', { name: 'Look for it' }).click()
  await expect(page.locator('#look-unclear')).toContainText('Choose what you see')
  await page.getByLabel('A hole sits one stitch away from where it belongs.').check()
  await page.getByLabel('Where do you see it?').selectOption('Repeat 1')
  await page.getByRole('button', { name: 'Look for it' }).click()
  expect((await names(page).allTextContents()).slice(0, 3).join('\n')).toMatch(/one stitch too (early|late)/)
  await expect(suspects(page).first()).toContainText('All counts stay right.')
  await withoutViolations(page)
})

test('only the total is known', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.getByLabel('Only how many in all').check()
  const total = Number(await meant(page).locator('.total b').textContent())
  await page.getByLabel('Stitches on the needles in all').fill(String(total + 1))
  await page.getByRole('button', { name: 'Look for it' }).click()
  await expect(suspects(page).first()).toBeVisible()
  expect(await page.locator('.choices button').count()).toBeGreaterThan(2)
})

test('odd input is told kindly, beside its field', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.getByLabel('Repeat 2', { exact: true }).fill('five')
  await page.getByRole('button', { name: 'Look for it' }).click()
  const field = page.getByLabel('Repeat 2', { exact: true })
  await expect(field).toBeFocused()
  await expect(field).toHaveAccessibleDescription(/‘five’ is not a number/)
  await expect(status(page)).toHaveText('One field needs another look.')
  await page.getByLabel('Repeats side by side').fill('900')
  await page.getByLabel('Repeats side by side').blur()
  await expect(page.getByLabel('Repeats side by side')).toHaveAccessibleDescription(/up to 20/)
})

test('the right and the wrong fabric are drawn, and differ', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await page.getByLabel('Repeat 1', { exact: true }).fill('5')
  await page.getByRole('button', { name: 'Look for it' }).click()
  await suspects(page)
    .first()
    .getByRole('button', { name: /Show the fabric/ })
    .click()
  const boards = suspects(page).first().locator('.board svg')
  await expect(boards).toHaveCount(2)
  const [right, wrong] = await boards.evaluateAll((all) =>
    all.map((one) => [...one.querySelectorAll('path')].map((path) => path.getAttribute('d')).join()),
  )
  expect(right?.length).toBeGreaterThan(1000)
  expect(wrong).not.toBe(right)
  await withoutViolations(page)
})

test('a link leads to the row that it names', async ({ page }) => {
  await page.goto(`${address('mini-horseshoe')}#row=2&step=5&repeats=4`)
  await expect(page.getByLabel(/just worked/)).toHaveValue('2')
  await expect(page.getByLabel('How far in it')).toHaveValue('5')
  await expect(page.getByLabel('Repeats side by side')).toHaveValue('4')
  await expect(meant(page)).toContainText('5 of its 25 stitches done')
})

test('everything to press is large enough for a hand that holds yarn', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page, 'mini-horseshoe')
  await page.getByLabel('Repeat 1', { exact: true }).fill('5')
  await page.getByRole('button', { name: 'Look for it' }).click()
  await expect(suspects(page).first()).toBeVisible()
  await page.locator('[data-where] > summary').click()
  await page.getByLabel(/New stitches of this row/).fill('8')
  await page.getByRole('button', { name: 'Find my place' }).click()
  await expect(page.locator('.possible a').first()).toBeVisible()
  const targets = page
    .locator('[data-mend]')
    .locator('button, select, summary, input[type="text"], label:has(input), .possible a')
  const heights = await targets.evaluateAll((all) =>
    all.map((one) => (one as HTMLElement).offsetHeight).filter((height) => height > 0),
  )
  expect(heights.length).toBeGreaterThan(10)
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44)
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
})

const lost = (page: Page) => page.locator('[data-where]')
const found = (page: Page) => lost(page).getByRole('status')
const possible = (page: Page) =>
  lost(page).getByRole('list', { name: 'Places that fit' }).getByRole('listitem')

async function loseMyPlace(page: Page, slug: string): Promise<void> {
  await open(page, slug)
  await lost(page).locator('summary').click()
}

test('where am I, by keyboard: both needles, one more look, and on in the lesson', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await tabTo(page, '[data-where] > summary')
  await page.keyboard.press('Enter')
  await tabTo(page, '[name="right"]')
  await page.keyboard.type('8')
  await page.keyboard.press('Tab')
  await page.keyboard.type('5')
  await page.keyboard.press('Enter')
  await expect(found(page)).toHaveText('3 places fit.')
  await expect(possible(page)).toHaveCount(3)
  await expect(lost(page).getByText('Which side of the work faces you')).toBeVisible()
  await withoutViolations(page)

  await tabTo(page, '[data-sees="RS"]')
  await page.keyboard.press('Enter')
  await expect(found(page)).toHaveText('You are here, and nowhere else.')
  // Row 3: k1, *k1, yo, sk2p, yo, k2; rep from *. Eight are made, five are to come.
  await expect(possible(page)).toContainText('Row 3, repeat 2: 8 of 13 stitches done')
  await expect(possible(page)).toContainText('yo, k3')
  await expect(possible(page)).toContainText('yo, sk2p, yo, k1')
  await tabTo(page, '.possible a')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 1, name: 'Mini Horseshoe' })).toBeVisible()
  expect(new URL(page.url()).hash).toBe('#row=2&step=8&repeats=2')
  await expect(page.getByRole('status').first()).toContainText('Row 3, stitch 9: yarn over')
})

test('where am I, by the last stitches: pressed, or as they look', async ({ page }) => {
  await loseMyPlace(page, 'mini-horseshoe')
  const last = page.getByLabel(/The last stitches/)
  await lost(page).getByRole('button', { name: 'yo: yarn over' }).click()
  await lost(page).getByRole('button', { name: /^sk2p/ }).click()
  await lost(page).getByRole('button', { name: 'a hole' }).click()
  await lost(page).getByRole('button', { name: 'a bump' }).click()
  await lost(page).getByRole('button', { name: 'Take the newest away' }).click()
  await expect(last).toHaveValue('yo, sk2p, hole')
  await page.getByLabel('The row, if you know it').selectOption('Row 3')
  await lost(page).getByRole('button', { name: 'Find my place' }).click()
  await expect(possible(page)).toHaveCount(2)
  for (const place of await possible(page).all()) await expect(place).toContainText('k1, yo, sk2p, yo |')
  await lost(page).getByRole('button', { name: '5 stitches', exact: true }).click()
  await expect(possible(page)).toHaveCount(1)
  await lost(page).getByRole('button', { name: 'Take your answers back' }).click()
  await expect(possible(page)).toHaveCount(2)

  await last.fill('yo, sk2p to the end')
  await lost(page).getByRole('button', { name: 'Find my place' }).click()
  await expect(last).toBeFocused()
  await expect(last).toHaveAccessibleDescription(/is not understood/)
})

test('where no place fits, a mistake may have been made: the form is filled in', async ({ page }) => {
  await loseMyPlace(page, 'mini-horseshoe')
  await page.getByLabel(/New stitches of this row/).fill('5')
  await page.getByLabel(/Still to be worked/).fill('7')
  await page.getByLabel('The row, if you know it').selectOption('Row 3')
  await lost(page).getByRole('button', { name: 'Find my place' }).click()
  await expect(found(page)).toContainText('No place fits that has 7 still to be worked and 5 done')
  await expect(lost(page)).toContainText('as at some moment of row 3, but never split like that')
  const near = lost(page)
    .getByRole('listitem')
    .filter({ hasText: 'one too few among the new stitches' })
    .first()
  await near.getByRole('button', { name: 'Look for a mistake here' }).click()
  await expect(page.getByLabel(/just worked/)).toHaveValue('2')
  await expect(page.getByLabel('How far in it')).not.toHaveValue('done')
  await expect(page.getByLabel('Only how many in all')).toBeChecked()
  await expect(page.getByLabel('Stitches on the needles in all')).toHaveValue('12')
  await expect(page.getByLabel('Stitches on the needles in all')).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(suspects(page).first()).toBeVisible()
  expect((await names(page).allTextContents()).join('\n')).toContain('a yarn over was left out')
})

test('a copy on paper that is older than the page, and one that is up to date', async ({ page }) => {
  await open(page, 'dillmont-lace-397')
  const version = page.getByLabel(/Version printed on your copy/)
  await version.fill('0.9')
  await page.getByRole('button', { name: 'Look for it' }).click()
  await expect(status(page)).toContainText('Your copy is older than this page.')
  const findings = page.getByRole('region', { name: 'What it may be' })
  await expect(findings).toContainText('Your copy is version 0.9, and this page is version 1.0.')
  await expect(findings).toContainText('Row 15')
  await withoutViolations(page)
  await version.fill('v1.0')
  await page.getByRole('button', { name: 'Look for it' }).click()
  await expect(findings).toContainText('your paper is up to date')
  await version.fill('<b>')
  await page.getByRole('button', { name: 'Look for it' }).click()
  await expect(version).toBeFocused()
  await expect(version).toHaveAccessibleDescription(/is not a version/)
})

test('the same difference in every repeat points at the page', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  for (const name of ['Repeat 1', 'Repeat 2']) await page.getByLabel(name, { exact: true }).fill('5')
  await page.getByRole('button', { name: 'Look for it' }).click()
  const findings = page.getByRole('region', { name: 'What it may be' })
  await expect(findings).toContainText('The same difference stands in every repeat')
  await expect(findings).toContainText('this page is version 1.0')
})

test('two mistakes together have their places, their mends and their picture', async ({ page }) => {
  await page.goto(`${address('mini-horseshoe')}#row=0&repeats=3`)
  for (const name of ['Repeat 1', 'Repeat 3']) await page.getByLabel(name, { exact: true }).fill('7')
  await page.getByRole('button', { name: 'Look for it' }).click()
  await expect(status(page)).toHaveText('No single mistake gives these counts; two together do.')
  const pair = suspects(page).first()
  await expect(pair).toContainText('Two mistakes together')
  await expect(pair.getByRole('heading')).toHaveText([/Row 1, repeat 3/, /Row 1, repeat 1/])
  await expect(pair.getByText('Look here.')).toHaveCount(2)
  await expect(pair.locator('.mends')).toHaveCount(2)
  await expect(pair.getByText('Draw the needle out')).toHaveCount(1)
  await pair.getByRole('button', { name: /Show the fabric/ }).click()
  await expect(pair.locator('.board svg')).toHaveCount(2)
  const [right, wrong] = await pair
    .locator('.board svg')
    .evaluateAll((all) =>
      all.map((one) => [...one.querySelectorAll('path')].map((path) => path.getAttribute('d')).join()),
    )
  expect(wrong).not.toBe(right)
  await withoutViolations(page)
})

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false })

  test('the counts after every row are there, and what they say', async ({ page }) => {
    await page.goto(address('little-fountain'))
    await expect(page.getByRole('button', { name: 'Look for it' })).toBeHidden()
    await expect(page.getByText('need a script')).toBeVisible()
    const table = page.getByRole('group', { name: /What every row should have/ }).getByRole('row')
    const rows = provedOf('little-fountain')
    await expect(table).toHaveCount(rows.length + 2)
    for (const { row, after, before } of rows) {
      const line = table.filter({ has: page.getByRole('rowheader', { name: `Row ${row}`, exact: true }) })
      await expect(line.locator('.total')).toHaveText(String(after))
      await expect(line.getByRole('cell').last()).toHaveText(before === after ? /^no/ : /^yes/)
    }
    await expect(page.getByText('One stretch is one short; all others are right.')).toBeVisible()
    await expect(page.getByText('A yarn over was left out.').first()).toBeVisible()
    await expect(page.getByRole('heading', { name: 'Look at the row below' })).toBeVisible()
  })

  test('the sheet for the class has every count, in black, on one page', async ({ page }) => {
    await page.goto('patterns/little-fountain/class-sheet/')
    await expect(page.getByRole('heading', { level: 1, name: 'Before you ask' })).toBeVisible()
    for (const { row, after } of provedOf('little-fountain')) {
      const line = page
        .getByRole('row')
        .filter({ has: page.getByRole('rowheader', { name: `Row ${row}`, exact: true }) })
      await expect(line.getByRole('cell', { name: String(after), exact: true })).toHaveCount(1)
    }
    await expect(page.getByRole('heading', { name: 'Three mends' })).toBeVisible()
    await expect(page.locator('.mends > li')).toHaveCount(3)
    for (const format of ['A4', 'Letter']) {
      const paper = (await page.pdf({ format })).toString('latin1')
      expect(paper.match(/\/Type\s*\/Page\b(?!s)/g), format).toHaveLength(1)
    }
  })
})
