// `npm start`: sets up what is missing, builds the site, serves it until it is stopped. Options go to the server.
import { spawn } from 'node:child_process'
import { environment, root, run } from './machine.mjs'
import { orExplain, SetupError, setUp } from './packages.mjs'

if (await orExplain(prepare)) serve()

function prepare() {
  setUp()
  if (!run('astro', ['build'])) throw new SetupError('The site could not be built: the reason stands above.')
  return true
}

function serve() {
  // The server's own lock would keep a second one, such as that of the browser tests, from starting.
  const args = ['preview', '--ignore-lock', ...process.argv.slice(2)]
  const server = spawn('astro', args, { cwd: root, env: environment(), stdio: 'inherit' })
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM']))
    process.on(signal, () => server.kill(signal))
  server.on('error', (error) => console.error(error.message))
  server.on('exit', (code) => process.exit(code ?? 0))
}
