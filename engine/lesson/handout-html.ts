import type { Handout, HandoutSheet } from './handout.ts'
import type { ClassPart, ClassPlan } from './handout-class.ts'
import { minutesOf } from './handout-class.ts'
import { footWords, type HandoutPictures, patternLeaf } from './handout-leaf.ts'
import { html, type Markup, wide } from './handout-markup.ts'
import type { HandoutRow } from './handout-rows.ts'
import { boxList, sideOf, tickBoxes } from './handout-table.ts'

const classWords = ({ title }: ClassPlan): string => title || 'A class without a name'

/** The running order with minutes from the beginning of the class. */
function partRows(parts: readonly ClassPart[]): Markup[] {
  let from = 0
  return parts.map(({ minutes, what, all, most, quick }) => {
    const begins = from
    from += minutes
    return html`<tr><th scope="row" class="figure">${begins} to ${from}</th><td>${what}</td><td>${all}</td><td>${most}</td><td>${quick}</td></tr>`
  })
}

const said = (name: string, words: string): Markup | null =>
  words === '' ? null : html`<div><dt>${name}:</dt> <dd>${words}</dd></div>`

function partList(parts: readonly ClassPart[]): Markup {
  return html`<ol class="row-list">${parts.map(
    ({ minutes, what, all, most, quick }) =>
      html`<li><h4>${what}, ${minutes} minutes</h4><dl>${said('All', all)}${said('Most', most)}${said('The quick ones', quick)}</dl></li>`,
  )}</ol>`
}

function running(plan: ClassPlan): Markup | null {
  if (plan.parts.length === 0) return null
  const table = wide(
    'Running order',
    html`<table class="running"><thead><tr><th scope="col" class="figure">Minutes</th><th scope="col">What we do</th><th scope="col">All</th><th scope="col">Most</th><th scope="col">The quick ones</th></tr></thead><tbody>${partRows(plan.parts)}</tbody></table>`,
  )
  return html`<section><h3>Running order, ${minutesOf(plan)} minutes</h3>${plan.print === 'large' ? partList(plan.parts) : table}</section>`
}

function patternsOf(sheets: readonly HandoutSheet[]): Markup {
  const item = ({ pattern, repeats, castOn, code }: HandoutSheet): Markup =>
    html`<li><strong>${pattern.title}</strong>, ${'fixed' in pattern.castOn ? '' : `${repeats} ${repeats === 1 ? 'repeat' : 'repeats'}, `}cast on ${castOn.stitches}, code ${code}</li>`
  return html`<section><h3>Patterns, in order</h3><ol>${sheets.map(item)}</ol></section>`
}

/** The teacher's page: who, where, when; the running order; the patterns. */
function planLeaf({ plan, sheets }: Handout): Markup {
  const { guild, date, place, yarn, needle, bring, homework } = plan
  return html`<article class="leaf" aria-labelledby="class-plan">
<div class="foot"><p>${[classWords(plan), ...(plan.print === 'large' ? [] : [guild, date])].filter(Boolean).join(' · ')} · ${sheets.map(({ code }) => code).join(', ')}</p></div>
<div class="body"><header><h2 id="class-plan">${classWords(plan)}</h2>
<p class="of">${[guild, date, place].filter(Boolean).join('; ')}</p></header>
${running(plan)}
${patternsOf(sheets)}
<section><h3>Everyone brings</h3><ul class="bring">
${[yarn, needle === null ? '' : `needles ${needle} mm`, ...bring].filter(Boolean).map((thing) => html`<li>${thing}</li>`)}</ul></section>
${homework !== '' && html`<section><h3>Until next time</h3><p>${homework}</p></section>`}
</div></article>`
}

function rowCard(sheet: HandoutSheet, row: HandoutRow): Markup {
  const side = sideOf(row)
  const count = row.changes ? `${row.after} stitches, from ${row.before}` : `${row.after} stitches`
  return html`<li class="${row.side === 'WS' ? 'back' : ''}"><span class="ring" aria-hidden="true"></span>
<h3>${row.name}${side === '' ? null : html` <span class="side">${side}</span>`}</h3>
${boxList(row)}
<p>After it <strong>${count}</strong></p>
<div class="card-foot"><p class="credit">${sheet.pattern.title}, ${sheet.code}${row.lifeline && '. Lifeline after this row'}</p>${tickBoxes}</div></li>`
}

/** One row a card, to cut out and to hang on a ring; a wrong-side row's card has its corner cut. */
function cardLeaf(sheet: HandoutSheet, plan: ClassPlan, id: string): Markup {
  return html`<article class="leaf" aria-labelledby="${id}"><div class="foot"><p>${footWords(sheet, plan)}</p></div>
<div class="body"><header><h2 id="${id}">Row cards: ${sheet.pattern.title}</h2>
<p>Cut along the dashed lines, and on cards of wrong-side rows cut off the marked corner; keep scissors from small children. Punch the ring.</p></header>
<ul class="row-cards">${sheet.rows.map((row) => rowCard(sheet, row))}</ul></div></article>`
}

/**
 * A handout as HTML for the stylesheet beside the handout's components: a leaf for the plan, one for each pattern, one for
 * its row cards. All text in it is escaped.
 * @param picturesOf addresses of a pattern's pictures
 */
export function handoutHtml(handout: Handout, picturesOf: (slug: string) => HandoutPictures): string {
  const { plan, sheets } = handout
  const pages = sheets.map((sheet, i) =>
    patternLeaf(sheet, plan, {
      id: `sheet-${i + 1}`,
      first: i === 0,
      last: i === sheets.length - 1,
      pictures: picturesOf(sheet.slug),
    }),
  )
  const cards = plan.sections.includes('row cards')
    ? sheets.map((sheet, i) => cardLeaf(sheet, plan, `cards-${i + 1}`))
    : []
  const look = plan.print.replaceAll(' ', '-')
  return html`<div class="handout ${plan.paper} ${look}" data-handout>
${plan.sections.includes('plan') && planLeaf(handout)}${pages}${cards}</div>`.html
}
