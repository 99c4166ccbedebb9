import { type Drawing, toSvg } from '../../engine/drawing/index.ts'
import type { Lesson } from '../../engine/lesson/index.ts'
import type { Hold } from '../../engine/stitches/index.ts'
import { chartHere, chartOfLesson, withMarks } from './chart-here.ts'
import { type Change, type Stage, stageOn } from './motion.ts'
import { needlesOf, needlesSvg, slotsAt } from './slots.ts'
import { isFirst, isLast, type Spot } from './state.ts'

/** Everything that is read from outside before it is shown. */
export interface Shown {
  readonly lesson: Lesson
  readonly spot: Spot
  readonly hold: Hold
}

export interface View {
  show(shown: Shown, change: Change): void
  /** Words above the controls with a way to begin again; null takes them away. */
  tell(words: string | null): void
  readonly stage: Stage
}

export function find<T extends Element>(root: ParentNode, selector: string): T {
  const found = root.querySelector<T>(selector)
  if (!found) throw new Error(`the stepper has no ${selector}`)
  return found
}

/** The page's part of the lesson: it writes and reads nothing back. `first` is what the page came with. */
export function viewOn(root: HTMLElement, first: Shown): View {
  const written = new Map(Object.entries(slotsAt(first.lesson, first.spot, first.hold) ?? {}))
  const slots = new Map(
    [...root.querySelectorAll<HTMLElement>('[data-slot]')].map((slot) => [slot.dataset.slot ?? '', slot]),
  )
  const stage = stageOn(find(root, '[data-stage]'), needlesOf(first.lesson, first.spot, first.hold))
  const chart = chartOn(find(root, '[data-chart]'), first)
  const notice = find<HTMLElement>(root, '[data-notice]')
  const nextButton = find<HTMLElement>(root, '[data-do="next"]')
  return {
    stage,
    show(shown, change) {
      const at = slotsAt(shown.lesson, shown.spot, shown.hold)
      if (!at) return
      // Only what changes is written, so that a screen reader is told of nothing else.
      for (const [name, html] of Object.entries(at)) {
        const slot = slots.get(name)
        if (!slot || written.get(name) === html) continue
        written.set(name, html)
        const hadFocus = slot.contains(document.activeElement)
        slot.innerHTML = html
        if (hadFocus)
          (slot.querySelector<HTMLElement>('summary') ?? nextButton).focus({ preventScroll: true })
        slot.closest<HTMLElement>('[data-with-slot]')?.toggleAttribute('hidden', html === '')
      }
      const needles = needlesOf(shown.lesson, shown.spot, shown.hold)
      stage.show(needlesSvg(needles), needles, change)
      chart(shown)
      setControls(root, shown)
    },
    tell(words) {
      const hadFocus = notice.contains(document.activeElement)
      notice.hidden = words === null
      find(notice, '[data-notice-words]').textContent = words ?? ''
      if (hadFocus && words === null) nextButton.focus()
    },
  }
}

function setControls(root: HTMLElement, { lesson: { worked }, spot }: Shown): void {
  // Not `disabled`: a button that loses the focus while it is pressed leaves the keyboard nowhere.
  find(root, '[data-do="back"]').setAttribute('aria-disabled', String(isFirst(worked, spot)))
  find(root, '[data-do="next"]').setAttribute('aria-disabled', String(isLast(worked, spot)))
  find<HTMLSelectElement>(root, '[data-to-row]').value = String(spot.row)
  const repeats = root.querySelector<HTMLSelectElement>('[data-to-width]')
  if (repeats) repeats.value = String(spot.repeats)
}

/** The chart is drawn again only for another width; from stitch to stitch its marks move. */
function chartOn(element: HTMLElement, first: Shown): (shown: Shown) => void {
  let [repeats, drawing]: [number, Drawing] = [first.spot.repeats, chartOfLesson(first.lesson)]
  return ({ lesson, spot }) => {
    if (spot.repeats !== repeats) {
      repeats = spot.repeats
      drawing = chartOfLesson(lesson)
      element.innerHTML = toSvg(withMarks(drawing, spot), { idPrefix: 'stepper-chart' })
    }
    const here = chartHere(drawing, spot)
    for (const [name, place] of Object.entries(here ?? {})) {
      const mark = element.querySelector(`.here-${name}`)
      for (const [attribute, value] of Object.entries(place)) mark?.setAttribute(attribute, String(value))
    }
    reveal(element, element.querySelector('.here-cell'))
  }
}

/** Scrolls a window, and never the page, so that a thing in it is seen with something round it. */
function reveal(frame: HTMLElement, thing: Element | null): void {
  if (!thing) return
  const [outer, inner] = [frame.getBoundingClientRect(), thing.getBoundingClientRect()]
  const margin = 48
  const shift = (low: number, high: number, from: number, to: number): number =>
    from - margin < low ? from - margin - low : to + margin > high ? to + margin - high : 0
  frame.scrollLeft += shift(outer.left, outer.right, inner.left, inner.right)
  frame.scrollTop += shift(outer.top, outer.bottom, inner.top, inner.bottom)
}
