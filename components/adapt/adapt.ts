import { adaptHash, type MakeOver, parseAdaptHash, readMakeOver } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { find } from '../mend/dom.ts'
import { type Chosen, choicesOn } from './choices-view.ts'
import { fetchPattern } from './others.ts'
import { picturesOn } from './pictures.ts'
import { refusalWords } from './refusal-view.ts'
import { resultOn } from './result-view.ts'
import { type Run, run } from './run.ts'
import { stepItems } from './steps-view.ts'
import { stepWords } from './words.ts'

function start(root: HTMLElement): void {
  const pattern = JSON.parse(find(root, 'script[type="application/json"]').textContent ?? '') as Pattern
  const others = new Map<string, Pattern>()
  let steps: readonly MakeOver[] = []
  let shown = 0

  const status = (words: string): void => {
    find(root, '[data-slot="status"]').textContent = words
  }
  const wordsOf = (step: MakeOver): string => stepWords(step, (slug) => titleOf(root, slug))
  const heading = find(root, '#made-steps')
  const see = (): void => {
    heading.scrollIntoView()
    heading.focus({ preventScroll: true })
  }

  const result = resultOn(root, {
    was: pattern,
    take: (written) => void change([...steps, readMakeOver(written)], true),
  })
  const pictures = picturesOn(root, pattern)
  const choices = choicesOn(root, choose, see)

  async function made(wanted: readonly MakeOver[]): Promise<Run> {
    const wants = wanted.flatMap((step) =>
      step.kind === 'together' && !others.has(step.slug) ? [step.slug] : [],
    )
    for (const slug of new Set(wants)) {
      const other = isListed(root, slug) ? await fetchPattern(slug) : null
      // One that could not be fetched is asked for again the next time.
      if (other) others.set(slug, other)
    }
    return run(pattern, wanted, others)
  }

  /** A choice that cannot be done is told of and not taken; what stands in the list stays as it is. */
  async function choose(written: string): Promise<Chosen> {
    const now = await made(steps)
    if (now.outcomes.some(({ came }) => came !== 'done'))
      return told({ why: 'First take out the step that could not be done: what comes after it waits.' })
    const wanted = [...steps, readMakeOver(written)]
    const outcome = (await made(wanted)).outcomes.at(-1)
    if (outcome?.came === 'done') {
      await change(wanted, false)
      return { step: wanted.length }
    }
    if (outcome?.came === 'refused') return told({ refusal: outcome.refusal, before: outcome.before })
    return told({ why: 'The other pattern could not be fetched. Try again when the network is there.' })
  }

  function told(chosen: Chosen): Chosen {
    if ('why' in chosen) status(chosen.why)
    else if ('refusal' in chosen) status(refusalWords(chosen.refusal))
    return chosen
  }

  /** The address has the steps. `leads`: what had the focus is gone after it. */
  async function change(wanted: readonly MakeOver[], leads: boolean): Promise<void> {
    history.pushState(null, '', `${location.pathname}${location.search}${adaptHash(wanted)}`)
    await show(wanted)
    if (leads) heading.focus({ preventScroll: true })
  }

  async function show(wanted: readonly MakeOver[], cut = false): Promise<void> {
    const turn = ++shown
    steps = wanted
    const { done, outcomes } = await made(wanted)
    // Something newer may have been asked for while another pattern was fetched.
    if (turn !== shown) return
    const list = wanted.map((step, i) => ({
      step,
      words: wordsOf(step),
      outcome: outcomes[i] ?? { came: 'waits' as const },
    }))
    const replies = {
      takeOut: (index: number) => {
        choices.clear()
        void change(steps.toSpliced(index, 1), true)
      },
      instead: (index: number, written: string) =>
        void change(steps.with(index, readMakeOver(written)), true),
    }
    find(root, '[data-slot="steps"]').replaceChildren(...stepItems(list, replies))
    find(root, '[data-slot="none"]').hidden = wanted.length > 0
    find(root, '[data-slot="cut"]').hidden = !cut
    find(root, '[data-again]').hidden = wanted.length < 2
    const taken = list.filter(({ outcome }) => outcome.came === 'done').map(({ words }) => words)
    result.show(done, taken, adaptHash(wanted))
    pictures.show(done.pattern)
    choices.mark(done)
    status(summary(list.length, taken.length, done.counts))
  }

  const fromAddress = (): void => {
    const id = location.hash.slice(1)
    // A link within the page leads somewhere and asks for nothing.
    if (id !== '' && document.getElementById(id)) return
    const { steps: wanted, cut } = parseAdaptHash(location.hash)
    choices.clear()
    void show(wanted, cut)
  }
  find(root, '[data-again]').addEventListener('click', () => {
    choices.clear()
    void change([], true)
  })
  addEventListener('popstate', fromAddress)
  for (const part of root.querySelectorAll<HTMLElement>('[data-controls]')) part.hidden = false
  // A wide page has room for all choices at once.
  if (matchMedia('(min-width: 64em)').matches)
    for (const group of root.querySelectorAll<HTMLDetailsElement>('[data-group]')) group.open = true
  fromAddress()
}

function summary(all: number, done: number, counts: readonly { readonly stitches: number }[]): string {
  const some = all === 0 ? 'The pattern as it stands.' : `${done} of ${all} steps done.`
  const on =
    counts.length === 1
      ? `${counts[0]?.stitches}`
      : `${counts.map(({ stitches }) => stitches).join(', ')} and so on`
  return `${some} Cast on ${on}.`
}

const optionFor = (root: HTMLElement, slug: string): HTMLOptionElement | null =>
  root.querySelector<HTMLOptionElement>(`option[value="${CSS.escape(slug)}"]`)

const isListed = (root: HTMLElement, slug: string): boolean => optionFor(root, slug) !== null

const titleOf = (root: HTMLElement, slug: string): string =>
  optionFor(root, slug)?.textContent?.trim() ?? slug

for (const root of document.querySelectorAll<HTMLElement>('[data-adapt]')) start(root)
