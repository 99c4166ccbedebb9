import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { type Locator, type Page, test as plain } from '@playwright/test'
import { checkPattern } from '../../engine/intake/index.ts'
import { type WorkedPattern, work } from '../../engine/needles/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { root } from '../../site/setup/machine.mjs'
import { expect, test } from './support.ts'
import { builtPages, htmlOf } from './support-pages.ts'

const slug = 'gull-wings'

/** The pattern worked by the engine, for what its picture must show. */
function workedFor(repeats: number): WorkedPattern {
  const file = `content/patterns/${slug}.yaml`
  const { pattern } = checkPattern({ name: file, text: readFileSync(join(root, file), 'utf8') })
  const { worked } = pattern ? work(pattern, repeats) : { worked: null }
  if (!worked) throw new Error(`${slug} cannot be worked`)
  return worked
}

interface Opened {
  readonly view: Locator
  readonly slider: Locator
  readonly picture: Locator
  /** What the picture is called. */
  readonly name: Locator
}

async function open(page: Page): Promise<Opened> {
  await page.goto(`patterns/${slug}/`)
  const view = page.locator('[data-fabric]')
  await view.scrollIntoViewIfNeeded()
  const slider = view.getByRole('slider', { name: 'Blocking' })
  await expect(slider).toBeEnabled()
  const picture = view.locator('[data-picture]').getByRole('img')
  return { view, slider, picture, name: picture.locator('title') }
}

/** How wide and high the yarn itself is drawn, on the screen. */
const yarnBox = (picture: Locator) => picture.locator('.fabric').boundingBox()

test('the slider pins the fabric out and lets it go, by keyboard', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  const { slider, picture, name } = await open(page)
  await expect(slider).toHaveAttribute('aria-valuetext', 'blocked')
  await expect(name).toHaveText('Gull Wings: the fabric, right side, blocked')
  // Before anything is measured: the page may scroll a little to show what has the focus.
  await slider.focus()
  const [pinned, frame, status] = [
    await yarnBox(picture),
    await picture.boundingBox(),
    await page.getByRole('status').textContent(),
  ]
  await page.keyboard.press('Home')
  await expect(slider).toHaveAttribute('aria-valuetext', 'as knitted')
  await expect(name).toHaveText('Gull Wings: the fabric, right side, as knitted')
  const loose = await yarnBox(picture)
  if (!pinned || !loose) throw new Error('no yarn is drawn')
  expect(loose.width).toBeLessThan(0.9 * pinned.width)
  expect(loose.height).toBeLessThan(0.9 * pinned.height)
  // The frame, and with it the page, keeps still.
  expect(await picture.boundingBox()).toEqual(frame)
  await page.keyboard.press('ArrowRight')
  await expect(slider).toHaveAttribute('aria-valuetext', '5 % of the way to blocked')
  await expect(name).toHaveText(/5 % of the way to blocked$/)
  const between = await yarnBox(picture)
  expect(between?.width).toBeGreaterThan(loose.width)
  expect(between?.width).toBeLessThan(pinned.width)
  // The arrow keys belonged to the slider: the lesson has not gone on.
  await expect(page.getByRole('status')).toHaveText(status ?? '')
})

test('on its way the fabric passes through shapes between both', async ({ page }) => {
  const { slider, picture, name } = await open(page)
  const drawn = await picture.evaluateHandle((svg) => {
    const [stage, names] = [svg.parentElement as Element, new Set<string>()]
    new MutationObserver(() => names.add(stage.querySelector('title')?.textContent ?? '')).observe(stage, {
      childList: true,
    })
    return names
  })
  await slider.focus()
  await page.keyboard.press('Home')
  await expect(name).toHaveText(/as knitted$/)
  const names = await drawn.evaluate((set) => [...set])
  expect(names.at(-1)).toMatch(/as knitted$/)
  // How many there are depends on how fast the machine draws.
  expect(names.filter((name) => /\d % of the way/.test(name)).length).toBeGreaterThan(0)
})

test('the wrong side is the right side turned over', async ({ page }) => {
  const { view, picture, name } = await open(page)
  await view.getByRole('checkbox', { name: /one repeat/ }).check()
  const bracket = async (): Promise<{ from: number; to: number }> => {
    const [frame, box] = [
      await picture.boundingBox(),
      await picture.locator('[data-key="repeat"]').boundingBox(),
    ]
    if (!frame || !box) throw new Error('no repeat is marked')
    return { from: box.x - frame.x, to: box.x + box.width - frame.x }
  }
  const width = (await picture.boundingBox())?.width ?? 0
  const right = await bracket()
  await view.getByRole('radio', { name: 'wrong side' }).check()
  await expect(name).toHaveText('Gull Wings: the fabric, wrong side, blocked')
  const wrong = await bracket()
  // The first repeat of a right-side row is worked at its right end.
  expect(right.from).toBeGreaterThan(width / 2 - 20)
  expect(wrong.from).toBeCloseTo(width - right.to, 0)
  expect(wrong.to).toBeCloseTo(width - right.from, 0)
  await expect(view.getByText(/^wrong side, blocked/)).toBeVisible()
})

