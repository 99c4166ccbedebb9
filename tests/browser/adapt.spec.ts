import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { adaptationNames } from '../../engine/adapt/index.ts'
import { checkPattern } from '../../engine/intake/index.ts'
import { root } from '../../site/setup/machine.mjs'
import { expect, test } from './support.ts'

// Each looks a page over for accessibility, or draws two fabrics.
test.setTimeout(90_000)

const address = (slug: string, steps = ''): string => `patterns/${slug}/adapt/${steps}`
const choice = (page: Page, name: string): Locator =>
  page.locator(`form[data-choice="${name}"] button`).first()
const steps = (page: Page): Locator => page.locator('.steps [data-step]')
const castOn = (page: Page): Promise<string[]> => page.locator('.cast-on .strong td').allTextContents()

/** What the command says of the same steps: its rows, and what it tells beside them. */
function command(slug: string, list: string): { rows: string[]; told: string } {
  const file = join(root, `content/patterns/${slug}.yaml`)
  const program = join(root, 'engine/command/openwork.mjs')
  const { stdout, stderr } = spawnSync(process.execPath, [program, 'rows', '--adapt', list, file], {
    encoding: 'utf8',
  })
  const rows = stdout.split('\n').filter((line) => line !== '')
  return { rows: rows.map((line) => line.replace(/^.*?\): /, '')), told: stderr }
}

async function open(page: Page, slug: string, hash = ''): Promise<void> {
  await page.goto(address(slug, hash))
  await expect(page.locator('[data-proof]')).toBeVisible()
}

/** A narrow page has its choices folded, a wide one does not. */
async function unfold(page: Page, group: string): Promise<void> {
  const details = page.locator('[data-group]', { has: page.locator('summary', { hasText: group }) })
  if ((await details.getAttribute('open')) === null) await details.locator('summary').click()
  await expect(details).toHaveAttribute('open')
}

