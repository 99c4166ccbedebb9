import { adaptHash, type MakeOver, readMakeOver } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { find } from '../mend/dom.ts'
import type { Choices, Chosen } from './choices-view.ts'
import { fetchPattern } from './others.ts'
import type { Pictures } from './pictures.ts'
import { refusalWords } from './refusal-view.ts'
import type { Result } from './result-view.ts'
import { type Run, run } from './run.ts'
import { type StepShown, stepItems } from './steps-view.ts'
import { stepWords } from './words.ts'

/** One teacher at one pattern. */
export interface Session {
  readonly root: HTMLElement
  readonly pattern: Pattern
  /** The library's other patterns, as far as they were fetched. */
  readonly others: Map<string, Pattern>
  readonly result: Result
  readonly pictures: Pictures
  readonly choices: Choices
  steps: readonly MakeOver[]
  /** Counts what is shown: what took longer than the next is dropped. */
  turn: number
}

/** The steps worked, the patterns that they name fetched before. */
async function made({ root, pattern, others }: Session, wanted: readonly MakeOver[]): Promise<Run> {
  const named = new Set(wanted.flatMap((step) => (step.kind === 'together' ? [step.slug] : [])))
  for (const slug of named) {
    if (others.has(slug) || !optionFor(root, slug)) continue
    const other = await fetchPattern(slug)
    // One that could not be fetched is asked for again the next time.
    if (other) others.set(slug, other)
  }
  return run(pattern, wanted, others)
}

/** A choice that cannot be done is told of and not taken; what stands in the list stays as it is. */
export async function choose(session: Session, written: string): Promise<Chosen> {
  const wanted = [...session.steps, readMakeOver(written)]
  const { outcomes } = await made(session, wanted)
  const outcome = outcomes.at(-1)
  if (outcome?.came === 'done') {
    await change(session, wanted)
    return { step: wanted.length }
  }
  const chosen: Chosen =
    outcome?.came === 'refused'
      ? { refusal: outcome.refusal, before: outcome.before }
      : { why: outcome?.came === 'waits' ? stuckWords : fetchWords }
  tell(session, 'why' in chosen ? chosen.why : refusalWords(chosen.refusal))
  return chosen
}

const stuckWords = 'First take out the step that could not be done: what comes after it waits.'
const fetchWords = 'The other pattern could not be fetched. Try again when the network is there.'

/** Other steps, which the address then has. */
export async function change(session: Session, wanted: readonly MakeOver[]): Promise<void> {
  history.pushState(null, '', `${location.pathname}${location.search}${adaptHash(wanted)}`)
  await show(session, wanted)
}

/** The same where what had the focus is gone afterwards. */
export async function changeAndLead(session: Session, wanted: readonly MakeOver[]): Promise<void> {
  session.choices.clear()
  await change(session, wanted)
  find(session.root, '#made-steps').focus({ preventScroll: true })
}

/** Works the steps and shows what came of them. `cut`: whether the address had more. */
export async function show(session: Session, wanted: readonly MakeOver[], cut = false): Promise<void> {
  const turn = ++session.turn
  session.steps = wanted
  const { done, outcomes } = await made(session, wanted)
  if (turn !== session.turn) return
  const list = wanted.map((step, i) => shownStep(session.root, step, outcomes[i]))
  const taken = list.filter(({ outcome }) => outcome.came === 'done').map(({ words }) => words)
  showSteps(session, list, cut)
  session.result.show(done, taken, adaptHash(wanted))
  session.pictures.show(taken.length > 0 ? done.pattern : null)
  session.choices.mark(done)
  tell(session, summary(list.length, taken.length, done.counts))
}

const shownStep = (
  root: HTMLElement,
  step: MakeOver,
  outcome: StepShown['outcome'] | undefined,
): StepShown => ({
  step,
  words: stepWords(step, (slug) => optionFor(root, slug)?.textContent?.trim() ?? slug),
  outcome: outcome ?? { came: 'waits' },
})

function showSteps(session: Session, list: readonly StepShown[], cut: boolean): void {
  const { root } = session
  const items = stepItems(list, {
    takeOut: (index) => void changeAndLead(session, session.steps.toSpliced(index, 1)),
    instead: (index, written) =>
      void changeAndLead(session, session.steps.with(index, readMakeOver(written))),
  })
  find(root, '[data-slot="steps"]').replaceChildren(...items)
  find(root, '[data-slot="none"]').hidden = list.length > 0
  find(root, '[data-slot="cut"]').hidden = !cut
  find(root, '[data-again]').hidden = list.length < 2
}

function summary(all: number, done: number, counts: readonly { readonly stitches: number }[]): string {
  const some = all === 0 ? 'The pattern as it stands.' : `${done} of ${all} steps done.`
  const numbers = counts.map(({ stitches }) => stitches).join(', ')
  return `${some} Cast on ${numbers}${counts.length > 1 ? ' and so on' : ''}.`
}

const tell = ({ root }: Session, words: string): void => {
  find(root, '[data-slot="status"]').textContent = words
}

/** The choice that names another pattern of the library. */
const optionFor = (root: HTMLElement, slug: string): HTMLOptionElement | null =>
  root.querySelector<HTMLOptionElement>(`option[value="${CSS.escape(slug)}"]`)
