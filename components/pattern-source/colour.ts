import { createHighlighterCore } from 'shiki/core'
import { createJavaScriptRegexEngine } from 'shiki/engine/javascript'
import { grammar } from './grammar.ts'

/** A stretch of a pattern file with the class that colours it; null for plain text. */
export interface Piece {
  readonly text: string
  readonly className: string | null
}

/** Colours are the page's business: the theme only has to be there. */
const theme = { name: 'bare', settings: [] }

const highlighter = createHighlighterCore({
  langs: [grammar],
  themes: [theme],
  engine: createJavaScriptRegexEngine(),
})

/** The lines of a pattern file in pieces, each with a class of ours: 'stitch', 'count', 'repeat' and so on. */
export async function piecesOf(code: string): Promise<readonly (readonly Piece[])[]> {
  const { tokens } = (await highlighter).codeToTokens(code, {
    lang: 'pattern',
    theme: 'bare',
    includeExplanation: 'scopeName',
  })
  return tokens.map((line) =>
    line.flatMap((token) =>
      (token.explanation ?? []).map(({ content, scopes }) => ({
        text: content,
        className: classOf(scopes.at(-1)?.scopeName ?? ''),
      })),
    ),
  )
}

const classOf = (scope: string): string | null =>
  scope.startsWith('source.') ? null : (scope.split('.')[0] ?? null)
