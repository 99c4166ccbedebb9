import type { MeasureUnit } from '../../engine/intake/index.ts'
import {
  type Across,
  type Choice,
  type Estimate,
  type Measures,
  notices,
  type Wishes,
} from '../../engine/measure/index.ts'
import { el, find } from '../mend/dom.ts'
import type { PieceFacts } from './facts.ts'
import { type SheetLine, sheetLines } from './lines.ts'
import { toldWords } from './told.ts'
import { many, sizeWords } from './words.ts'

export interface Shown {
  readonly measures: Measures
  readonly wishes: Wishes
  readonly unit: MeasureUnit
  readonly facts: PieceFacts
}

/** Puts all that can be said into the sheet. What a reader had opened stays open. */
export function showSheet(root: HTMLElement, shown: Shown): void {
  const { measures, wishes, unit, facts } = shown
  const slot = (name: string): HTMLElement => find(root, `[data-slot="${name}"]`)
  const open = new Set(
    [...root.querySelectorAll<HTMLElement>('details[open][data-line]')].map(({ dataset }) => dataset.line),
  )
  const lines = sheetLines(shown)
  const table = measures.across && !facts.fixed ? choiceTable(measures.across, { wishes, unit }) : null
  slot('lines').replaceChildren(
    ...lines.map((line) => lineElement(line, open.has(line.name), line.name === 'Cast on' ? table : null)),
  )
  slot('told').textContent = toldWords(wishes, unit)
  slot('notices').replaceChildren(...measures.notices.map((notice) => el('li', {}, notices[notice], ' ')))
  slot('notices').hidden = measures.notices.length === 0
  slot('nothing').hidden = measures.across !== null && measures.up !== null
}

/** What a reader who does not see the sheet change should hear. */
export function spokenWords({ measures: { across, up, balls } }: Shown): string {
  return [
    across && `Cast on ${many(across.chosen.castOn, 'stitch', 'stitches')}.`,
    up && `${many(up.chosen.rows, 'row')}.`,
    balls && `Buy ${many(balls.bought, 'ball')}.`,
  ]
    .filter((part) => part !== null)
    .join(' ')
}

function lineElement(
  { name, answer, more, from }: SheetLine,
  open: boolean,
  table: HTMLElement | null,
): HTMLElement {
  return el(
    'div',
    { class: 'line' },
    el('dt', {}, name),
    el(
      'dd',
      {},
      el('b', { class: 'number' }, answer),
      // The spaces part the sentences on paper, where they run on.
      ...more.map((text) => el('p', {}, text, ' ')),
      table,
      from && grounds(name, from, open),
    ),
  )
}

/** What a figure rests on, and what a swatch would settle. */
const grounds = (name: string, { rests, swatch }: Estimate, open: boolean): HTMLElement =>
  el(
    'details',
    { class: 'on-screen', 'data-line': name, open },
    el('summary', {}, 'What this rests on', el('span', { class: 'visually-hidden' }, `: ${name}`)),
    el(
      'ul',
      {},
      ...rests.map(({ fact, source }) => el('li', {}, `${fact} `, el('span', { class: 'source' }, source))),
    ),
    swatch === null ? null : el('p', {}, el('b', {}, 'A swatch would settle it. '), swatch),
  )

function choiceTable(
  { chosen, choices }: Choice<Across>,
  { wishes, unit }: Pick<Shown, 'wishes' | 'unit'>,
): HTMLElement {
  const widthIn = ({ width }: Across) => (wishes.blocked ? width.after : width.before)
  const sized = widthIn(chosen) !== null
  const size = (one: Across): string => sizeWords(widthIn(one)?.value ?? 0, unit)
  const names = [
    'Repeats',
    'Cast on',
    ...(sized ? [wishes.blocked ? 'After blocking' : 'Before blocking'] : []),
  ]
  const rows = choices.map((one) =>
    el(
      'tr',
      { class: one.repeats === chosen.repeats ? 'chosen' : 'beside' },
      el('th', { scope: 'row' }, String(one.repeats)),
      el('td', {}, String(one.castOn)),
      sized ? el('td', {}, size(one)) : null,
    ),
  )
  return el(
    'table',
    { class: 'number choices' },
    el('caption', { class: 'visually-hidden' }, 'One repeat fewer, one more'),
    el('thead', {}, el('tr', {}, ...names.map((name) => el('th', { scope: 'col' }, name)))),
    el('tbody', {}, ...rows),
  )
}
