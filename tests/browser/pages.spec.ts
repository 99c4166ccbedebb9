import { AxeBuilder } from '@axe-core/playwright'
import { test as plain } from '@playwright/test'
import { HtmlValidate } from 'html-validate'
import { base, expect, test } from './support.ts'
import { builtPages, byKind, extremes, htmlOf, isServed, localAddresses } from './support-pages.ts'

const pages = builtPages()
const kinds = byKind(pages)

plain('the site has the pages that it promises', () => {
  expect([...kinds.keys()]).toEqual(
    expect.arrayContaining([
      '',
      'patterns/',
      'patterns/*',
      'patterns/*/mend',
      'patterns/*/adapt',
      'patterns/*/measure',
      'patterns/*/practice',
      'patterns/*/class-sheet',
      'cards/*',
    ]),
  )
})

for (const [kind, [first]] of kinds) {
  test.describe(`a page of kind /${kind}`, () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      test(`shuts nobody out, ${colorScheme}`, async ({ page }) => {
        await page.emulateMedia({ colorScheme })
        const answer = await page.goto(first?.path ?? '')
        expect(answer?.status()).toBe(200)
        await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1)
        // Legacy mode stays in the page: there are no frames to reach, and it takes half the time.
        const { passes, violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
        expect(passes.length, 'rules that found something to look at').toBeGreaterThan(5)
        expect(violations.map(({ id, help, nodes }) => ({ id, help, at: nodes.map((n) => n.html) }))).toEqual(
          [],
        )
      })
    }
  })
}

plain('the shortest and the longest page of each kind are valid HTML', async () => {
  plain.setTimeout(120_000)
  const validator = new HtmlValidate({ extends: ['html-validate:standard', 'html-validate:a11y'] })
  const chosen = [...kinds.values()].flatMap(extremes)
  const problems: string[] = []
  for (const page of chosen) {
    const report = await validator.validateString(htmlOf(page), page.file)
    for (const { line, column, message, ruleId } of report.results.flatMap((result) => result.messages)) {
      problems.push(`/${page.path} ${line}:${column} ${message} (${ruleId})`)
    }
  }
  expect(chosen.length).toBeGreaterThan(0)
  expect(problems.slice(0, 50)).toEqual([])
})

plain('every link within the site leads somewhere', () => {
  const addresses = pages.flatMap((page) =>
    localAddresses(htmlOf(page)).map((to) => ({ from: page.path, to })),
  )
  expect(addresses.length).toBeGreaterThan(0)
  expect(addresses.filter(({ to }) => !isServed(to, base))).toEqual([])
})
