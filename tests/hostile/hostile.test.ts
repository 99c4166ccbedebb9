/**
 * Hostile and broken files through the command: each is told as a problem with its place, none stops the check of the
 * others, and what is printed stays valid. The contract of `check` is the project's own.
 */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { checkJson, type Entry, openwork, temporaryFolder } from '../reference/command.ts'
import { eitherWay, harmless, hostile } from './inputs.ts'

const folder = temporaryFolder()
afterAll(folder.remove)

const paths = { hostile: [] as string[], harmless: [] as string[], eitherWay: [] as string[] }
let told: { status: number | null; entries: readonly Entry[] }

// One call holds them all: a file that stopped the check would take the others with it.
beforeAll(() => {
  hostile.forEach((input, i) => {
    paths.hostile.push(folder.write(`hostile-${i}.yaml`, input.content))
  })
  harmless.forEach((input, i) => {
    paths.harmless.push(folder.write(`harmless-${i}.yaml`, input.content))
  })
  eitherWay.forEach((input, i) => {
    paths.eitherWay.push(folder.write(`either-way-${i}.yaml`, input.content))
  })
  told = checkJson(...paths.hostile, ...paths.harmless, ...paths.eitherWay)
}, 90_000)

const errorsOf = (entry: Entry | undefined) =>
  entry?.problems.filter((problem) => problem.severity === 'error') ?? []

it('every file has its entry, in the order given, and the exit code is 1', () => {
  expect(told.status).toBe(1)
  expect(told.entries.map((entry) => entry.file)).toEqual([
    ...paths.hostile,
    ...paths.harmless,
    ...paths.eitherWay,
  ])
})

