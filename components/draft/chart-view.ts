import { find } from '../mend/dom.ts'
import type { ChartView } from './answer.ts'

/** A stitch by its row's index in the draft and its step. */
export interface Here {
  readonly index: number
  readonly step: number
}

/** The chart of a draft, gone through cell by cell. */
export interface ChartPart {
  /** What has to be done to show a chart, row by row. */
  showing(view: ChartView | null): (() => void)[]
  light(here: Here | null): void
  focus(): void
}

export interface ChartEvents {
  readonly onChoose: (here: Here) => void
  readonly onEnter: (here: Here) => void
}

export function chartPart(root: HTMLElement, { onChoose, onEnter }: ChartEvents): ChartPart {
  const frame = find(root, '[data-chart]')
  const only = find(root, '[data-chart-only]')
  const words = find(root, '[data-chart-words]')
  let view: ChartView | null = null
  let rows: string[] = []
  let here: Here | null = null

  const nodeAt = ({ index, step }: Here): SVGElement | null =>
    frame.querySelector<SVGElement>(`[data-key="cell-${index}-${step}"]`)
  /** One cell can be reached with the keyboard; the arrow keys lead on from it. */
  const reach = (): void => {
    const at = here && nodeAt(here)
    const cell = at ?? frame.querySelector<SVGElement>('.cell[data-step]')
    for (const old of frame.querySelectorAll('[tabindex]')) {
      // What has the focus would lose it with these.
      if (old !== cell) for (const name of ['tabindex', 'role', 'aria-label']) old.removeAttribute(name)
      if (old !== at) old.classList.remove('is-here')
    }
    cell?.setAttribute('tabindex', '0')
    cell?.setAttribute('role', 'button')
    cell?.setAttribute('aria-label', nameOf(cell))
    at?.classList.add('is-here')
  }
  const nameOf = (cell: Element): string => {
    const [, index, step] = /^cell-(\d+)-(\d+)$/.exec(cell.getAttribute('data-key') ?? '') ?? []
    const row = view?.cells.find((one) => one.index === Number(index))
    return `${row?.name ?? 'Row'}, stitch ${Number(step) + 1}: ${cell.getAttribute('data-stitch') ?? ''}`
  }
  const hereOf = (cell: Element | null): Here | null => {
    const found = /^cell-(\d+)-(\d+)$/.exec(cell?.getAttribute('data-key') ?? '')
    return found ? { index: Number(found[1]), step: Number(found[2]) } : null
  }
  frame.addEventListener('click', ({ target }) => {
    const to = hereOf(target instanceof Element ? target.closest('.cell[data-step]') : null)
    if (!to) return
    choose(to)
  })
  const choose = (to: Here): void => {
    here = to
    reach()
    nodeAt(to)?.focus({ preventScroll: true })
    onChoose(to)
  }
  frame.addEventListener('keydown', (event) => {
    const from = hereOf(event.target instanceof Element ? event.target : null)
    if (!from || event.ctrlKey || event.altKey || event.metaKey) return
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      choose(from)
      onEnter(from)
      return
    }
    const to = view && neighbour(view, from, event.key)
    if (!to) return
    event.preventDefault()
    choose(to)
    nodeAt(to)?.scrollIntoView({ block: 'nearest', inline: 'nearest' })
  })

  const build = (fresh: ChartView): void => {
    frame.innerHTML =
      `<svg class="draft-chart" width="${fresh.width}" height="${fresh.height}" viewBox="0 0 ${fresh.width} ${fresh.height}" ` +
      'role="group" aria-label="Chart, seen from the right side"><g class="chart-cells"></g><g class="chart-rest"></g></svg>'
    rows = []
    // Right-side rows begin at the right.
    frame.scrollLeft = fresh.width
    frame.scrollTop = fresh.height
  }
  return {
    showing(fresh) {
      const old = view
      view = fresh
      only.textContent = fresh === null ? 'The chart begins as soon as a row comes out.' : (fresh.only ?? '')
      only.hidden = fresh !== null && fresh.only === null
      if (!fresh) {
        rows = []
        frame.replaceChildren()
        words.replaceChildren()
        return []
      }
      const hadFocus = frame.contains(document.activeElement)
      if (!old || old.key !== fresh.key || !frame.firstElementChild) build(fresh)
      const cells = find<SVGGElement>(frame, '.chart-cells')
      const tasks = fresh.rows.map((row, i) => () => {
        if (rows[i] === row) return
        rows[i] = row
        const there = cells.children[i]
        if (there) there.outerHTML = row
        else cells.insertAdjacentHTML('beforeend', row)
      })
      const rest = (): void => {
        if (old?.rest !== fresh.rest || rows.length !== old.rows.length)
          find(frame, '.chart-rest').innerHTML = fresh.rest
        if (old?.stitches !== fresh.stitches)
          words.replaceChildren(...fresh.stitches.split('\n').map((line) => itemOf(line)))
        reach()
        if (hadFocus) frame.querySelector<SVGElement>('[tabindex="0"]')?.focus({ preventScroll: true })
      }
      return [...tasks, rest]
    },
    light(to) {
      here = to
      reach()
    },
    focus: () => frame.querySelector<SVGElement>('[tabindex="0"]')?.focus(),
  }
}

function itemOf(line: string): HTMLLIElement {
  const item = document.createElement('li')
  item.textContent = line
  return item
}

/** The cell that an arrow key leads to, as the chart is seen. */
function neighbour({ cells }: ChartView, { index, step }: Here, key: string): Here | null {
  const at = cells.findIndex((row) => row.index === index)
  const row = cells[at]
  const cell = row?.cells.findIndex((one) => one.step === step) ?? -1
  const here = row?.cells[cell]
  if (!row || !here) return null
  const beside = (i: number): Here | null => {
    const to = row.cells[i]
    return to ? { index, step: to.step } : null
  }
  switch (key) {
    case 'ArrowLeft':
      return beside(cell + 1)
    case 'ArrowRight':
      return beside(cell - 1)
    case 'Home':
      return beside(row.cells.length - 1)
    case 'End':
      return beside(0)
    case 'ArrowUp':
    case 'ArrowDown': {
      const to = cells[at + (key === 'ArrowUp' ? 1 : -1)]
      const middle = here.column + here.span / 2
      const off = (one: { column: number; span: number }): number =>
        Math.abs(one.column + one.span / 2 - middle)
      const nearest = to?.cells.toSorted((a, b) => off(a) - off(b))[0]
      return to && nearest ? { index: to.index, step: nearest.step } : null
    }
    default:
      return null
  }
}
