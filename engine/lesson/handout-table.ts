import type { HandoutSheet } from './handout.ts'
import { html, type Markup, wide } from './handout-markup.ts'
import type { HandoutRow } from './handout-rows.ts'

const sideWords = { RS: 'right side', WS: 'wrong side' } as const

/** Three, since rows are ripped and worked again. */
const ticks = html`<i></i><i></i><i></i>`

export const tickBoxes = html`<span class="ticks" aria-hidden="true">${ticks}</span>`

/** An arrow along the row, the way in which the hands go. */
export const arrow = ({ way }: HandoutRow): Markup => {
  const d = way === 'leftwards' ? 'M19 5H2M7 1L2 5L7 9' : 'M1 5H18M13 1L18 5L13 9'
  return html`<svg class="way" viewBox="0 0 20 10" aria-hidden="true"><path d="${d}"></path></svg>`
}

export const sideOf = ({ side }: HandoutRow): string => (side === null ? '' : sideWords[side])

/** 'to the last 2 stitches', '3 times'; null where the repeat goes to the end of the row. */
function extentWords(extent: string | null): string | null {
  const last = extent === null ? undefined : /^to last (\d+)$/.exec(extent)?.[1]
  if (last === undefined) return extent
  return last === '1' ? 'to the last stitch' : `to the last ${last} stitches`
}

const star = (words: string, extent: string | null): Markup =>
  html`<span class="starred">${words}</span>${extent === null ? null : html`, <span class="extent">${extentWords(extent)}</span>`}`

/** What stands in the three boxes; a row without a repeat and edges goes through all of them. */
function boxCells({ boxes: { edge, repeat, end, extent, repeatTakes } }: HandoutRow): Markup {
  const middle = repeat === null ? null : repeatTakes === null ? html`${repeat}` : star(repeat, extent)
  if (repeatTakes === null && edge === null && end === null)
    return html`<td colspan="3" class="whole">${middle}</td>`
  return html`<td>${edge}</td><td class="${repeatTakes === null ? 'whole' : 'repeat'}">${middle}</td><td>${end}</td>`
}

/** The side in the trade's two letters, or spelt out below for who stumbles over letters. */
function sideMarkup(row: HandoutRow, spelt: boolean): Markup | null {
  if (row.side === null) return null
  return spelt
    ? html`<span class="side below">${sideOf(row)}</span>`
    : html` <span class="side">${row.side}</span>`
}

interface TableLook {
  readonly hasRepeats: boolean
  readonly spelt: boolean
}

function tableRow(row: HandoutRow, { hasRepeats, spelt }: TableLook): Markup {
  const { name, before, after, changes, lifeline, eachRepeat } = row
  return html`<tr class="${[lifeline && 'lifeline', changes && 'changes'].filter(Boolean).join(' ')}">
<th scope="row"><span class="name">${name}${!spelt && sideMarkup(row, false)} ${arrow(row)}</span>${spelt && sideMarkup(row, true)}</th>
${boxCells(row)}
${hasRepeats && html`<td class="figure">${eachRepeat}</td>`}
<td class="figure">${html`<strong>${after}</strong>`}${changes && html` <span class="from">from ${before}</span>`}</td>
<td class="done">${tickBoxes}${lifeline && html`<span class="thread">lifeline</span>`}</td>
</tr>`
}

/** The rows as a table: edge, repeat, end; counts; three boxes to tick. Its head comes again on every page. */
export function rowTable({ rows, castOn, pattern }: HandoutSheet, spelt: boolean): Markup {
  const hasRepeats = rows.some(({ eachRepeat }) => eachRepeat !== null)
  const word = pattern.worked === 'round' ? 'Round' : 'Row'
  const sides = !spelt && rows.some(({ side }) => side !== null)
  const table = html`<table class="rows">
<thead><tr><th scope="col">${word}</th><th scope="col">Edge</th><th scope="col">Repeat</th><th scope="col">End</th>
${hasRepeats && html`<th scope="col" class="figure">Each repeat</th>`}
<th scope="col" class="figure">All stitches</th><th scope="col">Done</th></tr></thead>
<tbody><tr class="start"><th scope="row" colspan="${hasRepeats ? 5 : 4}">Cast on</th><td class="figure"><strong>${castOn.stitches}</strong></td><td></td></tr>
${rows.map((row) => tableRow(row, { hasRepeats, spelt }))}</tbody></table>`
  return html`${sides && html`<p class="sides">RS: the right side faces you. WS: the wrong side does.</p>`}${wide(`Rows of ${pattern.title}`, table)}`
}

const named = (name: string, words: string | Markup | null): Markup | null =>
  words === null || words === '' ? null : html`<div><dt>${name}:</dt> <dd>${words}</dd></div>`

/** A row's three boxes one below the other. */
export function boxList({ boxes: { edge, repeat, end, extent, repeatTakes } }: HandoutRow): Markup {
  const middle =
    repeat === null ? null : html`${repeat}${extent === null ? null : html`, ${extentWords(extent)}`}`
  return html`<dl>${named('Edge', edge)}${named(repeatTakes === null ? 'Work' : 'Repeat', middle)}${named('End', end)}</dl>`
}

const stitches = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`

function countWords({ eachRepeat, before, after, changes }: HandoutRow): string {
  const each = eachRepeat === null ? '' : `Each repeat ${eachRepeat}. `
  return `${each}In all ${stitches(after)}${changes ? `, from ${before}: it is meant to change` : ''}.`
}

/** The rows one below the other, for large type and for who listens. */
export function rowList({ rows, castOn }: HandoutSheet): Markup {
  const item = (row: HandoutRow): Markup => html`<li class="${row.lifeline ? 'lifeline' : ''}">
<h4>${row.name}${sideOf(row) === '' ? null : `, ${sideOf(row)}`}</h4>
${boxList(row)}
<p>${countWords(row)}</p>
<p>Done ${tickBoxes}${row.lifeline && html` <span class="thread">Lifeline after this row.</span>`}</p>
</li>`
  return html`<p>Cast on ${stitches(castOn.stitches)}.</p><ol class="row-list">${rows.map(item)}</ol>`
}
