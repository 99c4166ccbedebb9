import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { checkPattern } from '../../engine/intake/index.ts'
import { root } from '../../site/setup/machine.mjs'
import { expect, test } from './support.ts'

const booklet = [
  'Reed Bed',
  'Multiple of 6 sts + 1',
  'Row 1 (RS): k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
  'Row 2: purl',
  'Repeat these 2 rows.',
].join('\n')

const row = (page: Page, n: number): Locator => page.getByRole('textbox', { name: `Row ${n}`, exact: true })
const item = (page: Page, n: number): Locator => page.locator('[data-rows] > li').nth(n - 1)
const stand = (page: Page): Locator => page.locator('[data-stand]')
const cell = (page: Page, index: number, step: number): Locator =>
  page.locator(`[data-key="cell-${index}-${step}"]`)

async function open(page: Page): Promise<void> {
  await page.goto('draft/')
  await expect(row(page, 1)).toBeVisible()
}

/** Pastes as a hand does: the text comes from the clipboard, and the page may take it or leave it to the field. */
async function paste(field: Locator, text: string): Promise<void> {
  await field.focus()
  await field.evaluate((element, words) => {
    const data = new DataTransfer()
    data.setData('text/plain', words)
    const event = new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })
    if (element.dispatchEvent(event)) document.execCommand('insertText', false, words)
  }, text)
}

const rowsOf = (page: Page): Promise<string[]> =>
  page
    .locator('[data-rows] textarea')
    .evaluateAll((fields) => fields.map((field) => (field as HTMLTextAreaElement).value))

test('a booklet that is pasted becomes rows, each with its loops, its count and its balance', async ({
  page,
}) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await expect(stand(page)).toHaveText('All 2 rows come out, for every number of repeats.')
  expect(await rowsOf(page)).toEqual(['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl'])
  await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Reed Bed')
  await expect(page.getByLabel('Cast on a multiple of', { exact: true })).toHaveValue('6')
  await expect(page.getByLabel('plus', { exact: true })).toHaveValue('1')
  // Two repeats of 6 and the one beside them lie on the needle; four yarn overs stand on nothing.
  await expect(item(page, 1).locator('.strip .loops path')).toHaveCount(13)
  await expect(item(page, 1).locator('.strip .loops .hole')).toHaveCount(4)
  await expect(item(page, 1).locator('.strip .loops .together')).toHaveCount(4)
  await expect(item(page, 1)).toContainText('6 × repeats + 1')
  await expect(item(page, 1)).toContainText('Each repeat adds 2 (yo), takes away 2 (ssk, k2tog): even.')
  await expect(page.locator('.draft-chart .cell[data-step]')).toHaveCount(26)
  await page.locator('[data-cloth]').scrollIntoViewIfNeeded()
  await expect(page.locator('[data-cloth] .board svg')).toBeVisible({ timeout: 20_000 })
})

const flawed = 'Row 1: k1, *yo, ssk, k2tog, yo, k1; rep from * to end\nRow 2: purl'

test('a row that does not come out is shown with its loops left over, and mended with one press', async ({
  page,
}) => {
  await open(page)
  await paste(row(page, 1), `Multiple of 6 sts + 1\n${flawed}`)
  await expect(stand(page)).toHaveText('Row 1 does not come out.')
  await expect(item(page, 1)).toContainText('uses 11 of 13 stitches for 2 repeats: 2 are left over')
  await expect(item(page, 1).locator('.strip .left-over')).toHaveCount(1)
  await expect(row(page, 1)).toHaveAttribute('aria-invalid', 'true')
  await expect(row(page, 1)).toHaveAccessibleDescription(/2 are left over/)
  // The row that can be worked is worked all the same.
  await expect(item(page, 2).locator('.strip .loops path')).toHaveCount(13)
  await page.getByRole('button', { name: /Add ‘k1’ after ‘ssk’.*then every row comes out/ }).click()
  await expect(row(page, 1)).toHaveValue('k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end')
  await expect(stand(page)).toHaveText('All 2 rows come out, for every number of repeats.')
  await expect(row(page, 1)).toHaveAttribute('aria-invalid', 'false')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(row(page, 1)).toHaveValue('k1, *yo, ssk, k2tog, yo, k1; rep from * to end')
  await page.getByRole('button', { name: 'Redo' }).click()
  await expect(row(page, 1)).toHaveValue('k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end')
})

