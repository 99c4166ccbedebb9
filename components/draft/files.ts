import type { Draft } from '../../engine/intake/index.ts'
import { titleOf } from './shelf.ts'

/** A file's name from a pattern's: 'Reed Bed' becomes 'reed-bed.yaml'. */
export function fileName(draft: Draft): string {
  const plain = titleOf(draft)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
  return `${plain || 'draft'}.yaml`
}

/** Hands a text to the reader as a file. */
export function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

/** Bytes of the largest file that is opened. */
const largest = 1_000_000

export type FileText = { readonly text: string } | { readonly text: null; readonly why: string }

/** A file's text, if it is one. */
export async function textOf(file: File): Promise<FileText> {
  if (file.size > largest)
    return { text: null, why: `‘${file.name}’ is too large to be a pattern. Is it the right file?` }
  try {
    const bytes = await file.arrayBuffer()
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) }
  } catch {
    return { text: null, why: `‘${file.name}’ cannot be read as text. Save it again as UTF-8.` }
  }
}
