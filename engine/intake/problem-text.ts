import { excerpt, type Issue, limits, lineAndColumn, type Source, sentenceOf } from '../base/index.ts'

/** The problems of a file in their order; a very long list is cut and the rest counted. */
export function told(issues: readonly Issue[]): readonly Issue[] {
  if (issues.length <= limits.problems) return issues
  const more: Issue = {
    code: 'too-many-problems',
    severity: 'error',
    span: issues[limits.problems]?.span ?? null,
    row: null,
    values: { more: issues.length - limits.problems },
  }
  return [...issues.slice(0, limits.problems), more]
}

/** A file's problems as text: place and sentence, the row and a caret, what to try. */
export function problemText({
  source,
  issues,
}: {
  readonly source: Source
  readonly issues: readonly Issue[]
}): string {
  return told(issues)
    .map((issue) => {
      const span = issue.span ?? { start: 0, end: 1 }
      const { line, column } = lineAndColumn(source.text, span.start)
      const { message, hint } = sentenceOf(issue)
      const shown = excerpt(source.text, span)
      const lines = [`${source.name}:${line}:${column}: ${issue.severity}: ${message}`]
      if (issue.span && source.text !== '') lines.push(`  ${shown.line}`, `  ${shown.caret}`)
      if (hint !== null) lines.push(`  ${hint}`)
      return `${lines.join('\n')}\n`
    })
    .join('')
}
