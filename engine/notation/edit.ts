import type { Issue, Span } from '../base/index.ts'

/** A change to a text: what stands from `start` to `end` gives way to `text`. */
export interface TextEdit extends Span {
  readonly text: string
}

/** A change that can be taken with one press, with the words that say what it does. */
export interface RowSuggestion {
  readonly words: string
  readonly edit: TextEdit
}

/** The text with a change made to it. */
export const edited = (text: string, { start, end, text: fresh }: TextEdit): string =>
  text.slice(0, start) + fresh + text.slice(end)

const suggestion = (words: string, { start, end }: Span, text: string): RowSuggestion => ({
  words,
  edit: { start, end, text },
})

/** A stretch with the comma and the blanks that would be left over when it goes. */
function withComma(text: string, { start, end }: Span): Span {
  const after = /^[,;\s]+/.exec(text.slice(end))?.[0].length ?? 0
  if (after > 0) return { start, end: end + after }
  const before = /[,;\s]+$/.exec(text.slice(0, start))?.[0].length ?? 0
  return { start: start - before, end }
}

/** 'k' in the middle of a row, and 'k1' for it. */
const beginning = (text: string, span: Span): Span => ({
  start: span.start,
  end: span.start + text.slice(span.start, span.end).trimEnd().length,
})

/**
 * What the problem with a row's words suggests, as changes to the row's text. Empty where only the knitter can tell
 * what was meant. Spans are offsets in `text`.
 */
export function rowSuggestions(issue: Issue, text: string): RowSuggestion[] {
  const { code, span, values } = issue
  if (!span) return []
  const said = (name: string): string => String(values[name] ?? '')
  switch (code) {
    case 'unknown-word':
    case 'below-or-back':
      if (said('suggestion') === '') return []
      return [suggestion(`Write ‘${said('suggestion')}’`, span, said('suggestion'))]
    case 'number-missing':
      return [
        suggestion(`Write ‘${said('base')}1’`, beginning(text, span), `${said('base')}1`),
        suggestion(`Write ‘${said('base')} to end’`, beginning(text, span), `${said('base')} to end`),
      ]
    case 'character-unknown':
    case 'bracket-not-open':
      return [suggestion(`Leave ‘${text.slice(span.start, span.end)}’ out`, span, '')]
    case 'number-zero':
    case 'note-not-read':
    case 'bracket-empty':
      return [
        suggestion(
          `Leave ‘${text.slice(span.start, span.end)}’ out`,
          withComma(text, stitchAt(text, span)),
          '',
        ),
      ]
    case 'row-empty':
      return [suggestion('Write ‘knit’', span, 'knit'), suggestion('Write ‘purl’', span, 'purl')]
    default:
      return shapeSuggestions(issue, span, text)
  }
}

/** The whole word that a span lies in: the 0 of k0. */
function stitchAt(text: string, { start, end }: Span): Span {
  const before = /[^\s,;[\]()*]*$/.exec(text.slice(0, start))?.[0].length ?? 0
  return { start: start - before, end }
}

/** Repeats and brackets: where they begin, where they end, how often. */
function shapeSuggestions({ code, values }: Issue, span: Span, text: string): RowSuggestion[] {
  const at = (place: number): Span => ({ start: place, end: place })
  switch (code) {
    case 'repeat-not-closed': {
      const end = text.replace(/[\s,;.*]+$/, '').length
      return [
        suggestion('Add ‘; rep from * to end’', { start: end, end: text.length }, '; rep from * to end'),
      ]
    }
    case 'repeat-without-star': {
      const start = /^\s*/.exec(text)?.[0].length ?? 0
      const first = /^[^,]*,\s*/.exec(text.slice(start))?.[0].length ?? 0
      return [
        suggestion('Put a * before the first stitch', at(start), '*'),
        suggestion('Put a * after the first stitch', at(start + first), '*'),
      ]
    }
    case 'times-missing': {
      const number = /^\s*\S*?\w+/.exec(text.slice(span.end))?.[0].length ?? 0
      return number === 0 ? [] : [suggestion('Add ‘times’', at(span.end + number), ' times')]
    }
    case 'bracket-not-closed': {
      const close = text[span.start] === '(' ? ')' : ']'
      const clause = /\s*[;,]?\s*rep(?:eat)?\b/i.exec(text.slice(span.start))
      const end = clause ? span.start + clause.index : text.trimEnd().length
      return [suggestion(`Close it with ${close}`, at(end), close)]
    }
    case 'repeat-times-more': {
      const often = /\d+\s*(?:times|x)\s*\.?\s*$/i.exec(text.slice(0, span.end))
      const place = often ? { start: often.index, end: span.end } : null
      if (!place) return []
      return [`${values.times} times more`, `${values.times} times in all`].map((words) =>
        suggestion(`Write ‘${words}’`, place, words),
      )
    }
    case 'yarn-forward-ambiguous':
      return [
        suggestion('Write ‘yo’, a loop', span, 'yo'),
        suggestion('Write ‘yarn to front’, no loop', span, 'yarn to front'),
      ]
    case 'slip-purlwise-twists': {
      const words = text.slice(span.start, span.end)
      const plain = words.replace(/\s*(?:p-?wise|purlwise|pw|as if to purl)\b/i, '')
      return plain === words ? [] : [suggestion('Leave ‘purlwise’ out', span, plain)]
    }
    default:
      return []
  }
}
