import type { Span } from '../base/index.ts'

/** `word` holds letters and digits as written together: 'k2tog', 'rep', '1/1', '3'. */
export interface Token {
  readonly kind: 'word' | 'open' | 'close' | 'star' | 'comma' | 'break' | 'hyphen' | 'times' | 'unknown'
  /** Lower case, as written otherwise. */
  readonly text: string
  readonly span: Span
  /** Whether white space stands before it. */
  readonly spaced: boolean
}

const punctuation: Record<string, Token['kind']> = {
  '(': 'open',
  '[': 'open',
  '{': 'open',
  ')': 'close',
  ']': 'close',
  '}': 'close',
  '*': 'star',
  '＊': 'star',
  '∗': 'star',
  ',': 'comma',
  '，': 'comma',
  '、': 'comma',
  ';': 'break',
  ':': 'break',
  '.': 'break',
  '-': 'hyphen',
  '–': 'hyphen',
  '—': 'hyphen',
  '‑': 'hyphen',
  '×': 'times',
}

/** A word: letters, digits, and inside it a slash, an ampersand or an apostrophe (1/1, w&t). */
const word = /[\p{L}\p{N}](?:[\p{L}\p{N}]|[/&'’](?=[\p{L}\p{N}]))*/uy
const space = /[\s\u00a0\u200b\ufeff]+/uy

/** Cuts a row into tokens. Never fails: a character that no row uses becomes an `unknown` token. Offsets are within `text`. */
export function lex(text: string): Token[] {
  const tokens: Token[] = []
  let at = 0
  let spaced = false
  const push = (kind: Token['kind'], length: number): void => {
    tokens.push({
      kind,
      text: text.slice(at, at + length).toLowerCase(),
      span: { start: at, end: at + length },
      spaced,
    })
    at += length
    spaced = false
  }
  while (at < text.length) {
    space.lastIndex = at
    const gap = space.exec(text)
    if (gap) {
      at += gap[0].length
      spaced = true
      continue
    }
    word.lastIndex = at
    const found = word.exec(text)
    const character = String.fromCodePoint(text.codePointAt(at) ?? 0)
    if (found) push('word', found[0].length)
    else push(punctuation[character] ?? 'unknown', character.length)
  }
  return tokens
}
