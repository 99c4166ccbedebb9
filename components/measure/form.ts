import type { MeasureTexts } from '../../engine/intake/index.ts'

/** What stands in the fields, by their names. Fields that a pattern has no use for are missing. */
export const typedIn = (form: HTMLFormElement): Record<string, unknown> =>
  Object.fromEntries(new FormData(form))

/** Writes texts into the fields, chooses what is chosen, and names the unit in every label. */
export function fill(form: HTMLFormElement, texts: MeasureTexts): void {
  for (const field of form.querySelectorAll<HTMLInputElement>('input[name]')) {
    const text = (texts as Readonly<Record<string, string>>)[field.name] ?? ''
    if (field.type === 'radio') field.checked = field.value === text
    else field.value = text
  }
  for (const place of form.querySelectorAll<HTMLElement>('[data-unit]'))
    place.textContent =
      unitNames[texts.unit === 'in' ? 'in' : 'cm'][place.dataset.unit === 'yarn' ? 'yarn' : 'length']
}

const unitNames = { cm: { length: 'cm', yarn: 'm' }, in: { length: 'in', yarn: 'yd' } } as const

interface Unclear {
  readonly field: string
  readonly words: string
}

/** Says beside each field what is not understood. 'known' adds no new problem: the reader is still typing. */
export function tellUnclear(form: HTMLFormElement, unclear: readonly Unclear[], tell: 'known' | 'all'): void {
  for (const place of form.querySelectorAll<HTMLElement>('.unclear')) {
    const name = place.id.replace(/-unclear$/, '')
    const problem = unclear.find(({ field }) => field === name)
    if (problem && tell === 'known' && place.hidden) continue
    place.hidden = !problem
    place.textContent = problem?.words ?? ''
    const field = form.querySelector(`[name="${name}"]`)
    if (problem) field?.setAttribute('aria-invalid', 'true')
    else field?.removeAttribute('aria-invalid')
  }
}
