import {
  consequenceOf,
  type Diagnosis,
  headline,
  type Mend,
  mendsFor,
  openingWords,
  type Plan,
  pairWords,
  rowName,
  type Suspect,
  suspectWords,
} from '../../engine/mistakes/index.ts'
import { el, find } from './dom.ts'
import { placeWords } from './places.ts'

/** A question that was answered, and the finding before that. */
export interface Answered {
  readonly question: string
  readonly reply: string
  readonly before: Diagnosis
}

export interface Findings {
  readonly diagnosis: Diagnosis
  readonly answered: readonly Answered[]
}

export interface Replies {
  readonly answer: (reply: string, words: string) => void
  readonly takeBack: () => void
}

/** How likely a suspect is beside the others. */
const likelihood = (share: number): string =>
  share >= 0.35 ? 'likely' : share >= 0.1 ? 'possible' : 'less likely'

/** What was found, in one sentence: for the live region. */
export function summaryWords({ diagnosis, answered }: Findings): string {
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
  find(root, '[data-slot="opening"]').replaceChildren(
    ...openingFor(findings).map((words) => el('p', {}, words)),
  )
  find(root, '[data-slot="suspects"]').replaceChildren(...suspectItems(diagnosis))
  find(root, '[data-slot="answered"]').replaceChildren(...answeredItems(answered, replies))
  find(root, '[data-slot="question"]').replaceChildren(...questionFor(diagnosis, replies))
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

function suspectItems({ book, suspects, pairs, ...rest }: Diagnosis): HTMLLIElement[] {
  const diagnosis = { book, suspects, pairs, ...rest }
  const singles = suspects.map((suspect, i) => el('li', {}, suspectCard(diagnosis, suspect, i)))
  return suspects.length > 0
    ? singles
    : pairs.map((pair) => el('li', { class: 'pair' }, el('p', {}, pairWords(book.plan, pair))))
}

function suspectCard(diagnosis: Diagnosis, suspect: Suspect, at: number): HTMLDetailsElement {
  const name = headline(diagnosis.book.plan, suspect)
  // On a narrow page the list comes first, and the question under it stays in reach.
  const opens = at === 0 && (diagnosis.suspects.length === 1 || matchMedia('(min-width: 60em)').matches)
  const card = el(
    'details',
    { open: opens },
    el(
      'summary',
      {},
      el('span', { class: 'name' }, name),
      ' ',
      el('span', { class: 'likely' }, likelihood(suspect.share)),
    ),
  )
  // Mends are worked out loop by loop: only for what is looked at.
  const fill = (): void => {
    if (card.childElementCount === 1) card.append(...detailsOf(diagnosis, suspect, at))
  }
  if (opens) fill()
  card.addEventListener('toggle', fill)
  return card
}

function detailsOf(diagnosis: Diagnosis, suspect: Suspect, at: number): HTMLElement[] {
  const { plan } = diagnosis.book
  const [, ...evidence] = suspectWords(diagnosis, suspect)
  const place = placeWords(plan, suspect)
  const parts = [
    el('p', {}, evidence.join(' ')),
    place && el('p', {}, el('b', {}, 'Look here. '), place),
    ...followsFrom(plan, suspect),
    ...mendsOf(plan, suspect, diagnosis.evidence.step == null),
    picturesOf(plan, suspect, at),
  ]
  return parts.filter((part) => part instanceof HTMLElement)
}

/** What comes of it if it is left, as the engine works it. */
function followsFrom(plan: Plan, suspect: Suspect): HTMLElement[] {
  const mistake = suspect.fittings[0]?.trace.mistake
  const follows = mistake && consequenceOf(plan, mistake)
  if (!follows || follows.knittedRightly) return []
  const eye = new Set(follows.eye)
  const words = follows.words.slice(2).filter((one) => !eye.has(one))
  return words.length === 0 ? [] : [el('p', {}, el('b', {}, 'If it is left. '), words.join(' '))]
}

/** The ways to mend it from where the reader is, in this row and in the next. */
function mendsOf(plan: Plan, suspect: Suspect, rowIsDone: boolean): HTMLElement[] {
  const [first] = suspect.fittings
  if (!first) return []
  const { ago, trace } = first
  const mends = mendsNow(mendsFor(plan, trace.mistake), ago, rowIsDone)
  if (mends.length === 0) return []
  const when = (mend: Mend): string =>
    mend.way === 'leave it' ? 'Or leave it' : mend.later > ago ? 'On the next row' : 'In this row'
  return [
    el('h3', {}, 'How to mend it'),
    el(
      'ul',
      { class: 'mends' },
      ...mends.map((mend) =>
        el(
          'li',
          {},
          el(
            'p',
            {},
            el('b', {}, `${when(mend)}: ${mend.way}`),
            mend.way === 'leave it' ? '' : effectOf(mend),
          ),
          el('ol', { class: 'steps' }, ...mend.steps.map((step) => el('li', {}, step))),
          mend.caution === null ? null : el('p', { class: 'caution' }, mend.caution),
        ),
      ),
    ),
  ]
}

/** What does not depend on how many rows lie above the mistake. */
const atAnyTime: ReadonlySet<Mend['way']> = new Set([
  'leave it',
  'go back to the row',
  'move the marker',
  'cast on again',
])

function mendsNow(mends: readonly Mend[], ago: number, rowIsDone: boolean): readonly Mend[] {
  const latest = Math.max(...mends.map(({ later }) => later))
  const now = (later: number): boolean => later === ago || (rowIsDone && later === ago + 1)
  const found = mends.filter(
    (mend) =>
      mend.way === 'leave it' ||
      now(mend.later) ||
      (ago > latest && mend.later === latest && atAnyTime.has(mend.way)),
  )
  // Ripping back is told once.
  return found.filter(
    (mend, i) => found.findIndex((other) => other.way === mend.way) === i || !atAnyTime.has(mend.way),
  )
}

const effectOf = ({ exact, cosmetic }: Mend): string =>
  exact
    ? ' (the fabric is then right, loop for loop)'
    : cosmetic
      ? ' (mends the count only, not the fabric)'
      : ' (the fabric is then not quite the right one)'

function picturesOf(plan: Plan, suspect: Suspect, at: number): HTMLElement | null {
  const mistake = suspect.fittings[0]?.trace.mistake
  if (!mistake) return null
  const place = el('div', { class: 'pictures' })
  const button = el('button', { type: 'button' }, 'Show the fabric, right and wrong')
  button.addEventListener('click', async () => {
    button.disabled = true
    const { sideBySide } = await import('./side-by-side.ts')
    const pair = sideBySide(plan, mistake, suspect.section, `mend-${at}`)
    if (!pair) return place.replaceChildren(el('p', {}, 'No picture can be drawn of this one.'))
    const bracket = pair.marked ? ' The bracket and the tint show the stretch.' : ''
    place.replaceChildren(
      figure(pair.right, 'As it should be.'),
      figure(pair.wrong, 'With this mistake.'),
      el(
        'p',
        { class: 'small' },
        `The right side, blocked.${bracket} An illustration: it shows which loop passes through which, and measures nothing.`,
      ),
    )
    place.tabIndex = -1
    place.focus({ preventScroll: true })
  })
  place.append(button)
  return place
}

function figure(svg: string, caption: string): HTMLElement {
  // What can be scrolled must be within the keyboard's reach.
  const board = el('div', { class: 'board', tabindex: 0, role: 'group', 'aria-label': caption })
  board.innerHTML = svg
  return el('figure', {}, el('figcaption', {}, caption), board)
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
