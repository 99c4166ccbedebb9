import { escapeText, keyDrawing, toSvg } from '../../engine/drawing/index.ts'
import { checkDraft, type Draft } from '../../engine/intake/index.ts'
import { swatchCard } from '../../engine/lesson/index.ts'
import { stitch, symbolOf } from '../../engine/stitches/index.ts'
import type { CardView } from './answer.ts'

/** The swatch card of a draft; null unless all of it is proved. */
export function cardOf(draft: Draft): CardView | null {
  const { sound, pattern, proof } = checkDraft(draft)
  if (!sound || !proof) return null
  const card = swatchCard(pattern, proof)
  const sign = (id: string): string => {
    const symbol = symbolOf(id)
    const cell = symbol.strokes.some(({ kind }) => kind === 'digit') ? 5 : 3.7
    return toSvg(keyDrawing(symbol, { cell, unit: 'mm' }), { idPrefix: `card-${id.replace(/\W/g, '-')}` })
  }
  const words = card.stitches.map((id) => {
    const { us, name } = stitch(id)
    return `<strong>${escapeText(us)}</strong> ${us === name ? '' : escapeText(name)}`
  })
  return { card, signs: card.stitches.map(sign), words }
}