test('a slip of the pen is marked where it stands and mended by keyboard', async ({ page }) => {
  await open(page)
  await row(page, 1).focus()
  await page.keyboard.type('k1, *yo, ssk, k1, k2tgo, yo, k1; rep from * to end')
  await page.keyboard.press('Enter')
  await page.keyboard.type('purl')
  await expect(stand(page)).toHaveText('Row 1 is not understood yet.')
  await expect(item(page, 1).locator('.echo mark')).toHaveText('k2tgo')
  const mend = page.getByRole('button', { name: /^Write ‘k2tog’/ })
  await expect(mend).toBeVisible()
  await row(page, 1).focus()
  for (let i = 0; i < 6 && !(await mend.evaluate((one) => one === document.activeElement)); i++)
    await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await expect(row(page, 1)).toHaveValue('k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end')
  await expect(row(page, 1)).toBeFocused()
  await expect(stand(page)).toHaveText('All 2 rows come out, for every number of repeats.')
  // Nothing was said of the cast-on: what the rows need is offered, and taken with one press.
  await expect(page.locator('[data-derived]')).toHaveText(
    'Nothing is stated. The rows need: multiple of 6 plus 1. They are counted on that.',
  )
  await page.getByRole('button', { name: 'State it so' }).focus()
  await page.keyboard.press('Enter')
  await expect(page.getByLabel('Cast on a multiple of', { exact: true })).toHaveValue('6')
  await expect(page.locator('[data-derived]')).toHaveText('The rows need just that.')
})

test('a cast-on that the rows do not come out on is told', async ({ page }) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await page.getByLabel('plus', { exact: true }).fill('2')
  await expect(stand(page)).toHaveText(/does not come out/)
  await page
    .getByRole('button', { name: /^Cast on a multiple of 6 plus 1/ })
    .first()
    .click()
  await expect(page.getByLabel('plus', { exact: true })).toHaveValue('1')
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
})

test('the chart is gone through and changed by keyboard, and the words follow', async ({ page }) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
  await cell(page, 0, 0).click()
  await page.keyboard.press('ArrowLeft')
  await page.keyboard.press('ArrowLeft')
  await expect(cell(page, 0, 2)).toBeFocused()
  await expect(page.locator('[data-stitch] [data-slot="status"]')).toHaveText(
    'Row 1, stitch 3: slip, slip, knit. 13 stitches',
  )
  await page.keyboard.press('ArrowUp')
  await expect(cell(page, 1, 10)).toBeFocused()
  await page.keyboard.press('ArrowDown')
  await expect(cell(page, 0, 2)).toBeFocused()
  await page.keyboard.press('Enter')
  const keeps = page.locator('[data-choices="keeps"]')
  await expect(page.locator('[data-stitch] .choice').first()).toBeFocused()
  const k2tog = keeps.getByRole('button', { name: 'k2tog knit two together', exact: true })
  await k2tog.focus()
  await page.keyboard.press('Enter')
  // Only the word at that place has changed.
  await expect(row(page, 1)).toHaveValue('k1, *yo, k2tog, k1, k2tog, yo, k1; rep from * to end')
  await expect(cell(page, 0, 2)).toHaveAttribute('data-stitch', 'k2tog')
  // It is written once, and stands in both repeats.
  await expect(cell(page, 0, 8)).toHaveAttribute('data-stitch', 'k2tog')
  await expect(cell(page, 0, 2)).toBeFocused()
  await page.keyboard.press('Control+z')
  await expect(row(page, 1)).toHaveValue('k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end')
  await expect(cell(page, 0, 2)).toHaveAttribute('data-stitch', 'ssk')
})

test('a plain row is written out where one stitch of every repeat is changed', async ({ page }) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
  await cell(page, 1, 2).click()
  await page.locator('[data-choices="keeps"]').getByRole('button', { name: 'k1 knit', exact: true }).click()
  await expect(row(page, 2)).toHaveValue('*p2, k1, p3; rep from * to last st, p1')
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
})

test('what keeps no balance says what it does to the count, and does it', async ({ page }) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
  await cell(page, 0, 3).click()
  await page.getByText('Changes the count', { exact: true }).click()
  const yo = page.locator('[data-choices="others"]').getByRole('button', { name: /^yo yarn over/ })
  await expect(yo).toContainText('leaves 1 stitch of the row below unworked')
  await yo.click()
  await expect(stand(page)).toHaveText('Row 1 does not come out.')
  await expect(row(page, 1)).toHaveValue('k1, *yo, ssk, yo, k2tog, yo, k1; rep from * to end')
})

