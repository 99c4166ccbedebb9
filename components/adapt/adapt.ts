import { parseAdaptHash, readMakeOver } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { find } from '../mend/dom.ts'
import { choicesOn } from './choices-view.ts'
import { picturesOn } from './pictures.ts'
import { resultOn } from './result-view.ts'
import { changeAndLead, choose, type Session, show } from './session.ts'

function start(root: HTMLElement): void {
  const pattern = JSON.parse(find(root, 'script[type="application/json"]').textContent ?? '') as Pattern
  const heading = find(root, '#made-steps')
  const see = (): void => {
    heading.scrollIntoView()
    heading.focus({ preventScroll: true })
  }
  const take = (written: string): void =>
    void changeAndLead(session, [...session.steps, readMakeOver(written)])
  const session: Session = {
    root,
    pattern,
    others: new Map(),
    result: resultOn(root, { was: pattern, take }),
    pictures: picturesOn(root, pattern),
    choices: choicesOn(root, (written) => choose(session, written), see),
    steps: [],
    turn: 0,
  }
  find(root, '[data-again]').addEventListener('click', () => void changeAndLead(session, []))
  addEventListener('popstate', () => fromAddress(session))
  open(root)
  fromAddress(session)
}

/** A wide page has room for all choices at once. */
function open(root: HTMLElement): void {
  for (const part of root.querySelectorAll<HTMLElement>('[data-controls]')) part.hidden = false
  if (!matchMedia('(min-width: 64em)').matches) return
  for (const group of root.querySelectorAll<HTMLDetailsElement>('[data-group]')) group.open = true
}

function fromAddress(session: Session): void {
  const id = location.hash.slice(1)
  // A link within the page leads somewhere and asks for nothing.
  if (id !== '' && document.getElementById(id)) return
  const { steps, cut } = parseAdaptHash(location.hash)
  session.choices.clear()
  void show(session, steps, cut)
}

for (const root of document.querySelectorAll<HTMLElement>('[data-adapt]')) start(root)
