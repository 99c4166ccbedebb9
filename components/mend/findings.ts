import {
  type Diagnosis,
  everyRepeatWords,
  headline,
  openingWords,
  type PageCheck,
  pageWords,
  rowName,
  sameInEveryRepeat,
} from '../../engine/mistakes/index.ts'
import type { About } from '../../engine/pattern/index.ts'
import { suspectItems } from './cards.ts'
import { el, find } from './dom.ts'

/** A question that was answered, and the finding before that. */
export interface Answered {
  readonly question: string
  readonly reply: string
  readonly before: Diagnosis
}

export interface Findings {
  readonly diagnosis: Diagnosis
  readonly answered: readonly Answered[]
  /** The reader's copy beside the page of today; null where she told no version. */
  readonly page: PageCheck | null
  /** What the pattern records of itself. */
  readonly about: About
}

export interface Replies {
  readonly answer: (reply: string, words: string) => void
  readonly takeBack: () => void
}

/** What was found, in one sentence: for the live region. */
export function summaryWords(findings: Findings): string {
  const older = findings.page?.is === 'older' ? ' Your copy is older than this page.' : ''
  return `${foundWords(findings)}${older}`
}

function foundWords({ diagnosis, answered }: Findings): string {
  const { right, suspects, pairs, found, book } = diagnosis
  if (right) return 'These counts are just what they should be.'
  const [first] = suspects
  if (!first)
    return pairs.length > 0
      ? 'No single mistake gives these counts; two together do.'
      : 'No mistake that this page knows gives these counts.'
  const many = found === 1 ? 'One suspect' : `${found} suspects`
  const before = answered.at(-1)?.before.found
  const narrowed = before !== undefined && before > found ? `Narrowed from ${before} to ${found}. ` : ''
  return `${narrowed}${many}. First: ${headline(book.plan, first)}.`
}

/** Everything that was found: an opening, the suspects, and the question that tells them apart. */
export function showFindings(root: HTMLElement, findings: Findings, replies: Replies): void {
  const { diagnosis, answered } = findings
  const paragraphs = (words: readonly string[]) => words.map((one) => el('p', {}, one))
  find(root, '[data-slot="opening"]').replaceChildren(...paragraphs(openingFor(findings)))
  find(root, '[data-slot="page"]').replaceChildren(...paragraphs(pageFor(findings)))
  find(root, '[data-slot="suspects"]').replaceChildren(...suspectItems(diagnosis))
  find(root, '[data-slot="answered"]').replaceChildren(...answeredItems(answered, replies))
  find(root, '[data-slot="question"]').replaceChildren(...questionFor(diagnosis, replies))
}

/** Whether the page may be the mistake: what the version tells, and what the same difference in every repeat suggests. */
function pageFor({ diagnosis, page, about }: Findings): string[] {
  const { plan } = diagnosis.book
  const everywhere =
    sameInEveryRepeat(plan, diagnosis.evidence) !== null || diagnosis.suspects[0]?.everywhere === true
  return [
    ...(everywhere ? [everyRepeatWords(about.version ?? null, page)] : []),
    ...(page ? pageWords(plan, page) : []),
  ]
}

function openingFor({ diagnosis }: Findings): string[] {
  const { book, evidence, suspects, found, pairs } = diagnosis
  const words = openingWords(diagnosis)
  if (!book.plan.rows[evidence.row]?.followed)
    words.push(
      `${rowName(book.plan, evidence.row)} is turned in the middle or leaves stitches waiting. Mistakes in such rows are not looked for; their counts above are right all the same.`,
    )
  if (suspects.length > 1)
    words.push(
      found > suspects.length
        ? `The ${suspects.length} likeliest of ${found}. Look before you take anything back.`
        : 'The likeliest first. Look before you take anything back.',
    )
  else if (suspects.length === 1) words.push('One is left. Look before you take anything back.')
  else if (pairs.length > 0) words.push('No single mistake gives these counts, but two together do.')
  return words
}

function answeredItems(answered: readonly Answered[], { takeBack }: Replies): HTMLElement[] {
  if (answered.length === 0) return []
  const button = el('button', { type: 'button', class: 'quiet' }, 'Take the last answer back')
  button.addEventListener('click', takeBack)
  const list = el(
    'ul',
    {},
    ...answered.map(({ question, reply }) => el('li', {}, `${question} `, el('b', {}, reply))),
  )
  return [el('h3', {}, 'You have answered'), list, button]
}

function questionFor({ question, suspects }: Diagnosis, { answer }: Replies): HTMLElement[] {
  if (!question) {
    return suspects.length > 1
      ? [
          el(
            'p',
            {},
            'No further question would tell these apart. Go to each place in turn, the likeliest first.',
          ),
        ]
      : []
  }
  const buttons = question.choices.map(({ id, words }) => {
    const button = el('button', { type: 'button', 'data-reply': id }, words)
    button.addEventListener('click', () => answer(id, words))
    return el('li', {}, button)
  })
  return [
    el('h3', { id: 'mend-question' }, question.words),
    el('ul', { class: 'choices', 'aria-labelledby': 'mend-question' }, ...buttons),
  ]
}
