import { el } from '../mend/dom.ts'

/** Words in which what stands between backticks is set as it would be written. */
export function spoken(words: string): (Node | string)[] {
  return words.split('`').map((part, i) => (i % 2 === 1 ? el('code', {}, part) : part))
}

/** A button that does something of its own. */
export function pressing(words: string, press: () => void, label?: string): HTMLButtonElement {
  const made = el('button', { type: 'button', ...(label !== undefined && { 'aria-label': label }) }, words)
  made.addEventListener('click', press)
  return made
}
