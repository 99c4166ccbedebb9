import { el, find } from '../mend/dom.ts'

export interface Way {
  readonly words: string
  readonly go: () => void
}

/** Says something above the draft, with ways on from there. Words of several lines keep their lines. */
export function noticeOn(root: HTMLElement): (words: string | null, ...ways: readonly Way[]) => void {
  const box = find(root, '[data-notice]')
  return (words, ...ways) => {
    const close: Way = { words: 'Close this', go: () => {} }
    const buttons = [...ways, close].map(({ words: name, go }) => {
      const button = el('button', { type: 'button' }, name)
      button.addEventListener('click', () => {
        box.hidden = true
        go()
      })
      return button
    })
    box.hidden = words === null
    box.replaceChildren(
      el('p', {}, words ?? ''),
      el('div', { class: 'ways' }, ...(words === null ? [] : buttons)),
    )
  }
}
