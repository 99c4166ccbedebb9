import { defineConfig } from '@playwright/test'
import { findBrowser } from '../../site/setup/browser.mjs'
import { root } from '../../site/setup/machine.mjs'
import { address, port } from './support.ts'

const browser = findBrowser()

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  use: {
    baseURL: address,
    launchOptions: {
      ...(browser && { executablePath: browser }),
      // Chromium's sandbox does not start for root.
      chromiumSandbox: process.getuid?.() !== 0,
      args: [
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  // Without a path, Playwright's own Chromium itself, and not its smaller headless shell, which is not set up.
  projects: [
    { name: 'chromium', use: { browserName: 'chromium', ...(!browser && { channel: 'chromium' }) } },
  ],
  webServer: {
    command: `astro preview --ignore-lock --host 127.0.0.1 --port ${port}`,
    cwd: root,
    url: address,
    reuseExistingServer: false,
    timeout: 30_000,
  },
})
