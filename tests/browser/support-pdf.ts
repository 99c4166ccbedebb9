import { spawnSync } from 'node:child_process'

/** Whether the tools that read a PDF file are there: Debian's package poppler-utils. */
export const readsPdf: boolean = spawnSync('pdftotext', ['-v']).status === 0

export interface PdfWord {
  readonly text: string
  /** Points from the upper left corner. */
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

export interface PdfPage {
  /** Points. */
  readonly width: number
  readonly height: number
  readonly words: readonly PdfWord[]
  /** All its text as it was put there, without any blanks: a line's end is no matter of content. */
  readonly text: string
}

const output = (file: string, ...options: readonly string[]): string => {
  const done = spawnSync('pdftotext', [...options, file, '-'], {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  })
  if (done.status !== 0) throw new Error(`pdftotext cannot read ${file}: ${done.stderr}`)
  return done.stdout
}

export const withoutBlanks = (text: string): string => text.replace(/\s+/g, '')

const numbersIn = (tag: string): number[] => [...tag.matchAll(/="([\d.-]+)"/g)].map(([, n]) => Number(n))

/** The pages of a PDF file with their words and where they stand. */
export function pagesOf(file: string): PdfPage[] {
  const texts = output(file, '-raw').split('\f')
  const pages = output(file, '-bbox').split('<page ').slice(1)
  return pages.map((page, i) => {
    const [width = 0, height = 0] = numbersIn(page.slice(0, page.indexOf('>')))
    const words = [...page.matchAll(/<word ([^>]*)>([^<]*)</g)].map(([, tag = '', text = '']): PdfWord => {
      const [left = 0, top = 0, right = 0, bottom = 0] = numbersIn(tag)
      return { text, left, right, top, bottom }
    })
    return { width, height, words, text: withoutBlanks(texts[i] ?? '') }
  })
}
