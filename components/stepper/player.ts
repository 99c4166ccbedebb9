import {
  between,
  type Frame,
  type Mark,
  markPlace,
  marksDrawing,
  movingPaths,
} from '../../engine/drawing/index.ts'
import { type Act, needlesSvg } from './acts.ts'
import { movingPicture } from './pictures.ts'

/** One stitch in a picture whose parts can be moved. */
export interface Player {
  readonly svg: SVGElement
  /** Shows the needles on their way from one frame (t = 0) to another (t = 1). */
  readonly put: (from: Frame, to: Frame, t: number) => void
}

/** Puts a stitch into an element, as it begins. Only what changes is written from there on. */
export function playerIn(element: HTMLElement, act: Act): Player | null {
  const frames = act.frames()
  element.replaceChildren(movingPicture(act))
  const svg = element.querySelector('svg')
  const marks = svg?.querySelector('.needle-marks')
  if (!svg || !marks) return null
  const paths = [...svg.querySelectorAll('.needle-yarn path')]
  const written = paths.map((path) => path.getAttribute('d') ?? '')
  let said = ''
  return {
    svg,
    put(from, to, t) {
      const frame = between(from, to, t)
      for (const [i, d] of movingPaths(frames, frame).entries()) {
        if (written[i] === d) continue
        written[i] = d
        paths[i]?.setAttribute('d', d)
      }
      const saying = frame.marks.map(contentOf).join('\n')
      if (saying !== said) marks.replaceChildren(...marksOf(frame))
      said = saying
      for (const [i, mark] of frame.marks.entries())
        marks.children[i]?.setAttribute('transform', markPlace(mark))
    },
  }
}

/** What a mark looks like, wherever it is. */
function contentOf(mark: Mark): string {
  if (mark.kind !== 'label') return `${mark.key} ${'text' in mark ? mark.text : ''}`
  return `${mark.key} ${mark.box.map((n, i) => (n - (mark.at[i] ?? 0)).toFixed(1)).join()}`
}

function marksOf(frame: Frame): Element[] {
  const holder = document.createElement('div')
  holder.innerHTML = needlesSvg(marksDrawing(frame))
  return [...(holder.querySelector('.needle-marks')?.children ?? [])]
}
