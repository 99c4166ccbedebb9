/** Something that is put anew for each part of the way, from 0 to 1. */
export type Actor = (part: number) => void

/** The way from one picture to the next, played within the next. */
export interface Way {
  readonly actor: Actor
  /** Leaves the new picture as it was drawn. */
  readonly clear: () => void
}

/** Half the way the old picture narrows to its middle, then the new one widens: the work is turned round. */
export function turning(old: SVGElement, fresh: SVGElement): Way {
  const [view, lost] = [fresh.querySelector<SVGElement>('.needle-view'), old.querySelector('.needle-view')]
  const middle = (Number(fresh.getAttribute('viewBox')?.split(' ')[2]) || 0) / 2
  const ghost = lost?.cloneNode(true) as SVGElement | undefined
  if (ghost) fresh.append(ghost)
  fresh.classList.add('is-moving')
  const narrowed = (element: SVGElement | null | undefined, width: number): void => {
    const scale = Math.max(width, 0.001)
    element?.setAttribute('transform', `translate(${middle * (1 - scale)} 0) scale(${scale} 1)`)
    element?.setAttribute('visibility', width > 0 ? 'visible' : 'hidden')
  }
  return {
    actor(part) {
      const width = Math.cos(Math.PI * part)
      narrowed(ghost, width)
      narrowed(view, -width)
    },
    clear() {
      ghost?.remove()
      fresh.classList.remove('is-moving')
      view?.removeAttribute('transform')
      view?.removeAttribute('visibility')
    },
  }
}
