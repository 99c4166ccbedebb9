import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { openwork, temporaryFolder } from '../reference/command.ts'

const folder = temporaryFolder()
afterAll(() => folder.remove())
const out = join(folder.path, 'class.pdf')

describe('openwork handout', () => {
  it.each([
    ['no class', ['--out', out]],
    ['two classes', ['a', 'b', '--out', out]],
    ['no file to write', ['first-lace-evening']],
    ['a paper that nobody sells', ['first-lace-evening', '--paper', 'foolscap', '--out', out]],
    ['a print that there is not', ['first-lace-evening', '--print', 'tiny', '--out', out]],
    ['an option that there is not', ['first-lace-evening', '--colour', '--out', out]],
  ])('asked with %s says how it is used', (_, args) => {
    const { status, err } = openwork('handout', ...args)
    expect(status).toBe(2)
    expect(err).toContain('openwork handout CLASS --paper a4|letter --out FILE.pdf')
  })

  it('says that there is no such class', () => {
    const { status, err } = openwork('handout', 'no-such-class', '--paper', 'a4', '--out', out)
    expect(status).toBe(1)
    expect(err).toContain('there is no such class')
  })

  it('tells every problem of a class file with its place, and prints nothing', () => {
    const file = folder.write('class.yaml', 'title: A\npaper: foolscap\npatterns:\n  - reed-bad\n')
    const { status, err, out: said } = openwork('handout', file, '--paper', 'a4', '--out', out)
    expect(status).toBe(1)
    expect(said).toBe('')
    expect(err).toContain(`${file}:2:8: error: \`paper\` wants a4 or letter`)
    expect(err).toContain(`${file}:4:5: error: there is no pattern \`reed-bad\` in the library`)
    expect(err).toContain('did you mean `reed-bed`?')
    expect(existsSync(out)).toBe(false)
  })

  it('says what to do where there is no browser to print with', () => {
    const script = fileURLToPath(new URL('../../engine/command/openwork.mjs', import.meta.url))
    const args = [script, 'handout', 'first-lace-evening', '--paper', 'a4', '--out', out]
    const env = { ...process.env, OPENWORK_BROWSER: '/nowhere/chromium' }
    const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', env })
    expect(status).toBe(1)
    expect(stderr).toContain('no Chromium was found')
    expect(stderr).toContain('OPENWORK_BROWSER')
    expect(existsSync(out)).toBe(false)
  })
})
