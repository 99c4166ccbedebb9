import {
  type Clues,
  type NearPlace,
  nearPlaces,
  nearWords,
  noPlaceWords,
  type Plan,
  type PossiblePlace,
  placeWordsAt,
  rowBefore,
  tellApart,
  tellApartWords,
} from '../../engine/mistakes/index.ts'
import { el } from './dom.ts'

/** The places that are left after some answers. */
export interface Narrowed {
  readonly clues: Clues
  readonly places: readonly PossiblePlace[]
  /** What was answered so far. */
  readonly answered: readonly string[]
}

export interface PlaceReplies {
  readonly lessonAt: (place: PossiblePlace) => string
  readonly lead: (place: PossiblePlace) => void
  readonly narrow: (places: readonly PossiblePlace[], answered: string) => void
  readonly takeBack: () => void
}

/** More places than that are not listed. */
const mostListed = 4

/** Lists the places, asks what tells them apart, and gives back the answer in one sentence for the live region. */
export function showPlaces(slot: HTMLElement, plan: Plan, narrowed: Narrowed, replies: PlaceReplies): string {
  const { places, clues } = narrowed
  if (places.length === 0) return showNone(slot, plan, clues, replies)
  const listed = places.slice(0, mostListed)
  const cards = listed.map((place) => el('li', {}, ...placeCard(plan, place, replies)))
  slot.replaceChildren(
    ...questionFor(plan, narrowed, replies),
    ...answeredSoFar(narrowed, replies),
    el('ol', { class: 'possible', 'aria-label': 'Places that fit' }, ...cards),
  )
  return foundWords(narrowed)
}

function foundWords({ places, clues: { last = [] } }: Narrowed): string {
  const agree = places[0]?.agree ?? 0
  const some =
    agree < last.length ? ` Only the newest ${agree} of the ${last.length} stitches that you name agree.` : ''
  if (places.length === 1) return `You are here, and nowhere else.${some}`
  const more = places.length > mostListed ? `, here are the first ${mostListed}` : ''
  return `${places.length} places fit${more}.${some}`
}

/** A place with the words round it, and what to do from there. */
function placeCard(plan: Plan, place: PossiblePlace, replies: PlaceReplies): HTMLElement[] {
  const link = el('a', { href: replies.lessonAt(place) }, 'Go on in the lesson')
  // Where nothing is worked yet there is nothing to be wrong.
  const begun = place.done > 0 || rowBefore(plan.worked, place.row) !== null
  return [
    ...whereabouts(plan, place),
    el('p', { class: 'go' }, begun ? leading('I am here', place, replies) : null, ' ', link),
  ]
}

/** A place at which a mistake would explain the counts. */
function nearCard(plan: Plan, place: NearPlace, replies: PlaceReplies): HTMLElement[] {
  return [
    ...whereabouts(plan, place, 'There should be '),
    el('p', {}, nearWords(place)),
    el('p', { class: 'go' }, leading('Look for a mistake here', place, replies)),
  ]
}

function whereabouts(plan: Plan, place: PossiblePlace, meant = ''): HTMLElement[] {
  const { headline, before, after, onNeedles } = placeWordsAt(plan, place)
  const [made, toCome] = [
    before === '' ? 'Nothing is worked yet' : `… ${before}`,
    after === '' ? 'the row ends here' : `${after} …`,
  ]
  return [
    el('p', {}, el('b', {}, headline)),
    el(
      'p',
      {},
      `${made} `,
      el('b', { class: 'hands', 'aria-hidden': 'true' }, '|'),
      el('span', { class: 'visually-hidden' }, ' Then to come: '),
      ` ${toCome}`,
    ),
    el('p', { class: 'small' }, `${meant}${onNeedles}.`),
  ]
}

function leading(words: string, place: PossiblePlace, { lead }: PlaceReplies): HTMLButtonElement {
  const button = el('button', { type: 'button' }, words)
  button.addEventListener('click', () => lead(place))
  return button
}

function questionFor(plan: Plan, { places }: Narrowed, replies: PlaceReplies): HTMLElement[] {
  if (places.length < 2) return []
  const apart = tellApart(plan.worked, places)
  if (!apart)
    return [el('p', {}, 'To tell them apart, count both needles, or name more of the last stitches.')]
  const { question, choices } = tellApartWords(apart)
  const buttons = choices.map((words, i) => {
    const button = el('button', { type: 'button', 'data-sees': apart.choices[i]?.sees ?? '' }, words)
    button.addEventListener('click', () => replies.narrow(apart.choices[i]?.places ?? [], words))
    return el('li', {}, button)
  })
  return [
    el('p', { class: 'ask-for', id: 'where-question' }, question),
    el('ul', { class: 'choices', 'aria-labelledby': 'where-question' }, ...buttons),
  ]
}

function answeredSoFar({ answered }: Narrowed, { takeBack }: PlaceReplies): HTMLElement[] {
  if (answered.length === 0) return []
  const button = el('button', { type: 'button' }, 'Take your answers back')
  button.addEventListener('click', takeBack)
  return [el('p', {}, `You see: ${answered.join('; ')}. `), el('p', {}, button)]
}

/** Nothing fits: why, and where a mistake would explain it. */
function showNone(slot: HTMLElement, plan: Plan, clues: Clues, replies: PlaceReplies): string {
  const near = nearPlaces(plan.worked, clues)
  const [first = '', ...more] = noPlaceWords(plan, clues)
  const cards = near.map((place) => el('li', {}, ...nearCard(plan, place, replies)))
  slot.replaceChildren(
    ...more.map((words) => el('p', {}, words)),
    ...(cards.length === 0
      ? []
      : [el('p', { class: 'ask-for' }, 'Where that could be'), el('ol', { class: 'possible' }, ...cards)]),
  )
  return first
}
