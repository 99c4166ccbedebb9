import {
  consequenceOf,
  type Diagnosis,
  headline,
  lookWords,
  type Pair,
  type Plan,
  pairWords,
  partsOfPair,
  type Suspect,
  suspectWords,
} from '../../engine/mistakes/index.ts'
import { el } from './dom.ts'
import { mendsOf } from './mend-list.ts'
import { picturesOf } from './picture.ts'
import { placeWords } from './places.ts'

/** How likely a suspect is beside the others. */
const likelihood = (share: number): string =>
  share >= 0.35 ? 'likely' : share >= 0.1 ? 'possible' : 'less likely'

/** The suspects, or where no single mistake explains it the pairs, as list items. */
export function suspectItems(diagnosis: Diagnosis): HTMLLIElement[] {
  const { suspects, pairs } = diagnosis
  const cards =
    suspects.length > 0
      ? suspects.map((suspect, i) => suspectCard(diagnosis, suspect, i))
      : pairs.map((pair, i) => pairCard(diagnosis, pair, i))
  return cards.map((card) => el('li', {}, card))
}

function suspectCard(diagnosis: Diagnosis, suspect: Suspect, at: number): HTMLDetailsElement {
  const { suspects, book } = diagnosis
  const likely = el('span', { class: 'likely' }, likelihood(suspect.share))
  return card(headline(book.plan, suspect), likely, opens(at, suspects.length), () =>
    detailsOf(diagnosis, suspect, at),
  )
}

function pairCard(diagnosis: Diagnosis, pair: Pair, at: number): HTMLDetailsElement {
  const { book, pairs } = diagnosis
  return card(pairWords(book.plan, pair), null, opens(at, pairs.length), () =>
    detailsOfPair(diagnosis, pair, at),
  )
}

/** On a narrow page the list comes first, and the question under it stays in reach. */
const opens = (at: number, many: number): boolean =>
  at === 0 && (many === 1 || matchMedia('(min-width: 60em)').matches)

function card(
  name: string,
  beside: HTMLElement | null,
  open: boolean,
  fill: () => readonly HTMLElement[],
): HTMLDetailsElement {
  const title = el('span', { class: 'name' }, name)
  const made = el('details', { open }, el('summary', {}, title, beside && ' ', beside))
  // Mends are worked out loop by loop: only for what is looked at.
  const filled = (): void => {
    if (made.open && made.childElementCount === 1) made.append(...fill())
  }
  filled()
  made.addEventListener('toggle', filled)
  return made
}

function detailsOf(diagnosis: Diagnosis, suspect: Suspect, at: number): HTMLElement[] {
  const { plan } = diagnosis.book
  const [, ...evidence] = suspectWords(diagnosis, suspect)
  const mends = mendsOf(plan, suspect, {
    rowIsDone: diagnosis.evidence.step == null,
    what: 'the fabric',
  })
  const parts = [
    el('p', {}, evidence.join(' ')),
    lookHere(plan, suspect),
    ...followsFrom(plan, suspect),
    mends.length > 0 ? el('h3', {}, 'How to mend it') : null,
    ...mends,
    picturesOf(plan, [suspect], `mend-${at}`),
  ]
  return parts.filter((part) => part !== null)
}

/** Both mistakes of a pair, each with its own mends. */
function detailsOfPair({ book, evidence }: Diagnosis, pair: Pair, at: number): HTMLElement[] {
  const { plan } = book
  const both = partsOfPair(book, evidence, pair)
  const parts = [
    el(
      'p',
      {},
      'Mend one after the other, and count again in between. Each is told here as if it were the only one.',
    ),
    ...both.flatMap((suspect, i) => [
      el('h3', {}, `${headline(plan, suspect)}.`),
      el('p', {}, suspect.looks.map((look) => lookWords[look]).join(' ')),
      lookHere(plan, suspect),
      ...mendsOf(plan, suspect, {
        rowIsDone: evidence.step == null,
        what: 'this one',
        // Ripping back mends both, and is told once.
        without: i < both.length - 1 ? 'go back to the row' : null,
      }),
    ]),
    picturesOf(plan, both, `pair-${at}`),
  ]
  return parts.flatMap((part) => (part === null || part.textContent === '' ? [] : [part]))
}

function lookHere(plan: Plan, suspect: Suspect): HTMLElement | null {
  const words = placeWords(plan, suspect)
  return words === null ? null : el('p', {}, el('b', {}, 'Look here. '), words)
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
