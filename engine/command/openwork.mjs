#!/usr/bin/env node
// Starts the command. A Node too old for TypeScript files hands over to the one that the set-up installed.
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

if (process.features.typescript) await work()
else handOver()

async function work() {
  quietTypeStripping()
  endWithReader()
  const { main } = await import('./main.ts')
  process.exitCode = await main(process.argv.slice(2))
}

function handOver() {
  const node = fileURLToPath(new URL('../../node_modules/.bin/node', import.meta.url))
  if (!existsSync(node)) {
    console.error(`openwork needs Node 22.18 or later (this is ${process.versions.node}); run: npm run setup`)
    process.exitCode = 2
    return
  }
  const script = fileURLToPath(import.meta.url)
  const done = spawnSync(node, [script, ...process.argv.slice(2)], { stdio: 'inherit' })
  if (done.error) console.error(done.error.message)
  process.exitCode = done.status ?? 1
}

/** Some versions of Node warn on standard error that they read TypeScript; other warnings are still shown. */
function quietTypeStripping() {
  process.removeAllListeners('warning')
  process.on('warning', (warning) => {
    if (warning.name !== 'ExperimentalWarning') console.error(`${warning.name}: ${warning.message}`)
  })
}

/** Whoever reads the output may stop early, as `head` does: that is no error. */
function endWithReader() {
  process.stdout.on('error', (error) => {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EPIPE') throw error
    process.exit()
  })
}
