import type { Pattern } from '../../engine/pattern/index.ts'
import { find } from '../mend/dom.ts'
import type { ClothAsked, ClothTold } from './cloth.worker.ts'

/** The two fabrics side by side, drawn beside the page. */
export interface Pictures {
  /** The pattern as it is now; null while nothing was done to it. */
  show(pattern: Pattern | null): void
}

/** Milliseconds: a fabric that takes longer is given up. */
const longest = 20_000

/** `was`: the pattern before anything was done to it, which is drawn once. */
export function picturesOn(root: HTMLElement, was: Pattern): Pictures {
  const [before, after] = [find(root, '[data-cloth="was"]'), find(root, '[data-cloth="is"]')]
  const widths = new Map<HTMLElement, number>()
  let stop: (() => void) | null = null
  const put = (place: HTMLElement, told: ClothTold | null): void => {
    place.removeAttribute('aria-busy')
    find(place, '[data-words]').textContent = told
      ? `${told.words}.`
      : 'This piece is too large for a picture.'
    find(place, '.board').innerHTML = told?.svg ?? ''
    widths.set(place, told?.width ?? 0)
    toScale(widths)
  }
  const showAfter = (pattern: Pattern): void => {
    stop?.()
    after.setAttribute('aria-busy', 'true')
    find(after, '[data-words]').textContent = 'Being drawn …'
    stop = ask({ id: 1, name: 'cloth-is', pattern }, (told) => put(after, told))
  }
  let pending: Pattern | null = null
  let isNear = false
  new IntersectionObserver(
    (entries) => {
      if (isNear || !entries.some(({ isIntersecting }) => isIntersecting)) return
      isNear = true
      ask({ id: 0, name: 'cloth-was', pattern: was }, (told) => put(before, told))
      if (pending) showAfter(pending)
    },
    { rootMargin: '100%' },
  ).observe(before)
  return {
    show(pattern) {
      pending = pattern
      after.hidden = pattern === null
      if (pattern === null) {
        stop?.()
        widths.delete(after)
        toScale(widths)
      } else if (isNear) showAfter(pattern)
    },
  }
}

/** A stitch is as large in the one picture as in the other. */
function toScale(widths: ReadonlyMap<HTMLElement, number>): void {
  const most = Math.max(...widths.values())
  for (const [place, width] of widths) {
    const svg = place.querySelector('svg')
    if (svg && width > 0) svg.style.width = `${(100 * width) / most}%`
  }
}

/** Draws a fabric beside the page. Gives back what ends it before its time. */
function ask(asked: ClothAsked, done: (told: ClothTold | null) => void): () => void {
  const worker = new Worker(new URL('./cloth.worker.ts', import.meta.url), { type: 'module' })
  const end = (): void => {
    clearTimeout(guard)
    worker.terminate()
  }
  const give = (told: ClothTold | null): void => {
    end()
    done(told)
  }
  const guard = window.setTimeout(() => give(null), longest)
  worker.addEventListener('message', ({ data }: MessageEvent<{ told: ClothTold | null }>) => give(data.told))
  worker.addEventListener('error', (event) => {
    event.preventDefault()
    give(null)
  })
  worker.postMessage(asked)
  return end
}
