import { expect, test } from './support.ts'
import { builtPages } from './support-pages.ts'
import { totalOf, type Weight, weightOf } from './support-weight.ts'

/** Bytes after gzip. */
const most = { lesson: 120_000, index: 200_000 }

function pageAt(path: string) {
  const found = builtPages().find((one) => one.path === path)
  if (!found) throw new Error(`there is no page ${path}`)
  return found
}

/** So that a failure says which part has grown. */
const told = (weight: Weight): string => JSON.stringify(weight)

test('a lesson with a picture of more than 17 by 12 stitches is light', () => {
  // 18 stitches and 12 rows.
  const weight = weightOf(pageAt('patterns/gull-wings/'))
  for (const part of ['html', 'styles', 'scripts'] as const) expect(weight[part], part).toBeGreaterThan(1000)
  const { html, styles, scripts } = weight
  expect(html + styles + scripts, told(weight)).toBeLessThanOrEqual(most.lesson)
})

test('with script, a lesson needs no picture file beside its own drawings', async ({ page }) => {
  const pictures: string[] = []
  page.on('request', (request) => {
    if (request.resourceType() === 'image') pictures.push(request.url())
  })
  await page.goto('patterns/gull-wings/')
  await page.getByRole('slider', { name: 'Blocking' }).fill('50')
  await page.getByRole('contentinfo').scrollIntoViewIfNeeded()
  await page.waitForLoadState('networkidle')
  expect(pictures.filter((url) => url.includes('/patterns/'))).toEqual([])
})

test('the page of all patterns is light, its pictures counted', () => {
  const weight = weightOf(pageAt('patterns/'))
  expect(weight.pictures).toBeGreaterThan(27 * 1000)
  expect(totalOf(weight), told(weight)).toBeLessThanOrEqual(most.index)
})
