import { type Drawing, keyDrawing } from '../drawing/index.ts'
import { lifelinePlan } from '../measure/index.ts'
import type { HandoutSheet } from './handout.ts'
import type { ClassPlan } from './handout-class.ts'
import type { HandoutSign, HandoutStitch } from './handout-key.ts'
import { html, type Markup, svg, wide } from './handout-markup.ts'
import { mirroredDrawing } from './handout-mirror.ts'
import { rowList, rowTable } from './handout-table.ts'

/** Addresses of a pattern's pictures; null where there is none. */
export interface HandoutPictures {
  readonly blocked: string | null
  readonly asKnitted: string | null
}

export interface LeafPlace {
  /** Begins every id of the leaf. */
  readonly id: string
  readonly first: boolean
  readonly last: boolean
  readonly pictures: HandoutPictures
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
const times = (n: number): string => (n === 1 ? '1 repeat' : `${n} repeats`)

function section(title: string, content: Markup, className = ''): Markup {
  return html`<section class="${className}"><h3>${title}</h3>${content}</section>`
}

function head({ pattern, version, code, kind, able }: HandoutSheet, id: string): Markup {
  const { also, level, teaches } = pattern.about
  return html`<header>
<h2 id="${id}">${pattern.title}</h2>
<p class="of">${also.length > 0 && `also ${also.join('; ')}; `}${level !== undefined && `${level}; `}${kind}; version ${version}, code <strong>${code}</strong></p>
<p>You need to be able to ${able.slice(0, -1).join(', ')}${able.length > 1 && ' and '}${able.at(-1) ?? ''}.${teaches.length > 0 && ` You learn: ${teaches.join('; ')}.`}</p>
</header>`
}

function pictures({ pattern }: HandoutSheet, { blocked, asKnitted }: HandoutPictures): Markup | null {
  if (blocked === null) return null
  const figure = (address: string, words: string): Markup =>
    html`<figure><img src="${address}" alt="${pattern.title}, ${words}"><figcaption>${capital(words)}</figcaption></figure>`
  return html`<div class="pictures">${figure(blocked, 'blocked')}${asKnitted !== null && figure(asKnitted, 'as it comes off the needles')}</div>`
}

function needs({ pattern }: HandoutSheet, { bring, yarn, needle }: ClassPlan, isFirst: boolean): Markup {
  const [wool, size] = [yarn || pattern.about.yarn, needle ?? pattern.about.needle]
  const own = [wool, size === undefined ? undefined : `needles ${size} mm`].filter((one) => one !== undefined)
  const all = isFirst ? [...own, ...bring] : own
  return html`<ul class="bring">${all.map((thing) => html`<li>${thing}</li>`)}</ul>`
}

function castOnPart(sheet: HandoutSheet): Markup {
  const { castOn, otherCastOns, rule, edges, repeats, pattern } = sheet
  const fixed = 'fixed' in pattern.castOn
  const others = otherCastOns.map(({ repeats: n, stitches }) => `${times(n)} ${stitches}`).join(', ')
  return section(
    'Cast on',
    html`<p><strong class="big">${castOn.stitches}</strong> stitches${fixed ? '.' : ` for ${times(repeats)}.`}
${!fixed && `That is a ${rule}${edges === '' ? '' : `, and the edge stitches: ${edges}`}.`}
${others !== '' && ` For another width: ${others}. The counts of each repeat stay, the counts of all stitches do not.`}</p>`,
    'cast-on',
  )
}

function signMarkup({ symbol, rows }: HandoutSign, id: string, mirrored: boolean): Markup {
  const digit = symbol.strokes.some(({ kind }) => kind === 'digit')
  const drawing = keyDrawing(symbol, { cell: digit ? 6.5 : 5.5, unit: 'mm' })
  const shown: Drawing = mirrored ? mirroredDrawing(drawing) : drawing
  return html`<span class="sign"><span aria-hidden="true">${svg(shown, id)}</span>${rows !== null && html`<small>${rows}</small>`}</span>`
}

const countWords = ({ id, change }: HandoutStitch): string =>
  id === 'none' ? '' : change === '0' ? 'count stays' : `count ${change}`

function keyPart(sheet: HandoutSheet, plan: ClassPlan, id: string): Markup {
  const signs = sheet.chart !== null && plan.sections.includes('chart')
  const mirrored = plan.print === 'left-handed'
  const entry = (one: HandoutStitch, i: number): Markup => html`<li>
${signs && html`<span class="signs">${one.signs.map((sign, j) => signMarkup(sign, `${id}-${i}-${j}`, mirrored))}</span>`}
<span><strong>${one.short}</strong> ${one.name === one.short ? '' : one.name}<span class="does">${[countWords(one), one.lean].filter(Boolean).join('; ')}</span></span></li>`
  const shown = sheet.key.filter((one) => signs || one.id !== 'none')
  return section('The stitches', html`<ul class="key">${shown.map(entry)}</ul>`)
}

function rowsPart(sheet: HandoutSheet, plan: ClassPlan): Markup {
  const word = sheet.pattern.worked === 'round' ? 'rounds' : 'rows'
  const title = `The ${word}${'fixed' in sheet.pattern.castOn ? '' : `, ${times(sheet.repeats)}`}`
  const growing =
    sheet.pattern.growing &&
    html`<p>The counts are those of the first turn; the piece grows with every turn.</p>`
  return section(
    title,
    html`${growing}${plan.print === 'large' ? rowList(sheet) : rowTable(sheet, plan.print === 'easier')}`,
    'all-rows',
  )
}

function chartPart(
  { chart, chartRepeats, pattern }: HandoutSheet,
  plan: ClassPlan,
  id: string,
): Markup | null {
  if (chart === null) return null
  const left = plan.print === 'left-handed'
  const from = left ? 'from left to right' : 'from right to left'
  const back = left ? 'from right to left' : 'from left to right'
  const way =
    pattern.worked === 'round'
      ? `Every round runs ${from}.`
      : `Right-side rows run ${from}, wrong-side rows ${back}.`
  const sees = 'fixed' in pattern.castOn ? '' : `It shows ${times(chartRepeats)}. `
  return section(
    'The chart',
    html`<p>Seen from the right side, begun at the bottom. ${sees}${way} The small numbers are its stitches after each row.</p>${wide(`Chart of ${pattern.title}`, svg(chart, `${id}-drawing`))}`,
    'chart',
  )
}

function stuckPart({ stuck }: HandoutSheet): Markup {
  return section(
    'Stuck?',
    html`<ol>${stuck.questions.map((question) => html`<li>${question}</li>`)}</ol>
<ul class="mends">${stuck.mends.map(({ title, words }) => html`<li><strong>${title}.</strong> ${words}</li>`)}</ul>`,
    'stuck',
  )
}

const ordinals = [
  '',
  '',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
]

function lifelinePart({ pattern, rows }: HandoutSheet): Markup {
  const { every, plain } = lifelinePlan(pattern)
  const names = rows.filter(({ lifeline }) => lifeline).map(({ name }) => name.toLowerCase())
  const often = every > 1 ? ` of every ${ordinals[every] ?? `${every}th`} time through` : ''
  const where = plain && names.length > 0 ? `after ${names.join(' and ')}${often}` : 'about every ten rows'
  return html`<p class="care"><strong>Lifeline:</strong> ${where}, once you have counted, draw a smooth thread through every stitch, not through the markers, and write the row down.</p>`
}

/** Common practice, no source. */
const cautions = html`<p class="care"><strong>Care:</strong> rest your hands before they ask for it; pain that stays is for a doctor or a hand therapist. Count pins out and in again. Steam and irons scald: keep hands and face away, lay a cloth between, let the iron cool out of reach. Keep needles, pins, hooks and scissors from small children.</p>`

function sourcePart({ pattern: { about } }: HandoutSheet): Markup | null {
  const { source, licence, contributor, tested } = about
  const from =
    source &&
    [source.title, source.author, source.place, source.year].filter((part) => part !== undefined).join(', ')
  const words = [from && `Source: ${from}`, contributor, licence, tested].filter(Boolean).join('. ')
  return words === '' ? null : html`<p class="credit">${words}.</p>`
}

const notes = (): Markup =>
  section(
    'Notes',
    html`<div class="lines" aria-hidden="true">${Array.from({ length: 4 }, () => html`<i></i>`)}</div>`,
    'notes',
  )

/** What stands at the foot of every page of a pattern; in large print only what finds the page again. */
export function footWords(
  { pattern, version, code }: HandoutSheet,
  { guild, date, print }: ClassPlan,
): string {
  const own = `${pattern.title}, version ${version}, code ${code}`
  return [own, ...(print === 'large' ? [] : [guild, date])].filter((part) => part !== '').join(' · ')
}

/** A pattern's own leaf, in the order in which a learner needs its parts. */
export function patternLeaf(sheet: HandoutSheet, plan: ClassPlan, place: LeafPlace): Markup {
  const { id, first, last } = place
  const has = (name: ClassPlan['sections'][number]): boolean => plan.sections.includes(name)
  return html`<article class="leaf" aria-labelledby="${id}">
<div class="foot"><p>${footWords(sheet, plan)}</p></div>
<div class="body">
${head(sheet, id)}
${has('picture') && plan.print !== 'large' && pictures(sheet, place.pictures)}
${has('bring') && section('Bring', needs(sheet, plan, first))}
${castOnPart(sheet)}
${has('key') && keyPart(sheet, plan, `${id}-key`)}
${rowsPart(sheet, plan)}
${lifelinePart(sheet)}
${has('chart') && chartPart(sheet, plan, `${id}-chart`)}
${has('stuck') && stuckPart(sheet)}
${cautions}
${sourcePart(sheet)}
${last && has('homework') && plan.homework !== '' && section('Until next time', html`<p>${plan.homework}</p>`)}
${has('notes') && notes()}
</div></article>`
}
