import { toSvg } from '../../engine/drawing/index.ts'
import { type Picture, pictureOf } from '../../engine/practice/index.ts'
import { el } from '../mend/dom.ts'

let drawn = 0

/** A picture in its frame. The frame stands at once; what is in it is drawn when the page has been shown. */
export function figureOf(picture: Picture): HTMLElement {
  const caption = picture.form === 'fabric' ? picture.title : ''
  const label = caption === '' ? 'A stitch close up' : caption
  // What can be scrolled must be within the keyboard's reach.
  const board = el('div', { class: `board ${picture.form}`, tabindex: 0, role: 'group', 'aria-label': label })
  const figure = el(
    'figure',
    {},
    caption === '' ? null : el('figcaption', {}, `${caption}, right side.`),
    board,
  )
  const id = `picture-${drawn++}`
  setTimeout(() => {
    const drawing = pictureOf(picture)
    board.classList.toggle('tall', drawing.height > drawing.width)
    board.innerHTML = toSvg(drawing, { idPrefix: id })
    if (picture.form === 'close-up') figure.append(inWords(drawing.description ?? ''))
  })
  return figure
}

/** The same without a picture. */
export const inWords = (words: string): HTMLElement =>
  el('details', {}, el('summary', {}, 'The picture in words'), el('p', {}, words))
