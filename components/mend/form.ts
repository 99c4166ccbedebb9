import type { Asked, Unclear } from '../../engine/intake/index.ts'
import { looks, meantCounts, type Plan } from '../../engine/mistakes/index.ts'
import { el, find } from './dom.ts'
import { meantWords, sectionLabel } from './meant.ts'
import { stitchAt } from './places.ts'

/** What the form may hold for a pattern worked over so many repeats. */
export const askedOf = (plan: Plan): Asked => ({
  rows: plan.rows.length,
  stepsIn: (row) => plan.rows[row]?.acts.length ?? 0,
  sections: plan.sections.length,
  looks,
  meant: (row, step) => meantCounts(plan, row, step).sections,
})

/** Where the fields say that the reader is. */
export interface Here {
  readonly row: number
  readonly step: number | null
}

export function hereIn(form: HTMLFormElement): Here {
  const step = find<HTMLSelectElement>(form, '[name="step"]').value
  return {
    row: Number(find<HTMLSelectElement>(form, '[name="row"]').value),
    step: step === 'done' ? null : Number(step),
  }
}

/** The stitches of a row after which a reader may stand, by the stretches that they lie in. */
export function showSteps(form: HTMLFormElement, plan: Plan, row: number, chosen: number | null): void {
  const list = find<HTMLSelectElement>(form, '[name="step"]')
  const acts = plan.rows[row]?.acts ?? []
  const groups: HTMLOptGroupElement[] = []
  let section: number | null = null
  for (const [step, act] of acts.slice(0, -1).entries()) {
    if (act.section !== section) groups.push(el('optgroup', { label: sectionLabel(plan, act.section) }))
    section = act.section
    groups
      .at(-1)
      ?.append(el('option', { value: step + 1 }, `after stitch ${step + 1}, ${stitchAt(plan, row, step)}`))
  }
  list.replaceChildren(el('option', { value: 'done' }, 'The row is done'), ...groups)
  list.value = chosen !== null && chosen >= 1 && chosen < acts.length ? String(chosen) : 'done'
}

/** Whether the count is meant to change here, and what it should be. */
export function showMeant(root: HTMLElement, plan: Plan, { row, step }: Here): void {
  const { changes, headline, sentences, stretches, total } = meantWords(plan, row, step)
  const place = find(root, '[data-meant]')
  place.classList.toggle('changes', changes)
  find(place, '[data-slot="headline"]').textContent = headline
  find(place, '[data-slot="sentences"]').textContent = sentences.join(' ')
  find(place, '[data-slot="stretches"]').replaceChildren(
    ...stretches.map(({ name, before, after }) =>
      el(
        'div',
        {},
        el('dt', {}, name),
        el('dd', {}, el('b', {}, String(after)), before === after ? '' : ` was ${before}`),
      ),
    ),
    el('div', { class: 'total' }, el('dt', {}, 'In all'), el('dd', {}, el('b', {}, String(total)))),
  )
}

/** A field for every stretch between the markers, filled with what is meant. */
export function showCounts(form: HTMLFormElement, plan: Plan, { row, step }: Here): void {
  const { sections, before } = meantCounts(plan, row, step)
  find(form, '[data-counts]').replaceChildren(
    ...sections.map((count, i) =>
      el(
        'div',
        { class: 'field', hidden: count === 0 && (before[i] ?? 0) === 0 },
        el('label', { for: `count-${i}` }, sectionLabel(plan, i)),
        el('input', {
          ...numberField,
          id: `count-${i}`,
          name: `count-${i}`,
          value: count,
          'aria-describedby': `count-${i}-unclear`,
        }),
        el('p', { class: 'unclear', id: `count-${i}-unclear`, hidden: true }),
      ),
    ),
  )
  const where = find<HTMLSelectElement>(form, '[name="section"]')
  const chosen = where.value
  where.replaceChildren(
    el('option', { value: '' }, 'I am not sure, or in many places'),
    ...plan.sections.map((_, i) => el('option', { value: i }, sectionLabel(plan, i))),
  )
  where.value = Number(chosen) < plan.sections.length ? chosen : ''
}

const numberField = { type: 'text', inputmode: 'numeric', autocomplete: 'off', maxlength: 20 } as const

/** Only the fields of the chosen way can be filled in. */
export function showWay(form: HTMLFormElement): void {
  const way = form.querySelector<HTMLInputElement>('[name="way"]:checked')?.value
  for (const part of form.querySelectorAll<HTMLElement>('[data-way]')) part.hidden = part.dataset.way !== way
}

/** Says beside each field what is not understood, and leads to the first. */
export function tellUnclear(form: HTMLElement, unclear: readonly Unclear[]): void {
  for (const place of form.querySelectorAll<HTMLElement>('.unclear')) place.hidden = true
  for (const field of form.querySelectorAll('[aria-invalid]')) field.removeAttribute('aria-invalid')
  for (const { field, words } of unclear) {
    const place = form.querySelector<HTMLElement>(`#${field}-unclear`)
    if (place) {
      place.textContent = words
      place.hidden = false
    }
    form.querySelector(`[name="${field}"]`)?.setAttribute('aria-invalid', 'true')
  }
  const [first] = unclear
  if (first) form.querySelector<HTMLElement>(`[name="${first.field}"]`)?.focus()
}
