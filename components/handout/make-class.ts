import { type KnownPatterns, parseClassLink, writeClass } from '../../engine/intake/index.ts'
import { emptyClass } from '../../engine/lesson/index.ts'
import { classFileAddress } from './addresses.ts'
import { type Builder, changed, newId, open, say, settle, showShelf, take } from './desk.ts'
import { addEntry, find, moveEntry, showFixed } from './lists.ts'
import { classShelfOn, classTitle } from './shelf.ts'

function saveFile({ plan }: Builder): void {
  const name = classTitle(plan)
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
  const href = URL.createObjectURL(new Blob([writeClass(plan)], { type: 'text/yaml' }))
  const link = Object.assign(document.createElement('a'), { href, download: `${name || 'class'}.yaml` })
  link.click()
  setTimeout(() => URL.revokeObjectURL(href), 10_000)
}

function takeAway(builder: Builder): void {
  if (!confirm(`Take ${classTitle(builder.plan)} away from this machine? A file that you saved stays.`))
    return
  builder.shelf.takeAway(builder.id)
  const [next] = builder.shelf.list()
  open(builder, next?.id ?? newId(), (next && builder.shelf.read(next.id)) ?? emptyClass)
  say(builder, 'Taken away.')
}

function act(builder: Builder, button: HTMLElement): void {
  const { form, plan } = builder
  if (button.dataset.move && moveEntry(form, button)) changed(builder)
  switch (button.dataset.do) {
    case 'add-pattern':
    case 'add-part':
      addEntry(form, button.dataset.do === 'add-part' ? 'parts' : 'patterns')
      return changed(builder)
    case 'new':
      open(builder, newId(), emptyClass)
      return find(form, '[name="title"]').focus()
    case 'copy':
      open(builder, newId(), { ...plan, title: `${classTitle(plan)}, a copy` })
      return changed(builder)
    case 'delete':
      return takeAway(builder)
    case 'print':
      return print()
    case 'save':
      return saveFile(builder)
  }
}

function listen(builder: Builder): void {
  const { root, form, shelf } = builder
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    find(root, '#builder-paper').focus()
  })
  // Enter in a field ends the typing, not the form.
  form.addEventListener('keydown', (event) => {
    if (event.key === 'Enter' && event.target instanceof HTMLInputElement) event.preventDefault()
  })
  form.addEventListener('input', ({ target }) => {
    const entry = target instanceof Element ? target.closest('li') : null
    if (entry) showFixed(entry)
    clearTimeout(builder.waiting)
    builder.waiting = window.setTimeout(() => changed(builder), 200)
  })
  addEventListener('pagehide', () => settle(builder))
  root.addEventListener('click', ({ target }) => {
    const button = target instanceof Element ? target.closest<HTMLElement>('[data-do], [data-move]') : null
    if (!button) return
    settle(builder)
    act(builder, button)
  })
  find<HTMLSelectElement>(root, '[data-which]').addEventListener('change', ({ target }) => {
    const id = (target as HTMLSelectElement).value
    settle(builder)
    const plan = shelf.read(id)
    if (plan) open(builder, id, plan)
  })
  find<HTMLInputElement>(root, '[data-open]').addEventListener('change', async ({ target }) => {
    const input = target as HTMLInputElement
    const file = input.files?.[0]
    settle(builder)
    if (file) take(builder, await file.text(), file.name)
    input.value = ''
  })
  addEventListener('storage', ({ key }) => {
    const plan = shelf.idOf(key) === builder.id ? shelf.read(builder.id) : null
    if (plan) open(builder, builder.id, plan)
    else showShelf(builder)
  })
}

/** A link to a class of the library brings a copy of it. */
async function followLink(builder: Builder): Promise<void> {
  const slug = parseClassLink(location.hash)
  if (!slug) return
  history.replaceState(null, '', location.pathname)
  try {
    const answer = await fetch(classFileAddress(slug))
    if (answer.ok) take(builder, await answer.text(), `${slug}.yaml`)
    else say(builder, `There is no class called ${slug}.`)
  } catch {
    say(builder, `The class ${slug} could not be fetched.`)
  }
}

function storage(): Storage | null {
  try {
    return localStorage
  } catch {
    return null
  }
}

function start(root: HTMLElement): void {
  const shelf = classShelfOn(storage(), Date.now)
  const [first] = shelf.list()
  const id = shelf.last() ?? first?.id ?? newId()
  const options = document.querySelector<HTMLTemplateElement>('template[data-entry="patterns"]')
  const slugs = [...(options?.content.querySelectorAll('option') ?? [])].map(({ value }) => value)
  const known: KnownPatterns = new Map(slugs.map((slug) => [slug, { proved: true }]))
  const form = find<HTMLFormElement>(root, '[data-form]')
  const builder: Builder = { root, form, shelf, known, id, plan: emptyClass, waiting: 0, shown: 0 }
  open(builder, id, shelf.read(id) ?? emptyClass)
  listen(builder)
  root.hidden = false
  void followLink(builder)
}

for (const root of document.querySelectorAll<HTMLElement>('[data-class-builder]')) start(root)
