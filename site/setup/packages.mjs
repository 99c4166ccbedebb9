// Installs what is missing. Quick when nothing is: a stamp in node_modules tells what it was installed from.
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { isRecentNode, modules, outerEnvironment, outputOf, root, run } from './machine.mjs'

const stampFile = join(modules, '.openwork-setup')

/** A problem that the person at the machine has to solve; shown without a stack. */
export class SetupError extends Error {}

/** Installs the locked packages where they are missing or out of date, and proves that the right Node will run them. */
export function setUp() {
  if (!isInstalled()) {
    console.log('Installing the locked packages …')
    install()
  }
  linkCommand()
  return true
}

function isInstalled() {
  return existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp(nodeAtWork())
}

function install() {
  // Said here in full, so that a machine's own settings can leave nothing out.
  const wanted = ['--include=dev', '--include=optional', '--engine-strict=false']
  const quiet = ['--no-audit', '--no-fund', '--loglevel=error']
  if (!run('npm', ['ci', ...wanted, ...quiet], { env: outerEnvironment() })) {
    throw new SetupError('The packages could not be installed: npm says why above.')
  }
  const version = nodeAtWork()
  if (!isRecentNode(version)) throw new SetupError(tooOld(version))
  writeFileSync(stampFile, stamp(version))
}

/** The version of the Node that every tool here is going to be run by. */
function nodeAtWork() {
  return outputOf('node', ['--print', 'process.versions.node']) ?? 'none'
}

/** @param {string} nodeVersion */
function stamp(nodeVersion) {
  const hash = createHash('sha256')
  for (const file of ['package-lock.json', '.npmrc']) hash.update(readFileSync(join(root, file)))
  return `${hash.digest('hex')} node ${nodeVersion} ${process.platform} ${process.arch}\n`
}

/** @param {string} version */
function tooOld(version) {
  return [
    `Openwork needs Node 22.18 or later, and what would run it is Node ${version}.`,
    `The set-up brings a current Node for Linux and macOS, but it does not run on this machine`,
    `(${process.platform} ${process.arch}). Install Node 22.18 or later by hand and start again.`,
  ].join('\n')
}

/** Lets `npx openwork` find the command, as npm links the commands of other packages only. */
function linkCommand() {
  const link = join(modules, '.bin', 'openwork')
  if (!existsSync(link)) symlinkSync('../../engine/command/openwork.mjs', link)
}

/**
 * What the work gives; where a SetupError stops it: null, a plain message and a failing exit code.
 * @template T
 * @param {() => T | Promise<T>} work
 * @returns {Promise<T | null>}
 */
export async function orExplain(work) {
  try {
    return await work()
  } catch (error) {
    if (!(error instanceof SetupError)) throw error
    console.error(`\n${error.message}\n`)
    process.exitCode = 1
    return null
  }
}
