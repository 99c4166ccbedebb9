/** A stretch of a text: half open, in UTF-16 offsets from 0. */
export interface Span {
  readonly start: number
  readonly end: number
}

/** A text with the name it goes by (a path, a link, 'the draft'). */
export interface Source {
  readonly name: string
  readonly text: string
}

export interface LineColumn {
  /** From 1. */
  readonly line: number
  /** From 1, in characters (code points), not in UTF-16 units. */
  readonly column: number
}

/** Where an offset lies: line and column from 1. Offsets past the end count as the end. */
export function lineAndColumn(text: string, offset: number): LineColumn {
  const before = text.slice(0, Math.max(0, offset))
  const lineStart = Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1
  const line = before.split(/\r\n|\n|\r/).length
  return { line, column: [...before.slice(lineStart)].length + 1 }
}

/** Text that is safe to show: characters that steer a terminal or the reading direction become U+FFFD, one for one. */
export const printable = (text: string): string =>
  text.replace(/[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, '\ufffd')

/** The line that a span begins in and a caret line under the span, both cut to `width` characters. */
export function excerpt(text: string, span: Span, width = 100): { line: string; caret: string } {
  const before = text.slice(0, span.start)
  const lineStart = Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1
  const rest = text.slice(lineStart).search(/[\r\n]/)
  const lineEnd = rest < 0 ? text.length : lineStart + rest
  const characters = [...text.slice(lineStart, lineEnd)]
  const from = [...text.slice(lineStart, span.start)].length
  const length = Math.max(1, [...text.slice(span.start, Math.min(span.end, lineEnd))].length)
  const cut = Math.max(0, Math.min(from - Math.floor(width / 2), characters.length - width))
  const shown = printable(
    characters
      .slice(cut, cut + width)
      .join('')
      .replaceAll('\t', ' '),
  )
  const lead = cut > 0 ? '…' : ''
  return {
    line: lead + shown,
    caret: ' '.repeat(from - cut + lead.length) + '^'.repeat(Math.min(length, width - (from - cut))),
  }
}
