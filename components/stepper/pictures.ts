import type { Act } from './acts.ts'

/** Pictures that were read before they are wanted: reading one costs more than putting it into the page. */
interface Ready {
  last: DocumentFragment | null
  moving: DocumentFragment | null
}

const ready = new WeakMap<Act, Ready>()

/** For a stitch that is likely to be shown next. */
export function makeReady(act: Act, withMoving: boolean): void {
  const kept = ready.get(act) ?? { last: null, moving: null }
  kept.last ??= parsed(act.last())
  if (withMoving) kept.moving ??= parsed(act.moving())
  ready.set(act, kept)
}

export const firstPicture = (act: Act): DocumentFragment => parsed(act.first())

/** The stitch as it ends, each time a picture of its own. */
export const lastPicture = (act: Act): DocumentFragment => taken(act, 'last') ?? parsed(act.last())

/** The stitch as it begins, with an element for everything that moves in it; each time a picture of its own. */
export const movingPicture = (act: Act): DocumentFragment => taken(act, 'moving') ?? parsed(act.moving())

function taken(act: Act, which: keyof Ready): DocumentFragment | null {
  const kept = ready.get(act)
  const picture = kept?.[which] ?? null
  if (kept) kept[which] = null
  return picture
}

function parsed(svg: string): DocumentFragment {
  const holder = document.createElement('template')
  holder.innerHTML = svg
  return document.importNode(holder.content, true)
}
