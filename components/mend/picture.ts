import type { Plan, Suspect } from '../../engine/mistakes/index.ts'
import { el } from './dom.ts'

/** A button that draws the fabric with these mistakes in it beside the right one, when it is wanted. */
export function picturesOf(plan: Plan, suspects: readonly Suspect[], id: string): HTMLElement | null {
  const made = suspects.flatMap(({ fittings, section }) => {
    const mistake = fittings[0]?.trace.mistake
    return mistake ? [{ mistake, section }] : []
  })
  if (made.length === 0) return null
  const place = el('div', { class: 'pictures' })
  const button = el('button', { type: 'button' }, 'Show the fabric, right and wrong')
  button.addEventListener('click', async () => {
    button.disabled = true
    const { sideBySide } = await import('./side-by-side.ts')
    const drawn = sideBySide(plan, made, id)
    if (!drawn) return place.replaceChildren(el('p', {}, 'No picture can be drawn of this one.'))
    const one = made.length === 1
    const shown = one ? 'The bracket and the tint show the stretch.' : 'The tint shows both stretches.'
    const bracket = drawn.marked ? ` ${shown}` : ''
    place.replaceChildren(
      figure(drawn.right, 'As it should be.'),
      figure(drawn.wrong, one ? 'With this mistake.' : 'With both mistakes.'),
      el(
        'p',
        { class: 'small' },
        `The right side, blocked.${bracket} An illustration: it shows which loop passes through which, and measures nothing.`,
      ),
    )
    place.tabIndex = -1
    place.focus({ preventScroll: true })
  })
  place.append(button)
  return place
}

function figure(svg: string, caption: string): HTMLElement {
  // What can be scrolled must be within the keyboard's reach.
  const board = el('div', { class: 'board', tabindex: 0, role: 'group', 'aria-label': caption })
  board.innerHTML = svg
  return el('figure', {}, el('figcaption', {}, caption), board)
}