test('a draft is stepped through', async ({ page }) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await cell(page, 0, 0).click()
  const status = page.locator('[data-stitch] [data-slot="status"]')
  await expect(status).toHaveText('Row 1, stitch 1: knit. 13 stitches')
  await page.getByRole('button', { name: /Next stitch/ }).click()
  await expect(status).toHaveText('Row 1, stitch 2: yarn over. 14 stitches')
  await expect(page.locator('[data-slot="needles"] svg')).toBeVisible()
  // The same stitch is lit on the row's needle.
  await expect(item(page, 1).locator('.strip [data-key="loop-1"]')).toHaveClass('is-here')
  await page.getByRole('button', { name: /Back one stitch/ }).click()
  await expect(status).toHaveText('Row 1, stitch 1: knit. 13 stitches')
})

test('everything is there again after a reload, also what is not understood', async ({ page }) => {
  await open(page)
  await paste(row(page, 1), flawed)
  await row(page, 2).focus()
  await page.keyboard.press('End')
  await page.keyboard.type(', k2to')
  await page.getByRole('textbox', { name: 'Name' }).fill('Ebb')
  await page.reload()
  await expect(row(page, 1)).toHaveValue('k1, *yo, ssk, k2tog, yo, k1; rep from * to end')
  await expect(row(page, 2)).toHaveValue('purl, k2to')
  await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Ebb')
  // Several drafts lie side by side.
  await page.getByText(/^New draft, open a file/).click()
  await page.getByRole('button', { name: 'New draft' }).click()
  await expect(row(page, 1)).toHaveValue('')
  await row(page, 1).fill('knit')
  await expect(page.locator('[data-shelf] li')).toHaveCount(2)
  await page.getByRole('button', { name: /^Ebb/ }).click()
  await expect(row(page, 2)).toHaveValue('purl, k2to')
  await page.getByRole('button', { name: 'Throw away Ebb' }).click()
  await expect(page.locator('[data-shelf] li')).toHaveCount(1)
  await page.getByRole('button', { name: 'Bring it back' }).click()
  await expect(row(page, 2)).toHaveValue('purl, k2to')
})

test('a file that is saved is a sound pattern file, and is opened again', async ({ page }, info) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ])
  expect(download.suggestedFilename()).toBe('reed-bed.yaml')
  const file = info.outputPath('reed-bed.yaml')
  await download.saveAs(file)
  const { sound, pattern } = checkPattern({ name: 'saved', text: readFileSync(file, 'utf8') })
  expect(sound).toBe(true)
  expect(pattern?.rows.map(({ text }) => text)).toEqual(await rowsOf(page))
  await page.getByText(/^New draft, open a file/).click()
  await page.getByRole('button', { name: 'New draft' }).click()
  await page.locator('[data-file]').setInputFiles(file)
  await expect(row(page, 1)).toHaveValue('k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end')
  await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Reed Bed')
  // A pattern of the library with edge stitches, and a file that is none.
  await page.locator('[data-file]').setInputFiles(join(root, 'content/patterns/old-shale.yaml'))
  await expect(stand(page)).toHaveText('All 4 rows come out, for every number of repeats.')
  await page
    .locator('[data-file]')
    .setInputFiles({ name: 'odd.yaml', mimeType: 'text/plain', buffer: Buffer.from('rows: [') })
  await expect(page.locator('[data-notice]')).toContainText(
    '‘odd.yaml’ was not opened; your draft is as it was.',
  )
  await expect(stand(page)).toHaveText('All 4 rows come out, for every number of repeats.')
})

