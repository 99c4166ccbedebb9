import { type Drawing, toSvg } from '../../engine/drawing/index.ts'
import { placeHash } from '../../engine/intake/index.ts'
import type { Lesson } from '../../engine/lesson/index.ts'
import type { Hold } from '../../engine/stitches/index.ts'
import { actOf } from './acts.ts'
import { chartHere, chartOfLesson, withMarks } from './chart-here.ts'
import { type Change, isStill, type Place, type Stage, stageOn } from './motion.ts'
import { makeReady } from './pictures.ts'
import { remembered } from './remembered.ts'
import { slotsAt } from './slots.ts'
import { beside, isFirst, isLast, type Spot } from './state.ts'

/** Everything that is read from outside before it is shown. */
export interface Shown {
  readonly lesson: Lesson
  readonly spot: Spot
  readonly hold: Hold
}

export interface View {
  show(shown: Shown, change: Change): void
  /** Words above the controls, and a button where something can be done about them; null takes them away. */
  tell(words: string | null, button?: NoticeButton): void
  readonly stage: Stage
}

export interface NoticeButton {
  /** What the button does, as any other of the stepper's buttons names it. */
  readonly do: string
  readonly words: string
}

const known = new WeakMap<ParentNode, Map<string, Element>>()

/** A part of the page that is always there; looked for once. */
export function find<T extends Element>(root: ParentNode, selector: string): T {
  const parts = known.get(root) ?? new Map<string, Element>()
  const found = parts.get(selector) ?? root.querySelector(selector)
  if (!found) throw new Error(`the stepper has no ${selector}`)
  known.set(root, parts.set(selector, found))
  return found as T
}

/** The page's part of the lesson: it writes and reads nothing back. `first` is what the page came with. */
export function viewOn(root: HTMLElement, first: Shown): View {
  const written = new Map(Object.entries(slotsAt(first.lesson, first.spot, first.hold) ?? {}))
  const slots = new Map(
    [...root.querySelectorAll<HTMLElement>('[data-slot]')].map((slot) => [slot.dataset.slot ?? '', slot]),
  )
  const actAt = remembered(actOf)
  const slotsHere = remembered(slotsAt)
  const firstAct = actAt(first.lesson, first.spot, first.hold)
  if (!firstAct) throw new Error('the stepper has no stitch to begin with')
  const stage = stageOn(find(root, '[data-stage]'), firstAct, (place) => tellMotion(root, place))
  const prepare = whenIdle(({ lesson, spot, hold }: Shown) => {
    for (const other of beside(lesson.worked, spot)) {
      slotsHere(lesson, other, hold)
      const act = actAt(lesson, other, hold)
      if (act) makeReady(act, !isStill())
    }
  })
  const chart = chartOn(find(root, '[data-chart]'))
  const notice = find<HTMLElement>(root, '[data-notice]')
  const noticeButton = find<HTMLElement>(notice, 'button')
  const nextButton = find<HTMLElement>(root, '[data-do="next"]')
  return {
    stage,
    show(shown, change) {
      const at = slotsHere(shown.lesson, shown.spot, shown.hold)
      if (!at) return
      // Only what changes is written, so that a screen reader is told of nothing else.
      for (const [name, html] of Object.entries(at)) {
        const slot = slots.get(name)
        if (!slot || written.get(name) === html) continue
        written.set(name, html)
        const hadFocus = slot.contains(document.activeElement)
        // Most of it is plain text, which needs no reading.
        if (/[<&]/.test(html)) slot.innerHTML = html
        else slot.textContent = html
        if (hadFocus)
          (slot.querySelector<HTMLElement>('summary') ?? nextButton).focus({ preventScroll: true })
        slot.closest<HTMLElement>('[data-with-slot]')?.toggleAttribute('hidden', html === '')
      }
      const act = actAt(shown.lesson, shown.spot, shown.hold)
      if (act) stage.show(act, change)
      chart(shown)
      setControls(root, shown)
      prepare(shown)
    },
    tell(words, button) {
      const hadFocus = notice.contains(document.activeElement)
      notice.hidden = words === null
      find(notice, '[data-notice-words]').textContent = words ?? ''
      noticeButton.hidden = !button
      noticeButton.dataset.do = button?.do ?? ''
      noticeButton.textContent = button?.words ?? ''
      if (hadFocus && (words === null || !button)) nextButton.focus()
    },
  }
}

