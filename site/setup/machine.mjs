// What the scripts need to know of the machine. Runs on any Node from 20 on and before anything is installed.
import { spawnSync } from 'node:child_process'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../../', import.meta.url))
export const modules = join(root, 'node_modules')
const binFolder = join(modules, '.bin')

/** The first Node that runs TypeScript files as they stand. */
const oldestNode = { major: 22, minor: 18 }

/** Whether a version such as '22.18.0' will do. @param {string} version */
export function isRecentNode(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  return major > oldestNode.major || (major === oldestNode.major && minor >= oldestNode.minor)
}

/**
 * The environment for every tool that we start: what is installed here comes first, the Node that runs it included.
 * @param {Record<string, string>} [extra]
 * @returns {NodeJS.ProcessEnv}
 */
export function environment(extra = {}) {
  const path = [binFolder, process.env.PATH].join(delimiter)
  return { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', PATH: path, ...extra }
}

/** The environment without what is installed here, for the package manager, which may be about to remove it. */
export function outerEnvironment() {
  const path = (process.env.PATH ?? '').split(delimiter).filter((folder) => !folder.startsWith(modules))
  return { ...process.env, PATH: path.join(delimiter) }
}

/**
 * Runs a tool with its output shown as it comes and gives back whether it went well.
 * @param {string} tool
 * @param {readonly string[]} args
 * @param {{ env?: NodeJS.ProcessEnv, timeout?: number }} [options] `timeout` in milliseconds
 */
export function run(tool, args, { env = environment(), timeout } = {}) {
  const done = spawnSync(tool, args, { cwd: root, env, timeout, stdio: ['ignore', 'inherit', 'inherit'] })
  if (done.error) console.error(`${tool}: ${done.error.message}`)
  return done.status === 0
}

/**
 * What a tool prints, or null where it cannot be run or fails.
 * @param {string} tool
 * @param {readonly string[]} args
 */
export function outputOf(tool, args) {
  const done = spawnSync(tool, args, { cwd: root, env: environment(), timeout: 30_000, encoding: 'utf8' })
  return done.status === 0 ? done.stdout.trim() : null
}
