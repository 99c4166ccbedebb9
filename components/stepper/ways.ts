import { type Drawing, nodesOf, type StepMoves, stepMoves } from '../../engine/drawing/index.ts'

type Point = readonly [number, number]

/** Something that is put anew for each part of the way, from 0 to 1. */
type Actor = (part: number) => void

/** The way from one picture to the next, played within the next. */
export interface Way {
  readonly actors: readonly Actor[]
  /** Leaves the new picture as it was drawn. */
  readonly clear: () => void
}

/** Loops that both pictures have travel; the others fade on their way. Going back is the same way run backwards. */
export function stepping(
  old: SVGElement,
  fresh: SVGElement,
  before: Drawing,
  after: Drawing,
  change: 'on' | 'back',
): Way {
  const [earlier, later] = change === 'on' ? [before, after] : [after, before]
  const moves = stepMoves(earlier, later)
  const { comes, goes } = journeys(earlier, later, moves)
  const ghosts: Element[] = []
  const travel = (key: string, from: Point, to: Point, opacity: (part: number) => number): Actor[] => {
    const element = keyed(fresh, key) ?? ghostOf(old, fresh, key, ghosts)
    if (!element) return []
    const put = (part: number): void => {
      const at = from.map((n, i) => n + ((to[i] ?? n) - n) * part)
      element.setAttribute('transform', `translate(${at.join(' ')})`)
      element.setAttribute('opacity', String(opacity(part)))
    }
    return [(part) => put(change === 'on' ? part : 1 - part)]
  }
  const actors = [
    ...moves.moves.flatMap(({ key, from, to }) => travel(key, from, to, () => 1)),
    ...moves.leaves
      .filter(isLoop)
      .flatMap(({ key, from }) => travel(key, from, goes(key, from), (part) => 1 - part)),
    ...moves.enters.filter(isLoop).flatMap(({ key, to }) => travel(key, comes(key, to), to, (part) => part)),
    ...dipOf(fresh),
  ]
  fresh.classList.add('is-moving')
  const clear = (): void => {
    for (const actor of actors) actor(1)
    for (const ghost of ghosts) ghost.remove()
    fresh.classList.remove('is-moving')
  }
  return { actors, clear }
}

const isLoop = ({ key }: { readonly key: string }): boolean =>
  key.startsWith('loop-') || key.startsWith('back-')

const keyed = (svg: Element, key: string): SVGElement | null =>
  svg.querySelector(`[data-key="${CSS.escape(key)}"]`)

/** Where a loop that only one of two pictures has comes from or goes to. */
interface Journeys {
  readonly comes: (key: string, to: Point) => Point
  readonly goes: (key: string, from: Point) => Point
}

/**
 * A new loop rises at the left tip, and the loops that it was drawn through sink into the fabric under it. All others
 * come and go at the far ends, as far as their needle's loops moved.
 */
function journeys(earlier: Drawing, later: Drawing, { moves, enters }: StepMoves): Journeys {
  const [made, taken] = [marked(later, 'is-new'), marked(earlier, 'is-next')]
  const middle = later.width / 2
  const shift = (side: 1 | -1): number => {
    const stayed = moves.find(({ from, to }) => side * (from[0] - middle) > 0 && side * (to[0] - middle) > 0)
    return stayed ? stayed.to[0] - stayed.from[0] : 0
  }
  const [leftShift, rightShift] = [shift(-1), shift(1)]
  const places = enters.filter(({ key }) => made.has(key)).map(({ to }) => to[0])
  const meeting = places.length > 0 ? places.reduce((sum, x) => sum + x, 0) / places.length : middle
  return {
    comes: (key, [x, y]) => (made.has(key) ? [x - 48, y + 8] : [x - leftShift, y]),
    goes: (key, [x, y]) => (taken.has(key) ? [meeting + (x - middle) * 0.1, y + 40] : [x + rightShift, y]),
  }
}

function marked({ nodes }: Drawing, mark: string): ReadonlySet<string> {
  const keys = [...nodesOf(nodes)].flatMap(({ key, className }) =>
    key !== undefined && className?.split(' ').includes(mark) ? [key] : [],
  )
  return new Set(keys)
}

/** A loop of the old picture that the new one has no more, put where it lay: before or behind the needles. */
function ghostOf(old: Element, fresh: Element, key: string, ghosts: Element[]): SVGElement | null {
  const [lost, view] = [keyed(old, key), fresh.querySelector('.needle-view')]
  if (!lost || !view) return null
  const ghost = lost.cloneNode(true) as SVGElement
  if (key.startsWith('back-')) view.prepend(ghost)
  else view.append(ghost)
  ghosts.push(ghost)
  return ghost
}

/** The right tip goes to the left one and comes back with the stitch. */
function dipOf(fresh: Element): Actor[] {
  const needle = keyed(fresh, 'needle-right')
  const place = needle?.getAttribute('transform')
  if (!needle || !place) return []
  return [
    (part) => {
      const there = part < 1 ? `translate(${-26 * Math.sin(Math.PI * part)} 0) ` : ''
      needle.setAttribute('transform', there + place)
    },
  ]
}

/** Half the way the old picture narrows to its middle, then the new one widens: the work is turned round. */
export function turning(old: SVGElement, fresh: SVGElement): Way {
  const [view, lost] = [fresh.querySelector<SVGElement>('.needle-view'), old.querySelector('.needle-view')]
  const middle = (Number(fresh.getAttribute('viewBox')?.split(' ')[2]) || 0) / 2
  const ghost = lost?.cloneNode(true) as SVGElement | undefined
  if (ghost) fresh.append(ghost)
  const narrowed = (element: SVGElement | null | undefined, width: number): void => {
    const scale = Math.max(width, 0.001)
    element?.setAttribute('transform', `translate(${middle * (1 - scale)} 0) scale(${scale} 1)`)
    element?.setAttribute('visibility', width > 0 ? 'visible' : 'hidden')
  }
  const actor: Actor = (part) => {
    const width = Math.cos(Math.PI * part)
    narrowed(ghost, width)
    narrowed(view, -width)
  }
  const clear = (): void => {
    ghost?.remove()
    view?.removeAttribute('transform')
    view?.removeAttribute('visibility')
  }
  return { actors: [actor], clear }
}