/** Calls for the newest thing only, once the browser has nothing better to do. */
function whenIdle<T>(call: (thing: T) => void): (thing: T) => void {
  let waiting: { thing: T } | null = null
  const idle =
    typeof requestIdleCallback === 'function'
      ? requestIdleCallback
      : (run: () => void) => setTimeout(run, 200)
  return (thing) => {
    if (waiting === null) {
      idle(() => {
        const newest = waiting
        waiting = null
        if (newest) call(newest.thing)
      })
    }
    waiting = { thing }
  }
}

/** The motion that is shown, and which ways lead on from it. */
function tellMotion(root: HTMLElement, { motion, of, words, chosen }: Place): void {
  const line = find<HTMLElement>(root, '[data-motion-words]')
  // What moves by itself is not read out: the hand steps stand below in full.
  line.setAttribute('aria-live', chosen ? 'polite' : 'off')
  line.textContent = motion === 0 ? 'Before the stitch.' : `Motion ${motion} of ${of}: ${words}`
  find(root, '[data-do="motion-back"]').setAttribute('aria-disabled', String(motion <= 0))
  find(root, '[data-do="motion-on"]').setAttribute('aria-disabled', String(motion >= of))
}

function setControls(root: HTMLElement, { lesson: { worked }, spot }: Shown): void {
  // Not `disabled`: a button that loses the focus while it is pressed leaves the keyboard nowhere.
  find(root, '[data-do="back"]').setAttribute('aria-disabled', String(isFirst(worked, spot)))
  find(root, '[data-do="next"]').setAttribute('aria-disabled', String(isLast(worked, spot)))
  find<HTMLSelectElement>(root, '[data-to-row]').value = String(spot.row)
  find<HTMLAnchorElement>(root, '[data-mend]').hash = placeHash(spot)
  const repeats = root.querySelector<HTMLSelectElement>('[data-to-width]')
  if (repeats) repeats.value = String(spot.repeats)
}

/** The chart is drawn once for each width; from stitch to stitch its marks move. */
function chartOn(element: HTMLElement): (shown: Shown) => void {
  let [repeats, drawing]: [number | null, Drawing | null] = [null, null]
  const marks = new Map<string, Element>()
  return ({ lesson, spot }) => {
    if (drawing === null || spot.repeats !== repeats) {
      repeats = spot.repeats
      drawing = chartOfLesson(lesson)
      element.innerHTML = toSvg(withMarks(drawing, spot), { idPrefix: 'stepper-chart' })
      marks.clear()
    }
    const here = chartHere(drawing, spot)
    for (const [name, place] of Object.entries(here ?? {})) {
      const mark = marks.get(name) ?? element.querySelector(`.here-${name}`)
      if (!mark) continue
      marks.set(name, mark)
      for (const [attribute, value] of Object.entries(place)) mark.setAttribute(attribute, String(value))
    }
    afterPaint(() => reveal(element, marks.get('cell')))
  }
}

/** Once the frame is on the screen: measuring before would make the browser lay out the page twice. */
function afterPaint(run: () => void): void {
  requestAnimationFrame(() => setTimeout(run))
}

/** Scrolls a window, and never the page, so that a thing in it is seen with something round it. */
function reveal(frame: HTMLElement, thing: Element | undefined): void {
  if (!thing) return
  const [outer, inner] = [frame.getBoundingClientRect(), thing.getBoundingClientRect()]
  const margin = 48
  const shift = (low: number, high: number, from: number, to: number): number =>
    from - margin < low ? from - margin - low : to + margin > high ? to + margin - high : 0
  frame.scrollLeft += shift(outer.left, outer.right, inner.left, inner.right)
  frame.scrollTop += shift(outer.top, outer.bottom, inner.top, inner.bottom)
}
