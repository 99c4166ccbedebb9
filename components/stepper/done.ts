import { escapeText } from '../../engine/drawing/index.ts'
import {
  type Lesson,
  lifelineWords,
  type Progress,
  rowLabelOf,
  timeWords,
} from '../../engine/lesson/index.ts'
import type { Spot } from './state.ts'
import { find } from './view.ts'

interface Shown {
  readonly lesson: Lesson
  readonly spot: Spot
  readonly progress: Progress
}

/** The part of the page that tells what is done. It writes only what changes. */
export interface Done {
  show(shown: Shown): void
}

/** More marks than that cannot be told apart at a glance. */
const mostMarks = 5

/** '✓✓', and in words for whoever does not see it. */
function marksHtml(times: number): string {
  if (times === 0) return '<span class="visually-hidden">not done yet</span>'
  const marks = times > mostMarks ? `✓ × ${times}` : '✓'.repeat(times)
  const words = times === 1 ? 'done once' : `done ${times} times`
  return `<span aria-hidden="true">${marks}</span><span class="visually-hidden">${words}</span>`
}

function listHtml({ lesson: { worked }, progress, spot }: Shown): string {
  return worked.rows
    .map((row, index) => {
      if (row.steps.length === 0) return ''
      const here = index === spot.row ? ' aria-current="true"' : ''
      const lifeline = index === progress.lifeline?.row ? ' <em>lifeline</em>' : ''
      const label = escapeText(rowLabelOf(worked, row))
      return `<li${here}>${label} ${marksHtml(progress.done[index] ?? 0)}${lifeline}</li>`
    })
    .join('')
}

export function doneOn(root: HTMLElement): Done {
  const part = (name: string): HTMLElement => find(root, `[data-done="${name}"]`)
  const [time, lifeline, list] = [part('time'), part('lifeline'), part('list')]
  const put = find<HTMLElement>(root, '[data-do="lifeline"]')
  const rip = find<HTMLElement>(root, '[data-do="rip"]')
  const untick = find<HTMLElement>(root, '[data-do="untick"]')
  const clear = find<HTMLElement>(root, '[data-do="clear"]')
  const choice = find<HTMLSelectElement>(root, '[data-to-lifeline]')
  const written = new Map<HTMLElement, string>()
  const write = (element: HTMLElement, html: string): void => {
    if (written.get(element) === html) return
    written.set(element, html)
    element.innerHTML = html
  }
  let last: Shown | null = null
  const isSame = ({ lesson, spot, progress }: Shown): boolean =>
    last?.lesson === lesson && last.spot.row === spot.row && last.progress === progress
  const allow = (button: HTMLElement, is: boolean): void => button.setAttribute('aria-disabled', String(!is))
  return {
    show(shown) {
      const { lesson, spot, progress } = shown
      const { worked } = lesson
      const row = worked.rows[spot.row]
      if (!row || isSame(shown)) return
      last = { lesson, spot, progress }
      write(time, escapeText(timeWords(worked, progress, spot.row)))
      write(
        lifeline,
        progress.lifeline ? escapeText(lifelineWords(worked, progress.lifeline)) : 'No lifeline',
      )
      write(list, listHtml(shown))
      write(put, `Lifeline in ${escapeText(rowLabelOf(worked, row).toLowerCase())}`)
      allow(rip, progress.lifeline !== null)
      allow(untick, (progress.done[spot.row] ?? 0) > 0)
      allow(clear, progress.lifeline !== null || progress.done.some((times) => times > 0))
      choice.value = String(progress.lifeline?.row ?? -1)
    },
  }
}
