import type { Issue } from '../base/index.ts'

/**
 * Bytes of a file as text. UTF-8, with or without its mark, is what pattern files are in; anything else is told with the
 * place of the first byte that does not belong, and read as far as it goes.
 */
export function decodeText(bytes: Uint8Array): { text: string; issues: Issue[] } {
  const tell = (at: number, encoding: string): Issue => ({
    code: 'encoding-unknown',
    severity: 'error',
    span: { start: at, end: at + 1 },
    row: null,
    values: { encoding },
  })
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    return { text: '', issues: [tell(0, 'UTF-16')] }
  }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), issues: [] }
  } catch {
    const text = new TextDecoder('utf-8').decode(bytes)
    return { text, issues: [tell(Math.max(0, text.indexOf('\ufffd')), 'another encoding')] }
  }
}
