import { mostRepeats, readWhere } from '../../engine/intake/index.ts'
import { type Casebook, type PossiblePlace, placesFor, withoutTwins } from '../../engine/mistakes/index.ts'
import { find } from './dom.ts'
import { tellUnclear } from './form.ts'
import { type Narrowed, showPlaces } from './where-answer.ts'

/** What the search for a place needs of the page around it. */
export interface Around {
  readonly book: () => Casebook
  /** Leads into the form about mistakes, with the place and the stitches in all, where they are known. */
  readonly lead: (place: Pick<PossiblePlace, 'row' | 'done'>, total: number | null) => void
}

/** Listens to the fields that ask where a reader is. Gives back what forgets the answer. */
export function listenWhere(root: HTMLElement, around: Around): () => void {
  const details = find<HTMLDetailsElement>(root, '[data-where]')
  const form = find<HTMLFormElement>(root, '[data-where-form]')
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    answer(details, form, around)
  })
  details.addEventListener('click', ({ target }) => {
    const key = target instanceof Element ? target.closest<HTMLElement>('[data-add], [data-add-back]') : null
    if (key) press(find<HTMLInputElement>(details, '[name="last"]'), key.dataset.add ?? null, details)
  })
  // A link may lead here: the reader has lost her place in a lesson.
  if (location.hash === '#where') details.open = true
  return () => {
    find(details, '[data-slot="places"]').replaceChildren()
    say(details, '')
  }
}

/** Adds a stitch to those that stand in the field, or takes the newest away. */
function press(field: HTMLInputElement, word: string | null, details: HTMLElement): void {
  const words = field.value.split(',').flatMap((one) => (one.trim() === '' ? [] : [one.trim()]))
  const now = word === null ? words.slice(0, -1) : [...words, word]
  field.value = now.join(', ')
  say(details, now.length === 0 ? 'No stitches.' : `The last stitches: ${field.value}.`)
}

function answer(details: HTMLElement, form: HTMLFormElement, { book, lead }: Around): void {
  const { plan } = book()
  const { worked } = plan
  const told = readWhere(Object.fromEntries(new FormData(form)), plan.rows.length, worked.pattern)
  tellUnclear(details, told.unclear)
  if (!told.clues) {
    find(details, '[data-slot="places"]').replaceChildren()
    return say(details, 'One field needs another look.')
  }
  const { clues } = told
  const places = withoutTwins(worked, placesFor(worked, clues))
  const total = clues.left === undefined || clues.right === undefined ? null : clues.left + clues.right
  const show = (narrowed: Narrowed): void => {
    const heading = showPlaces(find(details, '[data-slot="places"]'), plan, narrowed, {
      lessonAt: (place) => lessonAt(details.closest<HTMLElement>('[data-mend]'), worked.repeats, place),
      lead: (place) => lead(place, total),
      narrow: (left, answered) =>
        show({ ...narrowed, places: left, answered: [...narrowed.answered, answered] }),
      takeBack: () => show({ clues, places, answered: [] }),
    })
    say(details, heading)
  }
  show({ clues, places, answered: [] })
}

/** The lesson at a place; of a piece wider than a lesson shows, only the row. */
function lessonAt(root: HTMLElement | null, repeats: number, { row, done }: PossiblePlace): string {
  const wide = repeats > mostRepeats
  const step = wide ? 0 : done
  return `${root?.dataset.lesson ?? ''}#row=${row}&step=${step}&repeats=${Math.min(repeats, mostRepeats)}`
}

function say(details: HTMLElement, words: string): void {
  find(details, '[data-slot="where-status"]').textContent = words
}
