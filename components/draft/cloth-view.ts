import type { Pattern } from '../../engine/pattern/index.ts'
import { find } from '../mend/dom.ts'
import type { ClothTold } from './cloth.worker.ts'

/** The fabric of a draft that comes out, laid out beside the page when a reader is near it. */
export interface ClothPart {
  show(pattern: Pattern | null): void
}

/** Milliseconds: a fabric is laid out once the hands rest; one that takes too long is given up. */
const [rest, longest] = [500, 15_000]

export function clothPart(root: HTMLElement): ClothPart {
  const part = find(root, '[data-cloth]')
  const board = find(part, '.board')
  const words = find(part, '[data-cloth-words]')
  let worker: Worker | null = null
  let wanted: Pattern | null = null
  let [id, timer, guard] = [0, 0, 0]
  let isNear = false
  let isBusy = false

  const say = (text: string): void => {
    words.textContent = text
  }
  const done = (told: ClothTold | null): void => {
    isBusy = false
    clearTimeout(guard)
    part.removeAttribute('aria-busy')
    if (!told) return say('This piece is too large for a picture.')
    board.hidden = false
    board.innerHTML = told.svg
    say(`${told.words}.`)
  }
  const hire = (): Worker => {
    const hired = new Worker(new URL('./cloth.worker.ts', import.meta.url), { type: 'module' })
    hired.addEventListener('message', ({ data }: MessageEvent<{ id: number; told: ClothTold | null }>) => {
      if (data.id === id) done(data.told)
    })
    hired.addEventListener('error', (event) => {
      event.preventDefault()
      stop()
      done(null)
    })
    return hired
  }
  const stop = (): void => {
    worker?.terminate()
    worker = null
    isBusy = false
  }
  const draw = (): void => {
    clearTimeout(timer)
    if (!wanted || !isNear) return
    // A fabric that is still being laid out is out of date.
    if (isBusy) stop()
    worker ??= hire()
    isBusy = true
    part.setAttribute('aria-busy', 'true')
    worker.postMessage({ id: ++id, pattern: wanted, sight: sight() })
    clearTimeout(guard)
    guard = window.setTimeout(() => {
      stop()
      done(null)
    }, longest)
  }
  const sight = (): object => ({
    side: part.querySelector('[value="wrong"]:checked') ? 'wrong' : 'right',
    blocking: part.querySelector('[data-loose]:checked') ? 0 : 1,
    marked: [],
  })
  part.addEventListener('change', draw)
  new IntersectionObserver(
    (entries) => {
      const was = isNear
      isNear = entries.some(({ isIntersecting }) => isIntersecting)
      if (isNear && !was) draw()
    },
    { rootMargin: '50%' },
  ).observe(part)
  return {
    show(pattern) {
      const same = JSON.stringify(pattern) === JSON.stringify(wanted)
      if (same && wanted) return
      clearTimeout(timer)
      if (!pattern) {
        find(part, '[data-cloth-late]').hidden = board.childElementCount === 0
        return
      }
      wanted = pattern
      find(part, '[data-cloth-late]').hidden = true
      timer = window.setTimeout(draw, rest)
    },
  }
}
