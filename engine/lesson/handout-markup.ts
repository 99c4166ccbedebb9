import { type Drawing, escapeText, toSvg } from '../drawing/index.ts'

/** HTML that is safe as it stands. */
export interface Markup {
  readonly html: string
}

type Part = string | number | Markup | readonly Part[] | null | false

function textOf(part: Part): string {
  if (part === null || part === false) return ''
  if (typeof part === 'string' || typeof part === 'number') return escapeText(String(part))
  return 'html' in part ? part.html : part.map(textOf).join('')
}

/** A piece of HTML: what is put into it is text and escaped, unless it is markup itself. */
export function html(pieces: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return { html: pieces.reduce((all, piece, i) => all + textOf(parts[i - 1] ?? null) + piece) }
}

export const svg = (drawing: Drawing, idPrefix: string): Markup => ({ html: toSvg(drawing, { idPrefix }) })

/** What may be wider than a small screen: within the keyboard's reach there, and whole on paper. */
export const wide = (label: string, content: Markup): Markup =>
  html`<div class="wide" role="group" tabindex="0" aria-label="${label}">${content}</div>`