test('a link holds the whole draft, and no request carries it', async ({
  page,
  browser,
  baseURL,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await open(page)
  await paste(row(page, 1), booklet)
  await page.getByRole('button', { name: 'Copy a link' }).click()
  await expect(page.locator('[data-notice]')).toContainText('The link is copied.')
  const link = await page.evaluate(() => navigator.clipboard.readText())
  const [address, payload] = link.split('#')
  expect(address).toBe(`${baseURL}draft/`)
  expect(payload).toMatch(/^draft=1\.[\w-]+$/)
  const other = await browser.newContext()
  const asked: string[] = []
  other.on('request', (request) => asked.push(`${request.url()} ${request.postData() ?? ''}`))
  const there = await other.newPage()
  await there.goto(link)
  await expect(row(there, 1)).toHaveValue('k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end')
  await expect(stand(there)).toHaveText(/^All 2 rows come out/)
  expect(await rowsOf(there)).toEqual(await rowsOf(page))
  await expect(there.getByRole('textbox', { name: 'Name' })).toHaveValue('Reed Bed')
  expect(asked.length).toBeGreaterThan(0)
  expect(asked.filter((one) => one.includes((payload ?? '').slice(6, 30)))).toEqual([])
  expect(there.url()).toBe(`${baseURL}draft/`)
  // It is kept there from now on.
  await there.reload()
  await expect(row(there, 2)).toHaveValue('purl')
  await there.goto(`${baseURL}draft/#draft=${payload?.slice(6, 40)}`)
  await expect(there.locator('[data-notice]')).toContainText('This link is damaged')
  await expect(row(there, 2)).toHaveValue('purl')
  await other.close()
})

test('a wrong paste of a million characters changes nothing and stops nothing', async ({ page }) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
  const took = await row(page, 2).evaluate((field) => {
    const data = new DataTransfer()
    data.setData('text/plain', 'k2, '.repeat(262_144))
    const before = performance.now()
    field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
    return performance.now() - before
  })
  expect(took).toBeLessThan(1000)
  await expect(page.locator('[data-notice]')).toContainText('1,048,576 characters')
  expect(await rowsOf(page)).toEqual(['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl'])
  // It is the same however it came into the field.
  await page.getByRole('button', { name: 'Close this' }).click()
  await row(page, 2).fill('k2, '.repeat(262_144))
  await expect(page.locator('[data-notice]')).toContainText('1,048,576 characters')
  await expect(row(page, 2)).toHaveValue('purl')
  await row(page, 2).fill('knit')
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
})

test('a number far too large does not hang the page', async ({ page }) => {
  await open(page)
  await row(page, 1).fill('[[[k999999] 999999 times] 999999 times] 999999 times')
  await expect(stand(page)).toHaveText('Row 1 is not understood yet.')
  await row(page, 1).fill('*k2tog, yo; rep from * to end')
  await expect(stand(page)).toHaveText(/^The row comes out/)
})

