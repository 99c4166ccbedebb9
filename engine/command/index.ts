/**
 * The command line: `openwork check`, `steps`, `rows`, `chart`. The only folder of the engine that touches files.
 * Exit codes: 0 sound, 1 a problem in a file, 2 wrong usage.
 */
export { main } from './main.ts'
