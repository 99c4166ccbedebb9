import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { escapeText, fabricDrawing, toSvg } from '../drawing/index.ts'
import { fabricOf, layOutFabric, yarnOf } from '../fabric/index.ts'
import { type Handout, type HandoutPictures, handoutHtml } from '../lesson/index.ts'
import { work } from '../needles/index.ts'
import { type Pattern, workedAgain } from '../pattern/index.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** The site's own styles and the paper's: what is printed here is what the pages print. */
const sheets = ['tokens', 'base', 'print', 'fonts'].map((name) => `site/styles/${name}.css`)

/** Fonts stand in the page itself, so that nothing is fetched. */
const withFonts = (css: string): string =>
  css.replace(/url\("(@fontsource[^"]+)"\)/g, (_, name: string) => {
    const font = readFileSync(join(root, 'node_modules', name)).toString('base64')
    return `url("data:font/woff2;base64,${font}")`
  })

const styles = (): string =>
  [...sheets, 'components/handout/handout.css']
    .map((file) => withFonts(readFileSync(join(root, file), 'utf8')))
    .join('\n')

/** A piece large enough to know the pattern by. */
function pieceOf(pattern: Pattern): Pattern & { repeats: number } {
  const { castOn, rows, growing } = pattern
  const repeats = 'fixed' in castOn ? 1 : Math.max(1, Math.ceil((13 - castOn.plus) / castOn.multiple))
  const times = growing ? 1 : Math.ceil(8 / rows.length)
  return { ...workedAgain(pattern, times), repeats }
}

/** The lace blocked and as it comes off the needles, drawn from its loops. */
function picturesOf(pattern: Pattern): HandoutPictures {
  const piece = pieceOf(pattern)
  const { worked } = work(piece, piece.repeats)
  if (!worked) return { blocked: null, asKnitted: null }
  const fabric = fabricOf(worked)
  const picture = (state: 'blocked' | 'unblocked'): string => {
    const drawing = fabricDrawing(yarnOf(fabric, layOutFabric(fabric, { state })))
    const svg = toSvg(drawing, { standalone: true })
    return `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`
  }
  return { blocked: picture('blocked'), asKnitted: picture('unblocked') }
}

/** A handout as a page by itself, with everything in it that it needs. */
export function handoutPage(handout: Handout): string {
  const { plan, sheets } = handout
  const wanted = plan.sections.includes('picture') && plan.print !== 'large'
  const pictures = new Map(sheets.map(({ slug, pattern }) => [slug, wanted ? picturesOf(pattern) : null]))
  const body = handoutHtml(handout, (slug) => pictures.get(slug) ?? { blocked: null, asKnitted: null })
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escapeText(plan.title || 'Class handout')}</title>
<style>${styles()}</style></head><body>${body}</body></html>
`
}
