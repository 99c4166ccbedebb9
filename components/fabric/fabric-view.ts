import { toSvg } from '../../engine/drawing/index.ts'
import { work } from '../../engine/needles/index.ts'
import { type Pattern, workedAgain } from '../../engine/pattern/index.ts'
import { type Cloth, clothOf } from './cloth.ts'
import { clothDrawing, firstSight, type MarkName, markNames, type Sight } from './picture.ts'
import { blockingWords, extentWords, sightWords } from './words.ts'

/** One picture that a reader turns over and pins out. */
interface Session {
  readonly root: HTMLElement
  readonly times: number
  readonly clothFor: (repeats: number) => Cloth | null
  cloth: Cloth
  sight: Sight
  /** What is drawn of `sight.blocking`, on the way to it. */
  reached: number
}

export function start(root: HTMLElement): void {
  const { repeats = '1', times = '1' } = root.dataset
  const pattern = JSON.parse(find(root, 'script[type="application/json"]').textContent ?? '') as Pattern
  const clothFor = clothsOf(workedAgain(pattern, Number(times)))
  const cloth = clothFor(Number(repeats))
  if (!cloth) return
  const session: Session = { root, times: Number(times), clothFor, cloth, sight: firstSight, reached: 1 }
  listen(session)
  find<HTMLFieldSetElement>(root, '[data-controls]').disabled = false
  // Some browsers keep what was chosen before the page was loaded again.
  read(session)
  if (session.sight.side !== firstSight.side || session.sight.marked.length > 0) show(session)
}

/** Every width that was asked for is worked once. */
function clothsOf(pattern: Pattern): (repeats: number) => Cloth | null {
  const known = new Map<number, Cloth | null>()
  return (repeats) => {
    if (!known.has(repeats)) {
      const { worked } = work(pattern, repeats)
      known.set(repeats, worked && clothOf(worked))
    }
    return known.get(repeats) ?? null
  }
}

function listen(session: Session): void {
  const { root } = session
  const slider = find<HTMLInputElement>(root, '[data-blocking]')
  slider.addEventListener('input', () => {
    const blocking = Number(slider.value) / Number(slider.max)
    slider.setAttribute('aria-valuetext', blockingWords(blocking))
    session.sight = { ...session.sight, blocking }
    tell(session)
    travel(session)
  })
  root.addEventListener('change', ({ target }) => {
    if (target === slider) return
    read(session)
    show(session)
  })
}

function show(session: Session): void {
  draw(session)
  tell(session)
}

/** Sees what the fields say. */
function read(session: Session): void {
  const { root } = session
  const side = root.querySelector('[data-side][value="wrong"]:checked') ? 'wrong' : 'right'
  const ticked = new Set(
    [...root.querySelectorAll<HTMLInputElement>('[data-mark]:checked')].map(({ value }) => value),
  )
  const marked: MarkName[] = markNames.filter((name) => ticked.has(name))
  session.sight = { ...session.sight, side, marked }
  const repeats = root.querySelector<HTMLSelectElement>('[data-repeats-shown]')
  if (repeats) session.cloth = session.clothFor(Number(repeats.value)) ?? session.cloth
}

function draw({ root, cloth, sight, reached }: Session): void {
  const drawing = clothDrawing(cloth, { ...sight, blocking: reached })
  find(root, '[data-picture]').innerHTML = toSvg(drawing, { idPrefix: 'fabric' })
  write(root, 'description', drawing.description)
}

function tell({ root, cloth, sight, times }: Session): void {
  write(root, 'sight', sightWords(sight))
  write(root, 'extent', extentWords(cloth.worked, times))
}

const still = matchMedia('(prefers-reduced-motion: reduce)')

/** Milliseconds in which half of the way is gone. */
const halfTime = 35

const travelling = new WeakSet<Session>()

/** Draws frame after frame until the cloth is where the slider stands: as long on a slow machine as on a fast one. */
function travel(session: Session): void {
  if (travelling.has(session)) return
  travelling.add(session)
  let before = performance.now()
  const frame = (now: number): void => {
    const { blocking } = session.sight
    const left = (session.reached - blocking) * 0.5 ** (Math.max(0, now - before) / halfTime)
    before = now
    session.reached = still.matches || Math.abs(left) < 0.01 ? blocking : blocking + left
    draw(session)
    if (session.reached === blocking) travelling.delete(session)
    else requestAnimationFrame(frame)
  }
  requestAnimationFrame(frame)
}

function write(root: HTMLElement, slot: string, text: string): void {
  find(root, `[data-slot="${slot}"]`).textContent = text
}

function find<T extends Element>(root: ParentNode, selector: string): T {
  const found = root.querySelector<T>(selector)
  if (!found) throw new Error(`the fabric has no ${selector}`)
  return found
}
