import { type ClassForm, readClassForm } from '../../engine/intake/index.ts'
import type { ClassPlan } from '../../engine/lesson/index.ts'
import { entriesIn, fillList, type ListName } from './lists.ts'

type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement

const texts = ['title', 'guild', 'date', 'place', 'yarn', 'homework'] as const
const choices = ['terms', 'paper', 'print'] as const
const lists: readonly ListName[] = ['patterns', 'parts']

const fieldOf = (form: HTMLFormElement, name: string): Field => form.elements.namedItem(name) as Field

/** What a number's field says; undefined where it is empty, the text itself where that is no number. */
const numberIn = (text: string): unknown => (text.trim() === '' ? undefined : Number(text))

const numbers: readonly string[] = ['repeats', 'minutes']

/** A list's entries as a class file has them. */
const listValue = (form: HTMLFormElement, name: ListName): unknown[] =>
  entriesIn(form, name).map((entry) =>
    Object.fromEntries(
      [...entry.querySelectorAll<Field>('[data-name]')].map(({ dataset, value }) => [
        dataset.name ?? '',
        numbers.includes(dataset.name ?? '') ? (numberIn(value) ?? 0) : value,
      ]),
    ),
  )

/** The class that the form's fields say. */
export function readFields(form: HTMLFormElement): ClassForm {
  const data = new FormData(form)
  const lines = fieldOf(form, 'bring').value.split('\n')
  return readClassForm({
    ...Object.fromEntries([...texts, ...choices].map((name) => [name, data.get(name) ?? ''])),
    needle: numberIn(fieldOf(form, 'needle').value) ?? null,
    bring: lines.map((line) => line.trim()).filter((line) => line !== ''),
    sections: data.getAll('sections'),
    ...Object.fromEntries(lists.map((name) => [name, listValue(form, name)])),
  })
}

/** Puts a class into the form's fields. */
export function fillFields(form: HTMLFormElement, plan: ClassPlan): void {
  for (const name of texts) fieldOf(form, name).value = plan[name]
  fieldOf(form, 'needle').value = plan.needle === null ? '' : String(plan.needle)
  fieldOf(form, 'bring').value = plan.bring.join('\n')
  for (const box of form.querySelectorAll<HTMLInputElement>('[name="sections"]'))
    box.checked = plan.sections.some((section) => section === box.value)
  for (const name of choices)
    for (const one of form.querySelectorAll<HTMLInputElement>(`[name="${name}"]`))
      one.checked = one.value === plan[name]
  fillList(
    form,
    'patterns',
    plan.patterns.map((one) => ({ ...one, repeats: String(one.repeats) })),
  )
  fillList(
    form,
    'parts',
    plan.parts.map((one) => ({ ...one, minutes: String(one.minutes) })),
  )
}
