import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

const runs = (path: string): boolean =>
  existsSync(path) && spawnSync(path, ['--version'], { timeout: 30_000 }).status === 0

/** The first of these that runs. A name with a slash is a path already. */
function onPath(wanted: readonly string[]): string | null {
  const folders = (process.env.PATH ?? '').split(delimiter)
  const paths = wanted.flatMap((name) =>
    name.includes('/') ? [resolve(name)] : folders.map((folder) => join(folder, name)),
  )
  return paths.find(runs) ?? null
}

/** The one that the set-up fetched where the system has none. */
async function playwrights(): Promise<string | null> {
  try {
    const { chromium } = await import('@playwright/test')
    return runs(chromium.executablePath()) ? chromium.executablePath() : null
  } catch {
    return null
  }
}

/** A Chromium as the browser tests find theirs: named by OPENWORK_BROWSER, on the path, or Playwright's own; else null. */
export async function chromiumPath(): Promise<string | null> {
  const named = process.env.OPENWORK_BROWSER
  return named ? onPath([named]) : (onPath(names) ?? (await playwrights()))
}

/** Prints a page to PDF, with the sizes and margins that its styles name. Gives what went wrong, or null. */
export function printPdf(browser: string, page: string, out: string): string | null {
  const folder = mkdtempSync(join(tmpdir(), 'openwork-handout-'))
  const [html, pdf] = [join(folder, 'handout.html'), resolve(out)]
  try {
    writeFileSync(html, page)
    rmSync(pdf, { force: true })
    const done = spawnSync(
      browser,
      [
        '--headless',
        '--disable-gpu',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        // Chromium's sandbox does not start for root.
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
        `--user-data-dir=${join(folder, 'profile')}`,
        '--no-pdf-header-footer',
        `--print-to-pdf=${pdf}`,
        pathToFileURL(html).href,
      ],
      { encoding: 'utf8', timeout: 180_000 },
    )
    const written = (statSync(pdf, { throwIfNoEntry: false })?.size ?? 0) > 0
    if (done.status === 0 && written) return null
    return done.error?.message ?? `the browser wrote no file (${done.stderr.trim().split('\n').at(-1) ?? ''})`
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
  }
}
