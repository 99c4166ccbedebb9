import { AxeBuilder } from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { type Exercise, exerciseOf, isExercise, rightWords, tableOf } from '../../engine/practice/index.ts'
import { expect, test } from './support.ts'
import { patternOf } from './support-practice.ts'

// Each looks a page over for accessibility.
test.setTimeout(90_000)

const address = (slug: string, spot = ''): string =>
  `patterns/${slug}/practice/${spot === '' ? '' : `#${spot}`}`
const status = (page: Page): Locator => page.locator('.exercise > div > .status')
const name = (page: Page): Locator => page.locator('#exercise-name')

/** The same exercise as the page has, made anew from the pattern file. */
function given(slug: string, kind: Exercise['kind'], number: number): Exercise {
  const table = tableOf(patternOf(slug))
  const one = table && exerciseOf(table, kind, number)
  if (!one || !isExercise(one)) throw new Error(`${slug} has no ${kind}`)
  return one
}

async function open(page: Page, slug: string, spot: string): Promise<void> {
  await page.goto(address(slug, spot))
  await expect(page.getByRole('button', { name: 'Look at my answer' })).toBeVisible()
}

/** Goes on by Tab until what has the focus passes, as someone without a mouse does. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 90; presses++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`no ${selector} within 90 presses of Tab`)
}

/** Chooses within a group of radio buttons by the arrow keys. */
async function choose(page: Page, id: string, value: string): Promise<void> {
  await tabTo(page, `[name="${id}"]`)
  await page.keyboard.press('Space')
  const chosen = page.locator(`[name="${id}"]:checked`)
  for (let presses = 0; presses < 8 && (await chosen.getAttribute('value')) !== value; presses++)
    await page.keyboard.press('ArrowDown')
  await expect(chosen).toHaveValue(value)
}

const withoutViolations = async (page: Page): Promise<void> => {
  const { passes, violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
  expect(passes.length).toBeGreaterThan(5)
  expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html) }))).toEqual([])
}

/** Answers every part of an exercise by keyboard. */
async function answer(page: Page, exercise: Exercise): Promise<void> {
  for (const part of exercise.parts) {
    if (part.form === 'count') {
      await tabTo(page, `[name="${part.id}"]`)
      await page.keyboard.type(String(part.right))
    } else if (part.form === 'order') {
      await order(page, part.right)
    } else {
      const right = part.choices.find((choice) => choice.right)
      if (part.gap) {
        await tabTo(page, `[name="${part.id}"]`)
        await page.keyboard.type(right?.words ?? '')
        await expect(page.locator(`[name="${part.id}"]`)).toHaveValue(right?.id ?? '')
      } else await choose(page, part.id, right?.id ?? '')
    }
  }
}

/** Moves each piece up to its place by its own button. */
async function order(page: Page, right: readonly string[]): Promise<void> {
  const lying = () =>
    page.locator('.order > li').evaluateAll((all) => all.map((one) => one.getAttribute('data-piece')))
  for (const [place, id] of right.entries()) {
    await page.locator(`.order [data-piece="${id}"] button`).first().focus()
    for (let at = (await lying()).indexOf(id); at > place; at--) await page.keyboard.press('Enter')
    expect((await lying()).indexOf(id)).toBe(place)
  }
}

for (const [slug, kind] of [
  ['mini-horseshoe', 'comes-next'],
  ['reed-bed', 'fill-the-row'],
  ['shetland-bead', 'read-the-fabric'],
  ['reed-bed', 'row-in-order'],
  ['mini-horseshoe', 'wrong-repeat'],
  ['slipway-edging', 'wrong-repeat'],
  ['mini-horseshoe', 'mend-it'],
] as const) {
  test(`${kind} on ${slug}: a whole exercise by keyboard`, async ({ page }) => {
    await open(page, slug, `${kind}-0012`)
    await withoutViolations(page)
    const exercise = given(slug, kind, 12)
    await answer(page, exercise)
    await tabTo(page, '.send [type="submit"]')
    await page.keyboard.press('Enter')
    await expect(status(page)).toHaveText(/is right\.$/)
    await expect(page.getByRole('region', { name: 'Why' })).toContainText(exercise.because[0] ?? '?')
    await withoutViolations(page)

    await tabTo(page, '.send button:last-child')
    await page.keyboard.press('Enter')
    await expect(name(page)).toBeFocused()
    await expect(page).not.toHaveURL(/-0012$/)
    await expect(page).toHaveURL(new RegExp(`#${kind}-\\d{4}$`))
    await expect(status(page)).toHaveText('')
  })
}

