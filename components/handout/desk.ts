import { type KnownPatterns, readClass } from '../../engine/intake/index.ts'
import { type ClassPlan, handoutHtml, handoutOf, minutesOf } from '../../engine/lesson/index.ts'
import { picturesOf } from './addresses.ts'
import { fillFields, readFields } from './fields.ts'
import { find } from './lists.ts'
import { sourcesFor } from './proved.ts'
import { type ClassShelf, classTitle } from './shelf.ts'

/** The builder's page at work: its form, what it keeps, and the class that is open. */
export interface Builder {
  readonly root: HTMLElement
  readonly form: HTMLFormElement
  readonly shelf: ClassShelf
  readonly known: KnownPatterns
  id: string
  plan: ClassPlan
  /** What waits to be kept, since the reader is still typing; 0 where nothing does. */
  waiting: number
  /** Counts the previews, so that a slow one never stands over a newer one. */
  shown: number
}

export const newId = (): string => crypto.randomUUID?.() ?? String(Math.random()).slice(2)

export const say = ({ root }: Builder, words: string): void => {
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

export function showShelf({ root, shelf, id, plan }: Builder): void {
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
export function changed(builder: Builder): void {
  clearTimeout(builder.waiting)
  builder.waiting = 0
  const { plan, problems } = readFields(builder.form)
  builder.plan = plan
  tell(builder, 'This is not on the paper yet:', problems)
  const kept = builder.shelf.keep(builder.id, plan)
  const but = problems.length > 0 ? ', but for what is told here' : ''
  say(builder, kept ? `Kept on this machine${but}.` : 'This browser keeps nothing: save the class as a file.')
  showShelf(builder)
  void preview(builder)
}

/** What was typed a moment ago is kept before anything else happens. */
export function settle(builder: Builder): void {
  if (builder.waiting !== 0) changed(builder)
}

export function open(builder: Builder, id: string, plan: ClassPlan): void {
  builder.id = id
  builder.plan = plan
  builder.shelf.open(id)
  fillFields(builder.form, plan)
  showShelf(builder)
  void preview(builder)
}

/** A class from elsewhere becomes one of the teacher's own; what stood here before stays on the shelf. */
export function take(builder: Builder, text: string, name: string): void {
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
