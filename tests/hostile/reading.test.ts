/** The same inputs straight through the reader, without the command: it always ends with an answer and never throws. */
import { describe, expect, it } from 'vitest'
import { lineAndColumn } from '../../engine/base/index.ts'
import { prove } from '../../engine/counts/index.ts'
import { readPattern } from '../../engine/intake/index.ts'
import { eitherWay, harmless, hostile } from './inputs.ts'

const asText = (content: string | Uint8Array): string =>
  typeof content === 'string' ? content : Buffer.from(content).toString('utf8')

describe.each([...hostile, ...harmless, ...eitherWay])('$name', ({ content }) => {
  it('reads to a pattern or to problems whose places lie in the text', () => {
    const text = asText(content)
    const { pattern, issues } = readPattern({ name: 'file.yaml', text })
    expect(pattern !== null || issues.some((issue) => issue.severity === 'error')).toBe(true)
    for (const { span } of issues) {
      if (!span) continue
      expect(span.start).toBeGreaterThanOrEqual(0)
      expect(span.start).toBeLessThanOrEqual(text.length)
      expect(span.end).toBeGreaterThanOrEqual(span.start)
      expect(lineAndColumn(text, span.start).line).toBeLessThanOrEqual(text.split(/\r\n|\n|\r/).length)
    }
    // What could be read can also be asked for its proof, sound or not.
    if (pattern) expect(typeof prove(pattern).sound).toBe('boolean')
  })
})

it('nothing that was read has changed the prototype of all objects', () => {
  for (const { content } of hostile) readPattern({ name: 'file.yaml', text: asText(content) })
  expect(({} as Record<string, unknown>).growing).toBeUndefined()
  expect(({} as Record<string, unknown>).multiple).toBeUndefined()
})