test('holes, decreases, edges and a repeat can be marked, each by a shape of its own', async ({ page }) => {
  const { view, picture } = await open(page)
  const [repeats, times] = [
    await view.getAttribute('data-repeats'),
    Number(await view.getAttribute('data-times')),
  ]
  const steps = workedFor(Number(repeats)).rows.flatMap((row) => row.steps)
  const yarnOvers = times * steps.filter((step) => stitch(step.stitch).family === 'yarn over').length
  expect(yarnOvers).toBeGreaterThan(10)
  const words = view.locator('[data-slot="description"]')
  await expect(picture.locator('.yarn-sign')).toHaveCount(0)
  await view.getByRole('checkbox', { name: /yarn overs/ }).check()
  await expect(picture.locator('.mark-over')).toHaveCount(yarnOvers)
  await expect(words).toContainText('a ring in each hole')
  const marks = [
    ['decreases', '.yarn-mark-decrease', 'bars across the loop on top of each decrease'],
    ['edge stitches', '.yarn-mark-edge', 'a line along the edge stitches'],
    ['one repeat', '.mark-repeat', 'a bracket under one repeat'],
  ] as const
  for (const [name, shape, told] of marks) {
    await expect(picture.locator(shape)).toHaveCount(0)
    await view.getByRole('checkbox', { name: new RegExp(name) }).check()
    await expect(picture.locator(shape).first()).toBeAttached()
    await expect(words).toContainText(told)
  }
  await expect(picture.locator('.yarn-sign').first()).toBeAttached()
  for (const box of await view.getByRole('checkbox').all()) await box.uncheck()
  await expect(picture.locator('.mark-over, .yarn-sign, .mark-repeat')).toHaveCount(0)
})

test('more repeats make a wider piece', async ({ page }) => {
  const { view, picture } = await open(page)
  const stitches = workedFor(4).castOn
  await view.getByRole('combobox', { name: 'Repeats in the picture' }).selectOption('4')
  await expect(view.getByText(`4 repeats, ${stitches} stitches cast on; 4 rows worked 3 times`)).toBeVisible()
  await expect(picture.locator('desc')).toContainText(`at most ${stitches} loops wide`)
})

for (const colorScheme of ['light', 'dark'] as const) {
  test(`marked and turned over it shuts nobody out, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme })
    const { view } = await open(page)
    await view.getByRole('checkbox', { name: /yarn overs/ }).check()
    await view.getByRole('radio', { name: 'wrong side' }).check()
    const { passes, violations } = await new AxeBuilder({ page })
      .include('[data-fabric]')
      .setLegacyMode()
      .analyze()
    expect(passes.length).toBeGreaterThan(5)
    expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html) }))).toEqual([])
  })
}

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 } })

  test('the picture and its controls fit the screen', async ({ page }) => {
    const { view } = await open(page)
    const { right, scrolled } = await view.evaluate((element) => ({
      right: element.getBoundingClientRect().right,
      scrolled: document.documentElement.scrollWidth,
    }))
    expect(right).toBeLessThanOrEqual(390)
    expect(scrolled).toBeLessThanOrEqual(390)
  })
})

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false })

  test('the fabric stands as knitted and blocked, and nothing is offered that would not work', async ({
    page,
  }) => {
    await page.goto(`patterns/${slug}/`)
    const view = page.locator('[data-fabric]')
    const blocked = view.getByRole('img', { name: 'Gull Wings: the fabric, right side, blocked' })
    const loose = view.getByRole('img', { name: /^Gull Wings: the fabric, right side, as knitted/ })
    await expect(blocked).toBeVisible()
    await expect(loose).toBeVisible()
    await loose.scrollIntoViewIfNeeded()
    const [pinned, free] = [await blocked.boundingBox(), await loose.boundingBox()]
    expect(pinned?.width).toBeGreaterThan(100)
    expect(free?.width).toBeGreaterThan(100)
    for (const role of ['slider', 'checkbox', 'combobox'] as const) {
      await expect(view.getByRole(role)).toHaveCount(0)
    }
  })
})

test('the picture as knitted is a file by itself', async ({ request }) => {
  const answer = await request.get(`patterns/${slug}/as-knitted.svg`)
  expect(answer.headers()['content-type']).toContain('image/svg+xml')
  const svg = await answer.text()
  expect(svg).toContain('>Gull Wings: the fabric, right side, as knitted</title>')
  expect(svg.match(/class="yarn-line"/g)?.length).toBeGreaterThan(3)
})

plain('every lesson that is proved has its fabric, and every pattern its thumbnail', () => {
  const pages = builtPages()
  const lessons = pages.filter(
    ({ path }) => path.startsWith('patterns/') && path !== 'patterns/' && existsOnIndex(path),
  )
  expect(lessons.length).toBeGreaterThan(20)
  expect(
    lessons.filter((page) => !/data-picture[^>]*><svg/.test(htmlOf(page))).map(({ path }) => path),
  ).toEqual([])
})

/** Whether the page of all patterns shows the pattern with a picture. */
function existsOnIndex(path: string): boolean {
  const index = builtPages().find((page) => page.path === 'patterns/')
  return index !== undefined && htmlOf(index).includes(`${path}fabric.svg"`)
}
