import { type Page, test as plain } from '@playwright/test'
import { slugOf } from '../../components/stitch/slug.ts'
import { catalogue, handSteps, type Stitch, stitch, twinsOf } from '../../engine/stitches/index.ts'
import { expect, test } from './support.ts'
import { builtPages, htmlOf } from './support-pages.ts'

const pages = new Map(builtPages().map((page) => [page.path, page]))

function htmlFor({ id }: Stitch): string {
  const page = pages.get(`stitches/${slugOf(id)}/`)
  if (!page) throw new Error(`there is no page for ${id}`)
  return htmlOf(page)
}

const open = (page: Page, id: string) => page.goto(`stitches/${slugOf(id)}/`)

plain('every stitch has an address of its own, that can be read aloud', () => {
  const slugs = catalogue.map(({ id }) => slugOf(id))
  expect(new Set(slugs).size).toBe(catalogue.length)
  for (const slug of slugs) expect(slug).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
  expect(['k2tog', 'k tbl', '(k1, yo, k1) in 1', '1/1 RC', 'yo2 long'].map(slugOf)).toEqual([
    'k2tog',
    'k-tbl',
    'k1-yo-k1-in-1',
    '1-1-rc',
    'yo2-long',
  ])
})

/** The close-up from one side, as it stands in a page. */
function closeUp(html: string, side: 'right' | 'wrong'): string {
  const [, rest = ''] = html.split(`id="close-up-${side}-title"`)
  return rest.slice(0, rest.indexOf('</svg>'))
}

const numbersIn = (svg: string): string[] =>
  [...svg.matchAll(/class="number"[^>]*>(\d+)</g)].map((match) => match[1] ?? '')

/** How many loops a close-up must tell apart by a number. */
function numbered({ family, takes, effect: { held, made } }: Stitch): number {
  // A slipped loop is what it was: taken and made are one.
  if (family === 'slip') return 0
  // One bound-off stitch is no chain yet: three are shown.
  if (family === 'bind off') return 3 * takes
  // A lifted increase takes nothing from the needle, and is drawn through the loop below.
  return takes + held + made.filter(({ from }) => from === 'below').length
}

for (const side of ['right', 'wrong'] as const) {
  plain(`every stitch is shown close up from its ${side} side, its parents numbered`, () => {
    expect(catalogue.length).toBeGreaterThan(100)
    for (const one of catalogue) {
      const svg = closeUp(htmlFor(one), side)
      expect(svg.match(/<path/g)?.length, `${one.id} is drawn`).toBeGreaterThan(5)
      const wanted = Array.from({ length: numbered(one) }, (_, i) => String(i + 1))
      expect(numbersIn(svg).toSorted(), one.id).toEqual(wanted)
    }
  })
}

plain('every stitch is on the page of all stitches, with a picture and a sign', () => {
  const index = pages.get('stitches/')
  if (!index) throw new Error('there is no page of all stitches')
  const html = htmlOf(index)
  for (const { id } of catalogue) {
    expect(html).toContain(`stitches/${slugOf(id)}/"`)
    expect(html).toContain(`stitches/${slugOf(id)}/close-up.svg"`)
    expect(html).toContain(`id="sign-${slugOf(id)}-title"`)
  }
})

test('a decrease is told in full: counts, lean, hands, words, signs and twins', async ({ page }) => {
  await open(page, 'sk2p')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    'sk2p slip one, knit two together, pass the slipped stitch over',
  )
  const main = page.getByRole('main')
  await expect(main).toContainText('3 loops')
  await expect(main).toContainText('−2')
  await expect(main.getByText('left', { exact: true })).toBeVisible()
  const words = page.getByRole('region', { name: 'In words' })
  await expect(words).toContainText('sk2po')
  const hands = page.getByRole('region', { name: 'In your hands' })
  for (const hold of ['English', 'Continental'] as const) {
    for (const step of handSteps(stitch('sk2p'), hold)) await expect(hands).toContainText(step)
  }
  const twins = page.getByRole('region', { name: 'Its twins' })
  const { wrongSide, mirror } = twinsOf('sk2p')
  for (const twin of [wrongSide, mirror]) {
    const link = twins.getByRole('link', { name: twin?.stitch ?? '', exact: true })
    await expect(link).toHaveAttribute('href', new RegExp(`/stitches/${slugOf(twin?.stitch ?? '')}/$`))
  }
  await expect(page.getByRole('region', { name: 'Where you meet it' }).getByRole('link')).not.toHaveCount(0)
})

plain('every stitch is shown at the needles, from before it to after it', () => {
  for (const one of catalogue) {
    const html = htmlFor(one)
    const moments = [...html.matchAll(/id="moment-(\d+)-title">([^<]*)</g)]
    expect(moments.length, one.id).toBeGreaterThan(1)
    expect(moments.map(([, number]) => Number(number))).toEqual(moments.map((_, i) => i + 1))
    expect(moments.at(-1)?.[2]).toContain(`moment ${moments.length} of ${moments.length}`)
  }
})

test('the moments of a stitch are told in the words of the hands', async ({ page }) => {
  await open(page, 'ssk')
  const moments = page.getByRole('region', { name: 'At the needles' }).getByRole('listitem')
  const steps = handSteps(stitch('ssk'), 'English')
  await expect(moments).toHaveCount(steps.length + 1)
  for (const [i, step] of steps.entries()) await expect(moments.nth(i + 1)).toContainText(step)
  for (const picture of await moments.getByRole('img').all()) {
    expect((await picture.boundingBox())?.width).toBeGreaterThan(150)
  }
})

test('a yarn over is told for all that may stand beside it', async ({ page }) => {
  await open(page, 'yo')
  const hands = page.getByRole('region', { name: 'In your hands' })
  const cases = [
    ['Between two knits', 'yfwd'],
    ['After a knit, before a purl', 'yfrn'],
    ['After a purl, before a knit', 'yon'],
    ['Between two purls', 'yrn'],
  ] as const
  for (const [title, british] of cases) {
    await expect(hands.getByRole('heading', { name: title })).toContainText(british)
  }
  await expect(hands.getByRole('list')).toHaveCount(2 * cases.length)
})

test('from a lesson’s key and from its listing one comes to the stitch', async ({ page }) => {
  await page.goto('patterns/horseshoe/')
  await page.getByRole('table', { name: 'What the signs mean' }).getByRole('link', { name: 'sk2p' }).click()
  await expect(page).toHaveURL(/\/stitches\/sk2p\/$/)
  await page.goBack()
  const listed = page
    .getByRole('region', { name: 'Every stitch with its count' })
    .getByRole('link', { name: 'yarn over' })
  await expect(listed).toHaveCount(1)
  await expect(listed).toHaveAttribute('href', /\/stitches\/yo\/$/)
})
