import { type KnownPatterns, parseClassLink, readClass, writeClass } from '../../engine/intake/index.ts'
import { type ClassPlan, emptyClass, handoutHtml, handoutOf, minutesOf } from '../../engine/lesson/index.ts'
import { classFileAddress, picturesOf } from './addresses.ts'
import { fillFields, readFields } from './fields.ts'
import { addEntry, find, moveEntry, showFixed } from './lists.ts'
import { sourcesFor } from './proved.ts'
import { type ClassShelf, classShelfOn, classTitle } from './shelf.ts'

interface Builder {
  readonly root: HTMLElement
  readonly form: HTMLFormElement
  readonly shelf: ClassShelf
  readonly known: KnownPatterns
  id: string
  plan: ClassPlan
  /** Counts the previews, so that a slow one never stands over a newer one. */
  shown: number
}

const newId = (): string => crypto.randomUUID?.() ?? String(Math.random()).slice(2)

const say = ({ root }: Builder, words: string): void => {
  find(root, '[data-status]').textContent = words
}

/** What is wrong with a file or with a field; none takes the list away. */
function tell({ root }: Builder, title: string, problems: readonly string[]): void {
  const place = find(root, '[data-problems]')
  place.hidden = problems.length === 0
  find(root, '[data-problems-of]').textContent = title
  const items = problems.map((words) => Object.assign(document.createElement('li'), { textContent: words }))
  find(root, '[data-problem-list]').replaceChildren(...items)
}

function showShelf({ root, shelf, id, plan }: Builder): void {
  const select = find<HTMLSelectElement>(root, '[data-which]')
  const listed = shelf.list()
  const all = listed.some((one) => one.id === id) ? listed : [{ id, title: classTitle(plan) }, ...listed]
  select.replaceChildren(...all.map((one) => new Option(one.title, one.id, false, one.id === id)))
}

async function preview(builder: Builder): Promise<void> {
  const { root, plan } = builder
  builder.shown += 1
  const mine = builder.shown
  const { found, missing } = await sourcesFor(plan)
  if (mine !== builder.shown) return
  const handout = handoutOf(plan, found)
  find(root, '[data-preview]').innerHTML = handoutHtml(handout, picturesOf)
  find(root, '[data-said]').textContent =
    plan.patterns.length === 0
      ? 'Choose a pattern: there is nothing to print yet.'
      : missing.length > 0
        ? `Not on the paper, because it could not be had: ${missing.join(', ')}.`
        : handout.sheets
            .map(({ pattern, castOn, code }) => `${pattern.title}: cast on ${castOn.stitches}, code ${code}`)
            .join('. ')
  find(root, '[data-minutes]').textContent = `${minutesOf(plan)} minutes in all.`
  document.title = `${classTitle(plan)} · Openwork`
}

/** The fields changed: the class is kept and shown. */
function changed(builder: Builder): void {
  const { plan, problems } = readFields(builder.form)
  builder.plan = plan
  tell(builder, 'This is not on the paper yet:', problems)
  const kept = problems.length === 0 && builder.shelf.keep(builder.id, plan)
  if (problems.length > 0) say(builder, 'Kept on this machine as it was before the last change.')
  else say(builder, kept ? 'Kept on this machine.' : 'This browser keeps nothing: save the class as a file.')
  showShelf(builder)
  void preview(builder)
}

function open(builder: Builder, id: string, plan: ClassPlan): void {
  builder.id = id
  builder.plan = plan
  builder.shelf.open(id)
  fillFields(builder.form, plan)
  showShelf(builder)
  void preview(builder)
}

/** A class from elsewhere becomes one of the teacher's own; what stood here before stays on the shelf. */
function take(builder: Builder, text: string, name: string): void {
  const { plan, problems } = readClass({ name, text }, builder.known)
  const sentences = problems.map(
    ({ line, column, message, hint }) =>
      `Line ${line}, column ${column}: ${message}${hint ? `; ${hint}` : ''}.`,
  )
  if (plan) {
    const id = newId()
    builder.shelf.keep(id, plan)
    open(builder, id, plan)
    say(builder, `Opened ${name}.`)
  }
  tell(builder, plan ? `${name} is open, but for this:` : `${name} cannot be opened:`, sentences)
}

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
  let waiting = 0
  form.addEventListener('submit', (event) => event.preventDefault())
  form.addEventListener('input', ({ target }) => {
    const entry = target instanceof Element ? target.closest('li') : null
    if (entry) showFixed(entry)
    clearTimeout(waiting)
    waiting = window.setTimeout(() => changed(builder), 200)
  })
  // Nothing typed is lost when the page goes away before it was kept.
  addEventListener('pagehide', () => {
    if (waiting === 0) return
    const { plan, problems } = readFields(form)
    if (problems.length === 0) shelf.keep(builder.id, plan)
  })
  root.addEventListener('click', ({ target }) => {
    const button = target instanceof Element ? target.closest<HTMLElement>('[data-do], [data-move]') : null
    if (button) act(builder, button)
  })
  find<HTMLSelectElement>(root, '[data-which]').addEventListener('change', ({ target }) => {
    const id = (target as HTMLSelectElement).value
    const plan = shelf.read(id)
    if (plan) open(builder, id, plan)
  })
  find<HTMLInputElement>(root, '[data-open]').addEventListener('change', async ({ target }) => {
    const input = target as HTMLInputElement
    const file = input.files?.[0]
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
  const builder: Builder = { root, form, shelf, known, id, plan: emptyClass, shown: 0 }
  open(builder, id, shelf.read(id) ?? emptyClass)
  listen(builder)
  root.hidden = false
  void followLink(builder)
}

for (const root of document.querySelectorAll<HTMLElement>('[data-class-builder]')) start(root)
