export type ListName = 'patterns' | 'parts'

type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement

const names: Readonly<Record<ListName, string>> = { patterns: 'Pattern', parts: 'Part' }

export function find<T extends Element = HTMLElement>(root: ParentNode, selector: string): T {
  const found = root.querySelector<T>(selector)
  if (!found) throw new Error(`the page has no ${selector}`)
  return found
}

const listOf = (form: HTMLFormElement, name: ListName): HTMLElement => find(form, `[data-list="${name}"]`)

export const entriesIn = (form: HTMLFormElement, name: ListName): HTMLElement[] =>
  [...listOf(form, name).children].filter((child) => child instanceof HTMLElement)

/** Numbers the entries: each field and each button says which entry it belongs to. */
function number(form: HTMLFormElement, name: ListName): void {
  const entries = entriesIn(form, name)
  for (const [i, entry] of entries.entries()) {
    for (const field of entry.querySelectorAll<Field>('[data-name]')) {
      const label = field.closest('label')?.querySelector('span')?.textContent?.trim() ?? ''
      field.setAttribute('aria-label', `${names[name]} ${i + 1}: ${label}`)
    }
    for (const button of entry.querySelectorAll<HTMLButtonElement>('[data-move]')) {
      button.setAttribute(
        'aria-label',
        `${button.textContent?.trim()}: ${names[name].toLowerCase()} ${i + 1}`,
      )
      const stays = button.dataset.move === 'earlier' ? i === 0 : i === entries.length - 1
      if (button.dataset.move !== 'out') button.setAttribute('aria-disabled', String(stays))
    }
  }
}

/** A pattern of fixed width has no repeats to choose. */
export function showFixed(entry: Element): void {
  const select = entry.querySelector<HTMLSelectElement>('select[data-name="pattern"]')
  const repeats = entry.querySelector<HTMLInputElement>('[data-name="repeats"]')
  if (!select || !repeats) return
  repeats.readOnly = select.selectedOptions[0]?.dataset.fixed !== undefined
  if (repeats.readOnly) repeats.value = '1'
}

/** A name that is not in the library is kept and shown, so that nothing that a file said is lost. */
function choose(field: Field, value: string): void {
  if (field instanceof HTMLSelectElement && ![...field.options].some((option) => option.value === value))
    field.append(new Option(`${value} (not in this library)`, value))
  field.value = value
}

function added(form: HTMLFormElement, name: ListName, values: Readonly<Record<string, string>>): HTMLElement {
  const template = find<HTMLTemplateElement>(document, `template[data-entry="${name}"]`)
  const entry = find(template.content.cloneNode(true) as DocumentFragment, 'li')
  for (const field of entry.querySelectorAll<Field>('[data-name]')) {
    const value = values[field.dataset.name ?? '']
    if (value !== undefined) choose(field, value)
  }
  listOf(form, name).append(entry)
  showFixed(entry)
  return entry
}

/** Adds an entry, and puts the keyboard into it. */
export function addEntry(form: HTMLFormElement, name: ListName): void {
  const entry = added(form, name, {})
  number(form, name)
  find(entry, '[data-name]').focus()
}

export function fillList(
  form: HTMLFormElement,
  name: ListName,
  all: readonly Readonly<Record<string, string>>[],
): void {
  listOf(form, name).replaceChildren()
  for (const values of all) added(form, name, values)
  number(form, name)
}

/** Moves or takes out the entry of a button. Gives whether anything changed; the keyboard stays where it makes sense. */
export function moveEntry(form: HTMLFormElement, button: HTMLElement): boolean {
  const entry = button.closest('li')
  const list = entry?.parentElement
  if (!entry || !list || button.getAttribute('aria-disabled') === 'true') return false
  const name = list.dataset.list === 'parts' ? 'parts' : 'patterns'
  const [before, after] = [entry.previousElementSibling, entry.nextElementSibling]
  if (button.dataset.move === 'earlier' && before) before.before(entry)
  if (button.dataset.move === 'later' && after) after.after(entry)
  if (button.dataset.move === 'out') entry.remove()
  number(form, name)
  const beside = (after ?? before)?.querySelector<HTMLElement>('[data-move="out"]')
  if (button.dataset.move !== 'out') button.focus()
  else (beside ?? find(form, `[data-do="add-${name === 'parts' ? 'part' : 'pattern'}"]`)).focus()
  return true
}
