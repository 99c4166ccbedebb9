// The browser for tests and paper: one that is named, one that is there, Debian's, or Playwright's own.
import { existsSync } from 'node:fs'
import { delimiter, join, resolve } from 'node:path'
import { outputOf, run } from './machine.mjs'
import { SetupError } from './packages.mjs'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

/** The path of the browser named by OPENWORK_BROWSER, else of the first on PATH that really runs, else null. */
export function findBrowser() {
  const named = process.env.OPENWORK_BROWSER
  if (!named) return onPath(names)
  const path = onPath([named])
  if (!path) throw new SetupError(`OPENWORK_BROWSER names ${named}, which does not run here.`)
  return path
}

/** The browser as `findBrowser` finds it; installs one where there is none. */
export async function ensureBrowser() {
  const browser = findBrowser() ?? installFromDebian() ?? (await installFromPlaywright())
  if (browser) return browser
  throw new SetupError(
    [
      'The browser tests need Chromium, and none could be found or installed.',
      'Install the package chromium (as root: apt-get install chromium), or set OPENWORK_BROWSER',
      'to the path of a Chromium or Chrome, and start again.',
    ].join('\n'),
  )
}

/** The path of the first of these that runs. A name with a slash is a path already. @param {readonly string[]} wanted */
function onPath(wanted) {
  const folders = (process.env.PATH ?? '').split(delimiter)
  const paths = wanted.flatMap((name) =>
    name.includes('/') ? [resolve(name)] : folders.map((folder) => join(folder, name)),
  )
  return paths.find((path) => existsSync(path) && runs(path)) ?? null
}

/** Some systems have a stand-in by that name that only tells how to install the real one. @param {string} browser */
function runs(browser) {
  return outputOf(browser, ['--version']) !== null
}

function installFromDebian() {
  if (process.getuid?.() !== 0 || outputOf('apt-get', ['--version']) === null) return null
  console.log("Installing Debian's chromium …")
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  // A list that could not be refreshed may still do.
  run('apt-get', ['-qq', 'update'], { env })
  run('apt-get', ['-qq', 'install', '--yes', '--no-install-recommends', 'chromium'], { env })
  return findBrowser()
}

async function installFromPlaywright() {
  console.log("Getting Playwright's own Chromium …")
  run('playwright', ['install', '--no-shell', 'chromium'], { timeout: 300_000 })
  const { chromium } = await import('@playwright/test')
  const path = chromium.executablePath()
  return existsSync(path) && runs(path) ? path : null
}
