import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export interface Problem {
  readonly severity: 'error' | 'warning'
  readonly code: string
  readonly row: number | null
  readonly line: number
  readonly column: number
  readonly message: string
}
export interface CountedRow {
  readonly row: number
  readonly side: 'RS' | 'WS'
  readonly before: { readonly perRepeat: number; readonly plus: number }
  readonly after: { readonly perRepeat: number; readonly plus: number }
}
/** One file's entry in what `check --json` prints. */
export interface Entry {
  readonly file: string
  readonly ok: boolean
  readonly castOn: { readonly multiple: number; readonly plus: number } | { readonly fixed: number } | null
  readonly derivedCastOn:
    | { readonly multiple: number; readonly plus: number }
    | { readonly fixed: number }
    | null
  readonly edges: number
  readonly rows: readonly CountedRow[]
  readonly problems: readonly Problem[]
}
export interface Run {
  readonly status: number | null
  readonly out: string
  readonly err: string
}

const script = fileURLToPath(new URL('../../engine/command/openwork.mjs', import.meta.url))

/** Runs the command as a user would. A run that does not end by itself has a null status. */
export function openwork(...parts: readonly string[]): Run {
  const done = spawnSync(process.execPath, [script, ...parts], {
    encoding: 'utf8',
    timeout: 60_000,
    maxBuffer: 64 * 1024 * 1024,
  })
  return { status: done.status, out: done.stdout, err: done.stderr }
}

/** `check --json`, with its answer read. Fails where standard output is not one JSON array. */
export function checkJson(...files: readonly string[]): { status: number | null; entries: readonly Entry[] } {
  const run = openwork('check', '--json', ...files)
  const entries: unknown = JSON.parse(run.out)
  if (!Array.isArray(entries)) throw new Error(`no array: ${run.out.slice(0, 200)}`)
  return { status: run.status, entries: entries as Entry[] }
}

/** A folder for files that a test writes; `remove` clears it away. */
export function temporaryFolder(): {
  path: string
  write: (name: string, content: string | Uint8Array) => string
  remove: () => void
} {
  const path = mkdtempSync(join(tmpdir(), 'openwork-'))
  return {
    path,
    write: (name, content) => {
      const file = join(path, name)
      writeFileSync(file, content)
      return file
    },
    remove: () => rmSync(path, { recursive: true, force: true }),
  }
}
