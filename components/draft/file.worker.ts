import { draftOf, problemText, readPattern, writeDraft } from '../../engine/intake/index.ts'
import type { FileAsk, Told } from './answer.ts'
import { cardOf } from './card-of.ts'
import { changeOf } from './change-pattern.ts'

/** Problems of a file for which something in it would not come into the draft. */
const lossy = [
  'row-number-wrong',
  'row-given-twice',
  'row-left-out',
  'row-not-text',
  'row-heading-wrong',
].concat(['rows-not-a-list', 'key-unknown', 'value-wrong', 'edges-wrong'])

/** A pattern file's text as a draft; or its problems in words, each with its line. */
function readFile(name: string, text: string): Extract<Told, { told: 'read' }> {
  const source = { name, text }
  const { pattern, issues } = readPattern(source)
  const remarks = /^\s*#|\s#\s/m.test(text)
  // Rows with problems are what the page is for; a file of which something would get lost is not taken.
  const lost = issues.filter(({ code }) => lossy.includes(code))
  if (pattern && lost.length === 0) return { told: 'read', draft: draftOf(pattern), problems: '', remarks }
  return {
    told: 'read',
    draft: null,
    problems: problemText({ source, issues: pattern ? lost : issues }),
    remarks,
  }
}

function tell(ask: FileAsk): Told {
  if (ask.ask === 'write') return { told: 'write', text: writeDraft(ask.draft) }
  if (ask.ask === 'change') return { told: 'change', change: changeOf(ask.pattern, ask.written) }
  return ask.ask === 'card' ? { told: 'card', card: cardOf(ask.draft) } : readFile(ask.name, ask.text)
}

addEventListener('message', ({ data }: MessageEvent<{ id: number; ask: FileAsk }>) => {
  postMessage({ id: data.id, told: tell(data.ask) })
})