/** Goes on by Tab until what has the focus passes, as someone without a mouse does. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 90; presses++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`no ${selector} within 90 presses of Tab`)
}

test('a flat lace becomes a mirrored one in the round, by keyboard, and agrees with the command', async ({
  page,
}) => {
  await open(page, 'reed-bed')
  expect(await castOn(page)).toEqual(['7', '13', '19', '25', '31'])
  await tabTo(page, '[data-choice="round"] button')
  await page.keyboard.press('Enter')
  await expect(steps(page)).toHaveCount(1)
  await tabTo(page, '[data-choice="mirror"] button')
  await page.keyboard.press('Enter')
  await expect(steps(page)).toHaveCount(2)
  await expect(page).toHaveURL(/#round,mirror$/)

  const { rows, told } = command('reed-bed', 'round, mirror')
  expect(await page.locator('.worded .words').allTextContents()).toEqual(rows)
  expect(told).toContain(`Cast on ${(await castOn(page)).join(', ')} … stitches`)
  for (const sentence of await page.locator('.changes li').allTextContents())
    expect(told.replaceAll('`', '')).toContain(sentence)
  await expect(page.locator('[data-proof]')).toContainText('Proved for every number of repeats')
  await expect(page.locator('[data-slot="status"]')).toContainText('2 of 2 steps done. Cast on 6, 12, 18')
})

test('the steps are taken out in order, and by going back', async ({ page }) => {
  await open(page, 'reed-bed', '#garter-edge-3,round,mirror')
  await expect(steps(page)).toHaveCount(3)
  await page.getByRole('button', { name: 'Take it out: in the round' }).click()
  await expect(page).toHaveURL(/#garter-edge-3,mirror$/)
  await expect(page.getByRole('heading', { name: 'What was done' })).toBeFocused()
  expect(await page.locator('.worded .words').allTextContents()).toEqual(
    command('reed-bed', 'garter edge 3, mirror').rows,
  )
  await page.goBack()
  await expect(steps(page)).toHaveCount(3)
  await page.getByRole('button', { name: 'Take out all steps' }).click()
  await expect(steps(page)).toHaveCount(0)
  await expect(page.getByText('Nothing yet.')).toBeVisible()
})

test('what cannot be done is refused with its reason and what to try, and nothing changes', async ({
  page,
}) => {
  await open(page, 'reed-bed', '#round')
  const before = await castOn(page)
  await unfold(page, 'Width of the repeat')
  const wider = choice(page, 'wider')
  await expect(wider).toContainText('why?')
  await wider.click()
  const reason = /It cannot be adapted so\. (.*)\n {2}To try: (.*)\n/.exec(
    command('reed-bed', 'round, wider').told,
  )
  const note = page.locator('[data-note]', { hasText: 'It cannot be done.' })
  await expect(note).toContainText(reason?.[1] ?? '?')
  await expect(note).toContainText(`To try: ${reason?.[2] ?? '?'}`)
  await expect(page.locator('[data-slot="status"]')).toContainText(reason?.[1] ?? '?')
  await expect(page).toHaveURL(/#round$/)
  expect(await castOn(page)).toEqual(before)
})

test('a link opens the same again; what it does not know is told, not dropped', async ({ page, context }) => {
  await open(page, 'horseshoe', '#wider 2,doubles-upright')
  const [rows, counts] = [await page.locator('.worded .words').allTextContents(), await castOn(page)]
  expect(rows).toEqual(command('horseshoe', 'wider 2, doubles upright').rows)
  const other = await context.newPage()
  await open(other, 'horseshoe', new URL(page.url()).hash)
  expect(await other.locator('.worded .words').allTextContents()).toEqual(rows)
  expect(await castOn(other)).toEqual(counts)

  await open(other, 'reed-bed', '#mirror,roud,border')
  await expect(steps(other)).toHaveCount(3)
  await expect(steps(other).nth(1)).toContainText('Nothing is known by that name')
  await expect(steps(other).nth(2)).toContainText('Not tried yet')
  await other.getByRole('button', { name: 'Was ‘round’ meant?' }).click()
  await expect(other).toHaveURL(/#mirror,round,border$/)
  await expect(other.locator('.steps .done')).toHaveCount(3)

  await open(other, 'reed-bed', '#beside-no-such-lace')
  await expect(steps(other)).toContainText('the library has none of that name')
})

test('one press takes the plainer stitch that stands beside an awkward one', async ({ page }) => {
  await open(page, 'rose-leaf-lambert', '#mirror')
  const offer = page.locator('.offers li').first()
  await expect(offer).toContainText('lies to the right instead of to the left')
  await expect(offer.locator('img')).toHaveCount(2)
  await offer.getByRole('button', { name: 'Work p2tog for ssp' }).click()
  await expect(page).toHaveURL(/#mirror,p2tog-for-ssp$/)
  expect(await page.locator('.worded .words').allTextContents()).toEqual(
    command('rose-leaf-lambert', 'mirror, p2tog for ssp').rows,
  )
  await expect(page.locator('.offers li')).toHaveCount(1)
})

test('another pattern is put beside it, where their counts agree', async ({ page }) => {
  await open(page, 'mini-horseshoe')
  await unfold(page, 'With another pattern')
  await page.getByLabel('The other one').selectOption('arrowhead')
  await page.getByRole('button', { name: 'Put it to the left' }).click()
  await expect(page).toHaveURL(/#beside-arrowhead$/)
  await expect(steps(page).first()).toContainText('With Arrowhead to its left')
  // 6 + 1 and 10 + 1: one repeat of each with the stitches that balance it.
  expect(await castOn(page)).toEqual(['18', '36', '54', '72', '90'])
})

test('the saved file reads back proved, with the counts of the page', async ({ page }) => {
  await open(page, 'mini-horseshoe', '#round,border 3')
  const saving = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as a pattern file' }).click()
  const file = await saving
  expect(file.suggestedFilename()).toBe('mini-horseshoe-in-the-round-with-garter-borders-of-3-rows.yaml')
  const text = readFileSync(await file.path(), 'utf8')
  const { pattern, sound, issues } = checkPattern({ name: 'saved', text })
  expect([sound, issues]).toEqual([true, []])
  expect(pattern?.castOn).toEqual({ multiple: 6, plus: 0 })
  expect(pattern?.worked).toBe('round')
  expect(pattern?.about.notes).toContain('After the last time of the rows, work once: ')
  expect(await castOn(page)).toEqual(['6', '12', '18', '24', '30'])
})

test('it opens in the drafting page with the same rows', async ({ page }) => {
  await open(page, 'reed-bed', '#round')
  const link = page.getByRole('link', { name: 'Open it in the drafting page' })
  await expect(link).toHaveAttribute('href', /draft\/#draft=1\./)
  const rows = await page.locator('.worded .words').allTextContents()
  await link.click()
  await expect(page.locator('[data-field="title"]')).toHaveValue('Reed Bed, in the round')
  const written = page.locator('textarea, input[type="text"], [contenteditable]')
  await expect
    .poll(async () =>
      written.evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value ?? one.textContent)),
    )
    .toEqual(expect.arrayContaining(rows))
})

test('the two fabrics stand side by side, a stitch as large in both', async ({ page }) => {
  await open(page, 'reed-bed', '#garter-edge-4')
  await page.locator('.cloths').scrollIntoViewIfNeeded()
  await expect(page.locator('.cloths svg')).toHaveCount(2, { timeout: 40_000 })
  const scales = await page
    .locator('.cloths svg')
    .evaluateAll((all) =>
      all.map((one) => one.getBoundingClientRect().width / Number(one.getAttribute('width'))),
    )
  expect(Math.abs((scales[0] ?? 0) / (scales[1] ?? 1) - 1)).toBeLessThan(0.02)
})

test('nobody is kept out: axe finds nothing, targets are large, and a phone is wide enough', async ({
  page,
}) => {
  for (const [slug, hash] of [
    ['rose-leaf-lambert', '#mirror'],
    ['reed-bed', '#mirror,roud,border'],
  ] as const) {
    await page.setViewportSize({ width: 1280, height: 900 })
    await open(page, slug, hash)
    await choice(page, 'round').click()
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
    await page.setViewportSize({ width: 390, height: 844 })
    const targets = page
      .locator('[data-adapt]')
      .locator('button, select, summary, .send a, input[type="text"], label:has(input)')
    const heights = await targets.evaluateAll((all) =>
      all.map((one) => (one as HTMLElement).offsetHeight).filter((height) => height > 0),
    )
    expect(heights.length).toBeGreaterThan(12)
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(44)
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    )
  }
})

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false })

  test('the command stands there, and what each name would make of the pattern or why not', async ({
    page,
  }) => {
    await page.goto(address('reed-bed'))
    await expect(page.locator('[data-choice]').first()).toBeHidden()
    await expect(
      page.getByText('npx openwork rows --adapt "round, mirror" content/patterns/reed-bed.yaml'),
    ).toBeVisible()
    const names = await page
      .locator('tr[data-name]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-name')))
    expect(names).toEqual(adaptationNames)
    await expect(page.locator('tr[data-name="round"]')).toContainText('Can be done. 2 rounds; multiple of 6.')
    const reason = /It cannot be adapted so\. (.*)\n/.exec(command('reed-bed', 'wider').told)?.[1]
    await expect(page.locator('tr[data-name="wider"]')).toContainText(`Not this one. ${reason ?? '?'}`)
  })
})
