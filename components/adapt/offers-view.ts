import { type Offer, offersIn, swapName } from '../../engine/adapt/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { type StitchId, stitch } from '../../engine/stitches/index.ts'
import { el } from '../mend/dom.ts'
import { closeUpAddress, stitchAddress } from '../stitch/addresses.ts'
import { pressing, spoken } from './spoken.ts'

/** Awkward stitches beside the plainer ones, with what each does to the look. One press takes one. */
export function offerParts(pattern: Pattern, take: (written: string) => void): HTMLElement[] {
  const offers = offersIn(pattern)
  if (offers.length === 0) return []
  return [
    el('h3', {}, 'A plainer stitch, if you like'),
    el('p', { class: 'small' }, 'Close up, as the right side looks. The counts stay the same.'),
    el('ul', { class: 'offers' }, ...offers.map((offer) => offerItem(offer, pattern, take))),
  ]
}

function offerItem(offer: Offer, pattern: Pattern, take: (written: string) => void): HTMLElement {
  const [awkward, plainer] = [stitch(offer.stitch).us, stitch(offer.plainer).us]
  const from = [...pattern.setUp, ...pattern.rows].find(({ number }) => number === offer.rows[0])
  const side = from?.side ?? 'RS'
  const button = pressing(`Work ${plainer} for ${awkward}`, () => take(swapName(offer.stitch, offer.plainer)))
  return el(
    'li',
    {},
    el(
      'div',
      { class: 'pair' },
      closeUp(offer.stitch, side, 'as it is'),
      closeUp(offer.plainer, side, 'plainer'),
    ),
    el('p', {}, ...spoken(offer.sentence)),
    button,
  )
}

/** A wrong-side stitch looks from the right side as its twin does. */
function closeUp(id: StitchId, side: 'RS' | 'WS', what: string): HTMLElement {
  const seen = side === 'WS' ? (stitch(id).wrongSideTwin ?? id) : id
  const picture = el('img', { src: closeUpAddress(seen), alt: '', width: 120, height: 120, loading: 'lazy' })
  const name = el('a', { href: stitchAddress(id) }, stitch(id).us)
  return el('figure', {}, picture, el('figcaption', {}, name, `, ${what}`))
}