test('a wrong answer is met with its reason, and may be changed', async ({ page }) => {
  await open(page, 'mini-horseshoe', 'comes-next-0012')
  const [which] = given('mini-horseshoe', 'comes-next', 12).parts
  if (which?.form !== 'choose') throw new Error('a stitch is asked')
  const wrong = which.choices.find(({ right }) => !right)
  await page.getByLabel(wrong?.words ?? '', { exact: true }).check()
  await page.getByRole('button', { name: 'Look at my answer' }).click()
  await expect(page.locator('.reply').first()).toHaveText(wrong?.reply ?? '?')
  await expect(status(page)).toContainText('2 places need another look')
  await expect(page.getByRole('region', { name: 'Why' })).toBeHidden()
  await page.getByLabel(rightWords(which), { exact: true }).check()
  await page.getByRole('button', { name: 'Look at my answer' }).click()
  await expect(status(page)).toContainText('Right so far')
  await page.getByRole('button', { name: 'Show me' }).click()
  await expect(page.getByRole('region', { name: 'Why' })).toBeVisible()
})

test('the same address gives the same exercise to two readers, and goes on alike', async ({ browser }) => {
  const told: string[][] = []
  for (const _ of ['the teacher', 'a pupil']) {
    const context = await browser.newContext()
    const page = await context.newPage()
    await open(page, 'horseshoe', 'wrong-repeat-4071')
    const texts: string[] = []
    for (let more = 0; more < 2; more++) {
      await expect(page.locator('.exercise .board svg').first()).toBeVisible()
      texts.push((await page.locator('[data-exercise]').textContent()) ?? '', page.url())
      await page.getByRole('button', { name: 'Another one' }).click()
    }
    told.push(texts)
    await context.close()
  }
  expect(told[0]).toEqual(told[1])
  expect(told[0]?.[0]).not.toBe(told[0]?.[2])
})

test('a number that is read out leads there, and another kind keeps it', async ({ page }) => {
  await open(page, 'vine', '')
  await page.getByLabel('To a number').fill('40')
  await page.getByRole('button', { name: 'Go there' }).click()
  await expect(page.getByText('A number has four digits')).toBeVisible()
  await page.getByLabel('To a number').fill('4071')
  await page.getByRole('button', { name: 'Go there' }).click()
  await expect(page).toHaveURL(/#comes-next-4071$/)
  await page.getByRole('link', { name: /Put the row in order/ }).click()
  await expect(page).toHaveURL(/#row-in-order-4071$/)
  await expect(name(page)).toHaveText('Put the row in order')
  await page.goBack()
  await expect(name(page)).toHaveText('What comes next?')
})

test('the picture of the piece is drawn, and no picture tells the stitch’s name', async ({ page }) => {
  await open(page, 'mini-horseshoe', 'wrong-repeat-0012')
  await expect(page.locator('.board svg path').first()).toBeAttached()
  await page.getByRole('link', { name: /Read the fabric/ }).click()
  await expect(page.locator('.board svg')).toHaveCount(
    given('mini-horseshoe', 'read-the-fabric', 12).parts.length,
  )
  const titles = await page.locator('.board svg title').allTextContents()
  expect(titles.length).toBeGreaterThan(0)
  for (const title of titles) expect(title).toMatch(/^A stitch close up, (right|wrong) side$/)
})

test('everything to press is large enough, and nothing is wider than a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  for (const kind of [
    'comes-next',
    'fill-the-row',
    'row-in-order',
    'wrong-repeat',
    'mend-it',
    'read-the-fabric',
  ]) {
    await open(page, 'rose-leaf-mee', `${kind}-0003`)
    const targets = page
      .locator('[data-practice]')
      .locator('button, select, summary, .kinds a, input[type="text"], label:has(input)')
    const heights = await targets.evaluateAll((all) =>
      all.map((one) => (one as HTMLElement).offsetHeight).filter((height) => height > 0),
    )
    expect(heights.length).toBeGreaterThan(8)
    expect(Math.min(...heights), kind).toBeGreaterThanOrEqual(44)
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
      kind,
    ).toBeLessThanOrEqual(0)
  }
})

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false })

  test('one exercise of each kind stands as text, its answer folded away', async ({ page }) => {
    await page.goto(address('mini-horseshoe'))
    await expect(page.getByRole('button', { name: 'Look at my answer' })).toHaveCount(0)
    await expect(page.getByText('need a script')).toBeVisible()
    for (const kind of [
      'comes-next',
      'fill-the-row',
      'read-the-fabric',
      'row-in-order',
      'wrong-repeat',
      'mend-it',
    ] as const) {
      const exercise = given('mini-horseshoe', kind, 407)
      const part = page.locator(`section[aria-labelledby="${kind}"]`)
      await expect(part.getByText(exercise.ask[0] ?? '?')).toBeVisible()
      const why = part
        .locator('details')
        .getByText(exercise.because[0] ?? '?')
        .last()
      await expect(why).toBeHidden()
      await part.getByText('The answer').click()
      await expect(why).toBeVisible()
      await expect(part.locator('details')).toContainText(
        rightWords(exercise.parts[0] as Exercise['parts'][number]),
      )
    }
  })
})
