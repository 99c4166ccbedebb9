import type { Move } from './state.ts'

type Turn = Extract<Move, { do: 'next' | 'back' }>

const arrows: Readonly<Record<string, Turn>> = { ArrowRight: { do: 'next' }, ArrowLeft: { do: 'back' } }

/** Foot pedals send the page keys. They turn the page's screens as well, so they are ours only while the needles are seen. */
const pageKeys: Readonly<Record<string, Turn>> = { PageDown: { do: 'next' }, PageUp: { do: 'back' } }

/** Where these keys have work of their own. */
const fields =
  'input, select, textarea, [contenteditable]:not([contenteditable="false"]), [role="slider"], [role="spinbutton"], [role="textbox"], [role="combobox"], [role="listbox"], [role="radio"], [role="tab"], [role="menuitem"]'

/** What a key asks for, wherever on the page it was pressed; null where it is not ours. */
export function keyMove(event: KeyboardEvent, needles: Element): Turn | null {
  if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return null
  if (event.target instanceof Element && event.target.closest(fields)) return null
  return arrows[event.key] ?? (isSeen(needles) ? pageKeys[event.key] : undefined) ?? null
}

function isSeen(element: Element): boolean {
  const { top, bottom } = element.getBoundingClientRect()
  return bottom > 0 && top < innerHeight
}

/** CSS pixels. Less is a tap. */
const swipeLength = 40

/** Tapping a picture goes on; sliding over it to the left goes on too, to the right goes back. */
export function onTap(element: HTMLElement, act: (move: Turn) => void): void {
  let from: { id: number; x: number; y: number } | null = null
  element.addEventListener('pointerdown', ({ pointerId, clientX, clientY, isPrimary, button }) => {
    from = isPrimary && button === 0 ? { id: pointerId, x: clientX, y: clientY } : null
  })
  element.addEventListener('pointercancel', () => {
    from = null
  })
  element.addEventListener('pointerup', ({ pointerId, clientX, clientY }) => {
    if (from?.id !== pointerId) return
    const [x, y] = [clientX - from.x, clientY - from.y]
    from = null
    if (Math.abs(x) >= swipeLength && Math.abs(x) > Math.abs(y)) act({ do: x < 0 ? 'next' : 'back' })
    else if (Math.hypot(x, y) < swipeLength / 2) act({ do: 'next' })
  })
}