test('two tabs with one draft keep both', async ({ page, context }) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await expect(page.locator('[data-shelf-count]')).toHaveText('1')
  const second = await context.newPage()
  await second.goto('draft/')
  await expect(row(second, 2)).toHaveValue('purl')
  await row(page, 2).fill('knit')
  await expect(second.locator('[data-notice]')).toContainText('This draft was just changed in another tab.')
  await row(second, 1).fill('k1, *yo, k2tog; rep from * to end')
  await expect(second.locator('[data-notice]')).toContainText(
    'Both are kept: this tab goes on as ‘Reed Bed (2)’.',
  )
  await expect(second.getByRole('textbox', { name: 'Name' })).toHaveValue('Reed Bed (2)')
  await page.reload()
  expect(await rowsOf(page)).toEqual(['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'knit'])
  await second.reload()
  expect(await rowsOf(second)).toEqual(['k1, *yo, k2tog; rep from * to end', 'purl'])
  await expect(page.locator('[data-shelf-count]')).toHaveText('2')
})

test('Enter cuts a row, Backspace joins it again, and a row can be taken out', async ({ page }) => {
  await open(page)
  await row(page, 1).fill('k2, p2')
  await row(page, 1).evaluate((field) => (field as HTMLTextAreaElement).setSelectionRange(3, 3))
  await page.keyboard.press('Enter')
  expect(await rowsOf(page)).toEqual(['k2,', 'p2'])
  await expect(row(page, 2)).toBeFocused()
  await page.keyboard.press('Backspace')
  expect(await rowsOf(page)).toEqual(['k2, p2'])
  await page.getByRole('button', { name: 'Add a row', exact: true }).click()
  await page.keyboard.type('k4')
  await expect(stand(page)).toHaveText('All 2 rows come out.')
  await item(page, 2).getByRole('button', { name: 'Take out' }).click()
  expect(await rowsOf(page)).toEqual(['k2, p2'])
  await page.keyboard.press('Control+z')
  expect(await rowsOf(page)).toEqual(['k2, p2', 'k4'])
})

test('a swatch card of the draft is printed at once', async ({ page }) => {
  await open(page)
  await paste(row(page, 1), booklet)
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
  const printed = page.evaluate(
    () => new Promise<void>((done) => addEventListener('beforeprint', () => done(), { once: true })),
  )
  await page.getByRole('button', { name: 'Print a swatch card' }).click()
  await printed
  await page.emulateMedia({ media: 'print' })
  const card = page.locator('[data-cards] .card').first()
  await expect(card).toBeVisible()
  await expect(card).toContainText('cast on 13')
  await expect(
    card.getByRole('row', { name: /1 RS k1, \*yo, ssk, k1, k2tog, yo, k1; rep from \* to end/ }),
  ).toContainText('13')
  await expect(page.locator('[data-rows]')).toBeHidden()
})

for (const colorScheme of ['light', 'dark'] as const) {
  test(`shuts nobody out with a draft on it, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
    await open(page)
    await paste(row(page, 1), `${flawed}\nRow 3: k1, *k1, yo, s2kp, yo, k2; rep from * to end\nRow 4: purl`)
    await page.getByRole('textbox', { name: 'Name' }).fill('Ebb')
    await page.getByLabel('Cast on a multiple of', { exact: true }).fill('6')
    await page.getByLabel('plus', { exact: true }).fill('1')
    await expect(page.getByRole('button', { name: /Add ‘k1’ after ‘ssk’/ })).toBeVisible()
    await page.getByText(/^New draft, open a file/).click()
    await page.getByText('In the round, edges, set-up rows, yarn and notes').click()
    await cell(page, 2, 3).click()
    await expect(page.locator('[data-stitch] .choice').first()).toBeVisible()
    const { passes, violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
    expect(passes.length).toBeGreaterThan(10)
    expect(violations.map(({ id, help, nodes }) => ({ id, help, at: nodes.map((n) => n.html) }))).toEqual([])
    const small = await page
      .locator('.draft button:visible, .draft select:visible, .draft input[type="text"]:visible')
      .evaluateAll((all) =>
        all.flatMap((one) => (one.getBoundingClientRect().height < 43.5 ? [one.outerHTML.slice(0, 80)] : [])),
      )
    expect(small).toEqual([])
  })
}

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false })
  test('the page says what it needs and where to go instead', async ({ page }) => {
    await page.goto('draft/')
    await expect(page.getByText('needs a script for that')).toBeVisible()
    await expect(page.getByRole('link', { name: 'how a pattern file is written' })).toBeVisible()
    await expect(page.getByText('npx openwork check FILE')).toBeVisible()
    await expect(page.getByRole('button', { name: 'Undo' })).toBeHidden()
  })
})

test('from a flawed row to a proved cowl: mended, saved, opened again and made over in the round', async ({
  page,
}, info) => {
  await open(page)
  await paste(row(page, 1), `Reed Bed\nMultiple of 6 sts + 1\n${flawed}`)
  await page.getByRole('button', { name: /Add ‘k1’ after ‘ssk’.*then every row comes out/ }).click()
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
  const saved = async (name: string): Promise<string> => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ])
    const file = info.outputPath(name)
    await download.saveAs(file)
    return file
  }
  const flat = await saved('flat.yaml')
  await page.getByText(/^New draft, open a file/).click()
  await page.getByRole('button', { name: 'New draft' }).click()
  await expect(row(page, 1)).toHaveValue('')
  await page.locator('[data-file]').setInputFiles(flat)
  await expect(stand(page)).toHaveText(/^All 2 rows come out/)
  await page.getByLabel('What it becomes').selectOption({ label: 'Work it in the round' })
  await page.getByRole('button', { name: 'Make it over', exact: true }).press('Enter')
  await expect(page.getByRole('heading', { name: 'Work it in the round: done' })).toBeVisible()
  await expect(page.getByRole('textbox', { name: 'Round 2', exact: true })).toHaveValue('knit')
  await expect(stand(page)).toHaveText(/^All 2 rounds come out/)
  const text = readFileSync(await saved('round.yaml'), 'utf8')
  const { sound, pattern } = checkPattern({ name: 'round', text })
  expect(sound).toBe(true)
  expect(pattern).toMatchObject({ worked: 'round', castOn: { multiple: 6, plus: 0 } })
  // What cannot be done is told with its reason, and changes nothing.
  await page.getByLabel('What it becomes').selectOption({ label: 'Slipped edge' })
  await page.getByRole('button', { name: 'Make it over', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Slipped edge: not possible' })).toBeVisible()
  await expect(page.locator('[data-report] li').first()).toContainText(/round/)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(row(page, 2)).toHaveValue('purl')
})

test.describe('on a telephone', () => {
  test.use({ viewport: { width: 390, height: 844 } })

  test('nothing is wider than the screen', async ({ page }) => {
    await open(page)
    await paste(row(page, 1), booklet)
    await expect(stand(page)).toHaveText(/^All 2 rows come out/)
    await expect(page.getByLabel('What it becomes')).toBeVisible()
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    )
  })
})
