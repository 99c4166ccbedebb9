import { type Checked, checkPattern } from '../engine/intake/index.ts'
import { type WorkedPattern, work } from '../engine/needles/index.ts'

/** A pattern file's text from its rows and other keys, every row in quotes. */
export const fileOf = (castOn: string, rows: readonly string[], more = ''): string =>
  `title: Test\ncastOn: ${castOn}\n${more}rows:\n${rows.map((row) => `  - ${JSON.stringify(row)}\n`).join('')}`

export const check = (castOn: string, rows: readonly string[], more = ''): Checked =>
  checkPattern({ name: 'test.yaml', text: fileOf(castOn, rows, more) })

/** A sound pattern, worked; fails the test where it is not sound. */
export function worked(castOn: string, rows: readonly string[], repeats = 2, more = ''): WorkedPattern {
  const { pattern, issues, sound } = check(castOn, rows, more)
  if (!pattern || !sound) throw new Error(`not sound: ${JSON.stringify(issues)}`)
  const done = work(pattern, repeats)
  if (!done.worked) throw new Error(`not worked: ${JSON.stringify(done.issues)}`)
  return done.worked
}
