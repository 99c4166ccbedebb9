import { expect, test as plain } from '@playwright/test'

export { expect }

/** Where the built site is served to the tests. */
export const port = Number(process.env.OPENWORK_TEST_PORT ?? 4387)
/** The path that the site was built for, with a slash at both ends. */
export const base = `/${process.env.OPENWORK_BASE ?? ''}/`.replaceAll(/\/+/g, '/')
export const address = `http://127.0.0.1:${port}${base}`

/** A test whose pages may neither report a problem on the console nor ask another host for anything. */
export const test = plain.extend<{ complaints: string[] }>({
  complaints: [
    async ({ context }, use) => {
      const complaints: string[] = []
      context.on('console', (message) => {
        if (['error', 'warning'].includes(message.type())) complaints.push(`console: ${message.text()}`)
      })
      context.on('weberror', (problem) => complaints.push(`script: ${problem.error().message}`))
      context.on('request', (request) => {
        if (isForeign(request.url())) complaints.push(`another host: ${request.url()}`)
      })
      await use(complaints)
      expect(complaints, 'what the pages complained of').toEqual([])
    },
    { auto: true },
  ],
})

/** Whether an address leaves the site. Data and blob addresses stay in the page. */
export function isForeign(url: string): boolean {
  const { protocol, origin } = new URL(url)
  return !['data:', 'blob:'].includes(protocol) && origin !== new URL(address).origin
}
