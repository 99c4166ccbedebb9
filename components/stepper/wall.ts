import { placeHash } from '../../engine/intake/index.ts'
import { awakeOn } from './awake.ts'
import type { Spot } from './state.ts'
import { find } from './view.ts'

/** The stepper shown to a room: large and dark, with nothing else on the screen. */
export interface Wall {
  /** Tells the room where to find the stitch that is shown. */
  show(spot: Spot): void
  /** Puts it on the wall or takes it down, at a press. */
  turn(): void
  /** Puts it on the wall where the address asks for it. */
  putIfAsked(): void
}

export function wallOn(root: HTMLElement): Wall {
  const button = find<HTMLElement>(root, '[data-do="wall"]')
  const follow = find<HTMLAnchorElement>(root, '[data-follow]')
  const awake = awakeOn((words) => {
    find(root, '[data-awake]').textContent = words
  })
  let others: HTMLElement[] = []
  let here: Spot | null = null
  const tellAddress = (): void => {
    if (!here || !isUp()) return
    const address = new URL(location.pathname, location.href)
    address.hash = placeHash(here)
    follow.href = address.href
    follow.textContent = address.href.replace(/^https?:\/\//, '')
  }
  const isUp = (): boolean => root.hasAttribute('data-wall')
  const turnTo = (up: boolean): void => {
    if (up === isUp()) return
    root.toggleAttribute('data-wall', up)
    button.textContent = up ? 'Take it off the wall' : 'Show it on the wall'
    if (up) others = besides(root)
    for (const other of others) other.inert = up
    tellAddress()
    if (up) awake.keep()
    else awake.letGo()
    if (!up && document.fullscreenElement) document.exitFullscreen()
    find<HTMLElement>(root, up ? '[data-do="next"]' : '[data-do="wall"]').focus()
  }
  root.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') turnTo(false)
  })
  document.addEventListener('fullscreenchange', () => {
    if (!document.fullscreenElement) turnTo(false)
  })
  return {
    show(spot) {
      here = spot
      tellAddress()
    },
    turn() {
      const up = !isUp()
      turnTo(up)
      // Without full screen it still fills the window.
      if (up) root.requestFullscreen?.().catch(() => {})
    },
    putIfAsked() {
      if (new URLSearchParams(location.search).has('wall')) turnTo(true)
    },
  }
}

/** Everything on the page that neither holds an element nor stands in it. */
function besides(element: HTMLElement): HTMLElement[] {
  const found: HTMLElement[] = []
  for (let here = element; here !== document.body; here = here.parentElement ?? document.body)
    for (const sibling of here.parentElement?.children ?? [])
      if (sibling instanceof HTMLElement && sibling !== here && !sibling.inert) found.push(sibling)
  return found
}
