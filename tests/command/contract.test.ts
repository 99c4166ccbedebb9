/** The outside contract of the command: what other programs rely on. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { main } from '../../engine/command/main.ts'
import { fileOf } from '../support.ts'

const folder = mkdtempSync(join(tmpdir(), 'openwork-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const write = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

async function run(...argv: string[]) {
  let [out, err] = ['', '']
  const status = await main(argv, {
    out: (text) => {
      out += text
    },
    err: (text) => {
      err += text
    },
  })
  return { status, out, err }
}

const eyelets = write(
  'eyelets.yaml',
  fileOf('{ multiple: 6, plus: 1 }', ['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl']),
)
const edged = write(
  'edged.yaml',
  fileOf(
    '{ multiple: 6, plus: 0 }',
    ['*yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl'],
    'edges: { before: k3, after: k3 }\n',
  ),
)
const wrong = write(
  'wrong.yaml',
  fileOf('{ multiple: 6, plus: 1 }', ['k1, *yo, ss k, k1, k2tog, yo, k1; rep from * to end', 'k2']),
)

describe('openwork check', () => {
  it('gives one entry a file, in the order given, and exit 0 only when all are sound', async () => {
    const good = await run('check', '--json', eyelets, edged)
    expect(good.status).toBe(0)
    expect(JSON.parse(good.out).map((entry: { file: string }) => entry.file)).toEqual([eyelets, edged])
    const mixed = await run('check', '--json', eyelets, wrong, join(folder, 'none.yaml'))
    expect(mixed.status).toBe(1)
    expect(JSON.parse(mixed.out).map((entry: { ok: boolean }) => entry.ok)).toEqual([true, false, false])
  })

  it('has the fields of the contract, and counts that include the edges', async () => {
    const [entry] = JSON.parse((await run('check', '--json', edged)).out)
    expect(entry).toMatchObject({
      file: edged,
      ok: true,
      castOn: { multiple: 6, plus: 0 },
      derivedCastOn: { multiple: 6, plus: 0 },
      edges: 6,
      problems: [],
      rows: [
        { row: 1, side: 'RS', before: { perRepeat: 6, plus: 6 }, after: { perRepeat: 6, plus: 6 } },
        { row: 2, side: 'WS', before: { perRepeat: 6, plus: 6 }, after: { perRepeat: 6, plus: 6 } },
      ],
    })
  })

  it('writes problems as file:line:column: error: text, then the row, a caret and what to try', async () => {
    const { out, status } = await run('check', wrong)
    expect(status).toBe(1)
    const lines = out.split('\n')
    expect(lines[0]).toBe(`${wrong}:4:15: error: \`ss k\` is not understood`)
    expect(lines[1]).toContain('k1, *yo, ss k, k1')
    expect(lines[2]?.indexOf('^')).toBe(lines[1]?.indexOf('ss k'))
    expect(lines[3]).toContain('did you mean `ssk`?')
    expect(out).toMatch(
      /wrong\.yaml:5:\d+: error: Row 2 uses 2 of 13 stitches for 2 repeats: 11 are left over/,
    )
  })

  it('has no cast-on and no rows for a file that cannot be read', async () => {
    const [entry] = JSON.parse((await run('check', '--json', join(folder, 'none.yaml'))).out)
    expect(entry).toMatchObject({ ok: false, castOn: null, derivedCastOn: null, rows: [] })
    expect(entry.problems).toHaveLength(1)
    expect(entry.problems[0]).toMatchObject({ severity: 'error', row: null, line: 1, column: 1 })
  })
})

describe('openwork steps', () => {
  it('gives every step of every row with the count after it', async () => {
    const { out, status } = await run('steps', '--repeats', '2', '--json', eyelets)
    expect(status).toBe(0)
    const steps = JSON.parse(out)
    expect(steps).toHaveLength(26)
    expect(steps[1]).toEqual({
      row: 1,
      step: 2,
      stitch: 'yo',
      repeat: 1,
      takes: 0,
      makes: 1,
      left: 12,
      right: 2,
      total: 14,
    })
    expect(steps[13]).toMatchObject({ row: 2, step: 1, stitch: 'p', repeat: null })
  })

  it('tells the problems of an unsound file on standard error, exit 1', async () => {
    for (const argv of [
      ['steps', '--repeats', '2', wrong],
      ['rows', wrong],
      ['chart', wrong],
    ]) {
      const { status, out, err } = await run(...argv)
      expect([status, out]).toEqual([1, ''])
      expect(err).toContain('error: `ss k`')
    }
  })
})

describe('openwork rows --adapt', () => {
  it('prints the adapted rows on standard output and what changed on standard error', async () => {
    const { status, out, err } = await run('rows', '--adapt', 'round', eyelets)
    expect(status).toBe(0)
    expect(out).toBe('Round 1 (RS): *yo, ssk, k1, k2tog, yo, k1; rep from * to end\nRound 2 (RS): knit\n')
    expect(err).toContain('Round 2 was a plain purl row and is a knit round')
    expect(err).toContain('Cast on 6, 12, 18, 24, 30 … stitches for 1, 2, 3, 4, 5 … repeats.')
  })

  it('does a list in its order, also with numbers, and prints closing rows last', async () => {
    const { status, out } = await run(
      'rows',
      '--terms',
      'uk',
      '--adapt',
      'mirror, garter edge 2, border 1',
      eyelets,
    )
    expect(status).toBe(0)
    expect(out.split('\n')).toEqual([
      'Set-up row (WS): k2, k to last 2 sts, k2',
      'Row 1 (RS): k2, *k1, yfwd, ssk, k1, k2tog, yfwd; rep from * to last 3 sts, k1, k2',
      'Row 2 (WS): k2, p to last 2 sts, k2',
      'Closing row (RS): k2, k to last 2 sts, k2',
      '',
    ])
  })

  it('tells the reason on standard error, exit 1, where it cannot be done', async () => {
    const { status, out, err } = await run('rows', '--adapt', 'mirror,wider', eyelets)
    expect([status, out]).toEqual([1, ''])
    expect(err).toContain('there is no rule for its next size')
  })

  it('ends with exit 2 for a name that it does not know, whatever the file', async () => {
    const { status, out, err } = await run('rows', '--adapt', 'round,mirrow', wrong)
    expect([status, out]).toEqual([2, ''])
    expect(err).toContain('did you mean `mirror`?')
  })

  it('leaves the rows as they are without it', async () => {
    const { out, err } = await run('rows', eyelets)
    expect(err).toBe('')
    expect(out.split('\n')[1]).toBe('Row 2 (WS): purl')
  })
})

describe('openwork rows and chart', () => {
  it('prints the rows with their edges in the terms asked for', async () => {
    const { out } = await run('rows', '--terms', 'uk', edged)
    expect(out.split('\n')[0]).toBe(
      'Row 1 (RS): k3, *yfwd, ssk, k1, k2tog, yfwd, k1; rep from * to last 3 sts, k3',
    )
    expect(out.split('\n')[1]).toBe('Row 2 (WS): k3, p to last 3 sts, k3')
  })

  it('draws the chart as one SVG with a cell for each stitch', async () => {
    const { out } = await run('chart', '--repeats', '1', eyelets)
    expect(out).toMatch(/^<svg [\s\S]*<\/svg>\n$/)
    expect(out.match(/data-key="cell-\d+-\d+"/g)).toHaveLength(14)
  })
})

describe('wrong usage', () => {
  it.each([
    [[]],
    [['check']],
    [['steps', eyelets]],
    [['steps', '--repeats', '0', eyelets]],
    [['rows', '--terms', 'xx', eyelets]],
    [['mend', eyelets]],
  ])('%j ends with exit 2 and the usage', async (argv) => {
    const { status, out, err } = await run(...argv)
    expect([status, out]).toEqual([2, ''])
    expect(err).toContain('openwork check')
  })
})