describe.each(hostile.map((input, i) => ({ ...input, i })))('$name', ({ i, line, column, row, says }) => {
  it('is told as an error with its place', () => {
    const entry = told.entries[i]
    const errors = errorsOf(entry)
    expect(entry?.ok).toBe(false)
    expect(errors.length).toBeGreaterThan(0)
    for (const problem of entry?.problems ?? []) {
      expect(Number.isInteger(problem.line) && problem.line >= 1).toBe(true)
      expect(Number.isInteger(problem.column) && problem.column >= 1).toBe(true)
      expect(problem.code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
      expect(problem.message.trim()).not.toBe('')
      expect(problem.message).not.toMatch(/undefined|NaN|\[object|\{\w+\}|Infinity/)
      // A number beyond all counting is no help to a reader; one that was written so may be quoted.
      expect(problem.message.replace(/`[^`]*`/g, '')).not.toMatch(/\de\+\d/)
      expect(problem.message.length).toBeLessThan(2_000)
    }
    if (line !== undefined) expect(errors[0]).toMatchObject({ line })
    if (column !== undefined) expect(errors[0]).toMatchObject({ column })
    if (row !== undefined) expect(errors[0]).toMatchObject({ row })
    if (says !== undefined) expect(errors.map((error) => error.message).join('\n')).toMatch(says)
  })
})

describe.each(harmless.map((input, i) => ({ ...input, i: hostile.length + i })))('$name', ({ i }) => {
  it('is sound, beside all the others', () => {
    expect(told.entries[i]?.problems).toEqual([])
    expect(told.entries[i]?.ok).toBe(true)
    expect(told.entries[i]?.rows.length).toBeGreaterThan(0)
  })
})

describe.each(eitherWay.map((input, i) => ({ ...input, i: hostile.length + harmless.length + i })))(
  '$name',
  ({ i }) => {
    it('is read, or told as a problem', () => {
      const entry = told.entries[i]
      expect(entry?.ok).toBe(errorsOf(entry).length === 0)
    })
  },
)

it('no file reaches the prototype that all objects share', () => {
  expect(told.entries.some((entry) => 'growing' in entry)).toBe(false)
})

// The terminal must not obey a file: no control characters and no turned-round text in what is printed for people.
it('prints no control characters from a file', () => {
  const run = openwork('check', ...paths.hostile, ...paths.eitherWay)
  expect(run.status).toBe(1)
  const printed = `${run.out}${run.err}`
  expect(printed.length).toBeGreaterThan(1_000)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  expect(printed.match(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g) ?? []).toEqual(
    [],
  )
}, 60_000)

describe('alone in the call', () => {
  it.each([
    'empty',
    'alias bomb',
    'a million repeats',
    'a megabyte in one row',
    'utf-16 with its mark',
    'castOn: 1e999',
  ])('%s: exit 1', (name) => {
    const { status, entries } = checkJson(
      paths.hostile[hostile.findIndex((input) => input.name === name)] ?? '',
    )
    expect(status).toBe(1)
    expect(entries.map((entry) => entry.ok)).toEqual([false])
    expect(errorsOf(entries[0]).length).toBeGreaterThan(0)
  })

  it('a sound file: exit 0', () => {
    const { status, entries } = checkJson(...paths.harmless)
    expect(status).toBe(0)
    expect(entries.map((entry) => entry.ok)).toEqual(harmless.map(() => true))
  })
})

describe('paths', () => {
  it.each(['no-such-file.yaml', 'no such folder/file.yaml', '🧶.yaml'])(
    '%s does not exist: an entry with a problem, exit 1',
    (name) => {
      const path = join(folder.path, name)
      const { status, entries } = checkJson(path, paths.harmless[0] ?? '')
      expect(status).toBe(1)
      expect(entries.map((entry) => [entry.file, entry.ok])).toEqual([
        [path, false],
        [paths.harmless[0], true],
      ])
      expect(errorsOf(entries[0]).length).toBeGreaterThan(0)
      expect(entries[0]).toMatchObject({ castOn: null, rows: [] })
    },
  )

  it('a folder is no file: an entry with a problem, exit 1', () => {
    const path = join(folder.path, 'folder.yaml')
    mkdirSync(path)
    const { status, entries } = checkJson(path)
    expect(status).toBe(1)
    expect(entries[0]).toMatchObject({ file: path, ok: false, castOn: null, rows: [] })
    expect(errorsOf(entries[0]).length).toBeGreaterThan(0)
  })

  it('a name with spaces and other scripts is given back as it came', () => {
    const path = folder.write('Ажур два — 🧶.yaml', harmless[0]?.content ?? '')
    expect(checkJson(path).entries.map((entry) => [entry.file, entry.ok])).toEqual([[path, true]])
  })

  it('the same file twice has two entries', () => {
    const path = paths.harmless[0] ?? ''
    expect(checkJson(path, path).entries.map((entry) => entry.file)).toEqual([path, path])
  })
})

describe('wrong usage: exit 2, nothing on standard output', () => {
  it.each([
    [[]],
    [['check']],
    [['check', '--json']],
    [['unravel', 'file.yaml']],
    [['check', '--no-such-option', 'file.yaml']],
    [['steps', '--repeats', 'many', 'file.yaml']],
    [['steps', '--repeats', '0', 'file.yaml']],
    [['steps', '--repeats', '-1', 'file.yaml']],
  ])('openwork %j', (parts) => {
    const run = openwork(...parts)
    expect(run.status).toBe(2)
    expect(run.out).toBe('')
    expect(run.err.trim()).not.toBe('')
  })
})

describe('an unsound file asked for steps, rows or a chart', () => {
  it.each([['steps', '--repeats', '2'], ['rows'], ['chart']])(
    '%s: its problems on standard error, exit 1',
    (...parts) => {
      const path = paths.hostile[hostile.findIndex((input) => input.name === 'ss k')] ?? ''
      const run = openwork(...parts, path)
      expect(run.status).toBe(1)
      expect(run.out).toBe('')
      expect(run.err).toContain('ssk')
    },
  )

  it('a sound file asked for a million repeats ends with a problem', () => {
    const run = openwork('steps', '--repeats', '1000000', paths.harmless[0] ?? '')
    expect([1, 2]).toContain(run.status)
    expect(run.err.trim()).not.toBe('')
  })
})
