import { type Adapted, adaptOnce, type Refusal } from '../../engine/adapt/index.ts'
import { readMakeOver } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { el, find } from '../mend/dom.ts'
import { refusalParts } from './refusal-view.ts'
import { pressing } from './spoken.ts'

/** What a choice came to: a step of that number, or the reason why not. */
export type Chosen =
  | { readonly step: number }
  | { readonly refusal: Refusal; readonly before: Pattern }
  | { readonly why: string }

export interface Choices {
  /** Marks what the pattern as it is now cannot be made into. */
  mark(done: Adapted): void
  /** Takes away what was told of the last choice. */
  clear(): void
}

/** `choose` is given what was chosen as it is written; `see` leads to what came of it. */
export function choicesOn(
  root: HTMLElement,
  choose: (written: string) => Promise<Chosen>,
  see: () => void,
): Choices {
  const forms = [...root.querySelectorAll<HTMLFormElement>('[data-choice]')]
  const clear = (): void => {
    for (const note of root.querySelectorAll('[data-note]')) note.replaceChildren()
    for (const field of root.querySelectorAll('[aria-invalid]')) field.removeAttribute('aria-invalid')
  }
  for (const form of forms) {
    form.addEventListener('submit', async (event) => {
      event.preventDefault()
      clear()
      const written = writtenIn(form, event.submitter)
      const chosen = written === null ? { why: 'That wants a whole number from 1.' } : await choose(written)
      if (written === null) form.querySelector('input')?.setAttribute('aria-invalid', 'true')
      const note = noteOf(form)
      note.replaceChildren(...noteParts(chosen, see))
      note.scrollIntoView({ block: 'nearest' })
    })
  }
  return { clear, mark: (done) => markSoon(forms, done) }
}

/** What a form asks for as the address has it; null where its number is none. */
function writtenIn(form: HTMLFormElement, submitter: HTMLElement | null): string | null {
  const pattern = form.querySelector('select')
  if (pattern) return `${submitter?.getAttribute('value') ?? 'beside'} ${pattern.value}`
  const name = form.dataset.choice ?? ''
  const number = form.querySelector('input')?.value.normalize('NFKC').trim() ?? ''
  const written = number === '' ? name : `${name} ${number}`
  return readMakeOver(written).kind === 'unknown' ? null : written
}

const noteOf = (form: HTMLFormElement): HTMLElement => find(form.parentElement ?? form, '[data-note]')

function noteParts(chosen: Chosen, see: () => void): HTMLElement[] {
  if ('why' in chosen) return [el('p', {}, chosen.why)]
  if ('refusal' in chosen) return refusalParts(chosen.refusal, chosen.before)
  return [el('p', {}, `Done, as step ${chosen.step}. `), pressing('See what came of it', see)]
}

let marking = 0

/** One choice after the other in idle moments: a press never waits for them. */
function markSoon(forms: readonly HTMLFormElement[], done: Adapted): void {
  clearTimeout(marking)
  const [form, ...rest] = forms
  if (!form) return
  marking = window.setTimeout(() => {
    mark(form, done)
    markSoon(rest, done)
  })
}

function mark(form: HTMLFormElement, { pattern, kept }: Adapted): void {
  const step = readMakeOver(form.dataset.choice ?? '')
  const sign = form.querySelector<HTMLElement>('[data-cannot]')
  if (sign && step.kind === 'request') sign.hidden = adaptOnce(pattern, step.request, kept).ok
}
