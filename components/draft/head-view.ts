import type { Draft } from '../../engine/intake/index.ts'
import { find } from '../mend/dom.ts'
import type { Answer, Marked, MendView } from './answer.ts'
import { type OnMend, problemItem } from './problems.ts'

/** Everything of a draft but its rows: its name, the cast-on, how it is worked, what is said beside it. */
export interface HeadPart {
  sync(draft: Draft): void
  show(answer: Answer, mends: readonly MendView[]): void
}

export interface HeadEvents {
  readonly draft: () => Draft
  /** `mark` joins what is typed on in one field to one change. */
  readonly onChange: (draft: Draft, mark: string | null) => void
  readonly onMend: OnMend
}

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement

/** What each field holds of a draft, and the draft with other words in it. */
interface Binding {
  readonly get: (draft: Draft) => string
  readonly put: (draft: Draft, value: string) => Draft
}

const castOn = (name: 'multiple' | 'plus' | 'exactly'): Binding => ({
  get: (draft) => draft.castOn[name],
  put: (draft, value) => ({
    ...draft,
    castOn: { ...draft.castOn, kind: name === 'exactly' ? 'exactly' : 'multiple', [name]: value },
  }),
})

const said = (name: 'yarn' | 'notes'): Binding => ({
  get: (draft) => draft.about[name] ?? '',
  put: (draft, value) => {
    const { [name]: _, ...rest } = draft.about
    return { ...draft, about: value === '' ? rest : { ...rest, [name]: value } }
  },
})

const edge = (name: 'before' | 'after'): Binding => ({
  get: (draft) => draft.edges[name],
  put: (draft, value) => ({ ...draft, edges: { ...draft.edges, [name]: value } }),
})

const either = <K extends 'worked' | 'firstSide' | 'doubleYarnOver' | 'bindOffLeaves'>(
  name: K,
  words: readonly Draft[K][],
): Binding => ({
  get: (draft) => draft[name],
  put: (draft, value) => {
    const chosen = words.find((word) => word === value)
    return chosen === undefined ? draft : { ...draft, [name]: chosen }
  },
})

const bindings: Readonly<Record<string, Binding>> = {
  title: { get: ({ title }) => title, put: (draft, title) => ({ ...draft, title }) },
  kind: {
    get: (draft) => draft.castOn.kind,
    put: (draft, value) => ({
      ...draft,
      castOn: { ...draft.castOn, kind: value === 'exactly' ? 'exactly' : 'multiple' },
    }),
  },
  multiple: castOn('multiple'),
  plus: castOn('plus'),
  exactly: castOn('exactly'),
  worked: either('worked', ['flat', 'round']),
  firstSide: either('firstSide', ['RS', 'WS']),
  doubleYarnOver: either('doubleYarnOver', ['two', 'one']),
  bindOffLeaves: either('bindOffLeaves', ['extra', 'first']),
  growing: {
    get: ({ growing }) => (growing ? 'yes' : 'no'),
    put: (draft, value) => ({ ...draft, growing: value === 'yes' }),
  },
  before: edge('before'),
  after: edge('after'),
  yarn: said('yarn'),
  notes: said('notes'),
  needle: {
    get: (draft) => String(draft.about.needle ?? ''),
    put: (draft, value) => {
      const { needle: _, ...rest } = draft.about
      const size = Number(value.replace(',', '.'))
      return { ...draft, about: size >= 0.5 && size <= 50 ? { ...rest, needle: size } : rest }
    },
  },
}

/** Fields whose words are shown as they are typed, and not as they were understood. */
const asTyped = ['needle']

export function headPart(root: HTMLElement, { draft, onChange, onMend }: HeadEvents): HeadPart {
  const fields = [...root.querySelectorAll<Field>('[data-field]')]
  for (const field of fields) {
    const name = field.dataset.field ?? ''
    const isChoice = field instanceof HTMLSelectElement || field.type === 'radio' || field.type === 'checkbox'
    field.addEventListener(isChoice ? 'change' : 'input', () => {
      const value = field.type === 'checkbox' ? (isTicked(field) ? 'yes' : 'no') : field.value
      const binding = bindings[name]
      if (binding) onChange(binding.put(draft(), value), isChoice ? null : name)
    })
  }
  return {
    sync(now) {
      for (const field of fields) {
        const name = field.dataset.field ?? ''
        const value = bindings[name]?.get(now) ?? ''
        if (field instanceof HTMLInputElement && field.type === 'radio') field.checked = field.value === value
        else if (field instanceof HTMLInputElement && field.type === 'checkbox')
          field.checked = value === 'yes'
        else if (field.value !== value && !(asTyped.includes(name) && field === document.activeElement))
          field.value = value
      }
      const kind = now.castOn.kind
      for (const part of root.querySelectorAll<HTMLElement>('[data-kind]'))
        part.classList.toggle('is-off', part.dataset.kind !== kind)
      find(root, '[data-first-side]').hidden = now.worked === 'round'
    },
    show(answer, mends) {
      showCastOn(root, answer, onMend)
      showPlain(root, answer, mends, onMend)
      for (const name of ['before', 'after'] as const) markField(root, name, answer.marks[name])
    },
  }
}

const isTicked = (field: Field): boolean => field instanceof HTMLInputElement && field.checked

const markField = (root: HTMLElement, name: string, marks: readonly Marked[]): void =>
  find(root, `[data-field="${name}"]`).setAttribute('aria-invalid', String(marks.length > 0))

/** What is stated beside what the rows need. */
function showCastOn(root: HTMLElement, { summary }: Answer, onMend: OnMend): void {
  const { stated, derived, take, rows } = summary
  const line = find(root, '[data-derived]')
  const button = find<HTMLButtonElement>(root, '[data-take]')
  line.textContent = derivedWords(stated, derived, rows)
  const hadFocus = document.activeElement === button
  button.hidden = take === null
  button.onclick = take && (() => onMend(take))
  if (hadFocus && take === null) find(root, '[data-field="multiple"]').focus()
}

function derivedWords(stated: string | null, derived: string | null, rows: number): string {
  if (rows === 0) return 'As soon as there are rows, what they need stands here.'
  if (derived === null) return 'There is no likely number of stitches on which all these rows come out.'
  if (stated === null) return `Nothing is stated. The rows need: ${derived}. They are counted on that.`
  return stated === derived ? 'The rows need just that.' : `The rows need: ${derived}.`
}

/** Problems that stand in no row. */
function showPlain(root: HTMLElement, answer: Answer, mends: readonly MendView[], onMend: OnMend): void {
  for (const part of ['castOn', 'before'] as const) {
    const list = find(root, `[data-problems="${part}"]`)
    const here = answer.problems.flatMap((problem, i) => {
      const own = problem.place.part === part || (part === 'before' && problem.place.part === 'after')
      return own
        ? [
            problemItem(
              problem,
              mends.filter((mend) => mend.problem === i),
              onMend,
            ),
          ]
        : []
    })
    list.replaceChildren(...here)
    list.hidden = here.length === 0
  }
}
