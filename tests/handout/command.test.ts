import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest'
import { main } from '../../engine/command/index.ts'
import { temporaryFolder } from '../reference/command.ts'

const folder = temporaryFolder()
afterAll(() => folder.remove())
afterEach(() => vi.unstubAllEnvs())
const out = join(folder.path, 'class.pdf')

/** The command as it is asked for in this very process. */
async function asked(...args: readonly string[]): Promise<{ status: number; said: string; err: string }> {
  let [said, err] = ['', '']
  const status = await main(['handout', ...args], {
    out: (text) => {
      said += text
    },
    err: (text) => {
      err += text
    },
  })
  return { status, said, err }
}

describe('openwork handout', () => {
  it.each([
    ['no class', ['--out', out]],
    ['two classes', ['a', 'b', '--out', out]],
    ['no file to write', ['first-lace-evening']],
    ['a paper that nobody sells', ['first-lace-evening', '--paper', 'foolscap', '--out', out]],
    ['a print that there is not', ['first-lace-evening', '--print', 'tiny', '--out', out]],
    ['an option that there is not', ['first-lace-evening', '--colour', '--out', out]],
  ])('asked with %s says how it is used', async (_, args) => {
    const { status, err } = await asked(...args)
    expect(status).toBe(2)
    expect(err).toContain('openwork handout CLASS --paper a4|letter --out FILE.pdf')
  })

  it('says that there is no such class', async () => {
    const { status, err } = await asked('no-such-class', '--paper', 'a4', '--out', out)
    expect(status).toBe(1)
    expect(err).toContain('there is no such class')
  })

  it('tells every problem of a class file with its place, and prints nothing', async () => {
    const file = folder.write('class.yaml', 'title: A\npaper: foolscap\npatterns:\n  - reed-bad\n')
    const { status, err, said } = await asked(file, '--paper', 'a4', '--out', out)
    expect(status).toBe(1)
    expect(said).toBe('')
    expect(err).toContain(`${file}:2:8: error: \`paper\` wants a4 or letter`)
    expect(err).toContain(`${file}:4:5: error: there is no pattern \`reed-bad\` in the library`)
    expect(err).toContain('did you mean `reed-bed`?')
    expect(existsSync(out)).toBe(false)
  })

  it('says what to do where there is no browser to print with', async () => {
    vi.stubEnv('OPENWORK_BROWSER', '/nowhere/chromium')
    const { status, err } = await asked('first-lace-evening', '--paper', 'a4', '--out', out)
    expect(status).toBe(1)
    expect(err).toContain('no Chromium was found')
    expect(err).toContain('OPENWORK_BROWSER')
    expect(existsSync(out)).toBe(false)
  })
})
