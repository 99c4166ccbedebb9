import { type Chart, type ChartRow, chartOf, chartTable } from '../../engine/chart/index.ts'
import { chartDrawing, keyDrawing, toSvg } from '../../engine/drawing/index.ts'
import { work } from '../../engine/needles/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { noStitch, stitch } from '../../engine/stitches/index.ts'
import { el } from '../mend/dom.ts'
import { stitchAddress } from '../stitch/addresses.ts'

/** Stitches beside which a second repeat still leaves a chart that can be read. */
const widest = 34

/** Two repeats where they are narrow, so that the line between them is seen. */
function shownRepeats({ castOn }: Pattern): number {
  if ('fixed' in castOn) return 1
  return castOn.multiple * 2 + castOn.plus <= widest ? 2 : 1
}

export function chartParts(pattern: Pattern): HTMLElement[] {
  const { worked } = work(pattern, shownRepeats(pattern))
  if (!worked) return [el('p', {}, 'This piece is too large for a chart.')]
  const chart = chartOf(worked)
  const drawing = chartDrawing(chart, { cell: chart.columns <= 14 ? 34 : 28 })
  const board = el('div', { class: 'scroller', role: 'group', tabindex: 0, 'aria-label': drawing.title })
  board.innerHTML = toSvg(drawing, { idPrefix: 'made-chart' })
  return [el('p', { class: 'small' }, howToRead(chart)), board, keyTable(chart), chartInWords(chart)]
}

const howToRead = ({ worked, repeats }: Chart): string => {
  const width = repeats === 2 ? 'Two repeats' : repeats === 1 ? 'One repeat' : 'All of it'
  const way =
    worked === 'round'
      ? 'Every round is read from right to left.'
      : 'A row is read from the side where its number stands.'
  return `${width}, as the right side looks. Begin at the bottom. ${way} At the other end stands the count after it.`
}

function keyTable(chart: Chart): HTMLElement {
  const back = chart.rows.some(({ side }: ChartRow) => side === 'WS')
  const head = [
    'Sign',
    'Short',
    back ? 'In a right-side row' : 'What to work',
    ...(back ? ['In a wrong-side row'] : []),
  ]
  const cells = chart.key.map((entry) => {
    const link = el('a', { href: stitchAddress(entry.stitch) }, stitch(entry.stitch).us)
    const words = [entry.rightSide, ...(back ? [entry.wrongSide ?? 'not met here'] : [])]
    return el(
      'tr',
      {},
      el('td', {}, sign(entry.symbol)),
      el('th', { scope: 'row' }, link),
      ...words.map((one) => el('td', {}, one)),
    )
  })
  const none = el(
    'tr',
    {},
    el('td', {}, sign(noStitch)),
    el('th', { scope: 'row' }, 'none'),
    el('td', { colspan: back ? 2 : 1 }, 'no stitch is there: pass on to the next sign'),
  )
  const table = el(
    'table',
    { class: 'key' },
    el('caption', {}, 'What the signs mean'),
    el('thead', {}, el('tr', {}, ...head.map((words) => el('th', { scope: 'col' }, words)))),
    el('tbody', {}, ...cells, ...(chart.hasNone ? [none] : [])),
  )
  return el(
    'div',
    { class: 'scroller', role: 'group', tabindex: 0, 'aria-label': 'What the signs mean' },
    table,
  )
}

let drawn = 0

function sign(symbol: Chart['key'][number]['symbol']): HTMLElement {
  const made = el('span', { class: 'sign', 'aria-hidden': 'true' })
  made.innerHTML = toSvg(keyDrawing(symbol, { cell: 26 }), { idPrefix: `made-key-${drawn++}` })
  return made
}

const chartInWords = (chart: Chart): HTMLElement =>
  el(
    'details',
    {},
    el('summary', {}, 'The chart in words'),
    el('ol', { class: 'plain-list' }, ...chartTable(chart).map(({ text }) => el('li', {}, text))),
  )
