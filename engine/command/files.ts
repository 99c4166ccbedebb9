import { readFileSync } from 'node:fs'
import type { Issue, Source } from '../base/index.ts'
import { type Checked, checkPattern } from '../intake/index.ts'
import { decodeText } from './decode.ts'

export interface CheckedFile extends Checked {
  readonly source: Source
}

/** Reads and checks one file. A file that is missing or in another encoding is a problem of that file, never an exception. */
export function checkFile(path: string): CheckedFile {
  const missing = (code: 'file-missing' | 'file-unreadable'): CheckedFile => {
    const issue: Issue = { code, severity: 'error', span: null, row: null, values: {} }
    return { source: { name: path, text: '' }, pattern: null, proof: null, issues: [issue], sound: false }
  }
  let bytes: Uint8Array
  try {
    bytes = readFileSync(path)
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code
    return missing(code === 'EACCES' || code === 'EPERM' ? 'file-unreadable' : 'file-missing')
  }
  const { text, issues } = decodeText(bytes)
  const source = { name: path, text }
  if (issues.length > 0) return { source, pattern: null, proof: null, issues, sound: false }
  return { source, ...checkPattern(source) }
}
